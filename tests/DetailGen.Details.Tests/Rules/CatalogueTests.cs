using DetailGen.Details.Rules;
using DetailGen.Testing;

namespace DetailGen.Details.Tests.Rules;

/// <summary>The catalogue of the trade, and what has become of each of its entries.</summary>
public class CatalogueTests
{
    private static readonly string[] Ids =
        File.ReadAllLines(Repository.Path("tests", "DetailGen.Details.Tests", "Rules", "catalogue-ids.txt"));

    private static IEnumerable<Rule> Rules => ShippedRules.Catalogue.Packs.SelectMany(pack => pack.Rules);

    private static IEnumerable<PackHead> Heads => ShippedRules.Catalogue.Packs.Select(pack => pack.Head!);

    [Fact]
    public void Every_entry_of_the_catalogue_is_a_rule_an_alias_or_steers_rules_and_only_one_of_these()
    {
        var accounted = Rules.SelectMany(rule => rule.Aliases.Prepend(rule.Id)).Concat(Heads.SelectMany(head => head.Steers).Select(steer => steer.Id)).ToList();
        Assert.Equal(423, Ids.Distinct(StringComparer.Ordinal).Count());
        Assert.Equal(Ids.Order(StringComparer.Ordinal), accounted.Where(Ids.Contains).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Every_rule_is_enforced_or_to_confirm_or_dormant_by_the_one_field_of_its_class() => Assert.All(Rules, rule =>
    {
        Assert.Single(new object?[] { rule.Require, rule.Confirm, rule.Awaits }, field => field is not null);
        Assert.NotNull(rule.Class switch { RuleClass.Enforced => rule.Require, RuleClass.ToConfirm => rule.Confirm, _ => (object?)rule.Awaits });
    });

    [Fact]
    public void Every_rule_of_a_check_list_has_a_short_name_of_its_own() => Assert.All(Rules.Where(rule => rule.Class != RuleClass.Dormant), rule =>
    {
        Assert.NotNull(rule.Name);
        Assert.Equal(rule.Name, rule.Heading);
        Assert.InRange(rule.Name.Length, 3, 40);
    });

    [Fact]
    public void What_steers_and_what_disagrees_names_rules_that_there_are()
    {
        var ids = Rules.Select(rule => rule.Id).ToHashSet(StringComparer.Ordinal);
        Assert.All(Heads.SelectMany(head => head.Steers).SelectMany(steer => steer.Rules), id => Assert.Contains(id, ids));
        Assert.All(Heads.SelectMany(head => head.Disagreements).SelectMany(one => one.Rules), id => Assert.Contains(id, ids));
        Assert.All(Rules.Where(rule => rule.BrokenWith is not null).SelectMany(rule => rule.BrokenWith!.Rules), id => Assert.Contains(id, ids));
    }

    [Fact]
    public void All_eighteen_disagreements_of_the_catalogue_are_told() => Assert.Equal(18, Heads.Sum(head => head.Disagreements.Count));

    [Fact]
    public void Every_pack_says_its_version_and_date() => Assert.All(ShippedRules.Catalogue.Packs, pack => Assert.NotNull(pack.Head));

    [Fact]
    public void Only_a_must_that_was_read_in_a_good_text_blocks_in_every_pack() => Assert.All(Rules.Where(rule => rule.Blocks), rule =>
        Assert.True(rule is { Severity: Severity.Must, Source: { Confidence: "read", ReadKind: "primary" or "secondary" } }, rule.Id));
}
