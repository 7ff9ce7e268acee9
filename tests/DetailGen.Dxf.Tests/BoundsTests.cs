using CsCheck;
using DetailGen.Testing;

namespace DetailGen.Dxf.Tests;

public sealed class BoundsTests
{
    private const double Rounding = 1e-9;

    [Fact]
    public void A_path_is_bounded_by_its_arcs_and_not_only_by_its_vertices()
    {
        var bounds = new Bounds();

        bounds.AddPath([new(0, 0, 1), new(10, 0)], closed: false); // a half circle to the right of its chord, below it

        Assert.Equal((0, -5, 10, 0), (Math.Round(bounds.Left, 9), bounds.Bottom, Math.Round(bounds.Right, 9), Math.Round(bounds.Top, 9)));
    }

    [Fact]
    public void Every_point_of_an_arc_lies_in_its_bounds_and_touches_them_nowhere_beyond_the_circle() =>
        Gen.Select(Gen.Double[-360, 360], Gen.Double[1, 359], Gen.Double[0, 1]).Always((start, sweep, way) =>
        {
            var bounds = new Bounds();
            bounds.AddArc(new(3, 4), 10, start, start + sweep);
            var point = new DxfPoint(3, 4) + (10 * DxfPoint.Direction(start + (way * sweep)));
            return point.X >= bounds.Left - Rounding && point.X <= bounds.Right + Rounding
                && point.Y >= bounds.Bottom - Rounding && point.Y <= bounds.Top + Rounding
                && bounds.Right - bounds.Left <= 20 + Rounding && bounds.Top - bounds.Bottom <= 20 + Rounding;
        });
}
