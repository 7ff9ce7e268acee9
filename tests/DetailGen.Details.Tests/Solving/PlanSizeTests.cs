using DetailGen.Details.Parameters;
using DetailGen.Details.Presets;
using DetailGen.Details.Solving;
using DetailGen.Details.Tests.Junctions;

namespace DetailGen.Details.Tests.Solving;

/// <summary>Sizes that the plan of the building gives: no rule is kept by a smaller building.</summary>
public class PlanSizeTests
{
    private static readonly Catalogue Whole =
        Catalogue.Of(Components.Load().All, StockLibrary.Load().All, MaterialLibrary.Load().Ids, [Trial.PackOf("uk")]).Value;

    [Theory]
    [InlineData("roof.joist-depth=120 mm", Judgement.Warn, "120 mm", "at least 170 mm")]
    [InlineData("roof.joist-depth=95 mm", Judgement.Warn, "95 mm", "at least 170 mm")]
    [InlineData("roof.joist-depth=195 mm", Judgement.Pass, "3600 mm", "at most 4930 mm")]
    [InlineData("roof.joist-grade=c16", Judgement.Pass, "3600 mm", "at most 3870 mm")]
    public void Joists_too_weak_for_the_usual_span_are_told_and_the_span_is_kept(string set, Judgement judgement, string drawn, string wanted)
    {
        var solved = Solved("parapet", "cavity-masonry", "warm-timber-deck", set);
        Assert.Equal("3600 mm", solved.Find("roof.joist-span")!.Text);
        var verdict = solved.Verdicts.Single(verdict => verdict.Rule.Id is "joist-span-c24" or "joist-span-c16" && verdict.Judgement != Judgement.NotApplicable);
        Assert.Equal((judgement, drawn, wanted), (verdict.Judgement, ComparisonWords.Drawn(verdict), ComparisonWords.Wanted(verdict)));
    }

    [Theory]
    [InlineData("roof.joist-depth=220 mm", "roof.joist-span=5600 mm", Judgement.Pass, null)]
    [InlineData("roof.joist-depth=245 mm", "roof.joist-span=5600 mm", Judgement.Pass, null)]
    [InlineData("roof.joist-depth=245 mm", "roof.joist-span=7000 mm", Judgement.Warn, "at most 5660 mm")]
    [InlineData("roof.joist-depth=195 mm", "roof.joist-span=6000 mm", Judgement.Warn, "at most 4930 mm")]
    [InlineData("roof.joist-width=44 mm", "roof.joist-span=3600 mm", Judgement.Warn, "at least 47 mm")]
    public void A_span_table_says_nothing_of_what_it_does_not_hold(string one, string other, Judgement judgement, string? wanted)
    {
        var verdict = Solved("abutment", "solid-masonry-insulated", "warm-timber-deck", one, other).Verdicts.Single(verdict => verdict.Rule.Id == "joist-span-c24");
        Assert.Equal(judgement, verdict.Judgement);
        Assert.Equal(wanted ?? ComparisonWords.Wanted(verdict), ComparisonWords.Wanted(verdict));
    }

    [Theory]
    [InlineData("warm-timber-deck")]
    [InlineData("warm-concrete-deck")]
    public void An_upstand_too_low_for_the_usual_run_is_told_and_the_run_is_kept(string roof)
    {
        var solved = Solved("abutment", "cavity-masonry", roof, "roof.fall-towards=wall", "upstand.height=150 mm", "roof.fall=1:40");
        Assert.Equal("3000 mm", solved.Find("roof.fall-run")!.Text);
        var verdict = solved.Verdicts.Single(verdict => verdict.Rule.Id == "upstand-high-end");
        Assert.Equal((Judgement.Warn, "at least 225 mm"), (verdict.Judgement, ComparisonWords.Wanted(verdict)));
    }

    [Theory]
    [InlineData("40 mm", "2400 mm")]
    [InlineData("60 mm", null)]
    public void A_run_that_what_is_fixed_has_no_room_for_is_said_to_be_shorter(string screed, string? run)
    {
        var solved = Solved("parapet", "solid-masonry-insulated", "warm-concrete-deck", "roof.screed=" + screed);
        Assert.Equal(run ?? "3000 mm", solved.Find("roof.fall-run")!.Text);
        Assert.Equal(run is not null, solved.Warnings.Any(warning => warning.StartsWith($"roof.fall-run: {run} is taken", StringComparison.Ordinal)));
    }

    // To give a narrow coping more fall the outer leaf became 90 mm of bricks of 102.5 mm.
    [Fact]
    public void Bricks_keep_their_width_whatever_that_does_to_a_coping()
    {
        var read = PresetReader.ReadText(
            """
            detail: narrow
            junction: parapet
            wall: cavity-masonry
            roof: warm-concrete-deck
            set: { wall.cavity: 75 mm, wall.fill: partial, wall.cavity-insulation: 25 mm, parapet.height: 460 mm, upstand.height: 150 mm, roof.insulation: 120 mm }
            building: { work: recovering }
            site: { nation: northern-ireland, exposure: very-severe }
            """, "narrow.yaml", [], PresetContext.Load());
        var solved = Assert.IsType<Solution.Solved>(DetailSolver.Solve(Held(read.Value), Whole));
        Assert.Equal("102.5 mm", solved.Find("wall.outer-leaf")!.Text);
        Assert.DoesNotContain(solved.Verdicts, verdict => verdict.Rule.Id == "brick-module" && verdict.Judgement == Judgement.Warn);
    }

    [Fact]
    public void A_run_that_the_author_wishes_for_is_no_surprise_to_be_told()
    {
        var preset = Shipped.Preset("parapet", "cavity-masonry", "warm-timber-deck", "roof.fall-run=2000 mm");
        var wished = Assert.IsType<Solution.Solved>(DetailSolver.Solve(Held(preset with { Set = [], Prefer = preset.Set }), Whole));
        Assert.Equal("2000 mm", wished.Find("roof.fall-run")!.Text);
        Assert.DoesNotContain(wished.Warnings, warning => warning.StartsWith("roof.fall-run", StringComparison.Ordinal));
    }

    [Fact]
    public void Of_a_firring_its_thin_end_is_compared_and_not_its_height_at_the_upstand()
    {
        var verdict = Solved("parapet", "cavity-masonry", "warm-timber-deck", "roof.firring=90 mm", "roof.fall=1:40").Verdicts.Single(verdict => verdict.Rule.Id == "firring-min");
        Assert.Equal((Judgement.Warn, "15 mm", "at least 20 mm"), (verdict.Judgement, ComparisonWords.Drawn(verdict), ComparisonWords.Wanted(verdict)));
    }

    private static Solution.Solved Solved(string junction, string wall, string roof, params string[] set) =>
        Assert.IsType<Solution.Solved>(DetailSolver.Solve(Held(Shipped.Preset(junction, wall, roof, set)), Whole));

    private static Preset Held(Preset preset) => preset with { Rules = [new NamedPack("uk", Trial.At)] };
}
