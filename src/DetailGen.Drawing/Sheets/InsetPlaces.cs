using DetailGen.Drawing.Views;
using DetailGen.Sections;

namespace DetailGen.Drawing.Sheets;

/// <summary>Where a section is too fine for its scale: ends and corners of the sheets that stop water and vapour, round which others lie close, as at the head of an upstand or the outlet of a tray.</summary>
internal sealed class InsetPlaces
{
    /// <summary>Sheets that come together to be worth an inset.</summary>
    private const int Least = 2;

    /// <summary>How near the middle they must come, as a share of the radius.</summary>
    private const double Near = 0.6;

    /// <summary>How far off a place a ring is tried that would cut a text there, as shares of its radius.</summary>
    private static readonly double[] Off = [0, 0.2, 0.4];

    private const int Ways = 8;

    private readonly Bounds _shown;

    /// <param name="window">What of the section is drawn, model mm.</param>
    /// <param name="radius">True mm: what lies so far round a place counts.</param>
    internal InsetPlaces(Section section, Bounds window, double radius)
    {
        _shown = BreakLines.Clip(section, window);
        var sheets = section.Parts.Where(part => part is { Sheet: not null, Presence: Presence.Cut } && (part.Roles & (Roles.WaterBarrier | Roles.VapourControl)) != 0).ToArray();
        var ranked =
            from sheet in sheets
            from at in sheet.Sheet!.Face
            where _shown.Contains(at)
            let distances = sheets.Select(other => other.Region.Distance(at)).Where(distance => distance < Near * radius).ToArray()
            where distances.Length >= Least
            orderby distances.Length descending, Math.Round(distances.Sum(), 3), at.Y descending, at.X
            select at;
        foreach (var at in ranked)
        {
            if (Ranked.TrueForAll(other => (other - at).Length > radius))
            {
                Ranked.Add(at);
            }
        }
    }

    /// <summary>Best first; no two show the same.</summary>
    internal List<Point> Ranked { get; } = [];

    /// <summary>Middles of rings round a place, the nearest first; none reaches past a break line.</summary>
    internal IEnumerable<Point> Round(Point at, double radius)
    {
        Bounds whole = new(_shown.Left + radius, _shown.Bottom + radius, _shown.Right - radius, _shown.Top - radius);
        return
            from off in Off
            from way in Enumerable.Range(0, off == 0 ? 1 : Ways)
            let direction = Math.SinCos(2 * Math.PI * way / Ways)
            let middle = at + off * radius * new Point(direction.Cos, direction.Sin)
            where whole.Contains(middle)
            select middle;
    }
}
