using DetailGen.Library.Reports;

namespace DetailGen.Library.Working;

/// <summary>A fault of our own in one detail: it is told as that detail's answer, and the others of the run are answered all the same.</summary>
internal static class InternalFaults
{
    /// <param name="told">What stands for the answer where there is a fault.</param>
    internal static T Contained<T>(Func<T> work, Func<Exception, T> told)
    {
        try
        {
            return work();
        }
#pragma warning disable CA1031 // whatever it is, the rest of the run does not hang on it; it is told, with its own status
        catch (Exception fault)
#pragma warning restore CA1031
        {
            return told(fault);
        }
    }

    /// <summary>The answer for that preset.</summary>
    internal static DetailReport Unread(string detail, string file, Exception fault) => new(detail, file, Solved: false) { Errors = [Of(fault, file)], Status = ExitStatus.InternalFault };

    internal static ErrorReport Of(Exception fault, string file) =>
        ErrorReport.Of("internal-fault", file, Messages.InternalFault(fault.GetType().Name, fault.Message), Messages.InternalFaultHint);
}
