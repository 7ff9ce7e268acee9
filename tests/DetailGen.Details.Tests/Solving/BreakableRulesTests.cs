using DetailGen.Details.Parameters;
using DetailGen.Details.Presets;
using DetailGen.Details.Rules;
using DetailGen.Details.Rules.Language;
using DetailGen.Details.Solving;
using DetailGen.Solver;

namespace DetailGen.Details.Tests.Solving;

/// <summary>An enforced rule that nothing can break enforces nothing: the solver itself looks for a preset that breaks each.</summary>
public class BreakableRulesTests
{
    [Fact]
    public void At_least_sixty_enforced_rules_can_be_broken_by_some_preset_that_keeps_the_hard_ones()
    {
        var rules = Trial.Shipped.Packs[0].Rules;
        List<Rule> open = [.. rules.Where(rule => rule.Class == RuleClass.Enforced)];
        var broken = new SortedSet<string>(StringComparer.Ordinal);
        foreach (var preset in Variants())
        {
            foreach (var rule in open.Where(rule => !broken.Contains(rule.Id) && Breaks(preset, rule, rules)).ToList())
            {
                broken.Add(rule.Id);
            }
        }

        var never = open.Select(rule => rule.Id).Except(broken, StringComparer.Ordinal).ToList();
        TestContext.Current.TestOutputHelper?.WriteLine($"{broken.Count} of {open.Count}; never: {string.Join(", ", never)}");
        Assert.True(broken.Count >= 60, string.Join(", ", never));
    }

    // the rule turned round and made hard, beside all other hard rules
    private static bool Breaks(Preset preset, Rule rule, IReadOnlyList<Rule> rules)
    {
        var situation = new Situation(preset, Trial.Shipped);
        if (!situation.Knows(rule.Require!) || (rule.When is { } when && when.In(situation).Fails) || rule.Require!.In(situation).Holds)
        {
            return false;
        }

        var turned = rule with { Require = new Not(rule.Require!), Severity = Severity.Must, Blocks = true };
        if (rule.When is { } condition && !condition.In(situation).IsKnown)
        {
            turned = turned with { When = null, Require = new Both(condition, turned.Require) };
        }

        return new DetailProblem(situation, [.. rules.Where(other => other.IsHard && other != rule), turned], ranked: false).Model.Solve() is Answer.Best;
    }

    private static IEnumerable<Preset> Variants()
    {
        foreach (var junction in new[] { Trial.Parapet, Trial.Abutment })
        {
            foreach (var wall in new[] { Trial.CavityWall, Trial.SolidWall })
            {
                foreach (var roof in new[] { Trial.TimberRoof, Trial.SlabRoof })
                {
                    foreach (var variant in Variants(Trial.Preset(junction, wall, roof), junction, wall, roof))
                    {
                        yield return variant;
                    }
                }
            }
        }
    }

    private static IEnumerable<Preset> Variants(Preset preset, params Component[] components)
    {
        yield return preset;
        foreach (var choice in components.SelectMany(component => component.Parameters).Where(parameter => parameter.Options.Count > 0))
        {
            foreach (var word in choice.Options.Skip(1))
            {
                yield return Trial.Preset(components[0], components[1], components[2], $"{choice.Key}={word}");
            }
        }

        foreach (var condition in Vocabulary.Circumstances.Skip(1))
        {
            foreach (var word in condition.Options.Skip(1))
            {
                yield return preset.Where(condition.Name, word);
            }
        }

        foreach (var slot in preset.Slots)
        {
            foreach (var material in Trial.Materials.All.Where(material => slot.Slot.Kinds.Contains(material.Material.Kind, StringComparer.Ordinal)))
            {
                yield return preset.Of(slot.Slot.Key, material.Id);
            }
        }
    }
}
