using DetailGen.Drawing.Annotation;
using DetailGen.Drawing.Scenes;
using DetailGen.Drawing.Sheets.Companions;
using DetailGen.Drawing.Views;
using DetailGen.Sections;

namespace DetailGen.Drawing.Sheets;

/// <summary>A drawing, settled to the last coordinate.</summary>
/// <param name="Layout">How good the annotation is.</param>
/// <param name="Warnings">Where the sheet is not what the author asked for, or not all it should be.</param>
public sealed record ComposedSheet(Scene Scene, string Paper, double Scale, LayoutReport Layout, IReadOnlyList<string> Warnings)
{
    /// <summary>The parts as drawn, by the id of the view whose notes lead to them: <c>section</c>, and its insets.</summary>
    public required IReadOnlyDictionary<string, IReadOnlyList<DrawnPart>> Parts { get; init; }

    /// <summary>Where the notes stand, for the next issue to keep them there.</summary>
    public required IReadOnlyList<EarlierPlace> Places { get; init; }

    /// <summary>How many notes stand elsewhere than in the earlier issue; null where none was given, or one of another sheet.</summary>
    public required int? Moved { get; init; }

    /// <summary>Null for a view without a sheet.</summary>
    public required SheetFormat? Format { get; init; }

    /// <summary>What was annotated: the section as drawn, with the zone for its notes.</summary>
    public required AnnotationRequest Asked { get; init; }
}

/// <summary>From a section to what is on the paper: choose sheet and scale, draw, annotate, lay the tables.</summary>
public static class SheetComposer
{
    /// <summary>Room for the annotation of a view without a sheet, on each side of its geometry; mm.</summary>
    private const double Around = 140;

    /// <param name="formats">Of every series of papers.</param>
    public static ComposedSheet Compose(
        Section section, SheetText text, SheetRequest request, IReadOnlyList<SheetFormat> formats, LayerMap map, Identity identity)
    {
        var drawings = new SectionView(section);
        var trial = Best(drawings, text, request, [.. formats.Select(format => PageComposer.Fitted(format, text))]);
        text = text with { ShortForms = ShortForms.Used(text, trial.Layout) };
        var (format, drawn, layout) = (trial.Candidate.Format, trial.Drawn, trial.Layout);
        var room = ViewRoom.Of(format, request.Mirror);
        var title = room.Title(text.ViewTitle, drawn.Scale, request.Mirror);
        List<Item> items = [.. drawn.Items, .. layout.Items];
        var view = new View("section", drawn.Scale, items, layout.Bounds.With(drawn.Bounds));
        var sign = map.Sign(ControlPicture.Lines.Select(line => line.Row), format.Paper, request.ForCopies);
        CompanionSheet[] companions = request.ViewOnly
            ? []
            : [.. request.Companions.SelectMany((companion, i) => CompanionSheets.Of(companion, new(section, drawn, trial.Window, trial.Origin, format, text.ViewTitle, i + 2) { Thermal = text.Thermal, ControlSign = sign }))];
        // The key says what a ring means before any is drawn, for insets only take the white that tables leave; where none finds room, it says nothing of them.
        var ringed = request is { Insets: true, ViewOnly: false };
        var basis = new InsetBasis(drawings, drawn, trial.Window, format);
        var (papers, insets) = ringed
            ? Insets.Added(ViewPlace.Of(Laid(rings: true), format, view.Bounds.Shift(trial.Origin), room.Annotation, title), basis)
            : new(new(Laid(rings: false)(default, default), format), []);
        if (ringed && insets.Count == 0)
        {
            // What is too fine is worth a sheet of its own, where there is such a thing.
            var alone = basis with { OnOwnSheet = true };
            (papers, insets) = Insets.Added(new(Laid(rings: true, spare: true)(default, default), format), alone);
            (papers, basis) = insets.Count == 0 ? (new(Laid(rings: false)(default, default), format), basis) : (papers, alone);
        }

        if (request is { ControlLines: true, ViewOnly: false } && !request.Companions.Contains(Companion.ControlLines))
        {
            LinesToFollow.Add(papers, basis, sign);
        }

        var scene = request.ViewOnly ? papers.Scene : HeatFigures.Added(papers, text.HeatFigures, format);
        scene = scene with { Layers = map.Used(scene.Views.SelectMany(one => one.Items).Concat(scene.Pages.SelectMany(page => page.Items)), format.Paper, request.ForCopies) };
        return new(scene, format.Paper, drawn.Scale, layout.Report, [.. Warnings(section, request, trial)])
        {
            Parts = insets.Select(inset => (inset.ViewId, inset.Parts)).Append((view.Id, drawn.Parts)).ToDictionary(one => one.Item1, one => one.Item2, StringComparer.Ordinal),
            Places = layout.Places,
            Moved = Same(request.Earlier, format.Paper, drawn.Scale) is { } earlier ? layout.Places.Count(place => !earlier.Places.Any(place.IsLike)) : null,
            Format = request.ViewOnly ? null : format,
            Asked = trial.Asked,
        };

        // The sheets with the view and its title so far from their usual places.
        Func<PaperPoint, PaperPoint, Scene> Laid(bool rings, bool spare = false)
        {
            var pages = request.ViewOnly
                ? (_, _) => [Alone(view)]
                : PageComposer.Lay(format, text, drawn.Scale, KeyEntries.Of(format.TextSizes, drawn, layout.Items, layout.Keyed.Count > 0, rings), layout.Keyed, companions, spare);
            return (aside, below) => With(pages(new("section", trial.Origin + aside, format.Zones["view"]), new PaperPoint(title.Left, title.Bottom) + below));
        }

        Scene With(IReadOnlyList<Page> pages) =>
            new([], [view, .. companions.SelectMany(companion => companion.Views)], request.TrimMarks && !request.ViewOnly ? [.. pages.Select(page => TrimMarks.On(page, format))] : pages, identity) { Typeface = format.TextSizes.Typeface };
    }

    // Of the first set of sheets that hold the geometry: the first with everything in words, else the one that lacks least. Where a mark is missing on that one, a later set may have it,
    // but in no smaller drawing, and for nothing else: no one wants a larger paper for fewer numbers.
    private static Trial Best(SectionView section, SheetText text, SheetRequest request, IReadOnlyList<SheetFormat> formats)
    {
        Trial? best = null;
        foreach (var set in Candidates.For(request, formats, format => request.ViewOnly || FurtherPages.Hold(format, text.Schedule)))
        {
            var (smallest, missing) = (best?.Candidate.Scale ?? double.MaxValue, best?.Layout.Missing ?? int.MaxValue);
            foreach (var candidate in set.Where(candidate => candidate.Scale <= smallest))
            {
                var room = ViewRoom.Of(candidate.Format, request.Mirror);
                if (room.Window(section.Section, candidate.Scale) is not { } window)
                {
                    continue;
                }

                best = Try(section, text, request, candidate, room, window, best?.Misfit ?? int.MaxValue) is { } trial && trial.Layout.Missing < missing ? trial : best;
                if (best?.Misfit == 0)
                {
                    return best;
                }
            }

            if (best is { Layout.Missing: 0 })
            {
                return best;
            }
        }

        return best ?? throw new InvalidOperationException("The section fits no sheet at any standard scale.");
    }

    // Null where the sheet lacks as much as the one to beat, which often shows before it is finished, or begun, or where it does not hold the dimensions.
    private static Trial? Try(SectionView section, SheetText text, SheetRequest request, Candidate candidate, ViewRoom room, Bounds window, int toBeat)
    {
        if (AnnotationLayout.Lack(candidate.Illegible, 0) >= toBeat)
        {
            return null;
        }

        if (Drawn(section, text, request, candidate, room, window) is not { } wide)
        {
            return null;
        }

        // The roof is broken off earlier where that leaves white for insets beside the view, and takes no words from it.
        var narrow = InsetRoom.Lack(wide.Asked, wide.Before, candidate.Format, request) is > 0 and var lack ? Shorter(section, text, request, candidate, wide.Room, lack) : null;
        return narrow is not null && InsetRoom.Lack(narrow.Asked, narrow.Before, candidate.Format, request) == 0 && Annotated(narrow, candidate, toBeat) is { Misfit: 0 } trial
            ? trial
            : Annotated(wide, candidate, toBeat);
    }

    // Null where the sheet is too small for what stands beside the drawing.
    private static Ready? Drawn(SectionView section, SheetText text, SheetRequest request, Candidate candidate, ViewRoom room, Bounds window)
    {
        var ready = Draw(section, text, request, candidate, room, window);
        if (!request.ViewOnly && Annotator.LackBeside(ready.Asked) is > 0 and var lack)
        {
            // The roof is broken off earlier, so that the names of the levels stand within the frame.
            // More than once where the drawing is narrower than its room and moves by half, or where the rounding of its place takes something back.
            return Shorter(section, text, request, candidate, room, lack);
        }

        // The wall is broken off higher, so that its dimensions stand clear of the title; where it cannot be, the fault tells of it.
        if (!request.ViewOnly && FootRoom.Lack(ready.Asked, ready.Asked.View.Taken[0], request.Mirror) is > 0 and var below)
        {
            room = room with { Box = room.Box with { Bottom = room.Box.Bottom + below + ViewRoom.PlaceStep } };
            if (room.Window(section.Section, candidate.Scale) is { } higher)
            {
                return Draw(section, text, request, candidate, room, window with { Bottom = higher.Bottom });
            }
        }

        return ready;
    }

    private static Ready? Shorter(SectionView section, SheetText text, SheetRequest request, Candidate candidate, ViewRoom room, double by)
    {
        room = room with { Box = room.Narrowed(by + ViewRoom.PlaceStep, request.Mirror) };
        return room.Window(section.Section, candidate.Scale, ViewRoom.AtMost) is { } shorter ? Drawn(section, text, request, candidate, room, shorter) : null;
    }

    private static Trial? Annotated(Ready ready, Candidate candidate, int toBeat)
    {
        var most = toBeat - AnnotationLayout.Lack(candidate.Illegible, 0);
        var layout = Annotator.PlaceBetter(ready.Asked, ready.Before, most);
        if (ready.Asked.Earlier.Count > 0 && layout is not { Missing: 0 })
        {
            // Rather anew than with a mark missing because the others stay.
            layout = Annotator.PlaceBetter(ready.Asked with { Earlier = [] }, Math.Min(most, layout?.Lacking ?? most)) ?? layout;
        }

        return layout is not null && new Trial(candidate, ready.Asked, ready.Window, ready.Origin, ready.Drawn, layout) is var trial && trial.Misfit < toBeat ? trial : null;
    }

    private static Ready Draw(
        SectionView section, SheetText text, SheetRequest request, Candidate candidate, ViewRoom room, Bounds window)
    {
        var drawn = section.Draw(new(candidate.Scale, window, request.Mirror));
        var origin = room.Origin(drawn.Bounds, section.Section);
        var (longest, width) = (candidate.Format.LongestLeader, candidate.Format.NoteWidth);

        // A view alone has no sheet to keep to: its notes take the room they need.
        var zone = request.ViewOnly ? drawn.Bounds.Grow(Around) : room.Annotation.Shift(new(-origin.X, -origin.Y));
        var view = AnnotatedView.Of(drawn, zone, request.ViewOnly ? Math.Max(longest, 90) : longest, width) with
        {
            Taken = request.ViewOnly ? [] : [room.Title(text.ViewTitle, candidate.Scale, request.Mirror).Shift(new(-origin.X, -origin.Y))],
            TextSizes = candidate.Format.TextSizes,
            SheetLines = request.ViewOnly ? [] : [.. Frame.CentringMarks(candidate.Format).Select(mark => (Stroke)Moving.By(mark, new(-origin.X, -origin.Y)))],
        };
        return new(room, window, origin, drawn, new(section.Section, view, References.Of(section.Section), text.DatumLevel, Same(request.Earlier, candidate.Format.Paper, candidate.Scale)?.Places ?? []));
    }

    private static EarlierSheet? Same(EarlierSheet? earlier, string paper, double scale) => earlier is not null && earlier.Paper == paper && earlier.Scale == scale ? earlier : null;

    // The page is the view and nothing else; the model's origin is where it is in the model.
    private static Page Alone(View view)
    {
        var box = view.Bounds.Grow(2);
        return new(1, "view", box.Width, box.Height, [new("section", new(-box.Left, -box.Bottom), new(0, 0, box.Width, box.Height))], []);
    }

    private static IEnumerable<string> Warnings(Section section, SheetRequest request, Trial trial)
    {
        var (paper, scale) = (trial.Candidate.Format.Paper, trial.Candidate.Scale);
        var isSmaller = request.Scale is { } given && given != scale;
        if (request.ViewOnly)
        {
            if (isSmaller)
            {
                yield return $"The view is not drawn at {ViewTitle.Words(request.Scale!.Value)} but at {ViewTitle.Words(scale)}, which holds all that is said of it.";
            }
        }
        else if (isSmaller || (request.Paper is { } asked && asked != paper))
        {
            var sheet = (request.Paper, request.Scale) switch
            {
                ({ } on, { } at) => $"{on} at {ViewTitle.Words(at)} does not hold",
                ({ } on, null) => $"{on} does not hold",
                (null, var at) => $"No sheet at {ViewTitle.Words(at!.Value)} holds",
            };
            yield return $"{sheet} the view with all that is said of it; it is drawn on {paper} at {ViewTitle.Words(scale)}.";
        }

        if (section.Falls.Any(fall => fall.End is { } end && end > trial.Window.Left && end < trial.Window.Right))
        {
            yield return "Sheet: The fall of the roof ends within the drawing. What is drawn level beyond it stands for the outlet, gutter or ridge that is there, and for no flat roof.";
        }

        foreach (var unplaced in trial.Layout.Unplaced)
        {
            yield return $"Sheet: {unplaced.What} {unplaced.Id} found no place. {unplaced.Reason}";
        }

        if (trial.Layout.Keyed.Count is var keyed and > 0)
        {
            yield return keyed == 1
                ? "Sheet: 1 note found no room beside the view; it is numbered there and listed."
                : $"Sheet: {keyed} notes found no room beside the view; they are numbered there and listed.";
        }

        foreach (var fault in trial.Layout.Faults)
        {
            yield return $"Sheet: {fault.Text}";
        }

        foreach (var fault in trial.Drawn.Faults)
        {
            yield return Told(fault, scale);
        }
    }

    /// <summary>A larger scale is advised only where there is one.</summary>
    internal static string Told(DrawingFault fault, double scale) =>
        $"Sheet: {fault.Reason}{(Candidates.Scales.Any(larger => larger < scale) ? " A larger scale shows it better." : "")}";

    /// <summary>A section drawn and ready to be annotated.</summary>
    private sealed record Ready(ViewRoom Room, Bounds Window, PaperPoint Origin, DrawnView Drawn, AnnotationRequest Asked)
    {
        private Prepared? _before;

        /// <summary>What stands before the notes; they take it over.</summary>
        internal Prepared Before => _before ??= Annotator.Base(Asked);
    }

    private sealed record Trial(Candidate Candidate, AnnotationRequest Asked, Bounds Window, PaperPoint Origin, DrawnView Drawn, AnnotationLayout Layout)
    {
        internal int Misfit => Layout.Lacking + AnnotationLayout.Lack(Candidate.Illegible, 0);
    }
}
