using DetailGen.Drawing.Scenes;

namespace DetailGen.Drawing.Annotation;

/// <summary>Plane geometry of straight lines and upright boxes.</summary>
internal static class Lines
{
    /// <summary>Boxes of no width meet where they are so near, mm.</summary>
    internal const double Touch = 1e-6;

    internal static double Distance(double x, double y, double ax, double ay, double bx, double by)
    {
        var (dx, dy) = (bx - ax, by - ay);
        var square = dx * dx + dy * dy;
        var along = square == 0 ? 0 : Math.Clamp(((x - ax) * dx + (y - ay) * dy) / square, 0, 1);
        var (ex, ey) = (x - ax - along * dx, y - ay - along * dy);
        return Math.Sqrt(ex * ex + ey * ey);
    }

    internal static double Distance(PaperPoint point, PaperPoint a, PaperPoint b) => Distance(point.X, point.Y, a.X, a.Y, b.X, b.Y);

    internal static double Distance(PaperPoint a, PaperPoint b, PaperPoint c, PaperPoint d) =>
        Cross(a, b, c, d) ? 0 : Math.Min(Math.Min(Distance(a, c, d), Distance(b, c, d)), Math.Min(Distance(c, a, b), Distance(d, a, b)));

    /// <summary>Whether two lines come nearer to each other than the gap.</summary>
    internal static bool Near(PaperPoint a, PaperPoint b, PaperPoint c, PaperPoint d, double gap) =>
        Math.Min(a.X, b.X) - Math.Max(c.X, d.X) < gap && Math.Min(c.X, d.X) - Math.Max(a.X, b.X) < gap
        && Math.Min(a.Y, b.Y) - Math.Max(c.Y, d.Y) < gap && Math.Min(c.Y, d.Y) - Math.Max(a.Y, b.Y) < gap
        && Distance(a, b, c, d) < gap;

    internal static bool Cross(PaperPoint a, PaperPoint b, PaperPoint c, PaperPoint d)
    {
        var (p, q) = (Turn(a, b, c), Turn(a, b, d));
        var (r, s) = (Turn(c, d, a), Turn(c, d, b));
        return ((p > 0 && q < 0) || (p < 0 && q > 0)) && ((r > 0 && s < 0) || (r < 0 && s > 0));
    }

    /// <summary>Whether the line comes into the box; touching its edge counts.</summary>
    internal static bool Meets(PaperBox box, PaperPoint a, PaperPoint b)
    {
        if (Math.Max(a.X, b.X) < box.Left || Math.Min(a.X, b.X) > box.Right || Math.Max(a.Y, b.Y) < box.Bottom || Math.Min(a.Y, b.Y) > box.Top)
        {
            return false;
        }

        // Clipping by the four sides in turn: what is left of the line's way.
        var (low, high) = (0.0, 1.0);
        return Clip(a.X, b.X - a.X, box.Left, box.Right, ref low, ref high) && Clip(a.Y, b.Y - a.Y, box.Bottom, box.Top, ref low, ref high);
    }

    /// <summary>Angle between two lines, 0 to 90 degrees.</summary>
    internal static double Between(double first, double second)
    {
        var apart = Math.Abs(first - second) % 180;
        return Math.Min(apart, 180 - apart);
    }

    internal static double Angle(PaperPoint a, PaperPoint b) => Math.Atan2(b.Y - a.Y, b.X - a.X) * 180 / Math.PI;

    internal static double Gap(PaperBox a, PaperBox b)
    {
        var across = Math.Max(0, Math.Max(a.Left - b.Right, b.Left - a.Right));
        var up = Math.Max(0, Math.Max(a.Bottom - b.Top, b.Bottom - a.Top));
        return Math.Sqrt(across * across + up * up);
    }

    /// <summary>How far along a way (of length 1) it comes nearer than the gap to a straight line; far beyond any paper where it never does.</summary>
    internal static double Reach(PaperPoint from, PaperPoint way, PaperPoint a, PaperPoint b, double gap)
    {
        const double Never = 1e9;
        if (gap > 0 && Distance(from, a, b) < gap)
        {
            return 0;
        }

        var line = b - a;
        var length = line.Length;
        var reach = Math.Min(ReachRound(from, way, a, gap), ReachRound(from, way, b, gap));
        var across = way.Y * line.X - way.X * line.Y;
        if (length > 0 && across != 0)
        {
            // The offset of the line on the side from which the way comes.
            var off = ((from.Y - a.Y) * line.X - (from.X - a.X) * line.Y) / length;
            var at = (Math.Sign(off) * gap - off) * length / across;
            var on = ((from.X + at * way.X - a.X) * line.X + (from.Y + at * way.Y - a.Y) * line.Y) / length;
            reach = at >= 0 && on >= 0 && on <= length ? Math.Min(reach, at) : reach;
        }

        return reach;

        static double ReachRound(PaperPoint from, PaperPoint way, PaperPoint centre, double radius)
        {
            var (x, y) = (from.X - centre.X, from.Y - centre.Y);
            var along = x * way.X + y * way.Y;
            var under = along * along - (x * x + y * y - radius * radius);
            return radius > 0 && under >= 0 && -along - Math.Sqrt(under) is >= 0 and var at ? at : Never;
        }
    }

    /// <summary>The same for a box.</summary>
    internal static double Reach(PaperPoint from, PaperPoint way, PaperBox box)
    {
        const double Never = 1e9;
        var (low, high) = (0.0, Never);
        return Clip(from.X, way.X, box.Left, box.Right, ref low, ref high) && Clip(from.Y, way.Y, box.Bottom, box.Top, ref low, ref high) ? low : Never;
    }

    private static double Turn(PaperPoint a, PaperPoint b, PaperPoint c) => (b.X - a.X) * (c.Y - a.Y) - (b.Y - a.Y) * (c.X - a.X);

    private static bool Clip(double start, double way, double least, double most, ref double low, ref double high)
    {
        if (way == 0)
        {
            return start >= least && start <= most;
        }

        var (a, b) = ((least - start) / way, (most - start) / way);
        low = Math.Max(low, Math.Min(a, b));
        high = Math.Min(high, Math.Max(a, b));
        return low <= high;
    }
}
