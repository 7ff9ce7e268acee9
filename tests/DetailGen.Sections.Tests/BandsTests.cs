using CsCheck;
using DetailGen.Testing;

namespace DetailGen.Sections.Tests;

public class BandsTests
{
    private static readonly Point[] Step = [new(0, 100), new(0, 0), new(100, 0)];

    [Fact]
    public void A_strip_lies_on_the_left_of_its_face()
    {
        var strip = Bands.Strip([new(0, 0), new(100, 0)], 2);
        Assert.Equal(new Bounds(0, 0, 100, 2), strip.Bounds);
    }

    [Fact]
    public void An_inner_corner_is_filled_once() => Assert.Equal((100 * 2) + (98 * 2), Bands.Strip(Step, 2).Area, 6);

    [Fact]
    public void An_outer_corner_is_mitred() => Assert.Equal((102 * 2) + (100 * 2), Bands.Strip([.. Step.Reverse()], 2).Area, 6);

    [Fact]
    public void A_sheet_that_runs_over_the_end_of_another_leaves_nothing_between()
    {
        var under = Bands.Strip([new(0, 0), new(60, 0)], 1.5);
        var over = Bands.Lay([new(30, 0), new(120, 0)], 2, [under], 1.5);
        Assert.True(over.Intersect(under).IsEmpty);
        Assert.Equal(3.5, over.Bounds.Top, 6);
        Assert.Empty(Assert.Single(over.Union(under).Pieces).Holes);
        Assert.Equal((30 * 2) + (60 * 2) + (1.5 * 2), over.Area, 3);
    }

    /// <summary>Area of a strip along a straight line is length times thickness, wherever it runs.</summary>
    [Fact]
    public void A_straight_strip_has_the_area_of_its_length() =>
        Gen.Select(Gen.Double[0, 6.28], Gen.Double[5, 500], Gen.Double[0.1, 4]).Always(
            (angle, length, thickness) =>
            {
                var strip = Bands.Strip([new(0, 0), new(length * Math.Cos(angle), length * Math.Sin(angle))], thickness);
                Assert.Equal(length * thickness, strip.Area, 0.002 * (length + thickness)); // half a grid step all round
            });
}
