using System.Globalization;
using DetailGen.Drawing.Lettering;
using DetailGen.Drawing.Scenes;

namespace DetailGen.Drawing.Sheets;

/// <summary>What stands under a view: ring with the detail's number, title, scale, scale bar.</summary>
internal static class ViewTitle
{
    private const string Row = "title.view";
    private const double Ring = 10;
    private const double BarHeight = 2;

    /// <summary>Height that a title takes, mm.</summary>
    internal static double Height(TextSizes sizes) => Math.Max(sizes.ByNotes(12), Top(sizes) + 0.5);

    // Over the ring, or the title where its letters rise higher.
    private static double Top(TextSizes sizes) => Math.Max(Ring + 0.5, sizes.ByNotes(6.2) + sizes.Typeface.Rise(sizes.Titles) + 0.5);

    /// <param name="corner">Lower left corner, page mm.</param>
    /// <param name="most">Room from the corner to the right; where the scale bar does not fit it is left out.</param>
    internal static IEnumerable<Item> Of(TextSizes sizes, string number, string title, double scale, PaperPoint corner, double most = double.PositiveInfinity)
    {
        var middle = corner + new PaperPoint(Ring / 2, Ring / 2 + 0.5);
        yield return new Ring("detail.mark", middle, Ring);
        yield return new Text(Row, number, middle - new PaperPoint(0, sizes.Titles / 2), sizes.Titles, Align.Centre);

        var left = corner.X + Ring + 2.5;
        var width = sizes.Typeface.Width(title, sizes.Titles);
        yield return new Text(Row, title, new(left, corner.Y + sizes.ByNotes(6.2)), sizes.Titles);
        yield return Frame.Line(Row, new(left, corner.Y + sizes.ByNotes(4.5)), new(left + width, corner.Y + sizes.ByNotes(4.5))); // clear of what hangs under the title
        var words = "Scale " + Words(scale);
        yield return new Text("note.text", words, new(left, corner.Y + sizes.ByNotes(1.2)), sizes.Notes);
        if (Box(sizes, title, scale, corner).Width > most)
        {
            yield break;
        }

        foreach (var item in Bar(sizes, scale, new(left + Math.Max(width, sizes.Typeface.Width(words, sizes.Notes)) + 8, corner.Y + sizes.ByNotes(4.2))))
        {
            yield return item;
        }
    }

    /// <summary>What ring, title and scale bar take, from their lower left corner.</summary>
    internal static PaperBox Box(TextSizes sizes, string title, double scale, PaperPoint corner)
    {
        var words = Math.Max(sizes.Typeface.Width(title, sizes.Titles), sizes.Typeface.Width("Scale " + Words(scale), sizes.Notes));
        return new(corner.X, corner.Y, corner.X + Ring + 2.5 + words + 8 + 5 * Division(scale) / scale + sizes.ByWord(10, "1000 mm"), corner.Y + Top(sizes));
    }

    internal static string Words(double scale) => "1:" + scale.ToString("0.###", CultureInfo.InvariantCulture);

    // The bar survives a reduced print; the note "do not scale" stands all the same.
    private static IEnumerable<Item> Bar(TextSizes sizes, double scale, PaperPoint at)
    {
        var step = Division(scale) / scale;
        yield return Frame.Box(Row, new(at.X, at.Y, at.X + 5 * step, at.Y + BarHeight));

        // Enlarged, the divisions are small: they stay whole, and the ends alone are figured.
        var isLarge = scale <= 2;
        var tenth = step / 10;
        for (var i = 1; i < 10 && !isLarge; i++)
        {
            yield return Frame.Line(Row, new(at.X + i * tenth, at.Y), new(at.X + i * tenth, at.Y + BarHeight));
        }

        for (var i = 1; i < 5; i += 2)
        {
            yield return Block(at.X + i * step, at.Y, step);
        }

        // Where the figures would touch, too.
        var widest = sizes.Typeface.Width((5 * Division(scale)).ToString(CultureInfo.InvariantCulture), sizes.Notes);
        for (var i = 0; i <= 5; i += isLarge || widest + 1 > step ? 5 : 1)
        {
            var figure = (i * Division(scale)).ToString(CultureInfo.InvariantCulture);
            var start = at.X + i * step - sizes.Typeface.Width(figure, sizes.Notes) / 2;
            yield return new Text("note.text", i == 5 ? figure + " mm" : figure, new(start, at.Y - sizes.ByNotes(3.3)), sizes.Notes);
        }
    }

    private static int Division(double scale) => scale switch { <= 2 => 10, >= 50 => 500, >= 20 => 200, _ => 100 };

    private static Solid Block(double left, double bottom, double width) => new(
        Row, [new(left, bottom), new(left + width, bottom), new(left + width, bottom + BarHeight), new(left, bottom + BarHeight)], []);
}
