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
            return Empty(request, PresetFiles.Detail(request.Preset, request.Overrides)) with { Errors = SolvedReporting.Errors(read.Faults), Status = ExitStatus.WrongInput };
        }

        if (request.WhatIf.Count > 0)
        {
            return Supposed(request, read.Value, office);
        }

        var (worked, report) = DetailWork.Do(read.Value, office);
        return request.Subject is { } subject ? Of(subject, request, read.Value, worked, report, office)
            : worked is null ? Empty(request, report.Detail) with { Conflict = report.Conflict, Status = ExitStatus.Fails }
            : Empty(request, report.Detail) with { Kind = "detail", Explained = [.. worked.Solved.Values.Select(value => Value(value, worked.Solved))] };
    }

    /// <summary>One thing by its name; of a detail without sizes that hold together what can be said without them, beside the conflict.</summary>
    private static ExplainReport Of(string subject, ExplainRequest request, Preset preset, Worked? worked, DetailReport report, Office office)
    {
        ExplainReport Told(string kind, params IReadOnlyList<ExplainedReport> explained) =>
            Empty(request, report.Detail) with { Kind = kind, Explained = explained, Conflict = report.Conflict, Status = worked is null ? ExitStatus.Fails : ExitStatus.Done };

        var key = NamedThings.Key(subject);
        if (worked?.Solved.Find(key) is { } found)
        {
            return Told("parameter", WithRange(Value(found, worked.Solved), request, worked.Solved, office));
        }

        if (worked?.Solved.Verdicts.FirstOrDefault(verdict => verdict.Rule.Names(subject)) is { } verdict)
        {
            return Told("rule", Rule(verdict.Rule, Here(verdict), worked.Solved.Packs));
        }

        List<SolvedValue> equal = [.. (worked?.Solved.Values ?? []).Where(value => Bare(value.Text) == Bare(subject))];
        if (equal.Count > 0)
        {
            return Told("value", [.. equal.Select(value => Value(value, worked!.Solved))]);
        }

        // "roof.insulation" stands for every part under that name; the one of just that name is meant first.
        List<Part> parts = [.. (worked?.Section.Parts ?? []).Where(part => part.Id == subject || part.Id.StartsWith(subject + ".", StringComparison.Ordinal)).OrderBy(part => part.Id != subject)];
        if (parts.Count > 0)
        {
            return Told("part", [.. parts.Select(part => Part(part, worked!.Solved))]);
        }

        if (NamedThings.Find(subject, preset, worked, office) is var (kind, named))
        {
            return Told(kind, named);
        }

        var packs = office.Catalogue.Packs;
        if (packs.SelectMany(pack => pack.Rules).FirstOrDefault(rule => rule.Names(subject)) is { } rule)
        {
            return Told("rule", Rule(rule, worked is null ? "there are no sizes to judge." : $"not asked; the detail is checked against {string.Join(", ", worked.Solved.Packs.Select(pack => pack.Name))}.", packs));
        }

        if (report.Checks?.FirstOrDefault(check => check.Id == subject) is { } check)
        {
            return Told("check", new ExplainedReport(check.Id, $"{check.Id} ({check.Verdict})", [check.Text], []));
        }

        return Empty(request, report.Detail) with { Errors = [Unknown(request, subject, preset, worked, office)], Status = ExitStatus.WrongInput };
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

    /// <summary>The report that says nothing yet.</summary>
    internal static ExplainReport Empty(ExplainRequest request, string detail) => new(DetailLibrary.Tool, detail, request.Preset, request.Subject, "detail", []);

    private static ExplainedReport Value(SolvedValue value, Solution.Solved solved)
    {
        var text = new List<string> { value.Meaning, value.Why.Text };
        var sources = new List<string>();
        if (value.Why.Rule is { } id && solved.Verdicts.FirstOrDefault(verdict => verdict.Rule.Id == id)?.Rule is { } rule)
        {
            text.Add(rule.Reason);
            sources.Add(Source(rule));
        }

        return new(value.Key, $"{value.Key} = {value.Told}", text, sources);
    }

    /// <param name="here">What became of it in this detail.</param>
    private static ExplainedReport Rule(Rule rule, string here, IReadOnlyList<RulePack> packs)
    {
        List<string> text = [rule.Text];
        if (rule.Require is not null)
        {
            text.Add($"It asks: {RequirementWords.Of(rule)}.");
        }

        text.Add($"Because: {rule.Reason}");
        text.Add($"Here: {here}");
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

        text.AddRange(SolvedReporting.Disagreements(rule, packs).Select(words => $"Sources do not agree. {words}"));
        if (rule.Corrected is { } corrected)
        {
            text.Add($"Corrected: {corrected}");
        }

        return new(rule.Id, $"{rule.Id} ({SolvedReporting.Word(rule.Severity)}, {SolvedReporting.Class(rule.Class)})", text, [Source(rule)]);
    }

    private static string Here(Verdict verdict)
    {
        var word = SolvedReporting.Word(verdict.Judgement);
        var told = verdict.Judgement is Judgement.Waived ? $" {verdict.Text}" : "";
        return verdict.Left is not null ? $"{word}, {ComparisonWords.Drawn(verdict)} against {ComparisonWords.Wanted(verdict)}.{told}" : verdict.Judgement is Judgement.Pass ? $"{word}." : $"{word}. {verdict.Text}";
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
            text.Add($"Sized by {string.Join(", ", part.Parameters.Select(key => solved.Find(key) is { } value ? $"{key} = {value.Told}" : key))}.");
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

    private static ErrorReport Unknown(ExplainRequest request, string subject, Preset preset, Worked? worked, Office office)
    {
        IEnumerable<string> solved = worked is null ? [] : [.. worked.Solved.Values.Select(value => value.Key), .. worked.Section.Parts.Select(part => part.Id)];
        var names = solved.Concat(office.Catalogue.Packs.SelectMany(pack => pack.Rules).Select(rule => rule.Id)).Concat(preset.Components.SelectMany(component => component.Parameters).Select(parameter => parameter.Key))
            .Concat(preset.Components.SelectMany(component => component.Claims).Select(claim => claim.Id)).Distinct(StringComparer.Ordinal);
        return ErrorReport.Of("unknown-subject", request.Preset, Messages.UnknownSubject(subject), Details.Reading.Nearest.To(subject, names) is { } nearest ? Messages.DidYouMean(nearest) : Messages.SeeAll, value: subject);
    }
}
