namespace DetailGen.Library.Reports;

/// <summary>Answers to a stand-alone case file.</summary>
/// <param name="Json">The document that answers the file; null where there are errors.</param>
/// <param name="Status">0 done, 1 a comparison that the file itself asks for fails, 2 wrong input.</param>
public sealed record CaseReport(string? Json, IReadOnlyList<AnsweredCaseReport> Cases, IReadOnlyList<ErrorReport> Errors, int Status);

/// <summary>One answer in short.</summary>
/// <param name="Figures">Name and value with unit.</param>
/// <param name="Checks">How many comparisons the case asks for.</param>
/// <param name="FailedChecks">A sentence for each that fails.</param>
public sealed record AnsweredCaseReport(
    string Id, string Kind, string Title, IReadOnlyList<(string Name, string Text)> Figures, IReadOnlyList<string> Warnings, int Checks, IReadOnlyList<string> FailedChecks);
