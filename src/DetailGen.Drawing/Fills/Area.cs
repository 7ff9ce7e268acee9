using DetailGen.Drawing.Scenes;
using DetailGen.Sections;

namespace DetailGen.Drawing.Fills;

/// <summary>The rings of a region on paper, laid out for cutting many strokes; even-odd, so holes need no mark.</summary>
public sealed class Area
{
    private readonly PaperPoint[][] _rings;

    private Area(PaperPoint[][] rings)
    {
        _rings = rings;
        var box = new PaperBox(double.MaxValue, double.MaxValue, double.MinValue, double.MinValue);
        foreach (var ring in rings)
        {
            foreach (var point in ring)
            {
                box = box.With(new PaperBox(point.X, point.Y, point.X, point.Y));
            }
        }

        Box = box;
    }

    /// <summary>Around all corners, mm on paper.</summary>
    public PaperBox Box { get; }

    public IReadOnlyList<IReadOnlyList<PaperPoint>> Rings => _rings;

    public bool IsEmpty => _rings.Length == 0;

    /// <summary>Of a region whose coordinates are paper mm.</summary>
    public static Area Of(Region region) => new(
    [
        .. region.Pieces.SelectMany(piece => piece.Holes.Prepend(piece.Outline))
            .Select(ring => ring.Select(corner => new PaperPoint(corner.X, corner.Y)).ToArray()),
    ]);

    public static Area Of(Piece piece) => new(
        [.. piece.Holes.Prepend(piece.Outline).Select(ring => ring.Select(corner => new PaperPoint(corner.X, corner.Y)).ToArray())]);

    public static Area Of(IReadOnlyList<PaperPoint> outline, IReadOnlyList<IReadOnlyList<PaperPoint>> holes) =>
        new([.. holes.Prepend(outline).Select(ring => ring.ToArray())]);

    public bool Contains(PaperPoint point)
    {
        if (point.X < Box.Left || point.X > Box.Right || point.Y < Box.Bottom || point.Y > Box.Top)
        {
            return false;
        }

        var inside = false;
        foreach (var ring in _rings)
        {
            for (int i = 0, j = ring.Length - 1; i < ring.Length; j = i++)
            {
                if ((ring[i].Y > point.Y) != (ring[j].Y > point.Y)
                    && point.X < (ring[j].X - ring[i].X) * (point.Y - ring[i].Y) / (ring[j].Y - ring[i].Y) + ring[i].X)
                {
                    inside = !inside;
                }
            }
        }

        return inside;
    }

    /// <summary>Distance to the nearest edge, from inside or out.</summary>
    public double EdgeDistance(PaperPoint point)
    {
        var least = double.MaxValue;
        foreach (var ring in _rings)
        {
            for (int i = 0, j = ring.Length - 1; i < ring.Length; j = i++)
            {
                least = Math.Min(least, Planes.Distance(point, ring[j], ring[i]));
            }
        }

        return least;
    }

    /// <summary>The parts of a straight stroke that lie inside, as places along it from 0 to 1, in order.</summary>
    public List<(double From, double To)> Inside(PaperPoint a, PaperPoint b)
    {
        var pieces = new List<(double From, double To)>();
        var d = b - a;
        if (d.Length < 1e-9 || Math.Max(a.X, b.X) < Box.Left || Math.Min(a.X, b.X) > Box.Right || Math.Max(a.Y, b.Y) < Box.Bottom || Math.Min(a.Y, b.Y) > Box.Top)
        {
            return pieces;
        }

        // Crossings of the endless line, half open at corners, so that their number is even whatever it passes through.
        var crossings = new List<double>();
        foreach (var ring in _rings)
        {
            var before = Planes.Cross(d, ring[^1] - a);
            var last = ring[^1];
            foreach (var corner in ring)
            {
                var side = Planes.Cross(d, corner - a);
                if ((before >= 0) != (side >= 0))
                {
                    var at = last + before / (before - side) * (corner - last);
                    crossings.Add(Planes.Dot(at - a, d) / Planes.Dot(d, d));
                }

                (before, last) = (side, corner);
            }
        }

        crossings.Sort();
        for (var i = 0; i + 1 < crossings.Count; i += 2)
        {
            var (from, to) = (Math.Max(0, crossings[i]), Math.Min(1, crossings[i + 1]));
            if (to - from > 1e-9)
            {
                pieces.Add((from, to));
            }
        }

        return pieces;
    }

    /// <summary>The runs of a polyline that lie inside, none shorter than <paramref name="least"/> mm.</summary>
    public IEnumerable<PaperPoint[]> Clip(IReadOnlyList<PaperPoint> line, double least) => Runs(line).Where(run => Planes.Length(run) >= least);

    private IEnumerable<PaperPoint[]> Runs(IReadOnlyList<PaperPoint> line)
    {
        var run = new List<PaperPoint>();
        for (var i = 0; i + 1 < line.Count; i++)
        {
            var (a, b) = (line[i], line[i + 1]);
            var pieces = Inside(a, b);
            if (pieces.Count == 0 && run.Count > 0)
            {
                yield return [.. run];
                run.Clear();
            }

            foreach (var (from, to) in pieces)
            {
                if (from > 1e-6 || run.Count == 0)
                {
                    if (run.Count > 0)
                    {
                        yield return [.. run];
                    }

                    run.Clear();
                    run.Add(a + from * (b - a));
                }

                run.Add(a + to * (b - a));
                if (to < 1 - 1e-6)
                {
                    yield return [.. run];
                    run.Clear();
                }
            }
        }

        if (run.Count > 0)
        {
            yield return [.. run];
        }
    }
}
