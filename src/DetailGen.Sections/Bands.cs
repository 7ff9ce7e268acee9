namespace DetailGen.Sections;

/// <summary>True bands of sheet materials: a strip on the left of a face, raised where it runs over sheets laid before.</summary>
public static class Bands
{
    /// <summary>A sheet closes gaps up to this width between itself and what lies under it; mm.</summary>
    private const double Slit = 2.2;

    /// <summary>Sheets thinner than this together leave none; mm.</summary>
    private const double Thick = 5;

    /// <summary>
    /// The strip of constant thickness on the left of an open polyline, mitred at outer corners and cut square at its ends; mm. Legs may be
    /// shorter than the strip is thick: it is the union of what stands on each.
    /// </summary>
    /// <exception cref="ArgumentException">Fewer than two points.</exception>
    public static Region Strip(IReadOnlyList<Point> face, double thickness)
    {
        var points = Clean(face);
        var legs = new List<Region>();
        for (var i = 1; i < points.Count; i++)
        {
            var (a, b) = (points[i - 1], points[i]);
            var out1 = thickness * (b - a).Unit.Left;
            legs.Add(Region.Polygon(a, b, b + out1, a + out1));
            if (i + 1 < points.Count && Point.Cross((b - a).Unit, (points[i + 1] - b).Unit) < -1e-6)
            {
                var out2 = thickness * (points[i + 1] - b).Unit.Left;
                var sum = out1 + out2;
                legs.Add(Region.Polygon(b, b + out2, b + (2 * thickness * thickness / Point.Dot(sum, sum) * sum), b + out1));
            }
        }

        return Region.Union(legs);
    }

    /// <summary>
    /// The band of a sheet on the left of its face, that climbs over the sheets beneath and hugs their ends, so that nothing is left between them.
    /// </summary>
    /// <param name="under">True bands of the sheets laid before.</param>
    /// <param name="lift">Their thicknesses together, mm: how far the band may be raised.</param>
    public static Region Lay(IReadOnlyList<Point> face, double thickness, IReadOnlyList<Region> under, double lift)
    {
        var strip = Strip(face, thickness);
        if (under.Count == 0)
        {
            return strip;
        }

        var beneath = Region.Union(under);
        var reach = Strip(face, thickness + lift);
        var raised = beneath.Grow(thickness).Intersect(reach);
        if (thickness + lift < Thick)
        {
            return strip.Union(raised).Minus(beneath);
        }

        // Where a thick sheet ends close to a corner, what climbs over it would leave a slit that no hand could make.
        var laid = strip.Union(raised).Union(beneath);
        var slits = laid.Grow(Slit / 2).Grow(-Slit / 2).Intersect(reach).Minus(laid);
        return (slits.Area > 0.1 ? laid.Union(slits) : laid).Minus(beneath);
    }

    /// <summary>The same line without repeated points and without corners on a straight.</summary>
    internal static IReadOnlyList<Point> Clean(IReadOnlyList<Point> line)
    {
        var kept = new List<Point>(line.Count);
        foreach (var point in line)
        {
            if (kept.Count > 0 && (point - kept[^1]).Length < 1e-6)
            {
                continue;
            }

            if (kept.Count > 1 && Point.Cross((kept[^1] - kept[^2]).Unit, (point - kept[^1]).Unit) is > -1e-9 and < 1e-9)
            {
                kept.RemoveAt(kept.Count - 1);
            }

            kept.Add(point);
        }

        return kept.Count >= 2 ? kept : throw new ArgumentException("A face needs two points that differ.", nameof(line));
    }
}
