using DetailGen.Sections;

namespace DetailGen.Drawing.Views;

/// <summary>
/// White between bands that come too near at a corner or an end, where stacking alone does not keep them apart: the sheet beneath gives way along the edge of the one above,
/// but is never cut through and keeps most of its body, so that the water line still runs.
/// </summary>
internal static class Parting
{
    /// <summary>A little more than the least gap, so that rounding does not eat it.</summary>
    private const double White = Faults.LeastGap + 0.01;

    private const double LeastLeft = 0.7;

    /// <summary>mm²; what is left over in smaller pieces is not seen.</summary>
    private const double Sliver = 0.15;

    internal static IReadOnlyList<LaidSheet> Of(List<LaidSheet> laid)
    {
        var whole = laid.Select(sheet => sheet.Body.Area).ToArray();
        for (var upper = 1; upper < laid.Count; upper++)
        {
            for (var lower = 0; lower < upper; lower++)
            {
                var (a, b) = (laid[lower].Body, laid[upper].Body);
                if (a.IsEmpty || b.IsEmpty || !a.Bounds.Meets(b.Bounds, White) || a.Distance(b) >= Faults.LeastGap)
                {
                    continue;
                }

                foreach (var (gives, stays) in ((int, int)[])[(lower, upper), (upper, lower)])
                {
                    if (Without(laid[gives], laid[stays].Body, whole[gives]) is { } body)
                    {
                        laid[gives] = laid[gives] with { Body = body };
                        break;
                    }
                }
            }
        }

        return laid;
    }

    private static Region? Without(LaidSheet sheet, Region other, double whole)
    {
        // Blocks and lines are drawn along their centre, whatever their body.
        if (sheet.Style.Sign != SheetSign.Band)
        {
            return null;
        }

        var rest = sheet.Body.Minus(other.Grow(White));
        var pieces = rest.Pieces.Select(piece => Region.Polygon([.. piece.Outline])).Where(piece => piece.Area >= Sliver).ToArray();
        return pieces.Length > 0 && pieces.Length <= sheet.Body.Pieces.Count && pieces.Sum(piece => piece.Area) >= LeastLeft * whole ? Region.Union(pieces) : null;
    }
}
