using DetailGen.Drawing.Scenes;
using DetailGen.Drawing.Sheets;
using DetailGen.Drawing.Views;
using DetailGen.Sections;

namespace DetailGen.Drawing.Auditing;

/// <summary>
/// Looks at a finished sheet as a reviewer does: at ink, wherever it came from, tables and further sheets too. It reads nothing that the placing noted down,
/// not even its boxes of text, so that what was overlooked there shows here.
/// </summary>
public static class LayoutAudit
{
    /// <summary>White that a print and its copy keep open, mm: never under 0.35 between lines (decision of this project, after the 0.7 that a guide quoting EN ISO 128 wants).</summary>
    private const double LeastWhite = 0.35;

    /// <summary>What rounding to a thousandth and the grid of regions may add up to, mm.</summary>
    private const double Touch = 0.02;

    /// <summary>How far the point of a head may stand off the outline of the band it touches, mm.</summary>
    private const double HeadReach = 0.1;

    /// <param name="format">Null for a view without a sheet, which has neither zones nor a bound of leaders.</param>
    /// <param name="parts">The parts as drawn, by view, for the ends of leaders.</param>
    public static IReadOnlyList<AuditFault> Of(Scene scene, SheetFormat? format, IReadOnlyDictionary<string, IReadOnlyList<DrawnPart>> parts)
    {
        var byView = parts.ToDictionary(view => view.Key, view => view.Value.ToDictionary(part => part.Id, StringComparer.Ordinal), StringComparer.Ordinal);
        return
        [
            .. from page in scene.Pages
               let ink = PageInk.Of(scene, page)
               from fault in Worst(
               [
                   .. TextsOnTexts(ink), .. TextsOnLines(ink), .. TextsOnAreas(ink), .. Leaders(ink), .. Tips(ink, byView), .. Outside(ink, page, format),
                   .. format is null ? [] : TooLong(ink, format.LongestLeader),
               ])
               select fault with { Sheet = page.Number },
        ];
    }

    // One fault for two things, however many pieces of theirs come together.
    private static IEnumerable<AuditFault> Worst(IReadOnlyList<AuditFault> faults) =>
        from fault in faults
        group fault by (fault.Kind, fault.First, fault.Second) into same
        let worst = same.Key.Kind == AuditKinds.Crowded ? same.MinBy(fault => fault.Amount)! : same.MaxBy(fault => fault.Amount)!
        select worst with { Amount = Math.Round(worst.Amount, 3), At = new(Math.Round(worst.At.X, 2), Math.Round(worst.At.Y, 2)) };

    private static AuditFault Fault(string kind, PaperPoint at, string first, string second, double amount) => new(0, at, kind, first, second, amount);

    private static IEnumerable<AuditFault> TextsOnTexts(PageInk ink)
    {
        for (var i = 0; i < ink.Texts.Count; i++)
        {
            for (var j = 0; j < i; j++)
            {
                var (a, b) = (ink.Texts[j], ink.Texts[i]);
                var depth = Plane.Depth(a.Box, b.Box);
                if (depth > Touch)
                {
                    yield return Fault(AuditKinds.TextOverText, Plane.Between(a.Box, b.Box), a.Name, b.Name, depth);
                }
                else if (a.Owner != b.Owner && !IsLineOfTable(a, b) && Plane.Gap(a.Box, b.Box) is < LeastWhite - Touch and var gap)
                {
                    yield return Fault(AuditKinds.Crowded, Plane.Between(a.Box, b.Box), a.Name, b.Name, gap);
                }
            }
        }
    }

    // The lines of a cell or of a list are texts of their own, and their pitch is that of a paragraph.
    private static bool IsLineOfTable(InkText a, InkText b) =>
        a.Window is null && b.Window is null && Math.Min(a.Box.Right, b.Box.Right) > Math.Max(a.Box.Left, b.Box.Left);

    private static IEnumerable<AuditFault> TextsOnLines(PageInk ink)
    {
        foreach (var text in ink.Texts)
        {
            foreach (var line in ink.Lines)
            {
                if (!Plane.IsNear(text.Box, line.From, line.To, LeastWhite + line.Half))
                {
                    continue;
                }

                var (white, at) = Plane.White(text.Box, line.From, line.To);
                white -= line.Half;
                if (white < -Touch || (white <= 0 && text.Owner != line.Owner))
                {
                    yield return Fault(line.Role == LineRole.Leader ? AuditKinds.LeaderThrough : AuditKinds.TextOverLine, at, text.Name, line.Name, -white);
                }
                else if (white < LeastWhite - Touch && text.Owner != line.Owner)
                {
                    yield return Fault(AuditKinds.Crowded, at, text.Name, line.Name, white);
                }
            }
        }
    }

    private static IEnumerable<AuditFault> TextsOnAreas(PageInk ink) =>
        from text in ink.Texts
        from area in ink.Areas
        where area.Around.Meets(text.Box) && Plane.Meets(text.Box.Grow(-Touch), area.Outline, area.Holes)
        select Fault(AuditKinds.TextOverLine, Plane.Middle(text.Box), text.Name, area.Name, Math.Min(text.Box.Width, text.Box.Height));

    private static IEnumerable<AuditFault> Leaders(PageInk ink)
    {
        var leaders = ink.Lines.Where(line => line.Role == LineRole.Leader).ToArray();
        foreach (var leader in leaders)
        {
            // Of two leaders the one that was drawn first is told.
            foreach (var other in ink.Lines.Where(line => (line.Role == LineRole.Leader && line.Owner > leader.Owner) || (line.Role == LineRole.Dimension && line.Owner != leader.Owner)))
            {
                var (distance, at) = Plane.Distance(leader.From, leader.To, other.From, other.To);
                var white = distance - leader.Half - other.Half;
                if (white <= 0)
                {
                    yield return Fault(AuditKinds.LeaderThrough, at, leader.Name, other.Name, -white);
                }
                else if (white < LeastWhite - Touch)
                {
                    yield return Fault(AuditKinds.Crowded, at, leader.Name, other.Name, white);
                }
            }
        }
    }

    private static IEnumerable<AuditFault> Tips(PageInk ink, Dictionary<string, Dictionary<string, DrawnPart>> views)
    {
        foreach (var leader in ink.Leaders.Where(leader => views.ContainsKey(leader.ViewId)))
        {
            if (leader.PartId is not { } id || !views[leader.ViewId].TryGetValue(id, out var part))
            {
                yield return Fault(AuditKinds.TipOffPart, leader.Tip, leader.Name, leader.PartId ?? "no part", 0);
                continue;
            }

            Point tip = new(leader.TipInView.X, leader.TipInView.Y);
            var off = part.Visible.DistanceToEdge(tip);
            if (leader.IsArrow ? off > HeadReach : off > Touch && !part.Visible.Contains(tip))
            {
                yield return Fault(AuditKinds.TipOffPart, leader.Tip, leader.Name, id, off);
            }
        }
    }

    private static IEnumerable<AuditFault> TooLong(PageInk ink, double bound) =>
        from leader in ink.Leaders
        where leader.Run > bound + Touch
        select Fault(AuditKinds.LeaderTooLong, leader.Tip, leader.Name, FormattableString.Invariant($"at most {bound} mm"), leader.Run - bound);

    private static IEnumerable<AuditFault> Outside(PageInk ink, Page page, SheetFormat? format)
    {
        var columns = format is null ? [] : Columns(format);
        foreach (var text in ink.Texts)
        {
            var by = text.Window is { } window ? Plane.Beyond(text.Box, window) : BeyondSheet(text.Box);
            if (by > Touch)
            {
                yield return Fault(AuditKinds.OutsideZone, Plane.Middle(text.Box), text.Name, text.Window is null ? "the sheet's zones" : "the view's zone", by);
            }
        }

        foreach (var line in ink.Lines)
        {
            PaperBox box = new(Math.Min(line.From.X, line.To.X), Math.Min(line.From.Y, line.To.Y), Math.Max(line.From.X, line.To.X), Math.Max(line.From.Y, line.To.Y));
            if (line.Window is { } window && Plane.Beyond(box, window) is > Touch and var by)
            {
                yield return Fault(AuditKinds.OutsideZone, Plane.Middle(box), line.Name, "the view's zone", by);
            }
        }

        // Words of the first sheet stand in one of its zones, those of further sheets within the frame; only the grid's letters stand outside of it.
        double BeyondSheet(PaperBox box)
        {
            if (format is null)
            {
                return Plane.Beyond(box, new(0, 0, page.Width, page.Height));
            }

            // paper that is still to be cut reaches as far beyond the sheet on all sides
            var onSheet = box.Shift(new((format.Width - page.Width) / 2, (format.Height - page.Height) / 2));
            var isInFrame = Plane.Beyond(new(onSheet.Left, onSheet.Bottom, onSheet.Left, onSheet.Bottom), format.Space) <= 0;
            return !isInFrame ? Plane.Beyond(onSheet, new(0, 0, format.Width, format.Height))
                : page.Number > 1 ? Plane.Beyond(onSheet, format.Space)
                : columns.Min(zone => Plane.Beyond(onSheet, zone));
        }
    }

    /// <summary>Zones, and those above each other as one: what is short there makes room for what stands below.</summary>
    private static List<PaperBox> Columns(SheetFormat format)
    {
        const double Between = 6;
        var columns = format.Zones.Values.OrderBy(zone => zone.Bottom).ToList();
        foreach (var upper in format.Zones.Values.OrderBy(zone => zone.Bottom))
        {
            columns.AddRange(columns.Where(lower => lower.Left == upper.Left && lower.Right == upper.Right && upper.Bottom - lower.Top is > -1e-6 and < Between).Select(lower => lower.With(upper)).ToArray());
        }

        return columns;
    }
}
