using DetailGen.Library.Reports;
using DetailGen.Library.Working;
using DetailGen.Physics.Fields;

namespace DetailGen.Library.Verbs;

/// <summary>The temperatures along the surfaces of one preset's junction.</summary>
internal static class SurfaceReading
{
    /// <summary>mm: places of the mesh lie much closer round a corner than anyone reads.</summary>
    private const double Apart = 5;

    internal static SurfacesReport Run(SurfacesRequest request, Office office)
    {
        var read = PresetFiles.Read(request.Preset, request.Overrides, office);
        if (!read.IsGood)
        {
            return Empty(request, PresetFiles.Detail(request.Preset, request.Overrides)) with { Errors = SolvedReporting.Errors(read.Faults), Status = ExitStatus.WrongInput };
        }

        var (worked, report) = DetailWork.Do(read.Value, office, Simulation.Always);
        var told = Empty(request, read.Value.Detail) with { Warnings = report.Warnings, Conflict = report.Conflict, Status = report.Status };
        return worked?.Heat is not { } heat ? told : told with
        {
            Surfaces = [.. heat.Surfaces.Profiles.Select(profile => new SurfaceTemperatureReport(profile.Environment.Name, profile.Environment.Temperature, [.. Thinned(profile.Places)]))],
            Standard = Messages.HeatStandard,
            Caution = Messages.HeatCaution,
        };
    }

    // Both ends and the places from which the temperature rises or falls both ways stay.
    private static IEnumerable<SurfacePlaceReport> Thinned(IReadOnlyList<SurfacePlace> places)
    {
        var last = double.NegativeInfinity;
        for (var i = 0; i < places.Count; i++)
        {
            var isEnd = i == 0 || i == places.Count - 1;
            if (isEnd || places[i].Along >= last + Apart || (places[i].Temperature - places[i - 1].Temperature) * (places[i + 1].Temperature - places[i].Temperature) < 0)
            {
                last = places[i].Along;
                yield return new(ReportUnits.Thousandth(last), ReportUnits.Thousandth(places[i].At.X), ReportUnits.Thousandth(places[i].At.Y), ReportUnits.Thousandth(places[i].Temperature));
            }
        }
    }

    /// <summary>The report that says nothing yet.</summary>
    internal static SurfacesReport Empty(SurfacesRequest request, string detail) => new(DetailLibrary.Tool, detail, request.Preset, []);
}
