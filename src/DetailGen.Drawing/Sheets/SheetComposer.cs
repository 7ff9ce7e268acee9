using DetailGen.Drawing.Annotation;
using DetailGen.Drawing.Scenes;
using DetailGen.Drawing.Views;
using DetailGen.Sections;

namespace DetailGen.Drawing.Sheets;

/// <summary>A drawing, settled to the last coordinate.</summary>
/// <param name="Layout">How good the annotation is.</param>
/// <param name="Warnings">Where the sheet is not what the author asked for, or not all it should be.</param>
public sealed record ComposedSheet(Scene Scene, string Paper, double Scale, LayoutReport Layout, IReadOnlyList<string> Warnings);

/// <summary>From a section to what is on the paper: choose sheet and scale, draw, annotate, lay the tables.</summary>
public static class SheetComposer
{
    /// <summary>How many sheets are annotated at most: a larger one or a smaller scale seldom makes room for what the first could not place.</summary>
    private const int Tries = 1;

    /// <param name="formats">A4 to A1.</param>
    public static ComposedSheet Compose(
        Section section, SheetText text, SheetRequest request, IReadOnlyList<SheetFormat> formats, LayerMap map, Identity identity)
    {
        var trial = Best(section, text, request, formats);
        var (format, drawn, layout) = (trial.Candidate.Format, trial.Drawn, trial.Layout);
        List<Item> items = [.. drawn.Items, .. layout.Items];
        var view = new View("section", drawn.Scale, items, layout.Bounds.With(drawn.Bounds));
        var pages = request.ViewOnly
            ? [Alone(view)]
            : PageComposer.Lay(format, text, drawn.Scale, new("section", trial.Origin, format.Zones["view"]), ViewRoom.Of(format).TitleAt, KeyEntries.Of(drawn), layout.Keyed);
        var layers = map.Used(items.Concat(pages.SelectMany(page => page.Items)), format.Paper);
        return new(new(layers, [view], pages, identity), format.Paper, drawn.Scale, layout.Report, [.. Warnings(request, trial)]);
    }

    // The first that holds everything; the author's own sheet already when its notes are complete, some of them as keyed numbers.
    private static Trial Best(Section section, SheetText text, SheetRequest request, IReadOnlyList<SheetFormat> formats)
    {
        Trial? best = null;
        var tries = 0;
        foreach (var candidate in Candidates.For(request, formats))
        {
            var room = ViewRoom.Of(candidate.Format);
            if (room.Window(section, candidate.Scale) is not { } window)
            {
                continue;
            }

            var trial = Try(section, text, request, candidate, room, window);
            var own = candidate.Format.Paper == request.Paper && candidate.Scale == request.Scale;
            if (best is null || trial.Misfit < best.Misfit)
            {
                best = trial;
            }

            if (trial.Misfit == 0 || (own && trial.IsComplete) || ++tries == Tries)
            {
                break;
            }
        }

        return best ?? throw new InvalidOperationException("The section fits no sheet at any standard scale.");
    }

    private static Trial Try(Section section, SheetText text, SheetRequest request, Candidate candidate, ViewRoom room, Bounds window)
    {
        var drawn = SectionView.Draw(section, new(candidate.Scale, window, request.Mirror));
        var origin = room.Origin(drawn.Bounds);
        var zone = room.Annotation.Shift(new(-origin.X, -origin.Y));
        var longest = candidate.Format.Paper switch { "A1" => 130, "A2" => 90, _ => 60 };
        var view = AnnotatedView.Of(drawn, zone, longest);
        return new(candidate, origin, drawn, Annotator.Place(new(section, view, References.Of(section), text.DatumLevel, [])));
    }

    // The page is the view and nothing else; the model's origin is where it is in the model.
    private static Page Alone(View view)
    {
        var box = view.Bounds.Grow(2);
        return new(1, "view", box.Width, box.Height, [new("section", new(-box.Left, -box.Bottom), new(0, 0, box.Width, box.Height))], []);
    }

    private static IEnumerable<string> Warnings(SheetRequest request, Trial trial)
    {
        var (paper, scale) = (trial.Candidate.Format.Paper, trial.Candidate.Scale);
        if ((request.Paper is { } asked && asked != paper) || (request.Scale is { } given && given != scale))
        {
            yield return $"The view does not fit {request.Paper ?? "A3"}{(request.Scale is { } s ? $" at {ViewTitle.Words(s)}" : "")}; it is drawn on {paper} at {ViewTitle.Words(scale)}.";
        }

        foreach (var unplaced in trial.Layout.Unplaced)
        {
            yield return $"Sheet: {unplaced.What} {unplaced.Id} found no place. {unplaced.Reason}";
        }

        if (trial.Layout.Keyed.Count > 0)
        {
            yield return $"Sheet: {trial.Layout.Keyed.Count} notes found no room beside the view; they are numbered there and listed.";
        }

        foreach (var fault in trial.Drawn.Faults)
        {
            yield return $"Sheet: {fault.Reason} A larger scale shows it better.";
        }
    }

    private sealed record Trial(Candidate Candidate, PaperPoint Origin, DrawnView Drawn, AnnotationLayout Layout)
    {
        internal bool IsComplete => Layout.Unplaced.Count == 0 && Layout.Faults.Count == 0;

        internal int Misfit => Layout.Unplaced.Count * 10 + Layout.Faults.Count * 10 + Layout.Keyed.Count;
    }
}
