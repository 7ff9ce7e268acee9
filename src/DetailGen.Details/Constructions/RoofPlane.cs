using DetailGen.Sections;

namespace DetailGen.Details.Constructions;

/// <summary>
/// The finished surface of a roof laid to falls: through y = 0 at the face of the upstand, straight over the length of the fall, level beyond.
/// Layers are set out vertically from it.
/// </summary>
/// <param name="Datum">x of the upstand's face, mm.</param>
/// <param name="Ratio">n of 1:n.</param>
/// <param name="Rises">+1 where the roof rises from the wall, −1 where it falls away.</param>
/// <param name="Run">Length of the fall, mm.</param>
public sealed record RoofPlane(double Datum, double Ratio, int Rises, double Run)
{
    /// <summary>x of the other end of the fall, mm.</summary>
    public double End => Datum + Run;

    /// <summary>Level of the surface at a station; mm.</summary>
    public double At(double x) => Rises * Math.Min(x - Datum, Run) / Ratio;

    /// <summary>The surface from one station to another, moved by a level; left to right.</summary>
    public IReadOnlyList<Point> Line(double from, double to, double by)
    {
        var line = new List<Point> { new(from, At(from) + by) };
        if (End > from && End < to)
        {
            line.Add(new(End, At(End) + by));
        }

        line.Add(new(to, At(to) + by));
        return line;
    }

    /// <summary>What lies between two surfaces parallel to this one, given by their levels at the datum; mm.</summary>
    public Region Band(double from, double to, double bottom, double top) =>
        top - bottom < 0.001 || to - from < 0.001
            ? Region.Empty
            : Region.Polygon([.. Line(from, to, bottom), .. Line(from, to, top).Reverse()]);

    /// <summary>What lies between a level and the surface moved by a level; mm.</summary>
    public Region Above(double from, double to, double level, double top) =>
        to - from < 0.001 ? Region.Empty : Region.Polygon([new(from, level), new(to, level), .. Line(from, to, top).Reverse()]);
}
