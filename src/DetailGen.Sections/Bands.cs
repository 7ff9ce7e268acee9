namespace DetailGen.Sections;

/// <summary>True bands of sheet materials: a strip on the left of a face, raised where it runs over sheets laid before.</summary>
public static class Bands
{
    /// <summary>The strip of constant thickness on the left of an open polyline, mitred at its corners and cut square at its ends; mm.</summary>
    /// <exception cref="ArgumentException">Fewer than two points, or a leg too short for its mitres.</exception>
    public static Region Strip(IReadOnlyList<Point> face, double thickness)
    {
        var points = Clean(face);
        var outline = new List<Point>(points.Count * 2);
        outline.AddRange(points);
        for (var i = points.Count - 1; i >= 0; i--)
        {
            outline.Add(points[i] + thickness * Mitre(points, i));
        }

        return Region.Polygon([.. outline]);
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
        var raised = beneath.Grow(thickness).Intersect(Strip(face, thickness + lift));
        return strip.Union(raised).Minus(beneath);
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

    // The step from a corner to the corner of a parallel at distance one: both neighbours' normals project to one.
    private static Point Mitre(IReadOnlyList<Point> points, int at)
    {
        var before = at > 0 ? (points[at] - points[at - 1]).Unit.Left : (points[1] - points[0]).Unit.Left;
        var after = at < points.Count - 1 ? (points[at + 1] - points[at]).Unit.Left : before;
        var sum = before + after;
        return 2 / Point.Dot(sum, sum) * sum;
    }
}
