using DetailGen.Drawing.Auditing;
using DetailGen.Drawing.Lettering;
using DetailGen.Drawing.Scenes;
using DetailGen.Drawing.Views;
using DetailGen.Sections;

namespace DetailGen.Drawing.Sheets;

/// <summary>What insets and the lines to follow are drawn from.</summary>
/// <param name="Window">What of the section the first sheet shows, model mm.</param>
internal sealed record InsetBasis(SectionView View, DrawnView Drawn, Bounds Window, SheetFormat Format)
{
    internal Section Section => View.Section;

    /// <summary>Whether they stand on a sheet without tables, which is filled from the top.</summary>
    internal bool OnOwnSheet { get; init; }
}

/// <summary>
/// Insets at 1:2: a ring with a letter on the view, and what is in it drawn again, larger, with its parts named, where the finished sheet is white, or a further one that holds tables.
/// They come last and move nothing; what is moved for them, or added, is moved by <see cref="SheetComposer"/> before (<see cref="InsetRoom"/>, <see cref="ViewPlace"/>).
/// </summary>
internal static class Insets
{
    internal const double Scale = 2;

    /// <summary>At most so many on a sheet.</summary>
    internal const int Most = 2;

    /// <summary>White round an inset and its title, mm.</summary>
    private const double Clear = 4;

    /// <summary>A ring keeps so far off the frame over it, mm.</summary>
    private const double OffTop = 4;

    /// <summary>Between two rings on the view, mm.</summary>
    private const double RingsApart = 2;

    /// <summary>Between an inset and its title.</summary>
    private const double TitleOff = 2;

    /// <summary>What a further sheet keeps clear inside its frame, as its tables do, and at its foot, so that insets beside the centring mark stand in line with one over it; mm.</summary>
    private const double Margin = 6, Foot = 10;

    // How large they are drawn, mm across, the first that finds room.
    private static IReadOnlyList<double> Diameters(SheetSize size, int page) => size switch
    {
        SheetSize.Largest => [100, 84, 70],
        SheetSize.Large => page == 0 ? [76, 66, 56, 48] : [84, 76, 66, 56],
        SheetSize.Usual => page == 0 ? [56, 48] : [84, 70, 56, 48],
        _ => page == 0 ? [] : [70, 56, 48],
    };

    /// <summary>The least width beside the view that holds an inset with names on the first sheet, mm.</summary>
    internal static double Least(SheetFormat format) =>
        Diameters(format.Size, 0) is [.., var least] ? Size(format.TextSizes, 0, least, Named.OnOneSide).Width + Clear : double.PositiveInfinity;

    /// <summary>For how many insets with names, of the smallest, a first sheet has white.</summary>
    internal static int Room(PageInk ink, SheetFormat format)
    {
        var white = new WhitePaper(ink, format, Zones(format, 0));
        var count = 0;
        while (count < Most && Diameters(format.Size, 0) is [.., var least] && white.Take(Size(format.TextSizes, count, least, Named.OnOneSide), Clear))
        {
            count++;
        }

        return count;
    }

    /// <returns>The same sheets where there is no room, or nothing that is too fine.</returns>
    internal static InsetSheet Added(Papers papers, InsetBasis basis)
    {
        var insets = new List<Inset>();
        while (insets.Count < Most && Next(papers, insets, basis) is { } inset)
        {
            insets.Add(inset);
        }

        return InsetLetters.InOrder(new(papers, insets));
    }

    private static Inset? Next(Papers papers, List<Inset> insets, InsetBasis basis)
    {
        var (view, number, room) = (papers.Scene.Pages[0].Placements[0], insets.Count, basis.Format.Zones["view"].Grow(-1));
        var (ink, places) = (papers.Ink(0), new InsetPlaces(basis.Section, basis.Window, [.. insets.Select(other => other.Ring)], RingsApart * basis.Drawn.Scale, number + 1 < Most));
        foreach (var (page, named) in Pages(papers.Scene, basis))
        {
            var white = papers.White(page);
            double[] diameters = [.. Diameters(basis.Format.Size, page).Where(diameter => white.Holds(Size(basis.Format.TextSizes, number, diameter, named), Clear))];
            if (diameters.Length == 0)
            {
                continue;
            }

            foreach (var (at, diameter) in places.Ranked(diameters))
            {
                var (centre, size) = (basis.Drawn.At(at), Size(basis.Format.TextSizes, number, diameter, named));
                int? elsewhere = page == 0 ? null : papers.Scene.Pages[page].Number;
                if (InsetMark.Of(basis.Format.TextSizes, ink, (Name(number), elsewhere), new("detail.ring", centre, 2 * diameter / basis.Drawn.Scale), view.Origin, room, IsBuilt) is { } ring
                    && (page == 0 ? white.Nearest(size, centre + view.Origin, Clear, InsetMark.Letter(basis.Format.TextSizes, ring).Shift(view.Origin)) : basis.OnOwnSheet ? white.Highest(size, Clear) : white.Lowest(size, Clear)) is { } corner)
                {
                    return Put(papers, basis, new(number, page, at, diameter, named), ring, corner);
                }
            }
        }

        return null;

        bool IsBuilt(PaperPoint at) => basis.Drawn.Parts.Any(part => part.Visible.Contains(new(at.X, at.Y)));
    }

    // Beside the view with names, else on a further sheet with tables, else beside the view without names; a small sheet holds the view alone.
    private static IEnumerable<(int Page, Named Named)> Pages(Scene scene, InsetBasis basis)
    {
        Named[] named = [Named.OnBothSides, Named.OnOneSide];
        int[] tables = [.. WithTables(scene)];
        return basis.Format.Size == SheetSize.Small
            ? named.SelectMany(_ => tables, (how, page) => (page, how))
            : [.. named.Select(how => (0, how)), .. tables.SelectMany(_ => named, (page, how) => (page, how)), (0, Named.Nowhere)];
    }

    /// <summary>Further sheets, from 0, on which tables stand, and at most insets and the lines to follow; those of companions come behind them and have a matter of their own.</summary>
    internal static IEnumerable<int> WithTables(Scene scene) => Enumerable.Range(1, scene.Pages.Count - 1)
        .TakeWhile(page => scene.Pages[page].Placements.All(placement => placement.ViewId == LinesToFollow.Id || placement.ViewId.StartsWith(Id, StringComparison.Ordinal)));

    // On the first sheet the view's own room, or that of a second view.
    internal static IReadOnlyList<PaperBox> Zones(SheetFormat format, int page) => page == 0
        ? [.. new[] { format.Zone("view"), format.Zone("second-view") }.OfType<PaperBox>().Select(zone => zone.Grow(-1) with { Top = zone.Top - OffTop })]
        : [format.Space.Grow(-Margin) with { Bottom = format.Space.Bottom + Foot }];

    internal const string Id = "inset-";

    internal static string Name(int number) => ((char)('A' + number)).ToString();

    internal static string ViewIdOf(int number) => Id + Name(number).ToLowerInvariant();

    internal static string Title(int number) => "Detail " + Name(number);

    private static (double Width, double Height) Size(TextSizes sizes, int number, double diameter, Named named)
    {
        var beside = named switch { Named.OnBothSides => 2, Named.OnOneSide => 1, _ => 0 } * InsetNotes.Beside(sizes);
        return (Math.Max(diameter + beside, ViewTitle.Box(sizes, Title(number), Scale, default).Width), diameter + TitleOff + ViewTitle.Height(sizes));
    }

    private static Inset Put(Papers papers, InsetBasis basis, Inset inset, Group ring, PaperPoint corner)
    {
        var (scene, sizes, number, diameter) = (papers.Scene, basis.Format.TextSizes, inset.Number, inset.Diameter);
        var drawn = basis.View.Draw(new(Scale, basis.Window, basis.Drawn.Mirror) { Only = new(inset.At, diameter) });
        var round = new Ring("detail.mark", drawn.At(inset.At), diameter);
        IReadOnlyList<Item> notes = inset.Named == Named.Nowhere ? [] : InsetNotes.Of(basis, drawn, round, inset.Named);

        var (width, height) = Size(sizes, number, diameter, inset.Named);
        PaperBox box = new(corner.X, corner.Y + height - diameter, corner.X + width, corner.Y + height);
        var middle = inset.Named != Named.OnOneSide ? Plane.Middle(box)
            : new PaperPoint(basis.Drawn.Mirror ? box.Right - diameter / 2 : box.Left + diameter / 2, Plane.Middle(box).Y);
        var origin = middle - round.Centre;
        var view = new View(inset.ViewId, Scale, [.. drawn.Items, .. notes], box.Shift(new(-origin.X, -origin.Y)));
        var title = ViewTitle.Of(sizes, Name(number), Title(number), Scale, corner);
        var first = scene.Pages[0].Placements[0];
        var placement = new Placement(inset.ViewId, origin, box.Grow(1));
        IReadOnlyList<Item> beside = [round with { Centre = middle }, .. title];
        var with = scene with
        {
            Views = [.. scene.Views.Select(one => one.Id == first.ViewId ? one with { Items = [.. one.Items, ring] } : one), view],
            Pages = [.. scene.Pages.Select((page, i) => i != inset.Page ? page : page with { Placements = [.. page.Placements, placement], Items = [.. page.Items, .. beside] })],
        };

        // The ring stands on the first page, the inset on its own; the others are as they were.
        papers.Add(with, (0, first, [ring]), (inset.Page, placement, view.Items), (inset.Page, null, beside));
        return inset with { Parts = drawn.Parts, Corner = corner, Beside = beside };
    }
}

/// <summary>Sheets with the insets on them.</summary>
internal sealed record InsetSheet(Papers Papers, IReadOnlyList<Inset> Insets);

/// <summary>A piece of the section that is ringed on the view and drawn again larger.</summary>
/// <param name="Number">From 0.</param>
/// <param name="Page">On which page it stands, from 0.</param>
/// <param name="At">Its middle, model mm.</param>
/// <param name="Diameter">On paper, mm.</param>
internal sealed record Inset(int Number, int Page, Point At, double Diameter, Named Named)
{
    /// <summary>Lower left corner of what it takes of its page, mm.</summary>
    internal PaperPoint Corner { get; init; }

    /// <summary>Its round and what stands under it, on its page.</summary>
    internal IReadOnlyList<Item> Beside { get; init; } = [];

    /// <summary>As drawn in it.</summary>
    internal IReadOnlyList<DrawnPart> Parts { get; init; } = [];

    /// <summary>At 1:2 the radius in mm of the building is the diameter in mm of the paper.</summary>
    internal InsetRing Ring => new(At, Diameter);

    internal string ViewId => Insets.ViewIdOf(Number);
}
