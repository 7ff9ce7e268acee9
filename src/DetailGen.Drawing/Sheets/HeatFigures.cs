using DetailGen.Drawing.Lettering;
using DetailGen.Drawing.Scenes;

namespace DetailGen.Drawing.Sheets;

/// <summary>
/// What the detail loses and whether it stays dry, in a small table where the finished first sheet is white, else on a further sheet with tables. It comes last and moves nothing; where there is no
/// white the report has it all.
/// </summary>
internal static class HeatFigures
{
    private const string Title = "Heat and moisture";

    /// <summary>White round it, and at least so much under it where the room that is looked through ends, mm.</summary>
    private const double Clear = 6, Under = 4;

    /// <returns>The same scene where there is nothing to tell, or no room.</returns>
    internal static Scene Added(Papers papers, IReadOnlyList<FigureLine> figures, SheetFormat format)
    {
        var (scene, zone) = (papers.Scene, format.Zones["view"]);
        if (figures.Count == 0)
        {
            return scene;
        }

        var table = Laid(format.TextSizes, figures);
        (double Width, double Height) size = (table.Box.Width, table.Box.Height + Under);

        // Among the notes of the view it would be taken for one of them.
        var placed = scene.Pages[0].Placements[0];
        var view = scene.Views.First(one => one.Id == placed.ViewId).Bounds.Shift(placed.Origin);
        foreach (var page in Insets.WithTables(scene).Prepend(0))
        {
            var white = papers.White(page);
            if ((page == 0 ? white.Nearest(size, new(zone.Right, zone.Bottom), Clear, view) : white.Leftmost(size, Clear)) is { } corner)
            {
                var by = corner - new PaperPoint(table.Box.Left, table.Box.Bottom - Under);
                return scene with { Pages = [.. scene.Pages.Select((one, i) => i != page ? one : one with { Items = [.. one.Items, .. table.Items.Select(item => Moving.By(item, by))] })] };
            }
        }

        return scene;
    }

    private static Table Laid(TextSizes sizes, IReadOnlyList<FigureLine> figures)
    {
        Cell[][] rows = [.. figures.Select(line => new Cell[] { new(line.What), new(line.Figure) })];
        Column[] columns = [.. Enumerable.Range(0, 2).Select(i => new Column(ColumnWidths.Needed(sizes, new(0, []), rows.Select(row => row[i]), whole: true), []))];
        return Table.Lay(sizes, "schedule", Title, columns, rows, default, double.NegativeInfinity);
    }
}
