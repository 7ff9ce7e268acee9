using DetailGen.Details.Presets;
using DetailGen.Library.Reports;
using DetailGen.Library.Working;

namespace DetailGen.Library.Verbs;

/// <summary>Judges presets without drawing; a folder stands for those in it.</summary>
internal static class PresetChecking
{
    internal static DetailsReport Run(PresetsRequest request, Office office)
    {
        var given = PresetFiles.Open(request, office);
        var names = new SameNames(given);
        return new(DetailLibrary.Tool,
        [
            .. given.Select((one, place) =>
            {
                var report = one.Told(preset => One(preset, office, request.Physics ? Simulation.Always : Simulation.Asked));
                return names.Fault(place) is { } same ? report with { Warnings = [.. report.Warnings, $"{same.Reason} {same.Hint}"] } : report;
            }),
        ]);
    }

    private static DetailReport One(Preset preset, Office office, Simulation when)
    {
        var (worked, report) = DetailWork.Do(preset, office, when);
        return worked is null ? report : MoistureChecking.WithFigures(report, worked, office).Report;
    }
}
