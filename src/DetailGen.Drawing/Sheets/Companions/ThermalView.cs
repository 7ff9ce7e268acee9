using DetailGen.Analysis.Heat;
using DetailGen.Drawing.Lettering;
using DetailGen.Drawing.Scenes;
using DetailGen.Drawing.Views;
using DetailGen.Sections;

namespace DetailGen.Drawing.Sheets.Companions;

/// <summary>
/// The temperatures in a junction, over the outlines of its thermal model. The model, and not the drawn section, stands under the lines: it is what was calculated, and
/// where it departs from the section a line would seem to run through the wrong layer.
/// </summary>
internal static class ThermalView
{
    private const string Id = "thermal";
    private const double Beside = 6; // from the edge of the room to the geometry
    private const double Under = 20; // below the geometry, where the name of a room may stand
    private const double Hanging = 14; // what of that name may stand lower than the wall is drawn
    private const double Name = 36; // the same where the name of an air stands between them
    private const double Beyond = 16; // the same where figures stand beyond the roof's break
    private const double Chord = 0.02; // what a line may differ from what was calculated, paper mm

    /// <summary>The view, and where it stands in the room; at the largest scale at which the room holds it.</summary>
    /// <returns>Shown: the coldest inside surface is within what is drawn.</returns>
    internal static (View View, Placement Placement, bool Shown) Of(CompanionBasis basis, ThermalText text, PaperBox room)
    {
        var (scale, window) = Fitting(basis, room);
        var section = Model(basis.Section, text.Picture, BreakLines.Clip(basis.Section, window).Right);
        var drawn = SectionView.Draw(section, new(scale, window, basis.Drawn.Mirror));
        var paper = new OnPaper(scale, basis.Drawn.Mirror);
        var (before, behind) = Sides(basis);
        var around = room with { Right = Math.Min(room.Right, room.Left + drawn.Bounds.Width + before + behind) };
        PaperPoint origin = new(Half((around.Left + before + around.Right - behind - drawn.Bounds.Left - drawn.Bounds.Right) / 2), Half(around.Top - Beside - drawn.Bounds.Top));
        around = around with { Bottom = Math.Max(around.Bottom, origin.Y + drawn.Bounds.Bottom - Under) };
        var clip = Box(paper.At(BreakLines.Clip(section, window)));
        var shown = Holds(clip, paper.At(text.Picture.Coldest));
        var items = Items(basis.Sizes, text, drawn, paper, clip, around.Shift(new(-origin.X, -origin.Y)), shown);
        return (new(Id, scale, items, Around(basis.Sizes, items)), new(Id, origin, around), shown);
    }

    // A wall that goes on upwards has a room behind it, whose name needs its place.
    private static (double Left, double Right) Sides(CompanionBasis basis)
    {
        var behindWall = basis.Section.Runs.Any(run => run.Heading == Heading.Up) ? Name : Beside;
        return basis.Drawn.Mirror ? (Beyond, behindWall) : (behindWall, Beyond);
    }

    private static (double Scale, Bounds Window) Fitting(CompanionBasis basis, PaperBox room)
    {
        var (left, right) = Sides(basis);
        PaperBox box = new(room.Left + left, room.Bottom + Beside, room.Right - right, room.Top - Beside);
        foreach (var scale in Candidates.Scales)
        {
            if (new ViewRoom(box, box, default).Window(basis.Section, scale) is { } window)
            {
                return (scale, window);
            }
        }

        return (basis.Drawn.Scale, basis.Window);
    }

    // The solids as parts of which only outlines are drawn; the roof's break is as long as the level roof is thick.
    private static Section Model(Section section, ThermalPicture picture, double end)
    {
        var levels = picture.Solids.SelectMany(solid => solid.Region.Cut(new(end - 0.1, -1e5), new(end - 0.1, 1e5))).SelectMany(piece => new[] { piece.From.Y, piece.To.Y }).ToArray();
        return new(
            section.Junction, [.. picture.Solids.Select(Part)], [], [], [], [],
            [.. section.Runs.Select(run => run.Heading == Heading.Along && levels.Length > 0 ? run with { Side = (levels.Min(), levels.Max()) } : run)], []);
    }

    private static Part Part(ThermalSolid solid, int order) =>
        new(FormattableString.Invariant($"model.{order + 1}"), solid.Material.Name, solid.Material, Element.Wall, solid.Region, Presence.Beyond, Roles.None, order + 1)
        {
            Slot = "model",
            Words = new("", "", ""),
        };

    private static IReadOnlyList<Item> Items(TextSizes sizes, ThermalText text, DrawnView drawn, OnPaper paper, PaperBox clip, PaperBox room, bool shown)
    {
        var picture = text.Picture;
        var outlines = drawn.Items.OfType<Stroke>().Where(stroke => stroke.Row != Rows.Break).ToArray();
        var solid = Region.Union(picture.Solids.Select(one => paper.At(one.Region))).Intersect(Region.Box(Math.Max(clip.Left, -1e4), Math.Max(clip.Bottom, -1e4), Math.Min(clip.Right, 1e4), Math.Min(clip.Top, 1e4)));
        PaperBox within = new(Math.Max(room.Left, clip.Left), Math.Max(room.Bottom, clip.Bottom - Hanging), Math.Min(room.Right, clip.Right), Math.Min(room.Top, clip.Top));
        var air = new AirLabels(sizes, solid, within, [.. drawn.Breaks.Select(line => new PaperBox(line.From.X, line.From.Y, line.To.X, line.To.Y).Grow(1))]);
        var words = new List<Item>();
        if (shown)
        {
            var coldest = paper.At(picture.Coldest);
            words.Add(new Ring("analysis.figure", coldest, 2.4));
            words.Add(new Dot("analysis.figure", coldest, 0.8));
            words.AddRange(air.Point(coldest, text.Coldest));
        }

        var surfaces = picture.Airs.ToDictionary(
            one => one.Name, one => one.Surfaces.SelectMany(surface => PaperLines.Inside([.. surface.Select(paper.At)], clip)).ToArray(), StringComparer.Ordinal);
        foreach (var name in text.Airs)
        {
            words.AddRange(air.Name(name, surfaces[name.Air], [.. surfaces.Where(other => other.Key != name.Air).SelectMany(other => other.Value)]));
        }

        FiguredLines Lines(string row, string figure, Isotherm isotherm) =>
            new(row, figure, [.. isotherm.Lines.SelectMany(line => PaperLines.Inside([.. line.Select(paper.At)], clip)).Select(line => PaperLines.Thinned(line, Chord))]);
        FiguredLines[] lines =
        [
            Lines("analysis.dew-point", text.DewPointFigure, picture.DewPoint),
            .. picture.Isotherms.Select(isotherm => Lines("analysis.line", isotherm.Temperature.ToString("0", System.Globalization.CultureInfo.InvariantCulture), isotherm)),
        ];
        var figures = IsothermLabels.Place(sizes, lines, [.. outlines.Select(Whole)], air.Taken, clip.Grow(-1));
        var flux = picture.Flux.Lines.SelectMany(line => PaperLines.Inside([.. line.Select(paper.At)], clip)).Select(line => PaperLines.Thinned(line, Chord));
        FiguredLines[] bare = [.. lines.Where(one => figures.All(figure => figure.Text.Words != one.Words))];
        PaperBox[] gaps = [.. figures.Select(figure => figure.Gap)];
        PaperBox[] clear = [.. gaps.Select(gap => gap.Grow(IsothermLabels.Above))]; // of what crosses the line of a figure, which its gap alone would let run up to the letters
        return
        [
            .. outlines.SelectMany(outline => PaperLines.Outside(Whole(outline), clear)).Select(piece => new Stroke("analysis.model", piece)),
            .. flux.SelectMany(line => PaperLines.Outside(line, clear)).Select(piece => Drawn("analysis.flux", piece)),
            .. lines.SelectMany(one => one.Lines.SelectMany(line => PaperLines.Outside(line, gaps)).Select(piece => Drawn(one.Row, piece))),
            .. drawn.Items.Where(item => item.Row == Rows.Break),
            .. figures.Select(figure => figure.Text),
            .. drawn.Mirror ? IsothermLabels.Beyond(sizes, bare, clip.Left, -1) : IsothermLabels.Beyond(sizes, bare, clip.Right, 1),
            .. words,
        ];
    }

    private static Stroke Drawn(string row, IReadOnlyList<PaperPoint> piece) =>
        piece.Count > 3 && piece[0] == piece[^1] ? new(row, [.. piece.SkipLast(1)], Closed: true) : new(row, piece);

    private static IReadOnlyList<PaperPoint> Whole(Stroke stroke) => stroke.Closed ? [.. stroke.Points, stroke.Points[0]] : stroke.Points;

    // Around all items, text included.
    private static PaperBox Around(TextSizes sizes, IReadOnlyList<Item> items) => items.Select(item => item switch
    {
        Text text => sizes.Typeface.Box(text),
        Paragraph paragraph => sizes.Typeface.Box(paragraph),
        _ => ItemBounds.Of([item]),
    }).Aggregate((a, b) => a.With(b));

    private static bool Holds(PaperBox box, PaperPoint at) => at.X >= box.Left && at.X <= box.Right && at.Y >= box.Bottom && at.Y <= box.Top;

    private static PaperBox Box(Bounds bounds) => new(bounds.Left, bounds.Bottom, bounds.Right, bounds.Top);

    private static double Half(double value) => Math.Round(value * 2, MidpointRounding.AwayFromZero) / 2;
}
