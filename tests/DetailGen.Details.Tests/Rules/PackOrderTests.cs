using DetailGen.Details.Reading;
using DetailGen.Details.Rules;
using DetailGen.Details.Solving;
using DetailGen.Details.Tests.Solving;

namespace DetailGen.Details.Tests.Rules;

public class PackOrderTests
{
    private const string Base = """
        - id: tall
          aliases: [high]
          require: upstand.height >= 150 mm
          text: The upstand is tall.
          severity: must
          enforcement: error
          reason: Splash.
          source: { document: made up, confidence: read, read-kind: primary }
        """;

    private static readonly string Tighter = Base.Replace("  aliases: [high]\n", "", StringComparison.Ordinal).Replace("150 mm", "175 mm", StringComparison.Ordinal);

    private static readonly string Looser = Tighter.Replace("175 mm", "100 mm", StringComparison.Ordinal);

    [Fact]
    public void A_rule_of_a_pack_takes_the_place_of_the_one_it_extends_and_keeps_its_aliases()
    {
        var packs = Read(Tighter).Value.Packs;
        var rule = Assert.Single(PackOrder.Rules(PackOrder.Named(["own"], packs)));
        Assert.Equal(("upstand.height >= 175 mm", "high"), (rule.Require!.ToString(), Assert.Single(rule.Aliases)));
    }

    [Fact]
    public void A_rule_that_takes_anothers_place_keeps_its_name_unless_it_brings_one()
    {
        Assert.Equal("Tall", Heading(Base, Tighter));
        Assert.Equal("Height", Heading(Named(Base, "Height"), Tighter));
        Assert.Equal("Our height", Heading(Named(Base, "Height"), Named(Tighter, "Our height")));

        static string Named(string rules, string name) => rules.Replace("- id: tall", $"- id: tall\n  name: {name}", StringComparison.Ordinal);
        static string Heading(string @base, string own) => Assert.Single(PackOrder.Rules(PackOrder.Named(["own"], Read(own, @base: @base).Value.Packs))).Heading;
    }

    [Fact]
    public void What_is_extended_comes_first_and_once() =>
        Assert.Equal(["base", "own"], PackOrder.Named(["own", "base"], Read(Tighter).Value.Packs).Select(pack => pack.Name));

    [Fact]
    public void A_rule_that_asks_less_needs_a_reason()
    {
        var fault = Assert.Single(Read(Looser).Faults);
        Assert.Equal(("relaxed-without-reason", new Mark("own.yaml", 1, 3)), (fault.Code, fault.At));
        Assert.True(Read(Looser + "\n  relaxes: Agreed for our system.").IsGood);
    }

    [Fact]
    public void A_rule_that_asks_something_else_needs_a_reason() =>
        Assert.Equal("relaxed-without-reason", Assert.Single(Read(Tighter.Replace("upstand.height", "upstand.insulation", StringComparison.Ordinal)).Faults).Code);

    [Fact]
    public void Relaxing_what_is_not_there_is_told_the_nearest()
    {
        var fault = Assert.Single(Read(Looser.Replace("id: tall", "id: tal", StringComparison.Ordinal) + "\n  relaxes: Agreed.").Faults);
        Assert.Equal("relaxes-nothing", fault.Code);
        Assert.Contains("tall", fault.Hint, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("bass", "unknown-pack")]
    [InlineData("own", "pack-ring")]
    public void A_pack_that_extends_what_it_cannot_is_told(string extends, string code) => Assert.Contains(Read(Tighter, extends).Faults, fault => fault.Code == code && fault.At.Line == 4);

    [Theory]
    [InlineData("tall", null)]
    [InlineData("high", null)]
    [InlineData("tal", "Did you mean tall?")]
    public void What_a_head_names_as_foremost_is_a_rule_of_its_pack_or_of_one_below(string named, string? hint)
    {
        var faults = Read(Tighter, $"base\nforemost: [{named}]").Faults;
        Assert.Equal(hint is null ? [] : [("unknown-rule", 5, hint)], faults.Select(fault => (fault.Code, fault.At.Line, fault.Hint!)));
    }

    [Fact]
    public void A_head_without_its_version_is_told() =>
        Assert.Contains(PackHeadFaults("title: Own\ndate: 2026-11-25"), fault => fault.Code == "missing-key" && fault.Hint is not null);

    private static IReadOnlyList<Diagnostic> PackHeadFaults(string text) =>
        RulePackReader.Read("own", [Trial.Tree(text, "rules/own/pack.yaml")], Trial.Shipped.Vocabulary).Faults;

    private static Outcome<Catalogue> Read(string own, string extends = "base", string @base = Base) => Catalogue.Of(Trial.All, [], Trial.Materials.Ids,
    [
        new PackText("base", [Trial.Tree(@base, "base.yaml")]),
        new PackText("own", [Trial.Tree($"title: Own\nversion: \"1\"\ndate: 2026-11-25\nextends: {extends}", "own/pack.yaml"), Trial.Tree(own, "own.yaml")]),
    ]);
}
