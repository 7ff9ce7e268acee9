using DetailGen.Details.Quantities;
using DetailGen.Details.Solving;
using DetailGen.Details.Tests.Junctions;

namespace DetailGen.Details.Tests.Solving;

public class FeasibleSizesTests
{
    private static Details.Presets.Preset Usual(params IReadOnlyList<string> set) => Trial.Preset(Trial.Parapet, Trial.CavityWall, Trial.TimberRoof, set);

    [Fact]
    public void Every_range_says_what_stops_it()
    {
        var ranges = DetailSolver.Ranges(Usual("parapet.height=450 mm"), Trial.Shipped)!.ToDictionary(range => range.Key, StringComparer.Ordinal);
        Assert.DoesNotContain("parapet.height", ranges.Keys);
        Assert.Equal((150_000, "upstand-min"), (ranges["upstand.height"].Values[0].Low, ranges["upstand.height"].LowStops[0].Id));
        Assert.Contains("given.parapet.height", ranges["upstand.height"].HighStops.Select(stop => stop.Id));
        Assert.Contains("upstand-under-head", ranges["upstand.height"].HighStops.Select(stop => stop.Id));
        Assert.Equal((900_000, "weep-spacing"), (ranges["weep.spacing"].Values[^1].High, ranges["weep.spacing"].HighStops[0].Id));
        Assert.Equal("domain", ranges["weep.spacing"].LowStops[0].Id);
        Assert.Null(ranges["roof.deck"].Step);
        Assert.All(ranges["roof.deck"].Values, pair => Assert.Equal(pair.Low, pair.High));
    }

    [Fact]
    public void The_ends_of_a_range_can_be_had_and_what_lies_beyond_cannot()
    {
        foreach (var range in DetailSolver.Ranges(Usual("wall.fill=partial"), Trial.Shipped)!.Where(range => range.Unit == Unit.Length && range.Step is not null))
        {
            var (low, high) = (range.Values[0].Low, range.Values[^1].High);
            Assert.True(Try(range.Key, low) is Solution.Solved, $"{range.Key} {low}");
            Assert.True(Try(range.Key, high) is Solution.Solved, $"{range.Key} {high}");
            if (range.LowStops[0].Id != "domain")
            {
                Assert.IsType<Solution.Contradiction>(Try(range.Key, low - range.Step!.Value));
            }

            if (range.HighStops[0].Id != "domain")
            {
                Assert.IsType<Solution.Contradiction>(Try(range.Key, high + range.Step!.Value));
            }
        }
    }

    /// <summary>What ties, fixings and dabs add to the U-value is supposed, by what is usual or by what is set.</summary>
    [Theory]
    [InlineData("tie.diameter")]
    [InlineData("tie.horizontal-spacing")]
    [InlineData("tie.vertical-spacing")]
    [InlineData("wall.lining-fixings")]
    [InlineData("wall.dab-width")]
    [InlineData("wall.dab-centres")]
    public void Under_a_target_what_crosses_the_insulation_goes_as_far_as_it_can_be_set(string key)
    {
        Details.Presets.Preset Asked(params IReadOnlyList<string> set) =>
            Shipped.Preset("parapet", "cavity-masonry", "warm-timber-deck", ["wall.fill=partial", .. set]).To("wall.u-value", 0.15m);
        var range = Assert.Single(DetailSolver.Ranges(Asked(), Shipped.Catalogue, [key])!);
        var (low, high, step) = (range.Values[0].Low, range.Values[^1].High, range.Step!.Value);
        Solution Set(long number) => DetailSolver.Solve(Asked($"{key}={Setting.Numeric(range.Unit, number)}"), Shipped.Catalogue);
        Assert.All((long[])[low, high], end => Assert.IsType<Solution.Solved>(Set(end)));
        Assert.True(range.LowStops.Any(stop => stop.Id == "domain") || Set(low - step) is Solution.Contradiction, $"{low - step} can be had.");
        Assert.True(range.HighStops.Any(stop => stop.Id == "domain") || Set(high + step) is Solution.Contradiction, $"{high + step} can be had.");
        Assert.NotEmpty(range.LowStops);
        Assert.NotEmpty(range.HighStops);
    }

    /// <summary>Its height hangs on the head of the wall, a sum of seven sizes, and so does the tray's.</summary>
    [Theory]
    [InlineData("stone", "roof")]
    [InlineData("concrete", "both")]
    [InlineData("metal", "roof")]
    [InlineData("metal", "both")]
    public void How_high_an_upstand_to_the_coping_of_a_cavity_wall_can_be_is_proven(string kind, string fall)
    {
        var preset = Shipped.Preset("parapet", "cavity-masonry", "warm-timber-deck", ["upstand.top=coping", "coping.kind=" + kind, "coping.fall-to=" + fall]);
        var range = Assert.Single(DetailSolver.Ranges(preset, Shipped.Catalogue, ["upstand.height"])!);
        Assert.True(range.Proven);
        Assert.Contains("tray-ends-below-the-head", range.LowStops.Select(stop => stop.Id));
        Solution Set(long number) => DetailSolver.Solve(
            Shipped.Preset("parapet", "cavity-masonry", "warm-timber-deck", ["upstand.top=coping", "coping.kind=" + kind, "coping.fall-to=" + fall, $"upstand.height={new Length(number)}"]), Shipped.Catalogue);
        Assert.IsType<Solution.Solved>(Set(range.Values[0].Low));
        Assert.IsType<Solution.Contradiction>(Set(range.Values[0].Low - range.Step!.Value));
    }

    [Fact]
    public void A_detail_that_contradicts_itself_has_no_ranges() => Assert.Null(DetailSolver.Ranges(Usual("weep.spacing=1200 mm"), Trial.Shipped));

    private static Solution Try(string key, long value) =>
        DetailSolver.Solve(Usual("wall.fill=partial", $"{key}={new Length(value)}"), Trial.Shipped);
}
