using DetailGen.Drawing.Scenes;

namespace DetailGen.Drawing.Fills;

/// <summary>Plane geometry on paper that fills, edges and bands share.</summary>
public static class Planes
{
    public static double Dot(PaperPoint a, PaperPoint b) => a.X * b.X + a.Y * b.Y;

    /// <summary>Positive where b lies to the left of a.</summary>
    public static double Cross(PaperPoint a, PaperPoint b) => a.X * b.Y - a.Y * b.X;

    /// <summary>Turned a quarter anticlockwise.</summary>
    public static PaperPoint Left(PaperPoint a) => new(-a.Y, a.X);

    public static PaperPoint Unit(PaperPoint a) => 1 / a.Length * a;

    /// <summary>The direction at an angle in degrees.</summary>
    public static PaperPoint Along(double degrees) => new(Math.Cos(degrees * Math.PI / 180), Math.Sin(degrees * Math.PI / 180));

    /// <summary>Degrees, from 0 up to but not including 180.</summary>
    public static double Angle(PaperPoint direction) => Turned(Math.Atan2(direction.Y, direction.X) * 180 / Math.PI);

    /// <summary>The same undirected angle from 0 up to but not including 180.</summary>
    public static double Turned(double degrees) => Math.Round(degrees - 180 * Math.Floor(degrees / 180), 9) is var angle && angle >= 180 ? 0 : angle;

    /// <summary>From a point to a straight piece.</summary>
    public static double Distance(PaperPoint point, PaperPoint a, PaperPoint b)
    {
        var d = b - a;
        var square = Dot(d, d);
        var along = square < 1e-18 ? 0 : Math.Clamp(Dot(point - a, d) / square, 0, 1);
        return (point - (a + along * d)).Length;
    }

    public static double Length(IReadOnlyList<PaperPoint> line)
    {
        double sum = 0;
        for (var i = 1; i < line.Count; i++)
        {
            sum += (line[i] - line[i - 1]).Length;
        }

        return sum;
    }
}
