using CsCheck;
using DetailGen.Dxf.Entities;
using DetailGen.Testing;

namespace DetailGen.Dxf.Tests.Entities;

public sealed class PatternLineTests
{
    private const double Rounding = 1e-9; // coordinates up to 1e3, a few operations of 1e-16 each, a wide margin

    private static readonly Gen<double> Angle = Gen.Double[-360, 360];
    private static readonly Gen<double> Length = Gen.Double[0.5, 100];
    private static readonly Gen<DxfPoint> Point = Gen.Select(Gen.Double[-500, 500], Gen.Double[-500, 500], (x, y) => new DxfPoint(x, y));

    private static readonly Gen<PatternLine> Line =
        Gen.Select(Angle, Length, Gen.Double[-50, 50], Point, (angle, spacing, shift, start) => PatternLine.Of(angle, spacing, shift, start, 10, -5));

    [Fact]
    public void The_spacing_asked_for_is_the_distance_across_the_lines() =>
        Gen.Select(Angle, Length, Gen.Double[-50, 50]).Always((angle, spacing, shift) =>
            Math.Abs(PatternLine.Of(angle, spacing, shift).Spacing - spacing) < Rounding);

    [Fact]
    public void At_45_degrees_the_offset_is_turned_with_the_line()
    {
        var line = PatternLine.Of(45, 10);

        // n = (-sin 45°, cos 45°); an offset left at (0, 10) would be spaced 7.071.
        Assert.Equal(-Math.Sqrt(50), line.Offset.X, 12);
        Assert.Equal(Math.Sqrt(50), line.Offset.Y, 12);
    }

    [Fact]
    public void Right_angles_give_exact_offsets()
    {
        Assert.Equal(new DxfPoint(30, 20), PatternLine.Of(0, 20, 30).Offset);
        Assert.Equal(new DxfPoint(-20, 30), PatternLine.Of(90, 20, 30).Offset);
    }

    [Fact]
    public void A_turned_pattern_draws_the_turned_lines() =>
        Gen.Select(Line, Angle, Point, Gen.Int[-5, 5], Gen.Double[-100, 100]).Always((line, turn, about, k, way) =>
            On(line.Turned(turn, about), k, way).DistanceTo(about + (On(line, k, way) - about).Turned(turn)) < Rounding);

    [Fact]
    public void A_mirrored_pattern_draws_the_mirrored_dashes() =>
        Gen.Select(Line, Gen.Double[-100, 100], Gen.Int[-5, 5], Gen.Double[-100, 100]).Always((line, x, k, way) =>
        {
            var there = On(line, k, way);
            return On(line.Mirrored(x), k, way).DistanceTo(new((2 * x) - there.X, there.Y)) < Rounding;
        });

    [Fact]
    public void Mirrored_twice_is_as_before() =>
        Line.Always(line => line.Mirrored(7).Mirrored(7) is var back
            && Math.Abs(back.Angle - line.Angle) < Rounding && back.Base.DistanceTo(line.Base) < Rounding && back.Offset == line.Offset);

    [Fact]
    public void A_scaled_pattern_draws_the_scaled_lines() =>
        Gen.Select(Line, Length, Gen.Int[-5, 5], Gen.Double[-100, 100]).Always((line, factor, k, way) =>
            On(line.Scaled(factor), k, factor * way).DistanceTo(factor * On(line, k, way)) < Rounding * 100);

    // The point a way along line k from where its dashes start.
    private static DxfPoint On(PatternLine line, int k, double way) => line.Base + (k * line.Offset) + (way * DxfPoint.Direction(line.Angle));
}
