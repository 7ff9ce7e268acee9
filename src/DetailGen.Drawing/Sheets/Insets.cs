using DetailGen.Drawing.Auditing;
using DetailGen.Drawing.Lettering;
using DetailGen.Drawing.Scenes;
using DetailGen.Drawing.Views;
using DetailGen.Sections;

namespace DetailGen.Drawing.Sheets;

/// <summary>What insets are drawn from.</summary>
/// <param name="Window">What of the section the first sheet shows, model mm.</param>
internal sealed record InsetBasis(Section Section, DrawnView Drawn, Bounds Window, SheetFormat Format);

/// <summary>
/// Insets at 1:2: a ring with a letter on the view, and what is in it drawn again, larger, where the finished sheet is white.
/// They come last and move nothing: a sheet without white for them has none.
/// </summary>
internal static class Insets
{
    internal const double Scale = 2;

    /// <summary>At most so many on a sheet.</summary>
    private const int Most = 2;

    /// <summary>How far off their best places rings are tried, as shares of their radius.</summary>
    private static readonly double[] Off = [0, 0.2, 0.4];

    /// <summary>From the ring to the middle of its letter, mm: half the letter's diagonal and white.</summary>
    private const double LetterOff = 3.2;

    /// <summary>White round an inset and its title, and round the letter of its ring, mm.</summary>
    private const double Clear = 4, LetterClear = 0.8;

    /// <summary>Between an inset and its title.</summary>
    private const double TitleOff = 2;

    // How large they are drawn, mm across, the first that finds room. At 1:2 the radius in mm of the building is the diameter in mm of the paper.
    private static IReadOnlyList<double> Diameters(SheetSize size) => size switch
    {
        SheetSize.Largest => [100, 84, 70],
        SheetSize.Large => [76, 66, 56],
        SheetSize.Usual => [56, 48],
        _ => [],
    };

    /// <returns>The same scene where there is no room, or nothing that is too fine.</returns>
    internal static Scene Added(Scene scene, InsetBasis basis)
    {
        for (var number = 0; number < Most && Next(scene, basis, number) is { } more; number++)
        {
            scene = more;
        }

        return scene;
    }

    private static Scene? Next(Scene scene, InsetBasis basis, int number)
    {
        var ink = PageInk.Of(scene, scene.Pages[0]);
        var white = new WhitePaper(ink, basis.Format);
        var placement = scene.Pages[0].Placements[0];
        var tries = from off in Off from diameter in Diameters(basis.Format.Size) select (off, diameter);
        foreach (var (off, diameter) in tries)
        {
            // What an earlier inset shows already is passed over.
            var shown = scene.Views.Where(view => view.Scale == Scale).Select(view => Middle(view, basis)).ToArray();
            foreach (var at in InsetPlaces.Of(basis.Section, basis.Window, diameter, off).Where(at => shown.All(other => (other - at).Length > 2 * diameter)))
            {
                var centre = basis.Drawn.At(at);
                if (Ring(basis.Format.TextSizes, ink, number, centre, 2 * diameter / basis.Drawn.Scale, placement.Origin) is { } ring
                    && white.Nearest(Size(basis.Format.TextSizes, number, diameter), centre + placement.Origin, Clear) is { } corner)
                {
                    return With(scene, basis, number, (at, diameter), ring, corner);
                }
            }
        }

        return null;
    }

    private static string Name(int number) => ((char)('A' + number)).ToString();

    private static string Title(int number) => "Detail " + Name(number);

    private static (double Width, double Height) Size(TextSizes sizes, int number, double diameter) =>
        (Math.Max(diameter, ViewTitle.Box(sizes, Title(number), Scale, default).Width), diameter + TitleOff + ViewTitle.Height(sizes));

    private static Point Middle(View view, InsetBasis basis)
    {
        var box = view.Bounds;
        var (x, y) = ((box.Left + box.Right) / 2 * Scale, (box.Bottom + box.Top) / 2 * Scale);
        return new(basis.Drawn.Mirror ? -x : x, y);
    }

    /// <summary>The ring on the view with its letter beside it, in the view's own mm; null where a text is in its way.</summary>
    private static Group? Ring(TextSizes sizes, PageInk ink, int number, PaperPoint centre, double diameter, PaperPoint origin)
    {
        const int Ways = 16;
        var ring = new Ring("detail.ring", centre, diameter);
        if (ink.Texts.Exists(text => CutsThrough(text.Box, centre + origin, diameter / 2)))
        {
            return null;
        }

        foreach (var further in (double[])[0, 1.5, 3])
        {
            for (var way = 0; way < Ways; way++)
            {
                var (sin, cos) = Math.SinCos(Math.PI * (0.25 + 2.0 * way / Ways));
                var middle = centre + (diameter / 2 + sizes.ByTitles(LetterOff) + further) * new PaperPoint(cos, sin);
                var letter = new Text("title.view", Name(number), middle - new PaperPoint(0, sizes.Titles / 2), sizes.Titles, Align.Centre);
                var box = Letters.Box(letter).Shift(origin).Grow(LetterClear);
                if (IsWhite(ink, box))
                {
                    return new Group("detail.mark", "inset " + Name(number), [ring, letter]);
                }
            }
        }

        return null;
    }

    // Some of a text lies within the ring and some without.
    private static bool CutsThrough(PaperBox box, PaperPoint centre, double radius)
    {
        var grown = box.Grow(LetterClear);
        var nearest = new PaperPoint(Math.Clamp(centre.X, grown.Left, grown.Right), Math.Clamp(centre.Y, grown.Bottom, grown.Top));
        var farthest = new PaperPoint(centre.X < (grown.Left + grown.Right) / 2 ? grown.Right : grown.Left, centre.Y < (grown.Bottom + grown.Top) / 2 ? grown.Top : grown.Bottom);
        return (nearest - centre).Length < radius && (farthest - centre).Length > radius;
    }

    private static bool IsWhite(PageInk ink, PaperBox box) =>
        !ink.Texts.Exists(text => Plane.Depth(text.Box, box) > 0)
        && !ink.Lines.Exists(line => Plane.IsNear(box, line.From, line.To, line.Half) && Plane.White(box, line.From, line.To).White < line.Half)
        && !ink.Areas.Exists(area => area.Around.Meets(box) && Plane.Meets(box, area.Outline, area.Holes));

    private static Scene With(Scene scene, InsetBasis basis, int number, (Point At, double Diameter) inset, Group ring, PaperPoint corner)
    {
        var drawn = SectionView.Draw(basis.Section, new(Scale, basis.Window, basis.Drawn.Mirror) { Only = new(inset.At, inset.Diameter) });
        var radius = inset.Diameter / 2;
        var (width, height) = Size(basis.Format.TextSizes, number, inset.Diameter);
        var middle = corner + new PaperPoint(width / 2, height - radius);
        var centre = drawn.At(inset.At);
        var id = "inset-" + Name(number).ToLowerInvariant();
        var view = new View(id, Scale, drawn.Items, new(centre.X - radius, centre.Y - radius, centre.X + radius, centre.Y + radius));
        var first = scene.Pages[0];
        var title = ViewTitle.Of(basis.Format.TextSizes, Name(number), Title(number), Scale, corner);
        return scene with
        {
            Views = [.. scene.Views.Select(one => one.Id == first.Placements[0].ViewId ? one with { Items = [.. one.Items, ring] } : one), view],
            Pages =
            [
                first with
                {
                    Placements = [.. first.Placements, new(id, middle - centre, new(middle.X - radius - 1, middle.Y - radius - 1, middle.X + radius + 1, middle.Y + radius + 1))],
                    Items = [.. first.Items, new Ring("detail.mark", middle, inset.Diameter), .. title],
                },
                .. scene.Pages.Skip(1),
            ],
        };
    }
}
