using DetailGen.Analysis.Heat;
using DetailGen.Library.Reports;
using DetailGen.Library.Working;

namespace DetailGen.Library.Verbs;

/// <summary>Heat through the junctions of presets.</summary>
internal static class PresetHeating
{
    internal static DetailReport One(string path, IReadOnlyList<string> overrides, Office office)
    {
        var preset = PresetFiles.Read(path, overrides, office);
        if (!preset.IsGood)
        {
            return DetailLibrary.Unread(path, SolvedReport.Errors(preset.Faults));
        }

        var (worked, report) = DetailWork.Do(preset.Value, office);
        if (worked is null)
        {
            return report;
        }

        var conditions = new HeatConditions();
        var heat = JunctionHeat.Of(ThermalModelling.Of(worked.Section, conditions), conditions);
        return report with
        {
            Physics = HeatWords.Of(heat, preset.Value, report.Physics!),
            Warnings = [.. report.Warnings, .. heat.Warnings],
        };
    }
}
