using DetailGen.Details.Presets;
using DetailGen.Library.Reports;
using DetailGen.Library.Working;

namespace DetailGen.Library.Verbs;

/// <summary>What would change if some values were set: asked before anything is drawn.</summary>
internal static class Supposing
{
    /// <param name="before">The preset as it stands.</param>
    /// <returns>What changes, with the conflict where the change cannot be had; errors where it cannot be read.</returns>
    internal static ExplainReport Run(ExplainRequest request, Preset before, ExplainReport empty, Office office)
    {
        var read = PresetFiles.Read(request.Preset, With(request), office);
        if (!read.IsGood)
        {
            return empty with { Kind = "what-if", Errors = [.. SolvedReporting.Errors(read.Faults).Select(error => Placed(error, request))], Status = ExitStatus.WrongInput };
        }

        var (was, will) = (DetailWork.Do(before, office).Report, DetailWork.Do(read.Value, office).Report);
        return empty with
        {
            Kind = "what-if",
            WhatIf = new([.. request.WhatIf], was.Solved, will.Solved, will.Solved ? Values(was, will) : [], will.Solved ? Verdicts(was, will) : []),
            Conflict = will.Conflict,
            Status = will.Status,
        };
    }

    /// <summary>The overrides with what is tried in place of what they say of the same keys.</summary>
    internal static IReadOnlyList<string> With(ExplainRequest request) =>
        [.. request.Overrides.Where(text => !request.WhatIf.Any(tried => Key(tried) == Key(text))), .. request.WhatIf];

    // what is tried goes behind the overrides that are kept
    private static ErrorReport Placed(ErrorReport error, ExplainRequest request)
    {
        var kept = With(request).Count - request.WhatIf.Count;
        return error.File == PresetReader.OverridesFile && error.Line > kept
            ? error with { File = "--what-if", Line = error.Line - kept, Hint = error.Hint?.Replace("--set ", "--what-if ", StringComparison.Ordinal) }
            : error;
    }

    private static string Key(string text) => text.Split('=')[0].Trim();

    private static List<ValueChangeReport> Values(DetailReport was, DetailReport will)
    {
        var (old, now) = (Texts(was), Texts(will));
        return
        [
            .. old.Keys.Concat(now.Keys).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)
                .Where(key => old.GetValueOrDefault(key).Text != now.GetValueOrDefault(key).Text)
                .Select(key => new ValueChangeReport(key, old.GetValueOrDefault(key).Text, now.GetValueOrDefault(key).Text, now.GetValueOrDefault(key).Kind, now.GetValueOrDefault(key).Why)),
        ];
    }

    private static Dictionary<string, (string Text, string Kind, string Why)> Texts(DetailReport report)
    {
        var texts = (report.Parameters ?? []).ToDictionary(pair => pair.Key, pair => (pair.Value.Text, pair.Value.Why.Kind, pair.Value.Why.Text), StringComparer.Ordinal);
        foreach (var buildup in report.Physics?.Buildups ?? [])
        {
            texts[$"{buildup.Id}.u-value"] = ($"{buildup.UValue.ToString("0.000", System.Globalization.CultureInfo.InvariantCulture)} W/m²K", "equation", buildup.Remark + ".");
        }

        return texts;
    }

    private static List<VerdictChangeReport> Verdicts(DetailReport was, DetailReport will)
    {
        List<(string Id, string Verdict, string Text)> old = Judged(was), now = Judged(will);
        return
        [
            .. from one in now
               let before = old.Find(other => other.Id == one.Id).Verdict
               where before != one.Verdict
               select new VerdictChangeReport(one.Id, before, one.Verdict, one.Text),
            .. from one in old
               where !now.Exists(other => other.Id == one.Id)
               select new VerdictChangeReport(one.Id, one.Verdict, null, one.Text),
        ];
    }

    private static List<(string Id, string Verdict, string Text)> Judged(DetailReport report) =>
        [.. (report.Rules ?? []).Select(rule => (rule.Id, rule.Verdict, rule.Text)), .. (report.Checks ?? []).Select(check => (check.Id, check.Verdict, check.Text))];
}
