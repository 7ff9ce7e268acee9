using DetailGen.Drawing.Fills;
using DetailGen.Drawing.Scenes;

namespace DetailGen.Drawing.Views;

/// <summary>A polyline with places along it, and lines laid beside it.</summary>
internal sealed class FacePath
{
    private readonly double[] _starts;

    public FacePath(IEnumerable<PaperPoint> points)
    {
        var kept = new List<PaperPoint>();
        foreach (var point in points)
        {
            if (kept.Count == 0 || (point - kept[^1]).Length > 0.002)
            {
                kept.Add(point);
            }
        }

        Points = kept;
        _starts = new double[kept.Count];
        for (var i = 1; i < kept.Count; i++)
        {
            _starts[i] = _starts[i - 1] + (kept[i] - kept[i - 1]).Length;
        }
    }

    public IReadOnlyList<PaperPoint> Points { get; }

    public double Length => _starts[^1];

    public int Pieces => Points.Count - 1;

    public double Start(int piece) => _starts[piece];

    public PaperPoint Direction(int piece) => Planes.Unit(Points[piece + 1] - Points[piece]);

    public PaperPoint At(double s)
    {
        var piece = 0;
        while (piece < Pieces - 1 && _starts[piece + 1] <= s)
        {
            piece++;
        }

        return Points[piece] + (s - _starts[piece]) * Direction(piece);
    }

    /// <summary>The part between two places.</summary>
    public FacePath Between(double from, double to) =>
        new([At(from), .. Points.Where((_, i) => _starts[i] > from + 1e-6 && _starts[i] < to - 1e-6), At(to)]);

    /// <summary>A line on the left at the profile's height plus <paramref name="extra"/>, with mitred corners.</summary>
    public FacePath Beside(Profile profile, double extra) => new(Stations(profile, extra).Select(station => station.Beside));

    /// <summary>The same line, each point with the place of the face it stands over.</summary>
    public List<(PaperPoint Face, PaperPoint Beside)> Stations(Profile profile, double extra)
    {
        var line = new List<(PaperPoint, PaperPoint)>();
        var turns = profile.Turns(0, Length);
        var corners = new PaperPoint[Points.Count];
        for (var i = 0; i < Points.Count; i++)
        {
            corners[i] = Corner(i, profile.At(_starts[i]) + extra);
        }

        line.Add((Points[0], corners[0]));
        for (var piece = 0; piece < Pieces; piece++)
        {
            var along = Direction(piece);
            var (low, high) = (Planes.Dot(corners[piece] - Points[piece], along), Planes.Dot(corners[piece + 1] - Points[piece], along));
            foreach (var s in turns)
            {
                var at = s - _starts[piece];
                if (s > _starts[piece] + 1e-6 && s < _starts[piece + 1] - 1e-6 && at > low + 1e-6 && at < high - 1e-6)
                {
                    line.Add((At(s), At(s) + (profile.At(s) + extra) * Planes.Left(along)));
                }
            }

            line.Add((Points[piece + 1], corners[piece + 1]));
        }

        return line;
    }

    // Limited like the lines themselves: a corner sharper than 30 degrees is cut short rather than sent far out.
    private PaperPoint Corner(int i, double height)
    {
        var before = Direction(Math.Max(0, i - 1));
        var after = Direction(Math.Min(i, Pieces - 1));
        var middle = Planes.Left(before) + Planes.Left(after);
        var reach = Planes.Dot(middle, middle) / 2;
        return Points[i] + height / Math.Max(reach, 0.15) * middle;
    }
}
