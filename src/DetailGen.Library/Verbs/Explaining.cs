using DetailGen.Details.Presets;
using DetailGen.Details.Rules;
using DetailGen.Details.Rules.Language;
using DetailGen.Details.Solving;
using DetailGen.Library.Reports;
using DetailGen.Library.Wording;
using DetailGen.Library.Working;
using DetailGen.Sections;

namespace DetailGen.Library.Verbs;

/// <summary>Why a value is what it is, what a rule is for, what a part does and what goes wrong without it.</summary>
internal static class Explaining
{
    internal static ExplainReport Run(ExplainRequest request, Office office)
    {
        var read = PresetFiles.Read(request.Preset, request.Overrides, office);
        if (!read.IsGood)
        {
            return Empty(request, PresetFiles.Detail(request.Preset, request.Overrides)) with { Errors = SolvedReport.Errors(read.Faults), Status = 2 };
        }

        if (request.WhatIf.Count > 0)
        {
            return Supposed(request, read.Value, office);
        }

        var (worked, report) = DetailWork.Do(read.Value, office);
        if (worked is null)
        {
            return Empty(request, report.Detail) with { Conflict = report.Conflict, Status = 1 };
        }

        if (request.Subject is not { } subject)
        {
            return Empty(request, report.Detail) with { Kind = "detail", Explained = [.. worked.Solved.Values.Select(value => Value(value, worked.Solved))] };
        }

        if (worked.Solved.Find(subject) is { } found)
        {
            return Empty(request, report.Detail) with { Kind = "parameter", Explained = [WithRange(Value(found, worked.Solved), request, worked.Solved, office)] };
        }

        if (worked.Solved.Verdicts.FirstOrDefault(verdict => Names(verdict.Rule, subject)) is { } verdict)
        {
            return Empty(request, report.Detail) with { Kind = "rule", Explained = [Rule(verdict, worked.Solved)] };
        }

        List<SolvedValue> equal = [.. worked.Solved.Values.Where(value => Bare(value.Text) == Bare(subject))];
        if (equal.Count > 0)
        {
            return Empty(request, report.Detail) with { Kind = "value", Explained = [.. equal.Select(value => Value(value, worked.Solved))] };
        }

        // "roof.insulation" stands for every part under that name; the one of just that name is meant first.
        List<Part> parts = [.. worked.Section.Parts.Where(part => part.Id == subject || part.Id.StartsWith(subject + ".", StringComparison.Ordinal)).OrderBy(part => part.Id != subject)];
        return parts.Count > 0
            ? Empty(request, report.Detail) with { Kind = "part", Explained = [.. parts.Select(part => Part(part, worked.Solved))] }
            : Empty(request, report.Detail) with { Errors = [Unknown(request, subject, worked)], Status = 2 };
    }

    /// <summary>The consequences, and the subject as it would then be.</summary>
    private static ExplainReport Supposed(ExplainRequest request, Preset preset, Office office)
    {
        var supposed = Supposing.Run(request, preset, Empty(request, preset.Detail), office);
        if (request.Subject is null || supposed.WhatIf is not { SolvedAfter: true })
        {
            return supposed;
        }

        var explained = Run(request with { Overrides = Supposing.With(request), WhatIf = [] }, office);
        return explained with { WhatIf = supposed.WhatIf, Status = Math.Max(explained.Status, supposed.Status) };
    }

    private static string Bare(string value) => value.Replace(" ", "", StringComparison.Ordinal);

    /// <summary>What the value could be instead, and what stops it at either end.</summary>
    private static ExplainedReport WithRange(ExplainedReport explained, ExplainRequest request, Solution.Solved solved, Office office)
    {
        if (!Ranging.Run(new(request.Preset, request.Overrides, [explained.Id]), office).Ranges.TryGetValue(explained.Id, out var range))
        {
            return explained; // a derived length follows from others
        }

        var sources = new List<string>(explained.Sources);
        List<string> text = [.. explained.Text, .. RangeSentences.Of(range, stop => Said(stop, solved, sources))];
        return explained with { Text = text, Sources = [.. sources.Distinct(StringComparer.Ordinal)] };
    }

    // of a rule what it asks is enough here: its source stands below
    private static string Said(MemberReport stop, Solution.Solved solved, List<string> sources)
    {
        if (solved.Verdicts.FirstOrDefault(verdict => verdict.Rule.Id == stop.Id)?.Rule is not { Require: not null } rule)
        {
            return char.ToLowerInvariant(stop.Text[0]) + stop.Text[1..];
        }

        sources.Add(Source(rule));
        return $"{RequirementWords.Of(rule)} [{stop.Id}]";
    }

    private static ExplainReport Empty(ExplainRequest request, string detail) => new(DetailLibrary.Tool, detail, request.Preset, request.Subject, "detail", []);

    private static bool Names(Rule rule, string id) => rule.Id == id || rule.Aliases.Contains(id, StringComparer.Ordinal);

    private static ExplainedReport Value(SolvedValue value, Solution.Solved solved)
    {
        var text = new List<string> { value.Meaning, value.Why.Text };
        var sources = new List<string>();
        if (value.Why.Rule is { } id && solved.Verdicts.FirstOrDefault(verdict => verdict.Rule.Id == id)?.Rule is { } rule)
        {
            text.Add(rule.Reason);
            sources.Add(Source(rule));
        }

        return new(value.Key, $"{value.Key} = {value.Text}", text, sources);
    }

    private static ExplainedReport Rule(Verdict verdict, Solution.Solved solved)
    {
        var rule = verdict.Rule;
        List<string> text = [rule.Text];
        if (rule.Require is not null)
        {
            text.Add($"It asks: {RequirementWords.Of(rule)}.");
        }

        text.Add($"Because: {rule.Reason}");
        text.Add($"Here: {Here(verdict)}");
        if (rule.Confirm is { } confirm)
        {
            text.Add($"To confirm: {confirm}");
        }

        if (rule.Hint is { } hint)
        {
            text.Add(hint);
        }

        if (rule.Ask is { } whom)
        {
            text.Add($"Safety: ask {whom}.");
        }

        text.AddRange(SolvedReport.Disagreements(rule, solved.Packs).Select(words => $"Sources do not agree. {words}"));
        if (rule.Corrected is { } corrected)
        {
            text.Add($"Corrected: {corrected}");
        }

        return new(rule.Id, $"{rule.Id} ({SolvedReport.Word(rule.Severity)}, {SolvedReport.Class(rule.Class)})", text, [Source(rule)]);
    }

    private static string Here(Verdict verdict)
    {
        var word = SolvedReport.Word(verdict.Judgement);
        return verdict.Left is not null ? $"{word}, {ComparisonWords.Drawn(verdict)} against {ComparisonWords.Wanted(verdict)}." : verdict.Judgement is Judgement.Pass ? $"{word}." : $"{word}. {verdict.Text}";
    }

    private static ExplainedReport Part(Part part, Solution.Solved solved)
    {
        List<string> text = [part.Words.Note, part.Words.Purpose];
        if (part.Words.Without.Length > 0)
        {
            text.Add($"Without it: {part.Words.Without}");
        }

        text.Add($"Material: {part.Material.Name}.");
        if (part.Parameters.Count > 0)
        {
            text.Add($"Sized by {string.Join(", ", part.Parameters.Select(key => solved.Find(key) is { } value ? $"{key} = {value.Text}" : key))}.");
        }

        // the rules that ask something of its sizes here
        List<Rule> rules = [.. solved.Verdicts.Where(verdict => verdict.Judgement is not Judgement.NotApplicable && verdict.Rule.Require is { } require
            && require.Keys().Intersect(part.Parameters, StringComparer.Ordinal).Any()).Select(verdict => verdict.Rule)];
        text.AddRange(rules.Select(rule => $"Rule: {RequirementWords.Of(rule)} [{rule.Id}]."));

        return new(part.Id, $"{part.Id}: {part.Name}", [.. text.Where(line => line.Length > 0)], [.. rules.Select(Source).Distinct(StringComparer.Ordinal)]);
    }

    private static string Source(Rule rule) => rule.Source.Confidence switch
    {
        "memory" => $"{rule.SourceText} (from memory)",
        "common-practice" when rule.SourceText.StartsWith("common practice", StringComparison.Ordinal) => rule.SourceText,
        "common-practice" => $"{rule.SourceText} (common practice)",
        var confidence => $"{rule.SourceText} ({confidence}{(rule.Source.ReadKind is { } kind ? $", {kind} text" : "")})",
    };

    private static ErrorReport Unknown(ExplainRequest request, string subject, Worked worked)
    {
        var names = worked.Solved.Values.Select(value => value.Key)
            .Concat(worked.Solved.Verdicts.Select(verdict => verdict.Rule.Id)).Concat(worked.Section.Parts.Select(part => part.Id));
        return new("unknown-subject", request.Preset, 0, 0, null, subject, Messages.UnknownSubject(subject), Details.Reading.Nearest.To(subject, names) is { } nearest ? Messages.DidYouMean(nearest) : Messages.SeeAll);
    }
}
