using CsCheck;
using DetailGen.Drawing.Emitters.Dxf;
using DetailGen.Drawing.Emitters.Plain;
using DetailGen.Drawing.Scenes;
using DetailGen.Dxf;
using DetailGen.Sections;
using DetailGen.Testing;
using Hatch = DetailGen.Drawing.Scenes.Hatch;

namespace DetailGen.Drawing.Tests.Emitters;

public class HatchClipperTests
{
    private const double Dot = 0.13;

    // Never along an edge: there the library counts the edge itself as inside, which is a matter of taste.
    private static readonly Gen<LineFamily> Families = Gen.Select(
        Gen.Double[0, 180], Gen.Double[0.9, 6], Gen.Double[-20, 20], Gen.Double[-20, 20], Gen.Double[-3, 3],
        (angle, spacing, x, y, shift) => new LineFamily(angle + 0.0173, spacing, new(x + 0.0137, y + 0.0137), shift, []));

    // A star around the origin never crosses itself.
    private static readonly Gen<PaperPoint[]> Stars = Gen.Double[4, 30].Array[3, 12].Select(radii => radii
        .Select((radius, i) => new PaperPoint(radius * Math.Cos(2 * Math.PI * i / radii.Length), radius * Math.Sin(2 * Math.PI * i / radii.Length))).ToArray());

    private static readonly PaperPoint[] Hole = [new(-1, -1), new(-1, 1), new(1, 1), new(1, -1)];

    [Fact]
    public void Level_lines_of_a_box_run_from_side_to_side()
    {
        var strokes = HatchClipper.Clip(Filled([new(0, 0), new(10, 0), new(10, 5), new(0, 5)], new LineFamily(0, 2, new(3, 1), 0, [])), Dot);
        Assert.Equal([new Segment(0, 1, 10, 1), new Segment(0, 3, 10, 3)], strokes);
    }

    [Fact]
    public void A_hole_interrupts_the_lines()
    {
        var hatch = Filled([new(-5, -5), new(5, -5), new(5, 5), new(-5, 5)], new LineFamily(0, 20, default, 0, [])) with { Holes = [Hole] };
        Assert.Equal([new Segment(-5, 0, -1, 0), new Segment(1, 0, 5, 0)], HatchClipper.Clip(hatch, Dot));
    }

    [Fact]
    public void Dashes_begin_at_the_base_and_shift_from_line_to_line()
    {
        var strokes = HatchClipper.Clip(Filled([new(0, 0), new(10, 0), new(10, 3), new(0, 3)], new LineFamily(0, 2, new(1, 0.5), 1.5, [2, -3])), Dot);
        Assert.Equal([new Segment(1, 0.5, 3, 0.5), new Segment(6, 0.5, 8, 0.5), new Segment(2.5, 2.5, 4.5, 2.5), new Segment(7.5, 2.5, 9.5, 2.5)], strokes);
    }

    [Fact]
    public void Slivers_are_dropped_but_a_short_dash_that_is_whole_stays()
    {
        var strokes = HatchClipper.Clip(Filled([new(0, 0), new(3.5, 0), new(3.5, 1), new(0, 1)], new LineFamily(0, 2, new(0, 0.5), 0, [0.2, -1.3, 2, -2])), Dot);
        Assert.Equal([new Segment(0, 0.5, 0.2, 0.5), new Segment(1.5, 0.5, 3.5, 0.5)], strokes);
        Assert.Empty(HatchClipper.Clip(Filled([new(0, 0), new(0.7, 0), new(0.7, 1), new(0, 1)], new LineFamily(0, 2, new(0, 0.5), 0, [])), Dot));
    }

    [Fact]
    public void A_dash_of_nothing_is_a_dot_as_long_as_the_line_is_wide()
    {
        var strokes = HatchClipper.Clip(Filled([new(0, 0), new(5, 0), new(5, 1), new(0, 1)], new LineFamily(0, 2, new(1, 0.5), 0, [0, -3])), 0.2);
        Assert.Equal([new Segment(0.9, 0.5, 1.1, 0.5), new Segment(3.9, 0.5, 4.1, 0.5)], strokes);
    }

    [Fact]
    public void A_family_without_spacing_is_refused() =>
        Assert.Throws<ArgumentException>(() => HatchClipper.Clip(Filled([new(0, 0), new(5, 0), new(5, 1)], new LineFamily(0, 0, default, 0, [])), Dot));

    // Independent of the scanline: the polygon library cuts each line against the region.
    [Fact]
    public void Strokes_are_those_that_the_polygon_library_finds() => Gen.Select(Stars, Families).Always((star, family) =>
    {
        var region = Region.Polygon([.. star.Select(corner => new Point(corner.X, corner.Y))]).Minus(Region.Box(-1, -1, 1, 1));
        var u = new PaperPoint(Math.Cos(family.Angle * Math.PI / 180), Math.Sin(family.Angle * Math.PI / 180));
        var n = new PaperPoint(-u.Y, u.X);
        var expected = 0.0;
        for (var k = -100; k <= 100; k++)
        {
            var on = family.Base + k * family.Spacing * n;
            var (a, b) = (on + -100 * u, on + 100 * u);
            expected += region.Cut(new(a.X, a.Y), new(b.X, b.Y)).Sum(piece => Length(piece.To - piece.From) is >= HatchClipper.LeastStroke and var length ? length : 0);
        }

        var strokes = HatchClipper.Clip(Filled(star, family) with { Holes = [Hole] }, Dot);
        // The region's corners are on a grid of 0.001; a stroke on the brink of being dropped may differ.
        Assert.Equal(expected, strokes.Sum(stroke => stroke.Length), tolerance: HatchClipper.LeastStroke + 0.01 * (strokes.Count + 1));
        Assert.All(strokes, stroke => Assert.True(region.Distance(new Point((stroke.FromX + stroke.ToX) / 2, (stroke.FromY + stroke.ToY) / 2)) < 0.002));
    });

    // The same lines reach the DXF as pattern lines in model units: base + k·offset + t·u, dashes from there.
    [Theory]
    [InlineData(1)]
    [InlineData(10)]
    public void Strokes_agree_with_the_pattern_lines_of_the_drawing_file(double scale)
    {
        foreach (var hatch in new[] { SampleScene.Brick, SampleScene.Stone, SampleScene.Block })
        {
            var place = new DxfPlace(scale, new(700, -300));
            var pattern = new DxfFills().Pattern(hatch, place);
            for (var i = 0; i < hatch.Families.Count; i++)
            {
                var line = pattern.Lines[i];
                foreach (var stroke in HatchClipper.Clip(hatch with { Families = [hatch.Families[i]] }, Dot))
                {
                    var (from, to) = (place.At(stroke.FromX, stroke.FromY), place.At(stroke.ToX, stroke.ToY));
                    var (a, b) = (InPattern(from, line), InPattern(to, line));
                    Assert.InRange(Math.Abs(a.Across), 0, 0.1 * scale);
                    Assert.InRange(Math.Abs(b.Across), 0, 0.1 * scale);
                    if (!line.Dashes.IsEmpty)
                    {
                        Assert.True(IsDrawn((a.Along + b.Along) / 2, line.Dashes), $"{hatch.Fill}: a stroke at {stroke} lies in a gap");
                        Assert.True(IsDrawn(a.Along + 0.1 * scale * Math.Sign(b.Along - a.Along), line.Dashes));
                        Assert.True(IsDrawn(b.Along - 0.1 * scale * Math.Sign(b.Along - a.Along), line.Dashes));
                    }
                }
            }
        }
    }

    private static (double Along, double Across) InPattern(DxfPoint point, DetailGen.Dxf.Entities.PatternLine line)
    {
        var (flat, offset) = ((point - line.Base).Turned(-line.Angle), line.Offset.Turned(-line.Angle));
        var k = Math.Round(flat.Y / offset.Y);
        return (flat.X - k * offset.X, flat.Y - k * offset.Y);
    }

    private static bool IsDrawn(double along, IReadOnlyList<double> dashes)
    {
        var period = dashes.Sum(Math.Abs);
        var at = along - Math.Floor(along / period) * period;
        foreach (var dash in dashes)
        {
            if (at <= Math.Abs(dash) + 1e-9)
            {
                return dash >= 0;
            }

            at -= Math.Abs(dash);
        }

        return false;
    }

    private static Hatch Filled(PaperPoint[] outline, params LineFamily[] families) => new("fill.BK.wall", "brick", outline, [], families);

    private static double Length(Point way) => Math.Sqrt(way.X * way.X + way.Y * way.Y);
}
