using DetailGen.Sections;

namespace DetailGen.Drawing.Views;

/// <summary>Whether a ring neither crosses nor touches itself.</summary>
internal static class Simple
{
    private const double Hair = 1e-3;

    public static bool Is(Point[] ring)
    {
        var count = ring.Length;
        for (var i = 0; i < count; i++)
        {
            var (a, b) = (ring[i], ring[(i + 1) % count]);
            if ((b - a).Length < Hair)
            {
                return false;
            }

            for (var j = i + 2; j < count; j++)
            {
                if (i == 0 && j == count - 1)
                {
                    continue;
                }

                if (Meet(a, b, ring[j], ring[(j + 1) % count]))
                {
                    return false;
                }
            }
        }

        return true;
    }

    private static bool Meet(Point a, Point b, Point c, Point d)
    {
        var (first, second) = (b - a, d - c);
        var (sideC, sideD) = (Point.Cross(first, c - a) / first.Length, Point.Cross(first, d - a) / first.Length);
        var (sideA, sideB) = (Point.Cross(second, a - c) / second.Length, Point.Cross(second, b - c) / second.Length);
        return Math.Max(sideC, sideD) >= -Hair && Math.Min(sideC, sideD) <= Hair && Math.Max(sideA, sideB) >= -Hair && Math.Min(sideA, sideB) <= Hair
            && Math.Min(a.X, b.X) <= Math.Max(c.X, d.X) + Hair && Math.Min(c.X, d.X) <= Math.Max(a.X, b.X) + Hair
            && Math.Min(a.Y, b.Y) <= Math.Max(c.Y, d.Y) + Hair && Math.Min(c.Y, d.Y) <= Math.Max(a.Y, b.Y) + Hair;
    }
}
