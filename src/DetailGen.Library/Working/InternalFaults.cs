using DetailGen.Details.Presets;
using DetailGen.Library.Reports;

namespace DetailGen.Library.Working;

/// <summary>A fault of our own in one detail: it is told as that detail's answer, and the others of the run are answered all the same.</summary>
internal static class InternalFaults
{
    internal const int Status = 4;

    internal static DetailReport Contained(Preset preset, Func<DetailReport> work)
    {
        try
        {
            return work();
        }
#pragma warning disable CA1031 // whatever it is, the rest of the run does not hang on it; it is told, with its own status
        catch (Exception fault)
#pragma warning restore CA1031
        {
            return new(preset.Detail, preset.File, Solved: false) { Errors = [Of(fault, preset.File)], Status = Status };
        }
    }

    internal static ErrorReport Of(Exception fault, string file) =>
        new("internal-fault", file, 0, 0, null, null, Messages.InternalFault(fault.GetType().Name, fault.Message), Messages.InternalFaultHint);
}
