using DetailGen.Drawing.Lettering;
using DetailGen.Drawing.Scenes;
using DetailGen.Drawing.Sheets.Companions;
using DetailGen.Drawing.Views;

namespace DetailGen.Drawing.Sheets;

/// <summary>
/// A small picture of where water, air, vapour and heat are stopped, beside the view where the finished first sheet is white, else on a further sheet with tables. It comes after the insets and moves nothing.
/// </summary>
internal static class LinesToFollow
{
    internal const string Id = "lines";
    private const string Title = "Lines to follow", Caution = "Unbroken: to confirm";

    /// <summary>A detail drawn no larger than that would not be told from its own small picture.</summary>
    private const double Scale = 20, LeastOfView = 10;

    /// <summary>White round it, between picture and legend, and between a sign and its words; mm.</summary>
    private const double Clear = 6, Off = 4, Beside = 2.5;

    /// <summary>Least length of the signs in the legend, mm.</summary>
    private const double Sample = 12;

    /// <summary>Nothing where there is no room.</summary>
    /// <param name="sign">Length that the signs of its lines need, mm.</param>
    internal static void Add(Papers papers, InsetBasis basis, double sign)
    {
        var (scene, view, format) = (papers.Scene, basis.Drawn, basis.Format);
        if (view.Scale > LeastOfView)
        {
            return;
        }

        // To the same breaks, whose signs and sheets are larger for it: no smaller than that.
        var least = (Width: view.Bounds.Width * view.Scale / Scale, Height: view.Bounds.Height * view.Scale / Scale);
        var (legend, zone) = (Legend(format.TextSizes, Math.Max(Sample, sign)), format.Zones["view"]);
        ControlPicture? picture = null;
        foreach (var page in Insets.WithTables(scene).Prepend(0))
        {
            var white = papers.White(page);
            if (!Shapes(least.Width, least.Height, legend.Width, legend.Height).Any(shape => white.Holds(shape.Size, Clear)))
            {
                continue;
            }

            picture ??= ControlPicture.Of(basis.View, new(Scale, basis.Window, view.Mirror));
            var drawn = ItemBounds.Of(picture.Items);
            foreach (var (size, at, legendAt) in Shapes(drawn.Width, drawn.Height, legend.Width, legend.Height))
            {
                // On the first sheet beside the tables, away from the view.
                if ((page == 0 ? white.Nearest(size, new(zone.Right, zone.Bottom), Clear) : basis.OnOwnSheet ? white.Highest(size, Clear) : white.Lowest(size, Clear)) is { } corner)
                {
                    Put(papers, page, picture, corner + at, [.. legend.Items.Select(item => Moving.By(item, corner + legendAt))]);
                    return;
                }
            }
        }
    }

    // The legend beside the picture, else over it. Places are of lower left corners.
    private static IEnumerable<((double Width, double Height) Size, PaperPoint Picture, PaperPoint Legend)> Shapes(double width, double height, double legendWidth, double legendHeight)
    {
        var most = Math.Max(height, legendHeight);
        yield return ((width + Off + legendWidth, most), new(0, most - height), new(width + Off, most - legendHeight));
        yield return ((Math.Max(width, legendWidth), height + Off + legendHeight), default, new(0, height + Off));
    }

    private static void Put(Papers papers, int on, ControlPicture picture, PaperPoint corner, IReadOnlyList<Item> legend)
    {
        var scene = papers.Scene;
        var bounds = ItemBounds.Of(picture.Items);
        var origin = corner - new PaperPoint(bounds.Left, bounds.Bottom);
        var placement = new Placement(Id, origin, bounds.Shift(origin).Grow(1));
        scene = scene with
        {
            Views = [.. scene.Views, new(Id, Scale, picture.Items, bounds)],
            Pages = [.. scene.Pages.Select((page, i) => i != on ? page : page with { Placements = [.. page.Placements, placement], Items = [.. page.Items, .. legend] })],
        };
        papers.Add(scene, (on, placement, picture.Items), (on, null, legend));
    }

    // From its lower left corner.
    private static (double Width, double Height, IReadOnlyList<Item> Items) Legend(TextSizes sizes, double sample)
    {
        var (letter, pitch, indent) = (sizes.Notes, sizes.ByNotes(4.75), sample + Beside);
        var lines = ControlPicture.Legend(sample).Reverse().ToArray();
        var items = new List<Item> { new Text("note.text", Caution, new(0, sizes.ByNotes(0.8)), letter) };
        var y = sizes.ByNotes(0.8) + pitch;
        foreach (var (_, sign, words) in lines)
        {
            items.Add(Moving.By(sign, new(0, y + sizes.ByNotes(1))));
            items.Add(new Text("key", words, new(indent, y), letter));
            y += pitch;
        }

        items.Add(new Text("note.text", "Scale " + ViewTitle.Words(Scale), new(0, y + sizes.ByNotes(0.5)), letter));
        y += sizes.ByNotes(4.5) + sizes.ByNotes(0.5);
        items.Add(new Text("title.view", Title, new(0, y), sizes.Titles));
        var width = new[] { sizes.Typeface.Width(Title, sizes.Titles), sizes.Typeface.Width(Caution, letter), lines.Max(line => indent + sizes.Typeface.Width(line.Words, letter)) }.Max();
        return (width, y + sizes.Typeface.Rise(sizes.Titles), items);
    }
}
