using System.Globalization;
using DetailGen.Drawing.Scenes;

namespace DetailGen.Drawing.Sheets;

/// <summary>Frame, grid reference and centring marks of a sheet.</summary>
/// <remarks>
/// Following the principles of ISO 5457:1999 (sizes and fields read in secondary texts, mark sizes from memory). The fields are set out from the
/// centring marks, which stand on the axes of the trimmed sheet; the corner field takes the remainder. I and O are never used.
/// </remarks>
internal static class Frame
{
    private const double Band = 5;
    private const double Field = 50;

    /// <summary>Higher letters would touch the lines of their band.</summary>
    private const double MostLetter = 4;

    /// <summary>The ink of wider ones too, mm: the band less white and half the heavy line on either side.</summary>
    private const double MostWidth = 3.6;

    /// <summary>Letters stand off the middle of their band, since its inner line is the heavy one.</summary>
    private const double Outwards = 0.05;
    private const string Letters = "ABCDEFGHJKLMNPQRSTUVWXYZ";

    private static double Letter(SheetFormat format)
    {
        var (sizes, used) = (format.TextSizes, Letters[..format.FieldsDown]);
        return sizes.Titles <= MostLetter && used.Max(letter => sizes.Typeface.InkWidth(letter, sizes.Titles)) <= MostWidth ? sizes.Titles : sizes.Notes;
    }

    internal static IEnumerable<Item> Of(SheetFormat format)
    {
        var space = format.Space;
        yield return Box("frame", space);
        yield return Box("frame.grid", space.Grow(Band));
        foreach (var item in Across(format).Concat(Down(format)))
        {
            yield return item;
        }

        foreach (var mark in CentringMarks(format))
        {
            yield return mark;
        }
    }

    /// <summary>The four marks on the axes of the trimmed sheet; they reach 5 mm into the drawing space, but end at the frame where the title block stands behind it.</summary>
    internal static IReadOnlyList<Stroke> CentringMarks(SheetFormat format)
    {
        var (space, title) = (format.Space, format.Zones["title-block"]);
        var (middleX, middleY) = (format.Width / 2, format.Height / 2);
        return
        [
            Mark(new(middleX, space.Top), new(0, Band)),
            Mark(new(middleX, space.Bottom), new(0, -Band)),
            Mark(new(space.Left, middleY), new(-Band, 0)),
            Mark(new(space.Right, middleY), new(Band, 0)),
        ];

        Stroke Mark(PaperPoint at, PaperPoint outwards)
        {
            var inner = at - outwards;
            var isCovered = inner.X > title.Left && inner.X < title.Right && inner.Y > title.Bottom && inner.Y < title.Top;
            return Line("frame", at + outwards, isCovered ? at : inner);
        }
    }

    internal static Stroke Box(string row, PaperBox box) =>
        new(row, [new(box.Left, box.Bottom), new(box.Right, box.Bottom), new(box.Right, box.Top), new(box.Left, box.Top)], Closed: true);

    internal static Stroke Line(string row, PaperPoint from, PaperPoint to) => new(row, [from, to]);

    private static IEnumerable<Item> Across(SheetFormat format)
    {
        var space = format.Space;
        var letter = Letter(format);
        var edges = Edges(space.Left, format.Width / 2, space.Right, format.FieldsAcross);
        for (var i = 0; i + 1 < edges.Length; i++)
        {
            var name = (i + 1).ToString(CultureInfo.InvariantCulture);
            foreach (var (side, foot, off) in new[] { ("top", space.Top, Outwards), ("bottom", space.Bottom - Band, -Outwards) })
            {
                if (i > 0)
                {
                    yield return Line("frame.grid", new(edges[i], foot), new(edges[i], foot + Band));
                }

                if (format.Lettered.Contains(side))
                {
                    yield return new Text("frame.grid", name, new((edges[i] + edges[i + 1]) / 2, foot + (Band - letter) / 2 + off), letter, Align.Centre);
                }
            }
        }
    }

    private static IEnumerable<Item> Down(SheetFormat format)
    {
        var space = format.Space;
        var letter = Letter(format);
        var edges = Edges(space.Bottom, format.Height / 2, space.Top, format.FieldsDown);
        for (var i = 0; i + 1 < edges.Length; i++)
        {
            var name = Letters[edges.Length - 2 - i].ToString();
            foreach (var (side, left) in new[] { ("left", space.Left - Band), ("right", space.Right) })
            {
                if (i > 0)
                {
                    yield return Line("frame.grid", new(left, edges[i]), new(left + Band, edges[i]));
                }

                if (format.Lettered.Contains(side))
                {
                    yield return new Text("frame.grid", name, new(left + Band / 2, (edges[i] + edges[i + 1]) / 2 - letter / 2), letter, Align.Centre);
                }
            }
        }
    }

    private static double[] Edges(double from, double middle, double to, int fields)
    {
        var half = fields / 2;
        var edges = new double[fields + 1];
        for (var i = 0; i <= fields; i++)
        {
            edges[i] = middle + (i - half) * Field;
        }

        (edges[0], edges[^1]) = (from, to);
        return edges;
    }
}
