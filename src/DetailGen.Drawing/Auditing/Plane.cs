using DetailGen.Drawing.Scenes;

namespace DetailGen.Drawing.Auditing;

/// <summary>Plane geometry of the audit, written apart from that of the placing so that no mistake is shared.</summary>
internal static class Plane
{
    internal static PaperPoint Middle(PaperBox box) => new((box.Left + box.Right) / 2, (box.Bottom + box.Top) / 2);

    /// <summary>The lesser of the two ways in which boxes overlap, mm; negative where they are apart.</summary>
    internal static double Depth(PaperBox a, PaperBox b) =>
        Math.Min(Math.Min(a.Right, b.Right) - Math.Max(a.Left, b.Left), Math.Min(a.Top, b.Top) - Math.Max(a.Bottom, b.Bottom));

    internal static double Gap(PaperBox a, PaperBox b)
    {
        var (x, y) = (Math.Max(a.Left, b.Left) - Math.Min(a.Right, b.Right), Math.Max(a.Bottom, b.Bottom) - Math.Min(a.Top, b.Top));
        return double.Hypot(Math.Max(0, x), Math.Max(0, y));
    }

    /// <summary>The middle of what two boxes share, or of what is between them.</summary>
    internal static PaperPoint Between(PaperBox a, PaperBox b) => new(
        (Math.Max(a.Left, b.Left) + Math.Min(a.Right, b.Right)) / 2, (Math.Max(a.Bottom, b.Bottom) + Math.Min(a.Top, b.Top)) / 2);

    /// <summary>How far a box reaches out of a zone, mm; 0 or less where it does not.</summary>
    internal static double Beyond(PaperBox box, PaperBox zone) =>
        Math.Max(Math.Max(zone.Left - box.Left, box.Right - zone.Right), Math.Max(zone.Bottom - box.Bottom, box.Top - zone.Top));

    internal static bool IsNear(PaperBox box, PaperPoint a, PaperPoint b, double reach) =>
        Math.Max(a.X, b.X) > box.Left - reach && Math.Min(a.X, b.X) < box.Right + reach && Math.Max(a.Y, b.Y) > box.Bottom - reach && Math.Min(a.Y, b.Y) < box.Top + reach;

    /// <summary>White between a box and a line without width, and where: negative by how deep the line lies in the box.</summary>
    internal static (double White, PaperPoint At) White(PaperBox box, PaperPoint a, PaperPoint b)
    {
        if (Inside(box, a, b) is { } piece)
        {
            var at = 0.5 * (piece.From + piece.To);
            return (-Math.Max(Depth(box, at), Math.Max(Depth(box, piece.From), Depth(box, piece.To))), at);
        }

        PaperPoint[] corners = [new(box.Left, box.Bottom), new(box.Right, box.Bottom), new(box.Right, box.Top), new(box.Left, box.Top)];
        return Enumerable.Range(0, 4).Select(i => Distance(corners[i], corners[(i + 1) % 4], a, b)).MinBy(one => one.Distance);
    }

    /// <summary>Distance of two lines and the place where they are nearest; 0 where they cross.</summary>
    internal static (double Distance, PaperPoint At) Distance(PaperPoint a, PaperPoint b, PaperPoint c, PaperPoint d)
    {
        var (p, q) = (b - a, d - c);
        var cross = p.X * q.Y - p.Y * q.X;
        if (cross != 0)
        {
            var r = c - a;
            var (s, t) = ((r.X * q.Y - r.Y * q.X) / cross, (r.X * p.Y - r.Y * p.X) / cross);
            if (s is >= 0 and <= 1 && t is >= 0 and <= 1)
            {
                return (0, a + s * p);
            }
        }

        return new[] { Foot(a, c, d), Foot(b, c, d), Foot(c, a, b), Foot(d, a, b) }.MinBy(one => one.Distance);
    }

    /// <summary>Whether a box and an area with holes share anything.</summary>
    internal static bool Meets(PaperBox box, IReadOnlyList<PaperPoint> outline, IReadOnlyList<IReadOnlyList<PaperPoint>> holes)
    {
        var (meets, inside) = (Crosses(box, outline), Around(outline, Middle(box)));
        for (var i = 0; i < holes.Count && !meets; i++)
        {
            (meets, inside) = (Crosses(box, holes[i]), inside && !Around(holes[i], Middle(box)));
        }

        return meets || inside;
    }

    private static bool Crosses(PaperBox box, IReadOnlyList<PaperPoint> ring)
    {
        for (var i = 0; i < ring.Count; i++)
        {
            if (Inside(box, ring[i], ring[i + 1 < ring.Count ? i + 1 : 0]) is not null)
            {
                return true;
            }
        }

        return false;
    }

    private static double Depth(PaperBox box, PaperPoint at) => Math.Min(Math.Min(at.X - box.Left, box.Right - at.X), Math.Min(at.Y - box.Bottom, box.Top - at.Y));

    // What of a line lies within a box, by clipping at its four sides in turn.
    private static (PaperPoint From, PaperPoint To)? Inside(PaperBox box, PaperPoint a, PaperPoint b)
    {
        var (low, high, way) = (0.0, 1.0, b - a);
        if (!Clip(a.X, way.X, box.Left, box.Right) || !Clip(a.Y, way.Y, box.Bottom, box.Top))
        {
            return null;
        }

        return low <= high ? (a + low * way, a + high * way) : null;

        bool Clip(double start, double step, double least, double most)
        {
            if (step == 0)
            {
                return start >= least && start <= most;
            }

            var (enter, leave) = step > 0 ? ((least - start) / step, (most - start) / step) : ((most - start) / step, (least - start) / step);
            (low, high) = (Math.Max(low, enter), Math.Min(high, leave));
            return true;
        }
    }

    private static (double Distance, PaperPoint At) Foot(PaperPoint point, PaperPoint a, PaperPoint b)
    {
        var way = b - a;
        var square = way.X * way.X + way.Y * way.Y;
        var along = square == 0 ? 0 : Math.Clamp(((point.X - a.X) * way.X + (point.Y - a.Y) * way.Y) / square, 0, 1);
        var foot = a + along * way;
        return ((point - foot).Length, 0.5 * (point + foot));
    }

    // Even number of sides to the right: outside.
    private static bool Around(IReadOnlyList<PaperPoint> ring, PaperPoint point)
    {
        var odd = false;
        for (var i = 0; i < ring.Count; i++)
        {
            var (a, b) = (ring[i], ring[i + 1 < ring.Count ? i + 1 : 0]);
            if (a.Y > point.Y != b.Y > point.Y && point.X < a.X + (point.Y - a.Y) / (b.Y - a.Y) * (b.X - a.X))
            {
                odd = !odd;
            }
        }

        return odd;
    }
}
