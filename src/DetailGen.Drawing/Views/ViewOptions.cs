using DetailGen.Sections;

namespace DetailGen.Drawing.Views;

/// <summary>How a section is to be drawn.</summary>
/// <param name="Scale">s of 1:s.</param>
/// <param name="Window">Where the drawing breaks off, in model mm, unmirrored. Only sides on which a construction runs on cut anything.</param>
/// <param name="Mirror">Reflected before anything is made; fill angles stay.</param>
public sealed record ViewOptions(double Scale, Bounds Window, bool Mirror = false)
{
    /// <summary>Only what lies within, without break lines; null for the whole.</summary>
    public Disc? Only { get; init; }

    /// <summary>Parts that are left out; null for none.</summary>
    public Predicate<Part>? Hidden { get; init; }
}

/// <summary>A round piece of the section, model mm, unmirrored.</summary>
public readonly record struct Disc(Point Centre, double Radius)
{
    private const int Sides = 180;

    internal Region Region
    {
        get
        {
            var (centre, radius) = this;
            return Region.Polygon([.. Enumerable.Range(0, Sides).Select(i => Math.SinCos(2 * Math.PI * i / Sides)).Select(way => centre + radius * new Point(way.Cos, way.Sin))]);
        }
    }
}
