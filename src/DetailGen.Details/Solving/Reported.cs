using DetailGen.Details.Rules.Language;

namespace DetailGen.Details.Solving;

/// <summary>
/// Verdicts on U-values by the figures that schedules report. Sizes are found on the safe side of those, without joists and with the most that fixings can add; told
/// beside a schedule, that figure would be a second U-value of the same roof.
/// </summary>
public static class Reported
{
    /// <param name="transmittances">W/(m²·K) by wall and roof; never worse than what the sizes were found with.</param>
    public static Solution.Solved In(Solution.Solved solved, IReadOnlyDictionary<string, decimal> transmittances)
    {
        Verdict[] verdicts = [.. solved.Verdicts.Select(verdict => Of(verdict, transmittances) is { } figure ? Judge.Reported(verdict, figure) : verdict)];
        string[] kept = [.. solved.Verdicts.Zip(verdicts).Where(pair => pair is { First.Judgement: Judgement.Warn, Second.Judgement: Judgement.Pass })
            .Select(pair => SolvingWords.BrokenWish(pair.First.Rule, pair.First))];
        var broken = solved.Verdicts.Zip(verdicts).Where(pair => pair.Second is { Judgement: Judgement.Warn } && pair.First != pair.Second)
            .ToDictionary(pair => SolvingWords.BrokenWish(pair.First.Rule, pair.First), pair => SolvingWords.BrokenWish(pair.Second.Rule, pair.Second), StringComparer.Ordinal);
        return solved with { Verdicts = verdicts, Warnings = [.. solved.Warnings.Except(kept, StringComparer.Ordinal).Select(warning => broken.GetValueOrDefault(warning, warning))] };
    }

    // a rule that asks for more than one limit keeps what it was judged by
    private static decimal? Of(Verdict verdict, IReadOnlyDictionary<string, decimal> transmittances) =>
        verdict is { Left: not null, Rule.Require: Comparison { Relation: Relation.AtMost, Left: Key { Kind: Kind.UValue } key, Right: Figure } }
        && transmittances.TryGetValue(key.Name.Split('.')[0], out var figure)
            ? figure
            : null;
}
