using DetailGen.Library.Reports;
using DetailGen.Library.Working;

namespace DetailGen.Library.Verbs;

/// <summary>Heat through the junctions of presets, simulated whether a target asks for it or not.</summary>
internal static class PresetHeating
{
    internal static DetailReport One(string path, IReadOnlyList<string> overrides, Office office)
    {
        var preset = PresetFiles.Read(path, overrides, office);
        return preset.IsGood ? DetailWork.Do(preset.Value, office, Simulation.Always).Report : DetailLibrary.Unread(path, SolvedReport.Errors(preset.Faults));
    }
}
