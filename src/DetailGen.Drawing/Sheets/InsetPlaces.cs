using DetailGen.Drawing.Views;
using DetailGen.Sections;

namespace DetailGen.Drawing.Sheets;

/// <summary>Where a section is too fine for its scale: ends and corners of sheets round which others lie close, as at the head of an upstand or the outlet of a tray.</summary>
internal static class InsetPlaces
{
    /// <summary>Sheets that come together to be worth an inset.</summary>
    private const int Least = 3;

    /// <summary>How near the middle they must come, as a share of the radius.</summary>
    private const double Near = 0.5;

    /// <summary>Best first; no two show the same place, and none reaches past a break line.</summary>
    /// <param name="window">What of the section is drawn, model mm.</param>
    /// <param name="radius">True mm.</param>
    /// <param name="off">How far off these places the rings are, as a share of the radius: one that would cut a text may stand beside its best place.</param>
    internal static IReadOnlyList<Point> Of(Section section, Bounds window, double radius, double off)
    {
        var clip = BreakLines.Clip(section, window);
        Bounds whole = new(clip.Left + radius, clip.Bottom + radius, clip.Right - radius, clip.Top - radius);
        var sheets = section.Parts.Where(part => part is { Sheet: not null, Presence: Presence.Cut }).ToArray();
        var places = new List<Point>();
        var ranked =
            from sheet in sheets
            from at in sheet.Sheet!.Face
            where whole.Contains(at)
            let distances = sheets.Select(other => other.Region.Distance(at)).Where(distance => distance < Near * radius).ToArray()
            where distances.Length >= Least
            orderby distances.Length descending, Math.Round(distances.Sum(), 3), at.Y descending, at.X
            select at;
        foreach (var at in ranked)
        {
            if (places.TrueForAll(other => (other - at).Length > 2 * radius))
            {
                places.Add(at);
            }
        }

        return off == 0 ? places : [.. places.SelectMany(at => Around(at, off * radius)).Where(whole.Contains)];
    }

    private static IEnumerable<Point> Around(Point at, double distance)
    {
        const int Ways = 8;
        return from way in Enumerable.Range(0, Ways)
               let direction = Math.SinCos(2 * Math.PI * way / Ways)
               select at + distance * new Point(direction.Cos, direction.Sin);
    }
}
