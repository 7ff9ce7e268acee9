using DetailGen.Drawing.Fills;
using DetailGen.Drawing.Scenes;

namespace DetailGen.Drawing.Views;

/// <summary>A polyline with places along it, and lines laid beside it.</summary>
internal sealed class FacePath
{
    // cos 25°: a sharper turn is a corner, in whose mitre a sheet may change its height.
    private const double Bend = 0.906, Hair = 1e-7;

    private readonly double[] _starts;

    public FacePath(IEnumerable<PaperPoint> points)
    {
        var kept = new List<PaperPoint>();
        foreach (var point in points)
        {
            if (kept.Count > 0 && (point - kept[^1]).Length <= 0.002)
            {
                continue;
            }

            // A point on a straight would only come near the turns of a joggle.
            if (kept.Count > 1 && Planes.Unit(kept[^1] - kept[^2]) is var along && Math.Abs(Planes.Cross(along, Planes.Unit(point - kept[^1]))) < 1e-4 && Planes.Dot(along, point - kept[^1]) > 0)
            {
                kept.RemoveAt(kept.Count - 1);
            }

            kept.Add(point);
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

    /// <summary>The same line, each point with the place over which it stands on a parallel at the height <paramref name="low"/>.</summary>
    public List<(PaperPoint Low, PaperPoint Beside)> Stations(Profile profile, double extra, double low = 0)
    {
        var line = new List<(PaperPoint, PaperPoint)>();
        double Before(int i) => profile.At(_starts[i] - (i == 0 ? 0 : Hair)) + extra;
        double After(int i) => profile.At(_starts[i] + (i == Pieces ? 0 : Hair)) + extra;
        var corners = new PaperPoint[Points.Count];
        for (var i = 0; i < Points.Count; i++)
        {
            corners[i] = Corner(i, Before(i), After(i));
        }

        Unfold(corners, Before, After);
        line.Add((Corner(0, low, low), corners[0]));
        for (var piece = 0; piece < Pieces; piece++)
        {
            var along = Direction(piece);
            var (first, last) = (Planes.Dot(corners[piece] - Points[piece], along), Planes.Dot(corners[piece + 1] - Points[piece], along));
            foreach (var s in profile.Turns(_starts[piece], _starts[piece + 1]))
            {
                var at = s - _starts[piece];
                if (at > first + 1e-6 && at < last - 1e-6)
                {
                    line.Add((At(s) + low * Planes.Left(along), At(s) + (profile.At(s) + extra) * Planes.Left(along)));
                }
            }

            line.Add((Corner(piece + 1, low, low), corners[piece + 1]));
        }

        return line;
    }

    // A piece shorter than its two mitres take, such as the slope of a small fillet under a thick sheet, would be run backwards and stick out as a spike: the line beside it
    // passes it over, from its neighbour before straight to the one after.
    private void Unfold(PaperPoint[] corners, Func<int, double> before, Func<int, double> after)
    {
        var passed = new bool[Pieces];
        for (var piece = 1; piece < Pieces - 1; piece++)
        {
            if (passed[piece] || Planes.Dot(corners[piece + 1] - corners[piece], Direction(piece)) >= -1e-6)
            {
                continue;
            }

            var (from, to) = (piece - 1, piece + 1);
            while (from > 0 && passed[from])
            {
                from--;
            }

            while (to < Pieces - 1 && passed[to])
            {
                to++;
            }

            var (a, b) = (Direction(from), Direction(to));
            if (Math.Abs(Planes.Cross(a, b)) < 0.25)
            {
                continue;
            }

            var (first, second) = (Points[from + 1] + before(from + 1) * Planes.Left(a), Points[to] + after(to) * Planes.Left(b));
            var meeting = first + Planes.Cross(second - first, b) / Planes.Cross(a, b) * a;
            Array.Fill(corners, meeting, from + 1, to - from);
            Array.Fill(passed, true, from + 1, to - from - 1);
            piece = Math.Max(0, from - 1); // a neighbour has become shorter by it
        }
    }

    /// <summary>The nearest corners around a stretch: what lies between bends only a little.</summary>
    public (double From, double To) Smooth(double from, double to)
    {
        var (low, high) = (0.0, Length);
        for (var i = 1; i < Pieces; i++)
        {
            if (Planes.Dot(Direction(i - 1), Direction(i)) < Bend)
            {
                if (_starts[i] <= from + 0.01)
                {
                    low = Math.Max(low, _starts[i]);
                }
                else if (_starts[i] >= to - 0.01)
                {
                    high = Math.Min(high, _starts[i]);
                }
            }
        }

        return (low, high);
    }

    /// <summary>The stretches between corners.</summary>
    public IEnumerable<FacePath> Straights()
    {
        double from = 0;
        for (var i = 1; i < Pieces; i++)
        {
            if (Planes.Dot(Direction(i - 1), Direction(i)) < Bend)
            {
                yield return Between(from, _starts[i]);
                from = _starts[i];
            }
        }

        yield return Between(from, Length);
    }

    /// <summary>A lap cut at the corners within it.</summary>
    public IEnumerable<Lap> BetweenCorners(Lap lap)
    {
        var from = lap.From;
        for (var i = 1; i < Pieces; i++)
        {
            if (_starts[i] > from + 0.01 && _starts[i] < lap.To - 0.01 && Planes.Dot(Direction(i - 1), Direction(i)) < Bend)
            {
                yield return lap with { From = from, To = _starts[i] };
                from = _starts[i];
            }
        }

        yield return lap with { From = from };
    }

    // Where both lines beside the corner meet, each at its own height; nearly straight corners have one height only.
    private PaperPoint Corner(int i, double before, double after)
    {
        var (a, b) = (Planes.Left(Direction(Math.Max(0, i - 1))), Planes.Left(Direction(Math.Min(i, Pieces - 1))));
        var cross = Planes.Cross(a, b);
        if (Planes.Dot(a, b) >= Bend || Math.Abs(cross) < 0.25)
        {
            var middle = a + b;
            return Points[i] + Math.Max(before, after) / Math.Max(Planes.Dot(middle, middle) / 2, 0.15) * middle;
        }

        return Points[i] + 1 / cross * new PaperPoint(before * b.Y - after * a.Y, after * a.X - before * b.X);
    }
}
