using DetailGen.Details.Quantities;
using DetailGen.Details.Solving;
using DetailGen.Details.Tests.Solving;

namespace DetailGen.Details.Tests.Rules;

/// <summary>Rules against the tables that they come from: on a line of the table the rule holds, just beyond it does not.</summary>
public class PrintedTableTests
{
    // NHBC Standards 2020, 7.1.4 Table 1 (read): plywood decks are 15 mm up to joist centres of 450 mm, 18 mm up to 600 mm
    [Theory]
    [InlineData("450 mm", "15 mm", true)]
    [InlineData("451 mm", "15 mm", false)]
    [InlineData("600 mm", "18 mm", true)]
    public void A_plywood_deck_is_as_thick_as_its_joist_centres_ask(string centres, string deck, bool holds) =>
        Assert.Equal(holds, Holds("deck-ply-600", Timber, $"roof.joist-centres={centres}", $"roof.deck={deck}"));

    // Approved Document A, diagram of the minimum thickness of parapet walls (from memory): leaves of 200 mm together 600 mm high, up to 250 mm 860 mm
    [Theory]
    [InlineData("90 mm", "100 mm", "600 mm", true)]
    [InlineData("90 mm", "100 mm", "601 mm", false)]
    [InlineData("102.5 mm", "100 mm", "860 mm", true)]
    public void A_cavity_parapet_is_no_higher_than_its_leaves_allow(string outer, string inner, string height, bool holds) =>
        Assert.Equal(holds, Holds("parapet-cavity-h-200", Timber, $"wall.outer-leaf={outer}", $"wall.inner-leaf={inner}", $"parapet.height={height}"));

    // The same diagram (from memory), solid walls: 150 mm up to 600 mm, 190 mm up to 760 mm, 215 mm up to 860 mm
    [Theory]
    [InlineData("parapet-solid-h-150", "190 mm", "760 mm", true)]
    [InlineData("parapet-solid-h-150", "140 mm", "601 mm", false)]
    [InlineData("parapet-solid-h-190", "190 mm", "761 mm", false)]
    [InlineData("parapet-solid-h-215", "215 mm", "861 mm", false)]
    public void A_solid_parapet_is_no_higher_than_its_block_allows(string rule, string block, string height, bool holds) =>
        Assert.Equal(holds, Holds(rule, Solid, $"wall.block={block}", $"parapet.height={height}"));

    // Table of a maker of ties (read, secondary; no clause): a cavity of 75 mm takes 200 mm, 100 mm takes 225 mm, 150 mm takes 275 mm
    [Theory]
    [InlineData("75 mm", "200 mm", true)]
    [InlineData("80 mm", "200 mm", false)]
    [InlineData("100 mm", "225 mm", true)]
    [InlineData("150 mm", "275 mm", true)]
    [InlineData("150 mm", "300 mm", false)]
    public void A_tie_is_as_long_as_its_cavity_asks(string cavity, string tie, bool holds) =>
        Assert.Equal(holds, Holds("tie-length", Timber, $"wall.cavity={cavity}", $"tie.length={tie}"));

    // BDA, Designing for movement (read; no clause): joints in clay brickwork are about 1.3 mm wide for each metre between them
    [Theory]
    [InlineData("10 m", "13 mm", true)]
    [InlineData("10 m", "12 mm", false)]
    [InlineData("12 m", "16 mm", true)]
    public void A_movement_joint_is_as_wide_as_its_spacing_asks(string spacing, string width, bool holds) =>
        Assert.Equal(holds, Holds("mj-clay-width", Timber, $"wall.movement-joint-spacing={spacing}", $"wall.movement-joint-width={width}"));

    // WPIF PanelGuide by way of a trade page (read, secondary; no clause): fixings of a deck are 50 mm and two and a half times the board
    [Theory]
    [InlineData("18 mm", "50 mm", true)]
    [InlineData("22 mm", "50 mm", false)]
    [InlineData("22 mm", "55 mm", true)]
    public void A_deck_fixing_is_as_long_as_its_board_asks(string deck, string length, bool holds) =>
        Assert.Equal(holds, Holds("deck-fix-length", Timber, $"roof.deck={deck}", $"roof.deck-fixing-length={length}"));

    private const string Timber = "cavity-masonry";

    private const string Solid = "solid-masonry-insulated";

    // only the rule's own sizes are asked for; nothing is solved
    private static bool Holds(string rule, string wall, params string[] sizes)
    {
        var preset = Junctions.Shipped.Preset("parapet", wall, "warm-timber-deck");
        var facts = new Sized(new Situation(preset, ShippedRules.Catalogue), [.. sizes.Select(size => size.Split('='))]);
        return Details.Rules.Language.Evaluation.In(ShippedRules.Catalogue.Packs.First(pack => pack.Name == "uk").Find(rule)!.Require!, facts).Holds;
    }

    private sealed class Sized(Situation situation, string[][] sizes) : Details.Rules.Language.IFacts
    {
        public Details.Rules.Language.Value Find(string key) => sizes.FirstOrDefault(size => size[0] == key) is [_, var text]
            ? Details.Rules.Language.Value.Of(SettingReader.Read(text, Trial.At, key, Unit.Length, []).Value.Number, Details.Rules.Language.Kind.Length)
            : situation.Find(key);

        public bool Has(string slot) => situation.Has(slot);

        public Sections.Material? MaterialIn(string slot) => situation.MaterialIn(slot);
    }
}
