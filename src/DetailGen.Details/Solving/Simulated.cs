using System.Globalization;
using DetailGen.Details.Presets;
using DetailGen.Details.Rules;

namespace DetailGen.Details.Solving;

/// <summary>What a simulation of the section found: figures for targets and rules that no equation of sizes gives.</summary>
/// <param name="TemperatureFactor">Least on the inside surfaces, with the film that the preset asks for.</param>
/// <param name="Psi">W/(m·K), inside dimensions; the upper bound where bounds are proven.</param>
public sealed record Simulated(decimal TemperatureFactor, decimal Psi)
{
    /// <summary>The targets that only a simulation can tell of.</summary>
    public static IEnumerable<Target> TargetsOf(Preset preset) => preset.Targets.Where(target => target.Kind.IsSimulated);

    /// <summary>The figure of that key, one of <see cref="SimulatedFigures.Keys"/>.</summary>
    public decimal Of(string key) => key == SimulatedFigures.TemperatureFactor ? TemperatureFactor : Psi;

    public bool Meets(Target target) => target.IsMetBy(Of(target.Key));

    /// <summary>The detail with verdicts on the rules that this can judge, and without the warnings that it still is to come.</summary>
    public Solution.Solved Judge(Solution.Solved solved)
    {
        string[] unproven = [.. TargetsOf(solved.Preset).Select(target => SolvingWords.Unproven(target.Key))];
        Verdict[] verdicts = [.. solved.Verdicts.Select(Judged)];
        return solved with
        {
            Verdicts = verdicts,
            Warnings =
            [
                .. solved.Warnings.Except(unproven, StringComparer.Ordinal),
                .. verdicts.Except(solved.Verdicts).Where(verdict => verdict.Judgement == Judgement.Warn).Select(verdict => SolvingWords.BrokenWish(verdict.Rule, verdict)),
            ],
        };
    }

    /// <summary>A size that was chosen so that targets are met, told as such.</summary>
    public static Solution.Solved Tightened(Solution.Solved solved, Preset asked, string key, IEnumerable<Target> targets) => solved with
    {
        Preset = asked,
        Values = [.. solved.Values.Select(value => value.Key == key ? value with { Why = new(WhyKind.Target, null, SolvingWords.Tightened(targets.Select(Named))) } : value)],
    };

    /// <summary>No size that was tried meets the targets.</summary>
    public static Solution.Contradiction Unmet(Preset preset, IReadOnlyList<Target> targets, Simulated best)
    {
        ProposedValue[] reached = [.. targets.Select(target => new ProposedValue("target." + target.Key, Written(target.Key, Safe(target.Kind, best.Of(target.Key)))))];
        return new(
            preset, [.. targets.Select(target => new Member(MemberKind.Target, "target." + target.Key, SolvingWords.SimulatedMember(target.Key, Words(target))))],
            [new(reached, SolvingWords.BestFound(reached))], [], MayBeMore: true, IsMinimal: true);
    }

    /// <summary>"at most 0.1 W/mK" or "at least 0.75".</summary>
    public static string Words(Target target) => $"{(target.Kind.AtLeast ? "at least" : "at most")} {Written(target.Key, target.Value)}";

    private static string Named(Target target) => $"{SolvingWords.Figure(target.Key)} {Words(target)}";

    private Verdict Judged(Verdict verdict)
    {
        if (verdict.Judgement != Judgement.ToConfirm || verdict.Rule.Simulate is not { } limit)
        {
            return verdict;
        }

        var figure = Math.Round(Of(limit.Key), 4);
        var judgement = limit.Holds(figure) ? Judgement.Pass : verdict.Rule is { Severity: Severity.Must, Blocks: true } ? Judgement.Fail : Judgement.Warn;
        return verdict with
        {
            Judgement = judgement,
            Left = new(figure, Bare(Told(figure, limit, judgement))),
            Op = limit.AtLeast ? ">=" : "<=",
            Right = new(limit.Limit, Bare(limit.Limit)),
            Unit = SimulatedFigures.Unit(limit.Key),
            Text = verdict.Rule.Text,
        };
    }

    // three decimals, as on the thermal sheet and in reports, unless that would hide that the limit is missed
    private static decimal Told(decimal figure, SimulatedLimit limit, Judgement judgement) =>
        Math.Round(figure, 3, MidpointRounding.AwayFromZero) is var told && (judgement == Judgement.Pass || !limit.Holds(told)) ? told : figure;

    // rounded to where the target surely is met
    private static decimal Safe(TargetKey kind, decimal figure) => kind.AtLeast ? Math.Floor(figure * 1000) / 1000 : Math.Ceiling(figure * 1000) / 1000;

    private static string Written(string key, decimal figure) => SimulatedFigures.Unit(key) is { } unit ? $"{Bare(figure)} {unit}" : Bare(figure);

    private static string Bare(decimal figure) => figure.ToString("0.####", CultureInfo.InvariantCulture);
}
