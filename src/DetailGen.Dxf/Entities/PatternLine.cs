using System.Collections.Immutable;

namespace DetailGen.Dxf.Entities;

/// <summary>One family of parallel lines in a fill: line k runs through <c>Base + k·Offset</c>, and its dashes start there. All numbers
/// are final, in drawing units and world axes.</summary>
/// <param name="Angle">Degrees from the x axis, counter-clockwise.</param>
/// <param name="Dashes">Positive for a dash, negative for a gap, 0 for a dot; empty for an unbroken line; at most six.</param>
public sealed record PatternLine(double Angle, DxfPoint Base, DxfPoint Offset, ImmutableArray<double> Dashes)
{
    /// <summary>A family given by what a designer thinks of: <paramref name="spacing"/> across the lines and <paramref name="shift"/>
    /// along them from one to the next.</summary>
    public static PatternLine Of(double angle, double spacing, double shift = 0, DxfPoint @base = default, params ImmutableArray<double> dashes) =>
        new(angle, @base, new DxfPoint(shift, spacing).Turned(angle), dashes);

    /// <summary>Distance between neighbouring lines, measured across them.</summary>
    public double Spacing => Math.Abs(Offset.Turned(-Angle).Y);

    /// <summary>Length after which the dashes repeat; 0 for an unbroken line.</summary>
    public double Period => Dashes.Sum(Math.Abs);

    /// <summary>The same lines, larger or smaller about the origin; a factor above 0.</summary>
    public PatternLine Scaled(double factor) =>
        this with { Base = factor * Base, Offset = factor * Offset, Dashes = [.. Dashes.Select(dash => factor * dash)] };

    /// <summary>The lines turned about a point by degrees, counter-clockwise.</summary>
    public PatternLine Turned(double degrees, DxfPoint about = default) =>
        this with { Angle = Angle + degrees, Base = about + (Base - about).Turned(degrees), Offset = Offset.Turned(degrees) };

    public PatternLine Moved(DxfPoint by) => this with { Base = Base + by };

    /// <summary>The lines mirrored at the upright line through x; dashes run the other way as their line does.</summary>
    public PatternLine Mirrored(double x = 0) =>
        this with { Angle = 180 - Angle, Base = new((2 * x) - Base.X, Base.Y), Offset = new(-Offset.X, Offset.Y) };
}
