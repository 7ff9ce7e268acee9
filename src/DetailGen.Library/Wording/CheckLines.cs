using DetailGen.Details.Solving;
using DetailGen.Drawing.Sheets;
using DetailGen.Library.Reports;
using Verdict = DetailGen.Details.Solving.Verdict;

namespace DetailGen.Library.Wording;

/// <summary>The check list of a sheet: what fails, what is broken or waived, what a person must confirm, then what passes by the least.</summary>
internal static class CheckLines
{
    private const int Nearest = 10;

    /// <summary>Lines in the order of printing, and how many further checks pass.</summary>
    internal static (IReadOnlyList<CheckLine> Lines, int Further) Of(IReadOnlyList<Verdict> verdicts, IReadOnlyList<CheckReport> checks, IReadOnlyList<string> emptyFields)
    {
        var failed = checks.Where(check => check.Verdict == "fail").Select(check => new CheckLine(check.Text, "–", check.GapMm is { } gap ? Figures.Short(gap) : "–", Drawing.Sheets.Verdict.Fail));
        var open = verdicts
            .Where(verdict => verdict.Judgement is not (Judgement.Pass or Judgement.NotApplicable))
            .OrderBy(verdict => Rank(verdict.Judgement)).ThenBy(verdict => verdict.Rule.Safety is null)
            .Select(Line);
        var empty = emptyFields.Select(field => new CheckLine($"Title block: {field}", "filled", "–", Drawing.Sheets.Verdict.Warn));
        var passes = verdicts.Where(verdict => verdict.Judgement == Judgement.Pass).OrderBy(Slack).ToList();
        var further = Math.Max(0, passes.Count - Nearest) + checks.Count(check => check.Verdict == "pass");
        return ([.. failed, .. open, .. empty, .. passes.Take(Nearest).Select(Line)], further);
    }

    /// <summary>A rule's id as words: <c>tray-step</c> is "Tray step".</summary>
    internal static string Name(string id) => char.ToUpperInvariant(id[0]) + id[1..].Replace('-', ' ');

    private static CheckLine Line(Verdict verdict) => new(
        Name(verdict.Rule.Id), verdict.Right is { } right ? $"{Sign(verdict.Op)} {Bare(right.Text)}".Trim() : "–", verdict.Left is { } left ? Bare(left.Text) : "–",
        verdict.Judgement switch
        {
            Judgement.Fail => Drawing.Sheets.Verdict.Fail,
            Judgement.Warn => Drawing.Sheets.Verdict.Warn,
            Judgement.Waived => Drawing.Sheets.Verdict.Waived,
            Judgement.ToConfirm => Drawing.Sheets.Verdict.ToConfirm,
            Judgement.Pass => Drawing.Sheets.Verdict.Pass,
            _ => Drawing.Sheets.Verdict.NotApplicable,
        });

    private static int Rank(Judgement judgement) => judgement switch { Judgement.Fail => 0, Judgement.Warn => 1, Judgement.Waived => 2, _ => 3 };

    // How far a size stands from its limit, as a share of the limit; rules without numbers come last.
    private static decimal Slack(Verdict verdict) => (verdict.Left?.Number, verdict.Right?.Number) switch
    {
        ({ } left, { } right) => Math.Abs(left - right) / Math.Max(1, Math.Abs(right)),
        _ => decimal.MaxValue,
    };

    private static string Sign(string? op) => op switch { ">=" => "≥", "<=" => "≤", "!=" => "≠", "=" or null => "", _ => op };

    // The list's heading says that lengths are in mm.
    private static string Bare(string text) => text.EndsWith(" mm", StringComparison.Ordinal) ? text[..^3] : text;
}
