using DetailGen.Sections;

namespace DetailGen.Analysis.Fit;

/// <summary>A place where cut parts overlap, or where nothing is.</summary>
/// <param name="Parts">The two that overlap, or those around the gap; ids in build order.</param>
/// <param name="Width">Of the overlap or gap, mm: area over half its outline, so about the width of a sliver.</param>
public sealed record Misfit(bool Overlaps, IReadOnlyList<string> Parts, Point At, double Width);

/// <summary>
/// Cut parts fill the section without overlap and without a gap that is no part. A gap is a hole in what they cover together, or a slit at its edge
/// that closes when all is grown by a little. What is open to the weather and wider than the reach of a slit is outside.
/// </summary>
public static class Tiling
{
    /// <summary>Overlaps and gaps up to this width are rounding; mm.</summary>
    public const double Slack = 0.05;

    /// <summary>Slits are looked for up to this width; drips and clearances behind flashings are wider; mm.</summary>
    public const double Slit = 2;

    public static IReadOnlyList<Misfit> Check(Section section)
    {
        var cut = section.Parts.Where(part => part.Presence == Presence.Cut).ToArray();
        return [.. Overlaps(cut), .. Gaps(cut)];
    }

    private static IEnumerable<Misfit> Overlaps(Part[] parts)
    {
        for (var i = 0; i < parts.Length; i++)
        {
            for (var j = i + 1; j < parts.Length; j++)
            {
                var (a, b) = (parts[i].Region.Bounds, parts[j].Region.Bounds);
                if (!Deeply(a, b) || !parts[i].Region.Overlaps(parts[j].Region))
                {
                    continue;
                }

                var shared = parts[i].Region.Intersect(parts[j].Region);
                foreach (var piece in Wide(shared))
                {
                    yield return new(true, [parts[i].Id, parts[j].Id], piece.At, piece.Width);
                }
            }
        }
    }

    private static IEnumerable<Misfit> Gaps(Part[] parts)
    {
        var covered = Region.Union(parts.Select(part => part.Region));
        var holes = covered.Pieces.SelectMany(piece => piece.Holes).Select(hole => Region.Polygon([.. hole]));
        var slits = covered.Grow(Slit / 2).Grow(-Slit / 2).Minus(covered);
        foreach (var gap in holes.Append(slits).SelectMany(Wide))
        {
            var around = parts.Where(part => part.Region.Bounds.Grow(1).Contains(gap.At) && part.Region.Distance(gap.At) < 5);
            yield return new(false, [.. around.Select(part => part.Id)], gap.At, gap.Width);
        }
    }

    private static bool Deeply(Bounds a, Bounds b) =>
        Math.Min(a.Right, b.Right) - Math.Max(a.Left, b.Left) > Slack && Math.Min(a.Top, b.Top) - Math.Max(a.Bottom, b.Bottom) > Slack;

    // Area over half the outline is the width of a sliver; a square counts with half its side, which does no harm at this size.
    private static IEnumerable<(Point At, double Width)> Wide(Region region)
    {
        foreach (var piece in region.Pieces)
        {
            var outline = 0.0;
            var area = 0.0;
            for (var i = 0; i < piece.Outline.Count; i++)
            {
                var (a, b) = (piece.Outline[i], piece.Outline[(i + 1) % piece.Outline.Count]);
                outline += (b - a).Length;
                area += Point.Cross(a, b) / 2;
            }

            var width = 2 * area / outline;
            if (width > Slack)
            {
                yield return (Region.Polygon([.. piece.Outline]).Heart(), width);
            }
        }
    }
}
