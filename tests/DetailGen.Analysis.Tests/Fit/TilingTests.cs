using CsCheck;
using DetailGen.Analysis.Fit;
using DetailGen.Sections;
using DetailGen.Testing;

namespace DetailGen.Analysis.Tests.Fit;

public class TilingTests
{
    [Fact]
    public void Boards_side_by_side_tile() => Assert.Empty(Tiling.Check(Of(Region.Box(0, 0, 100, 10), Region.Box(0, 10, 100, 30))));

    [Fact]
    public void A_slit_wider_than_rounding_is_a_gap()
    {
        var misfit = Assert.Single(Tiling.Check(Of(Region.Box(0, 0, 100, 10), Region.Box(0, 10.06, 100, 30))));
        Assert.False(misfit.Overlaps);
        Assert.Equal(["part.0", "part.1"], misfit.Parts);
        Assert.Equal(0.06, misfit.Width, 2);
    }

    [Fact]
    public void Rounding_is_no_gap() => Assert.Empty(Tiling.Check(Of(Region.Box(0, 0, 100, 10), Region.Box(0, 10.04, 100, 30))));

    [Fact]
    public void A_hole_of_any_size_is_a_gap()
    {
        var frame = Region.Box(0, 0, 100, 100).Minus(Region.Box(20, 20, 80, 80));
        Assert.False(Assert.Single(Tiling.Check(Of(frame))).Overlaps);
        Assert.Empty(Tiling.Check(Of(frame, Region.Box(20, 20, 80, 80))));
    }

    [Fact]
    public void A_part_that_repeats_out_of_the_plane_may_lie_over_others()
    {
        var section = Of(Region.Box(0, 0, 100, 10), Region.Box(40, 0, 50, 10));
        Assert.Empty(Tiling.Check(section with { Parts = [section.Parts[0], section.Parts[1] with { Presence = Presence.Local }] }));
        Assert.True(Assert.Single(Tiling.Check(section)).Overlaps);
    }

    /// <summary>A wall cut into strips tiles; with one strip moved by more than the slack it never does.</summary>
    [Fact]
    public void One_strip_out_of_place_is_always_found() =>
        Gen.Select(Gen.Double[5, 50].Array[3, 6], Gen.Double[0.1, 1.5], Gen.Bool).Always(
            (widths, by, left) =>
            {
                var at = 0.0;
                var strips = new List<Region>();
                foreach (var width in widths)
                {
                    strips.Add(Region.Box(at, 0, at + width, 200));
                    at += width;
                }

                Assert.Empty(Tiling.Check(Of([.. strips])));
                strips[1] = strips[1].Shift(left ? -by : by, 0);
                var misfits = Tiling.Check(Of([.. strips]));
                Assert.Contains(misfits, misfit => misfit.Overlaps);
                Assert.Contains(misfits, misfit => !misfit.Overlaps);
            });

    private static Section Of(params Region[] regions)
    {
        var material = new Material("stuff", "Stuff", "fill", "gravel", "XX", 1, 1, "assumed");
        var parts = regions.Select((region, i) => new Part($"part.{i}", "Part", material, Element.Wall, region, Presence.Cut, Roles.None, i + 1)
        {
            Slot = "slot",
            Words = new("", "", ""),
        });
        return new("test", [.. parts], [], [], [], [], [], []);
    }
}
