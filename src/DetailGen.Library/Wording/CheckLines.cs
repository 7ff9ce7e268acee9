using DetailGen.Details.Rules;
using DetailGen.Details.Solving;
using DetailGen.Drawing.Sheets;
using DetailGen.Library.Reports;
using Verdict = DetailGen.Details.Solving.Verdict;

namespace DetailGen.Library.Wording;

/// <summary>The check list of a sheet: what fails, what is broken or waived, what a person must confirm, then what passes: what the packs name as foremost, other musts, the rest, and of these what passes by the least.</summary>
internal static class CheckLines
{
    /// <summary>Of what passes no more is told in lines; the rest is counted.</summary>
    private const int MostPasses = 30;

    /// <summary>Letters of a value that fits the narrow columns of the first sheet on one line.</summary>
    private const int Brief = 8;

    /// <summary>Letters of a list that a check list still spells out.</summary>
    private const int ShortList = 40;

    /// <summary>Lines in the order of printing, and how many further checks pass.</summary>
    internal static (IReadOnlyList<CheckLine> Lines, int Further) Of(
        IReadOnlyList<Verdict> verdicts, IReadOnlyList<CheckReport> checks, IReadOnlyList<string> emptyFields, IReadOnlyList<RulePack> packs)
    {
        string[] foremost = [.. packs.Reverse().SelectMany(pack => pack.Head?.Foremost ?? []).Select(named => named.Text)];
        var failed = checks.Where(check => check.Verdict == VerdictWords.Fail).Select(check => new CheckLine(check.Text, check.Text, "–", check.GapMm is { } gap ? Figures.Short(gap) : "–", Drawing.Sheets.Verdict.Fail, true));
        var broken = verdicts
            .Where(verdict => verdict.Judgement is Judgement.Fail or Judgement.Warn or Judgement.Waived)
            .OrderBy(verdict => Rank(verdict.Judgement)).Select(verdict => Line(verdict, true));
        var open = verdicts.Where(verdict => verdict.Judgement == Judgement.ToConfirm)
            .OrderBy(verdict => verdict.Rule.Ask is null).ThenBy(verdict => Place(verdict.Rule)).Select(verdict => Line(verdict, verdict.Rule.Ask is not null));
        var empty = emptyFields.Select(field => new CheckLine($"Title block: {field}", $"Title block: {field}", "filled", "–", Drawing.Sheets.Verdict.Warn, true));
        var passes = verdicts.Where(verdict => verdict.Judgement == Judgement.Pass).OrderBy(verdict => Place(verdict.Rule)).ThenBy(verdict => verdict.Rule.Severity).ThenBy(Slack).ToList();

        // What nothing can break, such as a surface resistance that a standard gives, is counted and tells nobody anything; nor does what a material is not.
        var told = passes.Where(verdict => verdict.Rule.Unbreakable is null && verdict.Op != "not in").Take(MostPasses).ToList();
        var further = passes.Count - told.Count + checks.Count(check => check.Verdict == VerdictWords.Pass);
        return ([.. failed, .. broken, .. empty, .. open, .. told.Select(verdict => Line(verdict, true)).Select(line => line with { Foremost = line.Required.Length <= Brief && line.Drawn.Length <= Brief })], further);

        // A pack's own choice goes before that of the pack which it extends.
        int Place(Rule rule) => Array.FindIndex(foremost, rule.Names) is >= 0 and var place ? place : int.MaxValue;
    }

    private static CheckLine Line(Verdict verdict, bool foremost) => new(
        verdict.Rule.Heading, (verdict.Rule.Confirm ?? verdict.Rule.Text).TrimEnd('.'),
        verdict.Right is { } right ? Required(verdict.Op, right) : "–", verdict.Left is { } left ? Bare(left.Text) : "–",
        verdict.Judgement switch
        {
            Judgement.Fail => Drawing.Sheets.Verdict.Fail,
            Judgement.Warn => Drawing.Sheets.Verdict.Warn,
            Judgement.Waived => Drawing.Sheets.Verdict.Waived,
            Judgement.ToConfirm => Drawing.Sheets.Verdict.ToConfirm,
            Judgement.Pass => Drawing.Sheets.Verdict.Pass,
            _ => Drawing.Sheets.Verdict.NotApplicable,
        },
        foremost);

    private static int Rank(Judgement judgement) => judgement switch { Judgement.Fail => 0, Judgement.Warn => 1, _ => 2 };

    // How far a size stands from its limit, as a share of the limit; rules without numbers come last.
    private static decimal Slack(Verdict verdict) => (verdict.Left?.Number, verdict.Right?.Number) switch
    {
        ({ } left, { } right) => Math.Abs(left - right) / Math.Max(1, Math.Abs(right)),
        _ => decimal.MaxValue,
    };

    // All that it must not be would fill half a column, and the report lists it.
    private static string Required(string? op, Side right) => op == "not in" && right.Text.Length > ShortList ? "another" : $"{Sign(op, right)} {Bare(right.Text)}".Trim();

    private static string Sign(string? op, Side right) => op switch
    {
        ">=" => "≥",
        "<=" => "≤",
        "!=" => right.Number is null ? "not" : "≠",
        "in" => "one of",
        "not in" => "none of",
        "=" or null => "",
        _ => op,
    };

    // The list's heading says that lengths are in mm.
    private static string Bare(string text) => text.EndsWith(" mm", StringComparison.Ordinal) ? text[..^3] : text;
}
