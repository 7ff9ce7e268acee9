using DetailGen.Details.Presets;
using DetailGen.Details.Quantities;
using DetailGen.Details.Reading;
using DetailGen.Details.Rules;
using DetailGen.Details.Rules.Language;
using DetailGen.Details.Solving;
using DetailGen.Solver;

namespace DetailGen.Details.Tests.Rules;

/// <summary>A preset with every size fixed that breaks a rule.</summary>
/// <param name="Also">Rules that go with it: with these kept too it cannot be broken there.</param>
internal sealed record Broken(Rule Rule, Preset Preset, IReadOnlyList<string> Also);

/// <summary>Breaks a rule on a variant of a detail: the solver is asked for the rule turned round, beside all other rules.</summary>
internal sealed class Breaking(Catalogue catalogue, string pack)
{
    private static readonly Mark At = new("breaking", 1, 1);
    private readonly IReadOnlyList<Rule> _rules = [.. PackOrder.Rules(PackOrder.Named([pack], catalogue.Packs))];

    /// <summary>One that breaks this rule and no other but those that it says go with it; null where the solver finds none.</summary>
    public Broken? Of(Rule rule, Preset variant)
    {
        var situation = new Situation(variant, catalogue);
        if (!IsOpen(situation, rule))
        {
            return null;
        }

        var companions = rule.BrokenWith?.Rules ?? [];
        var others = Others(situation, rule);
        if (Answer(situation, rule, [.. others.Where(other => !companions.Contains(other.Id))]) is not { } sizes)
        {
            return null;
        }

        var also = companions.Count > 0 && Answer(situation, rule, others) is null ? companions : [];
        return new Broken(rule, Fixed(situation, sizes), also);
    }

    /// <summary>Whether this detail breaks it, whatever else it breaks.</summary>
    public bool IsBreakable(Rule rule, Preset variant) => new Situation(variant, catalogue) is var situation && IsOpen(situation, rule) && Answer(situation, rule, []) is not null;

    private static bool IsOpen(Situation situation, Rule rule) =>
        situation.Knows(rule.Require!) && !(rule.When?.In(situation).Fails ?? false) && !rule.Require!.In(situation).Holds;

    private static SortedDictionary<string, long>? Answer(Situation situation, Rule rule, IReadOnlyList<Rule> others)
    {
        var turned = rule with { Require = new Not(rule.Require!), Severity = Severity.Must, Blocks = true };
        if (rule.When is { } condition && !condition.In(situation).IsKnown)
        {
            turned = turned with { When = null, Require = new Both(condition, turned.Require) };
        }

        var problem = new DetailProblem(situation, [turned, .. others.Select(other => other with { Severity = Severity.Must, Blocks = true })], ranked: false);
        if (problem.Model.Solve() is not Answer.Best best)
        {
            return null;
        }

        var sizes = new SortedDictionary<string, long>(StringComparer.Ordinal);
        foreach (var (key, unknown) in problem.Unknowns)
        {
            sizes[key] = best.Values[unknown];
        }

        return sizes;
    }

    private List<Rule> Others(Situation situation, Rule rule) =>
        [.. _rules.Where(other => other.Class == RuleClass.Enforced && other != rule && situation.Knows(other.Require!) && !(other.When?.In(situation).Fails ?? false))];

    private static Preset Fixed(Situation situation, SortedDictionary<string, long> sizes) => situation.Preset with
    {
        Set =
        [
            .. situation.Choices.Select(choice => Given(choice.Parameter.Key, Setting.Choice(choice.Word))),
            .. situation.Sizes.Select(parameter => Given(parameter.Key, Setting.Numeric(parameter.Unit, sizes[parameter.Key]))),
        ],
    };

    private static Given Given(string key, Setting value) => new(key, value, value.ToString(), At, false);
}
