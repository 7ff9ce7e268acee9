namespace DetailGen.Library.Reports;

/// <summary>How a call ended, as the process tells it. The worse the greater, so that of several the greatest counts.</summary>
public static class ExitStatus
{
    public const int Done = 0;

    /// <summary>The detail cannot be solved, or fails a rule, a check or a comparison.</summary>
    public const int Fails = 1;

    public const int WrongInput = 2;

    /// <summary>The output could not be written.</summary>
    public const int NotWritten = 3;

    /// <summary>A fault of the tool itself.</summary>
    public const int InternalFault = 4;
}
