using DetailGen.Details.Presets;
using DetailGen.Details.Reading;
using DetailGen.Details.Rules;
using DetailGen.Details.Rules.Language;
using DetailGen.Sections;
using DetailGen.Solver;

namespace DetailGen.Details.Solving;

/// <summary>Preset → every size with its reason and every rule with its verdict, or the contradiction.</summary>
public static class DetailSolver
{
    /// <summary>The preset again, or its faults that show only when its choices are settled and its rules are known; asked before solving.</summary>
    public static Outcome<Preset> Check(Preset preset, Catalogue catalogue)
    {
        List<Diagnostic> faults = [.. PresetCheck.Faults(new Situation(preset, catalogue), RulesOf(preset, catalogue))];
        return faults.Count == 0 ? Outcome.Good(preset) : Outcome.Bad<Preset>(faults);
    }

    /// <exception cref="KeyNotFoundException">The preset's components are not those of the catalogue.</exception>
    public static Solution Solve(Preset preset, Catalogue catalogue)
    {
        var problem = new DetailProblem(new Situation(preset, catalogue), RulesOf(preset, catalogue));
        return problem.Model.Solve() switch
        {
            Answer.Best best => Told(problem, best),
            Answer.Conflict conflict => Contradictions.Told(problem, conflict),
            Answer.NotProven({ } feasible) => Told(problem, new Answer.Best(feasible, []), SolvingWords.NotTheBest),
            _ => new Solution.NotProven(preset),
        };
    }

    /// <summary>The exact feasible values of every number that is not fixed, and what stops each at its ends; null where the detail contradicts itself.</summary>
    /// <param name="keys">Only these; null for all.</param>
    /// <param name="given">The key of a size that the preset fixed and that is asked for as if it were not: it counts towards a U-value as thick as it is; null for none.</param>
    public static IReadOnlyList<SizeRange>? Ranges(Preset preset, Catalogue catalogue, IReadOnlyList<string>? keys = null, string? given = null)
    {
        var rules = RulesOf(preset, catalogue);
        DetailProblem Posed(Preset one) => new(new Situation(one, catalogue), rules, ranked: false, given);
        var problem = Posed(preset);
        return FeasibleSizes.Of(problem, keys) is { } ranges ? SupposedSizes.Widened(ranges, problem, Posed) : null;
    }

    /// <summary>The sizes in which the material of a parameter is sold, rising, in the unit of its values; none where it is not sold in sizes.</summary>
    public static IReadOnlyList<long> Stock(Preset preset, Catalogue catalogue, string key)
    {
        var problem = new DetailProblem(new Situation(preset, catalogue), RulesOf(preset, catalogue), ranked: false);
        return problem.Situation.Size(key) is { } parameter && problem.StockOf(parameter) is { } stock ? stock.Values : [];
    }

    /// <summary>The words that each of these choices can have while the rest stands; the detail can be solved as it is.</summary>
    public static IReadOnlyList<ChoiceRange> Options(Preset preset, Catalogue catalogue, IReadOnlyList<string> keys)
    {
        var situation = new Situation(preset, catalogue);
        var rules = RulesOf(preset, catalogue);
        return [.. situation.Choices.Where(choice => keys.Contains(choice.Parameter.Key, StringComparer.Ordinal)).Select(choice => FeasibleChoices.Of(situation, choice, rules))];
    }

    /// <summary>The keys of all parameters, numbers and choices, that this detail has; in ordinal order.</summary>
    public static IReadOnlyList<string> Keys(Preset preset, Catalogue catalogue)
    {
        var situation = new Situation(preset, catalogue);
        return [.. situation.Sizes.Select(size => size.Key).Concat(situation.Choices.Select(choice => choice.Parameter.Key)).Order(StringComparer.Ordinal)];
    }

    /// <summary>The rules of the packs that the preset names, in their order.</summary>
    internal static IReadOnlyList<Rule> RulesOf(Preset preset, Catalogue catalogue) => PackOrder.Rules(catalogue.PacksOf(preset));

    private static Solution.Solved Told(DetailProblem problem, Answer.Best best, string? caution = null)
    {
        var situation = problem.Situation;
        var numbers = new SortedDictionary<string, long>(StringComparer.Ordinal);
        foreach (var (key, unknown) in problem.Unknowns)
        {
            numbers[key] = best.Values[unknown];
        }

        var facts = new SolvedFacts(situation, numbers);
        var reasons = new Reasons(problem, best, facts);
        List<SolvedValue> values =
        [
            .. situation.Sizes.Select(reasons.Of),
            .. situation.Choices.Select(Reasons.Of),
            .. situation.Derived.Where(derived => facts.Find(derived.Key).IsKnown).Select(derived => Reasons.Of(derived, facts)),
        ];
        values.Sort(static (a, b) => string.CompareOrdinal(a.Key, b.Key));
        List<Verdict> verdicts = [.. problem.Rules.Select(rule => Judge.On(rule, situation, facts))];
        List<ElementHeat> heat = [.. Heat(facts)];
        return new Solution.Solved(situation.Preset, facts.Sizes(), values, verdicts, heat, caution is null ? [.. Warnings(problem, values, verdicts, heat)] : [caution, .. Warnings(problem, values, verdicts, heat)],
            written => situation.Catalogue.Tree(written).In(facts).Holds)
        {
            Packs = situation.Catalogue.PacksOf(situation.Preset),
        };
    }

    private static IEnumerable<ElementHeat> Heat(SolvedFacts facts)
    {
        foreach (var element in (string[])["wall", "roof"])
        {
            if (facts.Find(element + ".r-value") is { IsKnown: true } resistance)
            {
                yield return new ElementHeat(element, resistance.Number, facts.Find(element + ".u-value").Number);
            }
        }
    }

    private static IEnumerable<string> Warnings(DetailProblem problem, List<SolvedValue> values, List<Verdict> verdicts, List<ElementHeat> heat)
    {
        foreach (var wish in problem.Situation.Preset.Prefer)
        {
            // a wish of a base for a key that this detail does not have is passed over
            if (values.Find(value => value.Key == wish.Key) is { } got && got.Value != wish.Value)
            {
                yield return SolvingWords.Unmet(wish, got);
            }
        }

        foreach (var size in problem.Situation.Sizes.Where(size => size.IsDefaultFirst))
        {
            if (values.Find(value => value.Key == size.Key) is { Why.Kind: not (WhyKind.Given or WhyKind.Preferred) } got
                && problem.Situation.Preset.Prefer.All(wish => wish.Key != size.Key) && problem.Situation.Usual(size) is { } usual && got.Value != usual)
            {
                yield return SolvingWords.NotAsPlanned(size.Key, usual, got);
            }
        }

        foreach (var waiver in problem.Situation.Preset.Waivers)
        {
            List<Judgement> found = [.. verdicts.Where(verdict => verdict.Rule.Names(waiver.Rule)).Select(verdict => verdict.Judgement)];
            if (found.TrueForAll(judgement => judgement == Judgement.NotApplicable))
            {
                yield return SolvingWords.WaiverOfNothing(waiver.Rule);
            }
            else if (found.TrueForAll(judgement => judgement is Judgement.Pass or Judgement.NotApplicable))
            {
                yield return SolvingWords.WaiverNotNeeded(waiver.Rule);
            }
        }

        foreach (var verdict in verdicts.Where(verdict => verdict.Judgement == Judgement.Warn))
        {
            yield return SolvingWords.BrokenWish(verdict.Rule, verdict);
        }

        foreach (var target in problem.Situation.Preset.Targets.Where(target => target.Key.StartsWith("junction.", StringComparison.Ordinal)))
        {
            yield return SolvingWords.Unproven(target.Key);
        }

        foreach (var element in heat.Select(one => one.Element))
        {
            List<string> bridged = [.. Resistances.Layers(problem.Situation, element).Where(layer => layer.Layer.Kind == LayerKind.Bridged).Select(layer => layer.Layer.Slot)];
            if (bridged.Count > 0)
            {
                yield return SolvingWords.Bridged(element, bridged);
            }
        }

        foreach (var tag in problem.Unspoken)
        {
            yield return SolvingWords.AfterSolving(tag[(tag.IndexOf(':', StringComparison.Ordinal) + 1)..]);
        }
    }
}
