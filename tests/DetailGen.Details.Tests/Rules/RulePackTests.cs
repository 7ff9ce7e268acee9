using DetailGen.Details.Reading;
using DetailGen.Details.Rules;
using DetailGen.Details.Tests.Solving;

namespace DetailGen.Details.Tests.Rules;

public class RulePackTests
{
    private const string Good = """
        - id: tall
          require: upstand.height >= 200 mm
          text: The upstand is tall.
          severity: should
          reason: It looks better.
          source: { document: made up, confidence: memory }
        """;

    private static readonly IReadOnlyList<Rule> Shipped = Trial.Shipped.Packs[0].Rules;

    [Fact]
    public void Every_shipped_rule_is_read_and_in_one_class()
    {
        Assert.True(Shipped.Count > 300);
        Assert.All(Shipped, rule => Assert.Equal(1, (rule.Require is null ? 0 : 1) + (rule.Confirm is null ? 0 : 1) + (rule.Awaits is null ? 0 : 1)));
        Assert.All(Shipped, rule => Assert.True(rule.Class switch { RuleClass.Enforced => rule.Require, RuleClass.ToConfirm => rule.Confirm, _ => (object?)rule.Awaits } is not null));
    }

    [Fact]
    public void Only_a_must_that_was_read_in_a_good_text_blocks()
    {
        Assert.All(Shipped.Where(rule => rule.Blocks), rule => Assert.Equal((Severity.Must, "read"), (rule.Severity, rule.Source.Confidence)));
        Assert.All(Shipped.Where(rule => rule.Blocks), rule => Assert.Contains(rule.Source.ReadKind, (string[])["primary", "secondary"]));
    }

    [Fact]
    public void Every_shipped_rule_that_can_be_broken_says_what_to_do() =>
        Assert.All(Shipped.Where(rule => rule.IsHard && rule.Require!.ToString().Contains(" mm", StringComparison.Ordinal)), rule => Assert.False(string.IsNullOrEmpty(rule.Hint), rule.Id));

    [Fact]
    public void No_shipped_rule_names_a_web_address() =>
        Assert.All(Shelf.Shipped.Under("presets/rules/"), file => Assert.DoesNotContain("http", file.Text()!, StringComparison.OrdinalIgnoreCase));

    [Fact]
    public void An_alias_finds_its_rule() => Assert.Equal("upstand-tray-level", Trial.Shipped.Packs[0].Find("abut-tray")!.Id);

    [Theory]
    [InlineData("require: upstand.height", "requir: upstand.height", "unknown-field", 2, 3)]
    [InlineData("upstand.height", "upstand.hight", "unknown-key", 2, 12)]
    [InlineData("200 mm", "200 kg", "unknown-unit", 2, 34)]
    [InlineData("severity: should", "severity: maybe", "bad-word", 4, 13)]
    [InlineData("id: tall", "id: tall\n  class: to-confirm", "wrong-class", 3, 3)]
    [InlineData("  reason: It looks better.\n", "", "missing-field", 1, 3)]
    public void A_fault_of_a_pack_is_told_with_its_place(string from, string to, string code, int line, int column)
    {
        var text = Good.Replace("\r", "", StringComparison.Ordinal).Replace(from, to, StringComparison.Ordinal);
        var faults = RulePackReader.Read("own", [Trial.Tree(text, "own.yaml")], Trial.Shipped.Vocabulary).Faults;
        Assert.Contains(faults, fault => fault.Code == code && fault.At == new Mark("own.yaml", line, column) && fault.Hint is not null);
    }

    [Fact]
    public void A_rule_that_stands_twice_is_told_both_places()
    {
        var faults = RulePackReader.Read("own", [Trial.Tree(Good + "\n" + Good, "own.yaml")], Trial.Shipped.Vocabulary).Faults;
        Assert.Equal(RuleMessages.TwiceNamed(new Mark("own.yaml", 7, 3), "tall", new Mark("own.yaml", 1, 3)), Assert.Single(faults));
    }

    [Fact]
    public void Something_else_than_a_list_is_no_pack() =>
        Assert.Equal("not-a-list", RulePackReader.Read("own", [Trial.Tree("id: tall", "own.yaml")], Trial.Shipped.Vocabulary).Faults[0].Code);
}
