using DetailGen.Drawing.Lettering;
using DetailGen.Drawing.Scenes;
using DetailGen.Sections;

namespace DetailGen.Drawing.Annotation.Notes;

/// <summary>A note to be placed: one text for one part, or for several that are alike.</summary>
/// <param name="Id">Id of its first part; ties are broken by it.</param>
/// <param name="Sizes">How high its letters are.</param>
/// <param name="Group">Notes of one group stand together.</param>
internal sealed record Note(string Id, IReadOnlyList<string> PartIds, string Reference, string Words, string Group, int Rank, TextSizes Sizes)
{
    /// <summary>The notes of the section's visible parts, by id: one for each text, without those that a stack note tells.</summary>
    /// <param name="sizes">What the notes of parts tell besides, because no dimension of it has room.</param>
    internal static IReadOnlyList<Note> About(
        AnnotationRequest request, IReadOnlySet<string> told, IReadOnlyDictionary<string, Shape> visible, IReadOnlyList<(string PartId, string Words)> sizes) =>
    [
        .. request.Section.Parts
            .Where(part => part.Words.Note.Length > 0 && visible.ContainsKey(part.Id))
            .GroupBy(part => part.Words.Note, StringComparer.Ordinal)
            .Where(same => !same.Any(part => told.Contains(part.Id)))
            .Select(same =>
            {
                var parts = same.OrderBy(part => part.Id, StringComparer.Ordinal).ToArray();
                var reference = parts.Select(part => request.References.GetValueOrDefault(part.Id, "")).FirstOrDefault(text => text.Length > 0) ?? "";
                string[] words = [same.Key, .. sizes.Where(size => parts.Any(part => part.Id == size.PartId)).Select(size => size.Words)];
                return new Note(parts[0].Id, [.. Whole(parts.Select(part => visible[part.Id])).Select(shape => shape.Id)], reference, string.Join("; ", words), GroupOf(parts[0]), parts.Min(part => part.BuildOrder), request.View.TextSizes);
            })
            .OrderBy(note => note.Id, StringComparer.Ordinal),
    ];

    // What the break of the drawing leaves a strip of is a poor end for a leader where others of its kind stand whole.
    private static IEnumerable<Shape> Whole(IEnumerable<Shape> alike)
    {
        const double Share = 0.75;
        Shape[] all = [.. alike];
        var widest = all.Max(shape => shape.Box.Width);
        return all.Where(shape => shape.Box.Width >= Share * widest);
    }

    internal MeasuredWords Measured { get; } = new(Sizes.Typeface, Words, Sizes.Notes);

    /// <summary>Where in its parts leaders may end; null for wherever there is a place.</summary>
    internal IReadOnlySet<PaperPoint>? Ends { get; init; }

    /// <summary>The notes that it was made of; none where it is one.</summary>
    private Note[] Joined { get; init; } = [];

    /// <summary>As they stand on a list: one for each reference.</summary>
    internal IReadOnlyList<Note> Listed => Joined.Length == 0 ? [this] : Joined;

    /// <summary>One note for the parts of both.</summary>
    internal Note With(Note other)
    {
        Note[] all = [.. Listed.Concat(other.Listed).OrderBy(note => note.Reference.Length == 0).ThenBy(note => note.Reference.Length).ThenBy(note => note.Reference, StringComparer.Ordinal).ThenBy(note => note.Id, StringComparer.Ordinal)];
        var words = string.Join(". ", all.Select((note, i) => i == 0 ? note.Words : $"{note.Reference} {note.Words}".TrimStart()));
        return new(Id, [.. PartIds, .. other.PartIds], all[0].Reference, words, Group, Math.Min(Rank, other.Rank), Sizes) { Joined = all };
    }

    /// <summary>The same note without words, under a number.</summary>
    internal Note Numbered(string number) => new(Id, PartIds, number, "", Group, Rank, Sizes) { Ends = Ends };

    // The coping's notes stand together, and those of the roof's build-up; elsewhere every note is its own group.
    private static string GroupOf(Part part) =>
        part.Id.StartsWith("coping", StringComparison.Ordinal) ? "coping" : part.Id.StartsWith("roof.", StringComparison.Ordinal) ? "roof" : part.Id;
}

/// <summary>A note's text in lines; sizes on paper, no place yet.</summary>
/// <param name="Lines">The first without the reference.</param>
/// <param name="FirstWidth">mm, with the reference.</param>
internal sealed record Block(Note Note, IReadOnlyList<string> Lines, double Width, double FirstWidth, double WrapCost)
{
    private const double Slack = 1.02;

    internal double Height => Note.Sizes.Notes;

    internal double Pitch => Note.Sizes.ByNotes(4.25);

    /// <summary>From the base line of the first line to the middle of its small letters, where the leader leaves.</summary>
    internal double Middle => MiddleOf(Note.Sizes);

    /// <summary>Reference and white before the first line, mm.</summary>
    internal double Lead => LeadOf(Note);

    /// <summary>Over and under the leader's level.</summary>
    internal double Above => AboveOf(Note.Sizes);

    internal double Below => Middle + (Lines.Count - 1) * Pitch + Note.Sizes.Typeface.Hang(Height);

    /// <summary>The fewest lines that the width allows, evened out; of equal ones without a widow. No word is torn: the block is rather wider than asked, and finds no place in a column that is too narrow for it.</summary>
    internal static Block Wrap(Note note, double width)
    {
        var words = note.Measured;
        width = Math.Max(width, words.Longest);
        var (lead, height) = (LeadOf(note), note.Sizes.Notes);

        // The reference takes its room in the first line only.
        var best = words.Starts(width - lead, width);
        var (fewest, isWidow) = (best.Count, words.IsWidow(best));
        for (var narrower = width - 2; narrower >= Math.Max(width * 0.55, words.Longest); narrower -= 2)
        {
            var starts = words.Starts(narrower - lead, narrower);
            if (starts.Count > fewest)
            {
                break;
            }

            if (!words.IsWidow(starts) || isWidow)
            {
                (best, isWidow) = (starts, words.IsWidow(starts));
            }
        }

        var lines = best.Count == 0 ? [""] : words.Lines(best);
        var firstWidth = lead + note.Sizes.Typeface.Width(lines[0], height);
        var widest = lines.Skip(1).Select(line => note.Sizes.Typeface.Width(line, height)).Append(firstWidth).Max();
        return new(note, lines, widest * Slack, firstWidth, (isWidow ? 10 : 0) + 5 * Math.Max(0, lines.Length - 3));
    }

    internal static double AboveOf(TextSizes sizes) => sizes.Typeface.Rise(sizes.Notes) - MiddleOf(sizes);

    private static double MiddleOf(TextSizes sizes) => sizes.ByNotes(0.96);

    private static double LeadOf(Note note) => note.Reference.Length == 0 ? 0 : note.Sizes.Typeface.Width(note.Reference, note.Sizes.Notes, true) + note.Sizes.ByNotes(1.4);
}
