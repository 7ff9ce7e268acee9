namespace DetailGen.Library.Reports;

/// <summary>The words by which reports tell verdicts on rules, checks and targets.</summary>
public static class VerdictWords
{
    public const string Pass = "pass";

    /// <summary>Broken, and the detail must not be issued.</summary>
    public const string Fail = "fail";

    /// <summary>Broken, to be justified or changed.</summary>
    public const string Warn = "warn";

    /// <summary>Broken, and the author answers for it.</summary>
    public const string Waived = "waived";

    public const string ToConfirm = "to-confirm";

    public const string NotApplicable = "not-applicable";
}
