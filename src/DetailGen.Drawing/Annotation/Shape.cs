using DetailGen.Drawing.Scenes;
using DetailGen.Sections;

namespace DetailGen.Drawing.Annotation;

/// <summary>Where a straight line crosses an edge.</summary>
/// <param name="At">Distance along the line, mm.</param>
/// <param name="Sine">Of the angle between the two.</param>
internal readonly record struct Cut(double At, double Sine)
{
    internal double Degrees => Math.Asin(Math.Min(1, Sine)) * 180 / Math.PI;
}

/// <summary>A part's visible outline as plain numbers, for the many quick questions of the layout. Left of everything is outside the building.</summary>
internal sealed class Shape
{
    private readonly double[][] _xs;
    private readonly double[][] _ys;
    private readonly (PaperPoint From, PaperPoint To)[] _joints;

    internal Shape(NotedPart part, bool mirrored)
    {
        (Id, Look) = (part.Id, part.Look);
        FillAngles = [.. part.FillAngles];
        _joints = [.. part.Joints.SelectMany(joint => joint.Points.Zip(joint.Points.Skip(1))).Select(line => (Turned(line.First, mirrored), Turned(line.Second, mirrored)))];
        var rings = new List<IReadOnlyList<Point>>();
        foreach (var piece in part.Visible.Pieces)
        {
            rings.Add(piece.Outline);
            rings.AddRange(piece.Holes);
        }

        var sign = mirrored ? -1 : 1;
        _xs = [.. rings.Select(ring => ring.Select(corner => sign * corner.X).ToArray())];
        _ys = [.. rings.Select(ring => ring.Select(corner => corner.Y).ToArray())];
        var box = part.Visible.Bounds;
        Box = mirrored ? new(-box.Right, box.Bottom, -box.Left, box.Top) : new(box.Left, box.Bottom, box.Right, box.Top);
    }

    internal const int MostCuts = 64;

    internal string Id { get; }

    internal Look Look { get; }

    internal double[] FillAngles { get; }

    internal PaperBox Box { get; }

    internal bool IsEmpty => _xs.Length == 0;

    internal bool Contains(double x, double y)
    {
        var inside = false;
        for (var ring = 0; ring < _xs.Length; ring++)
        {
            var (xs, ys) = (_xs[ring], _ys[ring]);
            for (int i = 0, j = xs.Length - 1; i < xs.Length; j = i++)
            {
                if (ys[i] > y != ys[j] > y && x < (xs[j] - xs[i]) * (y - ys[i]) / (ys[j] - ys[i]) + xs[i])
                {
                    inside = !inside;
                }
            }
        }

        return inside;
    }

    internal IEnumerable<(PaperPoint From, PaperPoint To)> Edges()
    {
        for (var ring = 0; ring < _xs.Length; ring++)
        {
            var (xs, ys) = (_xs[ring], _ys[ring]);
            for (int i = 0, j = xs.Length - 1; i < xs.Length; j = i++)
            {
                yield return (new(xs[j], ys[j]), new(xs[i], ys[i]));
            }
        }
    }

    internal double EdgeDistance(double x, double y)
    {
        var least = double.MaxValue;
        for (var ring = 0; ring < _xs.Length; ring++)
        {
            var (xs, ys) = (_xs[ring], _ys[ring]);
            for (int i = 0, j = xs.Length - 1; i < xs.Length; j = i++)
            {
                least = Math.Min(least, Lines.Distance(x, y, xs[j], ys[j], xs[i], ys[i]));
            }
        }

        return least;
    }

    /// <summary>How far a place within it lies off its edge and its joints.</summary>
    internal double Clearance(PaperPoint at)
    {
        var least = EdgeDistance(at.X, at.Y);
        foreach (var (from, to) in _joints)
        {
            least = Math.Min(least, Lines.Distance(at, from, to));
        }

        return least;
    }

    private static PaperPoint Turned(PaperPoint point, bool mirrored) => mirrored ? new(-point.X, point.Y) : point;

    /// <summary>Length of a straight line within, mm.</summary>
    internal double Inside(PaperPoint from, PaperPoint to)
    {
        var length = (to - from).Length;
        if (length == 0 || !Lines.Meets(Box, from, to))
        {
            return 0;
        }

        Span<Cut> cuts = stackalloc Cut[MostCuts];
        cuts = cuts[..Cuts(from, (1 / length) * (to - from), length, cuts)];
        var (inside, last, within) = (0.0, 0.0, Contains(from.X, from.Y));
        foreach (var cut in cuts)
        {
            inside += within ? cut.At - last : 0;
            (within, last) = (!within, cut.At);
        }

        return inside + (within ? length - last : 0);
    }

    /// <summary>Where a straight line crosses the edge, nearest first.</summary>
    /// <param name="way">Of length 1.</param>
    /// <returns>How many were found; more than <see cref="MostCuts"/> are not looked for.</returns>
    internal int Cuts(PaperPoint from, PaperPoint way, double length, Span<Cut> cuts)
    {
        var count = 0;
        for (var ring = 0; ring < _xs.Length; ring++)
        {
            var (xs, ys) = (_xs[ring], _ys[ring]);
            for (int i = 0, j = xs.Length - 1; i < xs.Length; j = i++)
            {
                var (ex, ey) = (xs[i] - xs[j], ys[i] - ys[j]);
                var across = way.X * ey - way.Y * ex;
                if (across == 0)
                {
                    continue;
                }

                var (ox, oy) = (xs[j] - from.X, ys[j] - from.Y);
                var at = (ox * ey - oy * ex) / across;
                var on = (ox * way.Y - oy * way.X) / across;
                if (at >= 0 && at <= length && on >= 0 && on < 1 && count < cuts.Length)
                {
                    cuts[count++] = new(at, Math.Abs(across) / Math.Sqrt(ex * ex + ey * ey));
                }
            }
        }

        cuts[..count].Sort((one, other) => one.At.CompareTo(other.At));
        return count;
    }

    /// <summary>Whether any of it lies in the box.</summary>
    internal bool Meets(PaperBox box)
    {
        if (!Box.Meets(box))
        {
            return false;
        }

        return Contains((box.Left + box.Right) / 2, (box.Bottom + box.Top) / 2) || EdgeMeets(box);
    }

    /// <summary>Whether the outline runs through a box.</summary>
    internal bool EdgeMeets(PaperBox box)
    {
        if (!Box.Meets(box))
        {
            return false;
        }

        for (var ring = 0; ring < _xs.Length; ring++)
        {
            var (xs, ys) = (_xs[ring], _ys[ring]);
            for (int i = 0, j = xs.Length - 1; i < xs.Length; j = i++)
            {
                if (Lines.Meets(box, new(xs[j], ys[j]), new(xs[i], ys[i])))
                {
                    return true;
                }
            }
        }

        return false;
    }

    /// <summary>Where a level line (or an upright one) runs inside, lesser ends first, in order.</summary>
    internal List<(double From, double To)> Spans(double at, bool level)
    {
        var cuts = new List<double>();
        for (var ring = 0; ring < _xs.Length; ring++)
        {
            var (us, vs) = level ? (_xs[ring], _ys[ring]) : (_ys[ring], _xs[ring]);
            for (int i = 0, j = us.Length - 1; i < us.Length; j = i++)
            {
                if (vs[i] > at != vs[j] > at)
                {
                    cuts.Add((us[j] - us[i]) * (at - vs[i]) / (vs[j] - vs[i]) + us[i]);
                }
            }
        }

        cuts.Sort();
        var spans = new List<(double From, double To)>();
        for (var i = 0; i + 1 < cuts.Count; i += 2)
        {
            if (cuts[i + 1] - cuts[i] > 1e-6)
            {
                spans.Add((cuts[i], cuts[i + 1]));
            }
        }

        return spans;
    }
}
