using DetailGen.Details.Quantities;
using DetailGen.Details.Solving;

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

    [Fact]
    public void A_detail_that_contradicts_itself_has_no_ranges() => Assert.Null(DetailSolver.Ranges(Usual("weep.spacing=1200 mm"), Trial.Shipped));

    private static Solution Try(string key, long value) =>
        DetailSolver.Solve(Usual("wall.fill=partial", $"{key}={new Length(value)}"), Trial.Shipped);
}
