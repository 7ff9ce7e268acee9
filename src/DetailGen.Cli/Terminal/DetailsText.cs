using System.Globalization;
using DetailGen.Library.Reports;
using Spectre.Console;

namespace DetailGen.Cli.Terminal;

/// <summary>A detail's answer in words.</summary>
internal static class DetailsText
{
    private static readonly string[] Order = [VerdictWords.Fail, VerdictWords.Warn, VerdictWords.Waived, VerdictWords.ToConfirm, VerdictWords.Pass];

    /// <summary>After drawing: the files, or the conflict.</summary>
    internal static void Drawn(TextWriter output, DetailReport detail)
    {
        if (!Opened(output, detail))
        {
            return;
        }

        if (detail.Layout?.Audit is { } audit)
        {
            output.WriteLine(audit.Count == 0 ? "  Layout audit: no fault found." : $"  Layout audit: {audit.Count.ToString(CultureInfo.InvariantCulture)} {(audit.Count == 1 ? "fault" : "faults")}, ringed in the picture.");
        }

        foreach (var file in (detail.Files ?? []).Concat(detail.Document is { } document ? [document] : []))
        {
            output.WriteLine($"  {file.Path}  {file.Bytes.ToString("N0", CultureInfo.InvariantCulture)} bytes");
        }
    }

    /// <summary>After checking one preset: what fails, warns or is waived, the checks, and what a person must confirm.</summary>
    internal static void Checked(TextWriter output, DetailReport detail)
    {
        if (!Judged(output, detail))
        {
            return;
        }

        var open = ToConfirm(detail);
        if (open.Count > 0)
        {
            output.WriteLine("  To be confirmed by a person:");
            foreach (var rule in open)
            {
                output.WriteLine($"    - {rule.Text} [{rule.Id}]");
            }
        }

        output.WriteLine();
    }

    /// <summary>The same among several presets, where what a person must confirm is only counted.</summary>
    internal static void CheckedAmongOthers(TextWriter output, DetailReport detail)
    {
        if (Judged(output, detail))
        {
            output.WriteLine();
        }
    }

    private static bool Judged(TextWriter output, DetailReport detail)
    {
        if (!Opened(output, detail))
        {
            return false;
        }

        foreach (var rule in (detail.Rules ?? []).Where(rule => rule.Verdict is VerdictWords.Fail or VerdictWords.Warn or VerdictWords.Waived).OrderBy(rule => Array.IndexOf(Order, rule.Verdict)))
        {
            output.WriteLine($"  {rule.Verdict}: {rule.Text.TrimEnd('.')}{Sides(rule)}. {rule.Source} ({rule.Confidence}) [{rule.Id}]");
        }

        foreach (var check in detail.Checks ?? [])
        {
            output.WriteLine($"  {check.Verdict}: {check.Text}");
        }

        if (detail.Physics is JunctionReport heat)
        {
            HeatText.Figures(output, heat);
            foreach (var element in heat.Moisture?.Elements ?? [])
            {
                output.WriteLine($"  {element.Text} {element.MouldText}");
            }
        }

        return true;
    }

    private static List<RuleReport> ToConfirm(DetailReport detail) => [.. (detail.Rules ?? []).Where(rule => rule.Verdict == VerdictWords.ToConfirm)];

    private static string Sides(RuleReport rule) => rule.Left is null || rule.Right is null ? "" : $" ({rule.Drawn}, wanted {rule.Wanted})";

    /// <summary>The first line, or the conflict; false where there is nothing more to tell.</summary>
    internal static bool Opened(TextWriter output, DetailReport detail)
    {
        if (detail.Conflict is { } conflict)
        {
            output.WriteLine($"{detail.Detail}: no sizes hold together.");
            Conflict(output, conflict);
        }

        if (detail.Solved)
        {
            output.WriteLine($"{detail.Detail}: {Verdicts(detail)}");
        }

        return detail.Solved;
    }

    internal static void Conflict(TextWriter output, ConflictReport conflict)
    {
        Members(output, "  These cannot hold together:", conflict.Members);
        foreach (var further in conflict.Further)
        {
            Members(output, "  Nor can these:", further.Members);
        }

        if (conflict.MayBeMore)
        {
            output.WriteLine("  There may be more that clashes.");
        }

        output.WriteLine(conflict.Repairs switch
        {
            [] => "  No change of what you set or asked for mends it, with at most one choice or material changed too. Two choices together were not tried.",
            [{ Set.Count: 1 }, ..] => "  Any one of these changes mends it:",
            _ => "  No single change mends it. These together do:",
        });
        foreach (var repair in conflict.Repairs)
        {
            var set = string.Join(" ", repair.Set.Select(pair => $"--set {pair.Key}={pair.Value.Replace(" ", "", StringComparison.Ordinal)}"));
            output.WriteLine($"    - {repair.Text}  ({set})");
        }
    }

    private static void Members(TextWriter output, string opening, IReadOnlyList<MemberReport> members)
    {
        output.WriteLine(opening);
        foreach (var member in members)
        {
            output.WriteLine($"    - {member.Text}");
        }
    }

    internal static void Summary(TextWriter output, IReadOnlyList<DetailReport> details)
    {
        var table = new Table { Border = TableBorder.Simple };
        table.AddColumns("preset", "detail", "solved", "fail", "warn", "to confirm", "waived", "pass");
        foreach (var detail in details)
        {
            string Count(string verdict) => ((detail.Rules ?? []).Count(rule => rule.Verdict == verdict) + (detail.Checks ?? []).Count(check => check.Verdict == verdict))
                .ToString(CultureInfo.InvariantCulture);
            var solved = detail.Solved ? "yes" : detail.Errors is { Count: > 0 } ? "wrong input" : "no"; // a detail with a wrong input was not tried
            table.AddRow([.. new[] { detail.Preset, detail.Detail, solved, Count(VerdictWords.Fail), Count(VerdictWords.Warn), Count(VerdictWords.ToConfirm), Count(VerdictWords.Waived), Count(VerdictWords.Pass) }.Select(Markup.Escape)]);
        }

        Answers.Console(output).Write(table);
    }

    private static string Verdicts(DetailReport detail)
    {
        var verdicts = (detail.Rules ?? []).Select(rule => rule.Verdict).Concat((detail.Checks ?? []).Select(check => check.Verdict)).ToList();
        return string.Join(", ", Order
            .Select(verdict => (Verdict: verdict, Count: verdicts.Count(other => other == verdict)))
            .Where(pair => pair.Count > 0)
            .Select(pair => $"{pair.Count.ToString(CultureInfo.InvariantCulture)} {pair.Verdict}"));
    }
}
