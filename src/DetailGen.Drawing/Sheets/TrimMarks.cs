using DetailGen.Drawing.Scenes;

namespace DetailGen.Drawing.Sheets;

/// <summary>Sheets on paper that is still to be cut: in each corner an angle of two rectangles of 10 by 5 beside the edge (ISO 5457, from memory).</summary>
internal static class TrimMarks
{
    private const string Row = "frame.grid";
    private const double Long = 10;
    private const double Short = 5;

    internal static Page On(Page page, SheetFormat format)
    {
        var (width, height) = format.Untrimmed;
        var by = new PaperPoint((width - page.Width) / 2, (height - page.Height) / 2);
        PaperBox sheet = new(by.X, by.Y, by.X + page.Width, by.Y + page.Height);
        return page with
        {
            Width = width,
            Height = height,
            Placements = [.. page.Placements.Select(placement => placement with { Origin = placement.Origin + by, Window = placement.Window.Shift(by) })],
            Items = [.. page.Items.Select(item => Moving.By(item, by)), .. Marks(sheet)],
        };
    }

    private static IEnumerable<Item> Marks(PaperBox sheet)
    {
        foreach (var (x, outwards) in ((double, double)[])[(sheet.Left, -1), (sheet.Right, 1)])
        {
            foreach (var (y, up) in ((double, double)[])[(sheet.Bottom, -1), (sheet.Top, 1)])
            {
                yield return Angle(new(x, y), outwards, up);
            }
        }
    }

    // Both rectangles share the square outside the corner; as one outline, so that none of it is printed twice.
    private static Solid Angle(PaperPoint corner, double outwards, double up)
    {
        const double Arm = Long - Short;
        PaperPoint[] around =
        [
            new(0, 0), new(-Arm, 0), new(-Arm, Short), new(Short, Short), new(Short, -Arm), new(0, -Arm),
        ];
        return new(Row, [.. around.Select(point => corner + new PaperPoint(point.X * outwards, point.Y * up))], []);
    }
}
