using DetailGen.Details.Presets;
using DetailGen.Library.Reports;
using DetailGen.Library.Working;

namespace DetailGen.Library.Verbs;

/// <summary>Judges presets without drawing; a folder stands for those in it.</summary>
internal static class PresetChecking
{
    internal static DetailsReport Run(PresetsRequest request, Office office)
    {
        var found = request.Paths.Select(path => (Path: path, Presets: PresetFiles.Of(path))).ToList();
        var read = found.SelectMany(one => one.Presets).Select(path => (Path: path, Preset: PresetFiles.Read(path, request.Overrides, office))).ToList();
        var names = new SameNames(read);
        return new(DetailLibrary.Tool,
        [
            .. found.Where(one => one.Presets.Count == 0).Select(one => PresetFiles.None(one.Path)),
            .. read.Select((one, place) =>
            {
                if (!one.Preset.IsGood)
                {
                    return PresetFiles.Unread(one.Path, request.Overrides, one.Preset.Faults);
                }

                var report = InternalFaults.Contained(one.Preset.Value, () => One(one.Preset.Value, office, request.Physics ? Simulation.Always : Simulation.Asked));
                return names.Fault(place) is { } same ? report with { Warnings = [.. report.Warnings, $"{same.Reason} {same.Hint}"] } : report;
            }),
        ]);
    }

    private static DetailReport One(Preset preset, Office office, Simulation when)
    {
        var (worked, report) = DetailWork.Do(preset, office, when);
        return worked is null ? report : Moistening.WithFigures(report, worked, office);
    }
}
