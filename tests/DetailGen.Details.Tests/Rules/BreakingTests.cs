using DetailGen.Details.Presets;
using DetailGen.Details.Reading;
using DetailGen.Details.Rules;
using DetailGen.Details.Rules.Language;
using DetailGen.Details.Solving;
using DetailGen.Testing;

namespace DetailGen.Details.Tests.Rules;

/// <summary>
/// An enforced rule that nothing can break enforces nothing. In the suite a rule is broken on the variant that breaking-variants.txt gives it, else on one of
/// the pairings with all choices as usual; a long run (scripts/soak) searches on, and says what to store.
/// </summary>
public class BreakingTests
{
    private static readonly Mark At = new("breaking", 1, 1);

    private static readonly string[] StoredLines =
        File.ReadAllLines(Repository.Path("tests", "DetailGen.Details.Tests", "Rules", "breaking-variants.txt"));

    public static TheoryData<string, string> Breakable => Enforced(rule => rule.Unbreakable is null);

    public static TheoryData<string, string> Unbreakable => Enforced(rule => rule.Unbreakable is not null);

    [Fact]
    public void A_variant_is_stored_only_of_a_rule_that_can_be_broken() =>
        Assert.All(StoredLines, line => Assert.Contains(Breakable, row => line.StartsWith($"{row.Data.Item1} {row.Data.Item2} ", StringComparison.Ordinal)));

    [Fact]
    public void At_least_a_hundred_and_fifty_rules_are_enforced_and_can_be_broken() => Assert.True(Breakable.Count >= 150, $"{Breakable.Count}");

    [Theory]
    [MemberData(nameof(Breakable))]
    public void A_preset_breaks_the_rule_and_only_it_or_those_that_go_with_it(string pack, string id)
    {
        var (rule, breaking, variants) = Find(pack, id);
        var (found, variant) = Break(rule, breaking, variants, Stored(pack, id) is { } stored ? [stored] : Tried(variants, rule));
        Assert.True(found is not null, $"Nothing that was tried breaks {id} without breaking more than {string.Join(", ", rule.BrokenWith?.Rules ?? [])}; scripts/soak tries more.");
        Assert.True(variant!.Others.Count == 0 || Stored(pack, id) is not null, $"To be stored in breaking-variants.txt: {pack} {id} {variant}");
        var broken = found;
        Assert.Equal(rule.BrokenWith?.Rules ?? [], broken.Also);

        // all sizes fixed, so the answer is quick; what blocks is waived to be seen
        var hard = ShippedRules.Catalogue.PacksOf(broken.Preset).SelectMany(one => one.Rules).Where(other => other.IsHard && (other == rule || broken.Also.Contains(other.Id))).ToList();
        var waived = broken.Preset with { Waivers = [.. hard.Select(other => new Waiver(other.Id, "to see it broken", null, null, At))] };
        var solved = Assert.IsType<Solution.Solved>(DetailSolver.Solve(waived, ShippedRules.Catalogue));
        var verdicts = solved.Verdicts.Where(verdict => verdict.Judgement is Judgement.Fail or Judgement.Warn || (verdict.Judgement == Judgement.Waived && !verdict.Rule.Require!.In(Facts(solved)).Holds)).Select(verdict => verdict.Rule.Id);
        Assert.Contains(id, verdicts);
        Assert.Empty(verdicts.Except(broken.Also.Append(id), StringComparer.Ordinal));

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
        var (rule, breaking, variants) = Find(pack, id);
        Assert.All(Tried(variants, rule), variant => Assert.False(breaking.IsBreakable(rule, variants.Preset(variant)), variant.ToString()));
    }

    private static SolvedFacts Facts(Solution.Solved solved) => new(
        new Situation(solved.Preset, ShippedRules.Catalogue),
        solved.Values.Where(value => value.Value.Word is null).ToDictionary(value => value.Key, value => value.Value.Number, StringComparer.Ordinal));

    // no more than the pairings in the suite
    private static IEnumerable<Variant> Tried(Variants variants, Rule rule) => variants.Of(rule).Take(Soak.Cases(variants.Pairings.Count));

    private static (Broken? Broken, Variant? On) Break(Rule rule, Breaking breaking, Variants variants, IEnumerable<Variant> tried)
    {
        foreach (var variant in tried)
        {
            if (breaking.Of(rule, variants.Preset(variant)) is { } broken)
            {
                return (broken, variant);
            }
        }

        return (null, null);
    }

    private static Variant? Stored(string pack, string id) => StoredLines.FirstOrDefault(line => line.StartsWith($"{pack} {id} ", StringComparison.Ordinal)) is { } line
        ? Variant.Read(line[(pack.Length + id.Length + 2)..])
        : null;

    private static (Rule Rule, Breaking Breaking, Variants Variants) Find(string pack, string id) => (
        ShippedRules.Catalogue.Packs.First(one => one.Name == pack).Find(id)!, new Breaking(ShippedRules.Catalogue, pack),
        new Variants(ShippedRules.Components, ShippedRules.Materials, pack));

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
