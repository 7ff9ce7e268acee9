using DetailGen.Drawing.Scenes;
using DetailGen.Sections;

namespace DetailGen.Drawing.Annotation;

/// <summary>What a straight line does to a shape.</summary>
/// <param name="Inside">Length within, mm.</param>
/// <param name="First">Share of the way at which the edge is met first, from 0 to 1; 2 if never.</param>
/// <param name="Flattest">Least angle between the line and an edge it crosses, degrees; 90 if none.</param>
internal readonly record struct Passage(double Inside, double First, double Flattest)
{
    internal static Passage None { get; } = new(0, 2, 90);
}

/// <summary>A part's visible outline as plain numbers, for the many quick questions of the layout. Left of everything is outside the building.</summary>
internal sealed class Shape
{
    private readonly double[][] _xs;
    private readonly double[][] _ys;

    internal Shape(NotedPart part, bool mirrored)
    {
        (Id, Look) = (part.Id, part.Look);
        FillAngles = [.. part.FillAngles];
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

    internal Passage Pass(PaperPoint from, PaperPoint to)
    {
        if (!Lines.Meets(Box, from, to))
        {
            return Passage.None;
        }

        Span<double> cuts = stackalloc double[64];
        var (count, flattest) = (0, 1.0);
        var (dx, dy) = (to.X - from.X, to.Y - from.Y);
        var length = Math.Sqrt(dx * dx + dy * dy);
        for (var ring = 0; ring < _xs.Length; ring++)
        {
            var (xs, ys) = (_xs[ring], _ys[ring]);
            for (int i = 0, j = xs.Length - 1; i < xs.Length; j = i++)
            {
                var (ex, ey) = (xs[i] - xs[j], ys[i] - ys[j]);
                var across = dx * ey - dy * ex;
                if (across == 0)
                {
                    continue;
                }

                var (ox, oy) = (xs[j] - from.X, ys[j] - from.Y);
                var along = (ox * ey - oy * ex) / across;
                var on = (ox * dy - oy * dx) / across;
                if (along >= 0 && along <= 1 && on >= 0 && on < 1 && count < cuts.Length)
                {
                    cuts[count++] = along;
                    flattest = Math.Min(flattest, Math.Abs(across) / (length * Math.Sqrt(ex * ex + ey * ey)));
                }
            }
        }

        cuts = cuts[..count];
        cuts.Sort();
        var (inside, last) = (0.0, 0.0);
        var within = Contains(from.X, from.Y);
        foreach (var cut in cuts)
        {
            inside += within ? cut - last : 0;
            (within, last) = (!within, cut);
        }

        inside += within ? 1 - last : 0;
        return new(inside * length, count == 0 ? 2 : cuts[0], count == 0 ? 90 : Math.Asin(flattest) * 180 / Math.PI);
    }

    /// <summary>Whether any of it lies in the box.</summary>
    internal bool Meets(PaperBox box)
    {
        if (!Box.Meets(box))
        {
            return false;
        }

        if (Contains((box.Left + box.Right) / 2, (box.Bottom + box.Top) / 2))
        {
            return true;
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
