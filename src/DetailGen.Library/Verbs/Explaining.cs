using DetailGen.Details.Rules;
using DetailGen.Details.Solving;
using DetailGen.Library.Reports;
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
            return Empty(request, "") with { Errors = SolvedReport.Errors(read.Faults), Status = 2 };
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
            return Empty(request, report.Detail) with { Kind = "parameter", Explained = [Value(found, worked.Solved)] };
        }

        if (worked.Solved.Verdicts.FirstOrDefault(verdict => Names(verdict.Rule, subject)) is { } verdict)
        {
            return Empty(request, report.Detail) with { Kind = "rule", Explained = [Rule(verdict, worked.Solved)] };
        }

        // "roof.insulation" stands for every part under that name.
        List<Part> parts = [.. worked.Section.Parts.Where(part => part.Id == subject || part.Id.StartsWith(subject + ".", StringComparison.Ordinal))];
        return parts.Count > 0
            ? Empty(request, report.Detail) with { Kind = "part", Explained = [.. parts.Select(Part)] }
            : Empty(request, report.Detail) with { Errors = [Unknown(request, subject, worked)], Status = 2 };
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
        List<string> text = [rule.Text, $"Because: {rule.Reason}", $"Here: {verdict.Text}"];
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

    private static ExplainedReport Part(Part part)
    {
        List<string> text = [part.Words.Note, part.Words.Purpose];
        if (part.Words.Without.Length > 0)
        {
            text.Add($"Without it: {part.Words.Without}");
        }

        text.Add($"Material: {part.Material.Name}.");
        if (part.Parameters.Count > 0)
        {
            text.Add($"Sized by {string.Join(", ", part.Parameters)}.");
        }

        return new(part.Id, $"{part.Id}: {part.Name}", [.. text.Where(line => line.Length > 0)], []);
    }

    private static string Source(Rule rule) => $"{rule.SourceText} ({rule.Source.Confidence}{(rule.Source.ReadKind is { } kind ? $", {kind} text" : "")})";

    private static ErrorReport Unknown(ExplainRequest request, string subject, Worked worked)
    {
        var names = worked.Solved.Values.Select(value => value.Key)
            .Concat(worked.Solved.Verdicts.Select(verdict => verdict.Rule.Id)).Concat(worked.Section.Parts.Select(part => part.Id));
        return new("unknown-subject", request.Preset, 0, 0, null, subject, Messages.UnknownSubject(subject), Details.Reading.Nearest.To(subject, names) is { } nearest ? Messages.DidYouMean(nearest) : null);
    }
}
