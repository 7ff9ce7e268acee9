using DetailGen.Details.Presets;
using DetailGen.Details.Reading;
using DetailGen.Details.Rules;
using DetailGen.Details.Rules.Language;
using DetailGen.Details.Solving;

namespace DetailGen.Details.Tests.Rules;

/// <summary>An enforced rule that nothing can break enforces nothing.</summary>
public class BreakingTests
{
    private static readonly Mark At = new("breaking", 1, 1);

    public static TheoryData<string, string> Breakable => Enforced(rule => rule.Unbreakable is null);

    public static TheoryData<string, string> Unbreakable => Enforced(rule => rule.Unbreakable is not null);

    [Fact]
    public void At_least_a_hundred_and_fifty_rules_are_enforced_and_can_be_broken() => Assert.True(Breakable.Count >= 150, $"{Breakable.Count}");

    [Theory]
    [MemberData(nameof(Breakable))]
    public void A_preset_breaks_the_rule_and_only_it_or_those_that_go_with_it(string pack, string id)
    {
        var (rule, breaking) = Find(pack, id);
        var broken = breaking.Of(rule);
        Assert.True(broken is not null, $"Nothing breaks {id} without breaking more than {string.Join(", ", rule.BrokenWith?.Rules ?? [])}.");
        Assert.Equal(rule.BrokenWith?.Rules ?? [], broken.Also);

        // all sizes fixed, so the answer is quick; what blocks is waived to be seen
        var hard = ShippedRules.Catalogue.PacksOf(broken.Preset).SelectMany(one => one.Rules).Where(other => other.IsHard && (other == rule || broken.Also.Contains(other.Id))).ToList();
        var waived = broken.Preset with { Waivers = [.. hard.Select(other => new Waiver(other.Id, "to see it broken", null, null, At))] };
        var solved = Assert.IsType<Solution.Solved>(DetailSolver.Solve(waived, ShippedRules.Catalogue));
        var found = solved.Verdicts.Where(verdict => verdict.Judgement is Judgement.Fail or Judgement.Warn || (verdict.Judgement == Judgement.Waived && !verdict.Rule.Require!.In(Facts(solved)).Holds)).Select(verdict => verdict.Rule.Id);
        Assert.Contains(id, found);
        Assert.Empty(found.Except(broken.Also.Append(id), StringComparer.Ordinal));

        if (rule.IsHard)
        {
            var conflict = Assert.IsType<Solution.Contradiction>(DetailSolver.Solve(broken.Preset, ShippedRules.Catalogue));
            Assert.Contains(conflict.Members, member => hard.Any(other => other.Id == member.Id));
        }
    }

    [Theory]
    [MemberData(nameof(Unbreakable))]
    public void A_rule_that_is_said_to_be_unbreakable_is(string pack, string id)
    {
        var (rule, breaking) = Find(pack, id);
        Assert.False(breaking.IsBreakable(rule));
    }

    private static SolvedFacts Facts(Solution.Solved solved) => new(
        new Situation(solved.Preset, ShippedRules.Catalogue),
        solved.Values.Where(value => value.Value.Word is null).ToDictionary(value => value.Key, value => value.Value.Number, StringComparer.Ordinal));

    private static (Rule Rule, Breaking Breaking) Find(string pack, string id) =>
        (ShippedRules.Catalogue.Packs.First(one => one.Name == pack).Find(id)!, new Breaking(ShippedRules.Catalogue, ShippedRules.Components, ShippedRules.Materials, pack));

    private static TheoryData<string, string> Enforced(Func<Rule, bool> which)
    {
        var all = new TheoryData<string, string>();
        foreach (var pack in ShippedRules.Catalogue.Packs)
        {
            foreach (var rule in pack.Rules.Where(rule => rule.Class == RuleClass.Enforced && which(rule)))
            {
                all.Add(pack.Name, rule.Id);
            }
        }

        return all;
    }
}
