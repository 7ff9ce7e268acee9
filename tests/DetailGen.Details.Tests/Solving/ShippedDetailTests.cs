using DetailGen.Details.Parameters;
using DetailGen.Details.Presets;
using DetailGen.Details.Solving;
using DetailGen.Details.Tests.Junctions;

namespace DetailGen.Details.Tests.Solving;

/// <summary>The shipped constructions and junctions with the shipped rules.</summary>
public class ShippedDetailTests
{
    private static readonly Catalogue Whole =
        Catalogue.Of(Components.Load().All, StockLibrary.Load().All, MaterialLibrary.Load().Ids, [Trial.PackOf("uk")]).Value;

    public static TheoryData<string, string, string> Pairings => [.. Shipped.Pairings];

    [Theory]
    [MemberData(nameof(Pairings))]
    public void Every_pairing_solves_with_nothing_set_and_breaks_no_rule(string junction, string wall, string roof)
    {
        var solved = Held(Shipped.Preset(junction, wall, roof)).Solve(Whole);
        Assert.DoesNotContain(solved.Verdicts, verdict => verdict.Judgement is Judgement.Fail or Judgement.Warn);
        Assert.DoesNotContain(solved.Warnings, warning => warning == SolvingWords.NotTheBest);
        Assert.True(solved.Verdicts.Count(verdict => verdict.Judgement == Judgement.Pass) >= 20);
    }

    [Theory]
    [MemberData(nameof(Pairings))]
    public void Every_pairing_can_reach_a_target_for_the_roof(string junction, string wall, string roof)
    {
        var solved = Held(Shipped.Preset(junction, wall, roof)).To("roof.u-value", 0.12m).Solve(Whole);
        Assert.True(solved.Heat.First(heat => heat.Element == "roof").Transmittance <= 0.12m);
    }

    [Theory]
    [InlineData("parapet")]
    [InlineData("abutment")]
    public void Lead_between_two_codes_is_told_the_nearest_codes_and_another_sheet_may_be_as_thick(string junction)
    {
        var preset = Held(Shipped.Preset(junction, "cavity-masonry", "warm-timber-deck", ["flashing.thickness=2 mm"]));
        var contradiction = preset.Fail(Whole);
        Assert.Equal(["given.flashing.thickness", "stock.flashing.thickness"], contradiction.Members.Select(member => member.Id));
        Assert.Equal(["1.8 mm", "2.24 mm"], contradiction.Repairs.Where(repair => repair.Set is [{ Key: "flashing.thickness" }]).Select(repair => repair.Set[0].Value).Order(StringComparer.Ordinal));
        Assert.Equal("2 mm", preset.Of("flashing", "epdm-membrane").Solve(Whole).Find("flashing.thickness")!.Text);
    }

    // The budget was spent on ties between sizes that nobody asked for: boards thick enough were not told, and the best U-value was an internal fault.
    [Theory]
    [InlineData("roof.board-lower=75 mm")]
    [InlineData("roof.board-lower=75 mm", "coping.bed=7 mm", "parapet.height=812.5 mm", "roof.deck-gap=25 mm", "roof.board-stagger=0 mm", "flashing.end-lap=100 mm")]
    public void A_board_too_thin_for_the_target_is_mended_by_the_nearest_board_or_by_the_best_target(params string[] set)
    {
        var preset = Shipped.Preset("parapet", "cavity-masonry", "warm-timber-deck", set);
        var repairs = preset.To("roof.u-value", 0.109m).Fail(Whole).Repairs;
        Assert.Equal(["roof.board-lower=110 mm", "target.roof.u-value=0.154 W/m²K"], repairs.Select(repair => $"{repair.Set.Single().Key}={repair.Set.Single().Value}"));
        _ = preset.To("roof.u-value", 0.153m).Fail(Whole);
        _ = preset.To("roof.u-value", 0.154m).Solve(Whole);
    }

    // At the very end of a range hardly any sizes hold together; among the wishes the search found none of them within its budget.
    [Fact]
    public void The_lowest_upstand_that_its_range_allows_is_solved()
    {
        string[] set =
        [
            "wall.lining=insulated-board-on-dabs", "upstand.top=coping", "upstand.fillet=50 mm", "membrane.lap=130 mm", "tie.top-distance=75 mm", "roof.slab-bearing=110 mm", "roof.screed-bond=unbonded",
            "roof.board-stagger=200 mm", "membrane.fixing=loose", "roof.fall-towards=wall",
        ];
        var preset = Shipped.Preset("parapet", "cavity-masonry", "warm-concrete-deck", set).To("roof.u-value", 0.145m);
        var range = DetailSolver.Ranges(preset, Whole, ["upstand.height"])!.Single();
        Assert.Equal(250_000, range.Values[0].Low);
        var solved = Shipped.Preset("parapet", "cavity-masonry", "warm-concrete-deck", [.. set, "upstand.height=250 mm"]).To("roof.u-value", 0.145m).Solve(Whole);
        Assert.Equal("250 mm", solved.Find("upstand.height")!.Text);
    }

    // Else the coping, its bed and its fall, or the wall, would make up for a height of the parapet that nobody asked for.
    [Theory]
    [InlineData("cavity-masonry", "upstand.height=300 mm", false)]
    [InlineData("solid-masonry-insulated", "upstand.height=200 mm", false)]
    [InlineData("solid-masonry-insulated", "upstand.height=600 mm", false)]
    [InlineData("solid-masonry-insulated", "upstand.height=200 mm", true)]
    public void A_parapet_follows_the_upstand_that_is_asked_for_and_no_other_part_becomes_unusual(string wall, string upstand, bool wished)
    {
        string[] parts = ["coping.thickness", "coping.bed", "coping.fall", "upstand.insulation", .. wall == "cavity-masonry" ? (string[])["wall.cavity", "wall.inner-leaf"] : ["wall.block", "wall.insulation"]];
        var usual = Held(Shipped.Preset("parapet", wall, "warm-timber-deck")).Solve(Whole);
        var solved = Held(wished ? Shipped.Preset("parapet", wall, "warm-timber-deck").Wishing(upstand) : Shipped.Preset("parapet", wall, "warm-timber-deck", [upstand])).Solve(Whole);
        Assert.Equal(upstand, "upstand.height=" + solved.Find("upstand.height")!.Text);
        Assert.All(parts, part => Assert.Equal(usual.Find(part)!.Text, solved.Find(part)!.Text));
        Assert.NotEqual(usual.Find("parapet.height")!.Text, solved.Find("parapet.height")!.Text);
    }

    // A wall that is too high for its thickness is the engineer's, whether by little or by a lot.
    [Fact]
    public void No_part_is_pressed_to_miss_by_less_a_height_that_a_parapet_cannot_keep_to()
    {
        var usual = Held(Shipped.Preset("parapet", "cavity-masonry", "warm-timber-deck")).Solve(Whole);
        var solved = Held(Shipped.Preset("parapet", "cavity-masonry", "warm-timber-deck", ["upstand.height=783 mm"])).Solve(Whole);
        Assert.Equal(Judgement.Warn, solved.Verdict("parapet-cavity-h-250").Judgement);
        Assert.All(["coping.thickness", "coping.fall", "coping.dpc-thickness", "wall.cavity", "roof.membrane"], part => Assert.Equal(usual.Find(part)!.Text, solved.Find(part)!.Text));
    }

    [Fact]
    public void A_tall_upstand_is_asked_about_and_swells_nothing_else()
    {
        string[] tall = ["parapet.height=1150 mm", "upstand.top=coping", "tray.discharge=outside"];
        var solved = Held(Shipped.Preset("parapet", "cavity-masonry", "warm-timber-deck", tall)).Solve(Whole);
        Assert.Equal(Judgement.ToConfirm, solved.Verdicts.Single(verdict => verdict.Rule.Id == "upstand-intermediate-fix").Judgement);
        Assert.All([("wall.inner-leaf", "100 mm"), ("wall.outer-leaf", "102.5 mm"), ("upstand.backing", "12 mm")], size => Assert.Equal(size.Item2, solved.Find(size.Item1)!.Text));
        var low = Held(Shipped.Preset("parapet", "cavity-masonry", "warm-timber-deck")).Solve(Whole);
        Assert.Equal(Judgement.NotApplicable, low.Verdicts.Single(verdict => verdict.Rule.Id == "upstand-intermediate-fix").Judgement);
    }

    [Theory]
    [InlineData("abutment", "cavity-masonry", "warm-timber-deck", "roof.fall-towards=wall")]
    [InlineData("parapet", "solid-masonry-insulated", "warm-concrete-deck", "roof.fall-towards=wall")]
    [InlineData("parapet", "cavity-masonry", "warm-concrete-deck", "roof.screed-bond=unbonded")]
    [InlineData("abutment", "solid-masonry-insulated", "warm-timber-deck", "roof.fall=1:20")]
    public void A_roof_is_not_made_shorter_to_keep_a_rule_that_another_size_can_keep(string junction, string wall, string roof, string set)
    {
        var solved = Held(Shipped.Preset(junction, wall, roof, set)).Solve(Whole);
        Assert.Equal("3000 mm", solved.Find("roof.fall-run")!.Text);
        Assert.DoesNotContain(solved.Verdicts, verdict => verdict.Judgement == Judgement.Fail);
    }

    [Theory]
    [InlineData("parapet", "solid-masonry-insulated", "wall.insulation=60 mm", "wall.lining=board-on-dabs")]
    [InlineData("abutment", "solid-masonry-insulated", "wall.insulation=60 mm")]
    [InlineData("parapet", "cavity-masonry", "wall.cavity=50 mm", "wall.lining=wet-plaster")]
    [InlineData("abutment", "cavity-masonry", "wall.cavity=50 mm", "wall.lining=board-on-dabs")]
    [InlineData("parapet", "cavity-masonry", "wall.cavity=100 mm", "wall.lining=board-on-dabs")]
    [InlineData("parapet", "solid-masonry-insulated", "wall.insulation=100 mm")]
    public void A_wall_that_cannot_be_warm_enough_by_its_insulation_is_not_thickened_elsewhere(string junction, string wall, params string[] set)
    {
        string[] layers = ["wall.outer-leaf", "wall.inner-leaf", "wall.block", "wall.render", "wall.plaster", "wall.dab", "wall.lining-board"];
        var thin = Held(Shipped.Preset(junction, wall, "warm-timber-deck", set)).Solve(Whole);
        var usual = Held(Shipped.Preset(junction, wall, "warm-timber-deck", [.. set.Where(one => one.StartsWith("wall.lining", StringComparison.Ordinal))])).Solve(Whole);
        Assert.Equal(Judgement.Warn, thin.Verdicts.Single(verdict => verdict.Rule.Id == "u-wall-new-en").Judgement);
        Assert.Equal(layers.Select(key => usual.Find(key)?.Text), layers.Select(key => thin.Find(key)?.Text));
    }

    [Theory]
    [InlineData("warm-timber-deck")]
    [InlineData("warm-concrete-deck")]
    public void No_sheet_is_thickened_for_a_rule_on_something_else(string roof)
    {
        string[] sheets = ["roof.membrane", "flashing.thickness", "roof.vcl"];
        var low = Held(Shipped.Preset("abutment", "solid-masonry-insulated", roof, "upstand.height=150 mm")).Solve(Whole);
        var usual = Held(Shipped.Preset("abutment", "solid-masonry-insulated", roof)).Solve(Whole);
        Assert.Equal(Judgement.Warn, low.Verdicts.Single(verdict => verdict.Rule.Id == "ewi-base-above-roof").Judgement);
        Assert.Equal(sheets.Select(key => usual.Find(key)!.Text), sheets.Select(key => low.Find(key)!.Text));
    }

    [Fact]
    public void Insulation_that_is_open_still_comes_as_near_to_a_rule_as_it_can()
    {
        var solved = Held(Shipped.Preset("abutment", "cavity-masonry", "warm-timber-deck", "wall.cavity=50 mm")).Solve(Whole);
        Assert.Equal(Judgement.Pass, solved.Verdicts.Single(verdict => verdict.Rule.Id == "u-wall-new-en").Judgement);
        Assert.Equal(WhyKind.Rule, solved.Find("wall.lining-insulation")!.Why.Kind);
        Assert.Equal("u-wall-new-en", solved.Find("wall.lining-insulation")!.Why.Rule);
    }

    [Theory]
    [InlineData("102.5 mm", Judgement.Pass)]
    [InlineData("215 mm", Judgement.Pass)]
    [InlineData("140 mm", Judgement.Warn)]
    public void A_leaf_of_bricks_is_as_thick_as_a_brick_is_wide_or_long(string leaf, Judgement judgement)
    {
        var solved = Held(Shipped.Preset("abutment", "cavity-masonry", "warm-concrete-deck", "wall.outer-leaf=" + leaf)).Solve(Whole);
        Assert.Equal(judgement, solved.Verdicts.Single(verdict => verdict.Rule.Id == "brick-module").Judgement);
    }

    [Theory]
    [InlineData("roof.joist-centres=600 mm", Judgement.Warn)]
    [InlineData("roof.joist-centres=400 mm", Judgement.Pass)]
    public void A_span_table_is_not_said_to_be_kept_at_centres_that_it_does_not_cover(string centres, Judgement judgement)
    {
        var solved = Held(Shipped.Preset("parapet", "cavity-masonry", "warm-timber-deck", centres)).Solve(Whole);
        Assert.Equal(judgement, solved.Verdicts.Single(verdict => verdict.Rule.Id == "joist-span-c24").Judgement);
    }

    [Theory]
    [InlineData("warm-timber-deck", "roof.joists=across", Judgement.ToConfirm, Judgement.ToConfirm)]
    [InlineData("warm-timber-deck", "roof.joists=along", Judgement.ToConfirm, Judgement.NotApplicable)]
    [InlineData("warm-concrete-deck", "roof.fall=1:40", Judgement.NotApplicable, Judgement.NotApplicable)]
    public void The_air_line_past_a_void_over_the_ceiling_is_asked_about(string roof, string set, Judgement parged, Judgement ends)
    {
        var verdicts = Held(Shipped.Preset("parapet", "solid-masonry-insulated", roof, set)).Solve(Whole).Verdicts;
        Assert.Equal(parged, verdicts.Single(verdict => verdict.Rule.Id == "wall-parged-over-ceiling").Judgement);
        Assert.Equal(ends, verdicts.Single(verdict => verdict.Rule.Id == "joist-ends-sealed").Judgement);
    }

    [Theory]
    [InlineData("cavity-masonry", "tray.discharge=outside", "parapet.height=1100 mm")]
    [InlineData("cavity-masonry", "tray.discharge=outside")]
    [InlineData("cavity-masonry", "tray.discharge=roof", "parapet.height=900 mm")]
    public void A_flashing_begins_near_the_head_of_the_upstand_however_tall_the_parapet(string wall, params string[] set)
    {
        var solved = Held(Shipped.Preset("parapet", wall, "warm-concrete-deck", set)).Solve(Whole);
        Assert.InRange(solved.Sizes.Length("flashing.bed") - solved.Sizes.Length("upstand.height"), 0, 150);
        Assert.DoesNotContain(solved.Verdicts, verdict => verdict.Judgement == Judgement.Fail);
    }

    [Theory]
    [InlineData("abutment", "solid-masonry-insulated", "warm-concrete-deck", "parapet-brick-class", "block-module", "cavity-barrier-top", "tray-laps-upstand")]
    [InlineData("abutment", "cavity-masonry", "warm-timber-deck", "cavity-barrier-top", "lining-no-through")]
    [InlineData("parapet", "solid-masonry-insulated", "warm-timber-deck", "upstand-termination-bar", "upstand-bring-forward", "dpc-width", "parapet-movement-spacing")]
    public void A_check_list_asks_after_nothing_that_is_not_there(string junction, string wall, string roof, params string[] absent)
    {
        var verdicts = Held(Shipped.Preset(junction, wall, roof)).Solve(Whole).Verdicts;
        Assert.All(absent, id => Assert.Equal(Judgement.NotApplicable, verdicts.Single(verdict => verdict.Rule.Id == id).Judgement));
    }

    [Fact]
    public void U_values_stand_beside_their_limit_as_schedules_have_them()
    {
        var solved = Held(Shipped.Preset("parapet", "cavity-masonry", "warm-timber-deck")).Solve(Whole);
        var told = solved.Verdicts.Where(verdict => verdict is { Unit: "W/m²K", Judgement: Judgement.Pass }).ToArray();
        Assert.NotEmpty(told);
        Assert.All(told, verdict => Assert.Matches(@"^(0\.[1-9]\d?|0\.0\d{1,2}|\d+(\.\d)?) W/m²K$", verdict.Left!.Text));
    }

    // 0.0999 rounds to a figure that has two significant figures with one zero less behind the point.
    [Fact]
    public void A_u_value_that_is_rounded_up_to_a_tenth_keeps_two_figures()
    {
        var solved = Held(Shipped.Preset("parapet", "solid-masonry-insulated", "warm-concrete-deck", "wall.insulation=300 mm", "wall.block=140 mm")).Solve(Whole);
        var wall = solved.Verdicts.Single(verdict => verdict.Rule.Id == "u-wall-new-en");
        Assert.InRange(wall.Left!.Number!.Value, 0.0995m, 0.09999m);
        Assert.Equal("0.10 W/m²K", wall.Left.Text);
    }

    private static Preset Held(Preset preset) => preset with { Rules = [new NamedPack("uk", Trial.At)] };
}
