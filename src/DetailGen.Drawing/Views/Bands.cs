using DetailGen.Drawing.Fills;
using DetailGen.Drawing.Scenes;
using DetailGen.Sections;

namespace DetailGen.Drawing.Views;

/// <summary>The signs of laid sheets.</summary>
internal static class Bands
{
    private const double Block = 4.0, Window = 1.0, EdgeWidth = 0.18;

    /// <param name="scale">s of 1:s.</param>
    public static IEnumerable<Item> Draw(LaidSheet sheet, Region clip, double scale)
    {
        var part = sheet.Part;
        switch (sheet.Style.Sign)
        {
            case SheetSign.Line:
                // Corner by corner, so that dashes meet at the corners.
                return sheet.Centre.Straights().SelectMany(piece => Lines(piece, Rows.Sheet(part), part.Id, clip));
            case SheetSign.Blocks:
                return Blocks(sheet, clip);
            default:
                return SheetStyles.IsPoured(part) ? Poured(sheet, clip, scale) : Solids(sheet.Seen, Rows.Solid(part), part.Id);
        }
    }

    /// <summary>A region cut to the window; most need no cutting.</summary>
    public static Region Within(Region region, Region clip)
    {
        // The box is a short way for clips that are one, which all but round ones are.
        var (own, box) = (region.Bounds, clip.Bounds);
        return clip.Area >= box.Width * box.Height - 1e-3 && own.Left >= box.Left && own.Right <= box.Right && own.Bottom >= box.Bottom && own.Top <= box.Top ? region : region.Intersect(clip);
    }

    public static IEnumerable<Item> Solids(Region region, string row, string partId) =>
        region.Pieces.Select(piece => new Solid(row, Ring(piece.Outline), [.. piece.Holes.Select(Ring)]) { PartId = partId });

    // What is poured thick has an outline and a fill of its own; drawn thin it is black like any sheet.
    private static IEnumerable<Item> Poured(LaidSheet sheet, Region clip, double scale)
    {
        var (part, body) = (sheet.Part, sheet.Seen);
        PaperPoint axis = new(1, 0);
        var filling = Filler.Fill(new FillJob(part.Id, part.Material.Fill, Rows.Fill(part), Rows.Solid(part), body, body, body, axis, default, 0, scale));
        return filling.Solid
            ? Solids(body, Rows.Solid(part), part.Id)
            : [.. filling.Items, .. sheet.Body.Pieces.SelectMany(piece => Area.Of(clip).Clip([.. Ring(piece.Outline), Ring(piece.Outline)[0]], 0.3)).Select(run => new Stroke(Rows.Sheet(part), run) { PartId = part.Id })];
    }

    // Black blocks from end to end, so that both ends are black; the windows between them keep their two edges.
    private static IEnumerable<Item> Blocks(LaidSheet sheet, Region clip)
    {
        var (line, width) = (sheet.Centre, sheet.Style.Width);
        var windows = (int)Math.Max(0, Math.Round((line.Length - Block) / (Block + Window)));
        var block = (line.Length - windows * Window) / (windows + 1);
        if (block < 1)
        {
            (windows, block) = (0, line.Length);
        }

        var edges = new Profile(0);
        for (var i = 0; i <= windows; i++)
        {
            var start = i * (block + Window);
            foreach (var solid in Solids(Within(SheetLayout.Ribbon(line.Between(start, start + block), width), clip), Rows.Solid(sheet.Part), sheet.Part.Id))
            {
                yield return solid;
            }

            if (i < windows)
            {
                var window = line.Between(start + block, start + block + Window);
                foreach (var side in new[] { 1, -1 })
                {
                    var edge = window.Beside(edges, side * (width - EdgeWidth) / 2);
                    foreach (var item in Lines(edge, Rows.Sheet(sheet.Part), sheet.Part.Id, clip))
                    {
                        yield return item;
                    }
                }
            }
        }
    }

    private static IEnumerable<Item> Lines(FacePath line, string row, string partId, Region clip) =>
        Area.Of(clip).Clip(line.Points, 0.3).Select(run => new Stroke(row, run) { PartId = partId });

    private static PaperPoint[] Ring(IReadOnlyList<Point> corners) => [.. corners.Select(corner => new PaperPoint(corner.X, corner.Y))];
}
