using System.Globalization;
using DetailGen.Drawing.Auditing;
using DetailGen.Drawing.Lettering;
using DetailGen.Drawing.Scenes;

namespace DetailGen.Drawing.Sheets;

/// <summary>The ring round what an inset shows, with its letter beside it, or on a line where there is no white so near.</summary>
internal static class InsetMark
{
    /// <summary>From the ring, or the line's end, to the middle of the letter, mm: half the letter's diagonal and white; the same for a letter as small as those of notes.</summary>
    private const double LetterOff = 3.2, SmallLetterOff = 2.4;

    /// <summary>White between the letter and lines, and other words, which it must not seem to belong to; beside its line; mm.</summary>
    private const double LetterClear = 0.8, WordsClear = 2, LineClear = 0.6;

    /// <summary>So far off the ring, mm, a letter is its own without a line.</summary>
    private const double Beside = 1.5;

    /// <summary>How far off the letter is tried, mm: near by in every form before it goes farther off.</summary>
    private static readonly double[][] Further = [[0, Beside, 3, 6, 10], [15, 20, 28, 36]];

    private const int Ways = 24;

    /// <summary>What the ring with its letter is called in a file, after the letter.</summary>
    internal static string NameOf(string letter) => "inset " + letter;

    /// <param name="ink">Of the page that the view is on.</param>
    /// <param name="inset">Its name, and the number of the sheet that it is on where that is another.</param>
    /// <param name="ring">In the view's own mm.</param>
    /// <param name="origin">Of the view on the page, mm.</param>
    /// <param name="room">Of the view with all that belongs to it, page mm.</param>
    /// <param name="isBuilt">Whether something of the section is there, in the view's own mm: within a cavity or a void a letter stands only where there is no other white.</param>
    /// <returns>In the view's own mm; null where the ring would cut a text, or no white is left for the letter.</returns>
    internal static Group? Of(TextSizes sizes, PageInk ink, (string Name, int? Sheet) inset, Ring ring, PaperPoint origin, PaperBox room, Func<PaperPoint, bool> isBuilt)
    {
        if (ink.Texts.Exists(text => CutsThrough(text.Box, ring.Centre + origin, ring.Diameter / 2)))
        {
            return null;
        }

        // Most of the page is too far off to be looked at again for each place.
        var near = Near(ink, ring.Centre + origin, ring.Diameter / 2 + Further[^1][^1] + 2 * sizes.ByTitles(LetterOff) + WordsClear);
        var places =
            from within in (bool[])[false, true]
            from distances in Further
            from form in Forms(sizes, inset.Name, inset.Sheet)
            from further in distances
            from i in Enumerable.Range(0, Ways)
            let direction = Math.SinCos(Math.PI * (0.25 + 2.0 * i / Ways))
            let way = new PaperPoint(direction.Cos, direction.Sin)
            let end = ring.Centre + (ring.Diameter / 2 + further) * way
            let middle = end + form.Off(way)
            let letter = form.Box(middle).Shift(origin).Grow(LetterClear)
            where room.Holds(letter) && IsWhite(near, letter) && isBuilt(middle) == within
            let start = ring.Centre + ring.Diameter / 2 * way
            let line = further > Beside
            where !line || IsClear(near, start + origin, end + origin)
            select (Item[])[ring, .. line ? (Item[])[new Stroke("detail.mark", [start, end])] : [], .. form.Items(middle)];
        return places.FirstOrDefault() is { } items ? new("detail.mark", NameOf(inset.Name), items) : null;
    }

    /// <summary>Round the letter of a ring and the sheet with it, in the view's own mm.</summary>
    internal static PaperBox Letter(TextSizes sizes, Group mark) => mark.Items.OfType<Text>().Select(text => sizes.Typeface.Box(text)).Aggregate((box, other) => box.With(other));

    // The letter, with the sheet behind it; smaller where that finds no white; last the letter over the sheet.
    private static Form[] Forms(TextSizes sizes, string name, int? sheet)
    {
        string[] line = sheet is { } number ? [FormattableString.Invariant($"{name}/{number}")] : [name];
        Form[] forms = [new(sizes.Typeface, line, sizes.Titles, sizes.ByTitles(LetterOff)), new(sizes.Typeface, line, sizes.Notes, sizes.ByNotes(SmallLetterOff))];
        return sheet is { } under ? [.. forms, new(sizes.Typeface, [name, under.ToString(CultureInfo.InvariantCulture)], sizes.Notes, sizes.ByNotes(SmallLetterOff))] : forms;
    }

    // Some of a text lies within the ring and some without.
    private static bool CutsThrough(PaperBox box, PaperPoint centre, double radius)
    {
        var grown = box.Grow(LetterClear);
        var nearest = new PaperPoint(Math.Clamp(centre.X, grown.Left, grown.Right), Math.Clamp(centre.Y, grown.Bottom, grown.Top));
        var farthest = new PaperPoint(centre.X < (grown.Left + grown.Right) / 2 ? grown.Right : grown.Left, centre.Y < (grown.Bottom + grown.Top) / 2 ? grown.Top : grown.Bottom);
        return (nearest - centre).Length < radius && (farthest - centre).Length > radius;
    }

    private static Ink Near(PageInk ink, PaperPoint at, double reach)
    {
        PaperBox box = new(at.X - reach, at.Y - reach, at.X + reach, at.Y + reach);
        return new(
            ink.Texts.FindAll(text => text.Box.Meets(box)), ink.Lines.FindAll(line => Plane.IsNear(box, line.From, line.To, line.Half)), ink.Areas.FindAll(area => area.Around.Meets(box)));
    }

    private static bool IsWhite(Ink ink, PaperBox box) =>
        !ink.Texts.Exists(text => Plane.Gap(text.Box, box) < WordsClear - LetterClear)
        && !ink.Lines.Exists(line => Plane.IsNear(box, line.From, line.To, line.Half) && Plane.White(box, line.From, line.To).White < line.Half)
        && !ink.Areas.Exists(area => area.Around.Meets(box) && Plane.Meets(box, area.Outline, area.Holes));

    // It runs over the drawing, as leaders do, but over no text, leader or dimension.
    private static bool IsClear(Ink ink, PaperPoint from, PaperPoint to) =>
        !ink.Texts.Exists(text => Plane.White(text.Box, from, to).White < LineClear)
        && !ink.Lines.Exists(line => line.Role != LineRole.Plain && Plane.Distance(from, to, line.From, line.To).Distance < line.Half + LineClear);

    /// <summary>What is written beside the ring, in one line or in two with a stroke between them.</summary>
    /// <param name="LetterOff">From the ring, or the line's end, to the middle of a letter.</param>
    private sealed record Form(Typeface Typeface, IReadOnlyList<string> Lines, double Height, double LetterOff)
    {
        /// <summary>Between the letter and the stroke under it.</summary>
        private const double Apart = 0.8;

        private double Width => Lines.Max(line => Typeface.Width(line, Height));

        private double Tall => Lines.Count * Height + (Lines.Count - 1) * 2 * Apart;

        /// <summary>From the ring, or the line's end, to the middle: as much farther than for a letter as it is larger.</summary>
        internal PaperPoint Off(PaperPoint way) => new(way.X * (LetterOff + (Width - Typeface.Width(Lines[0].AsSpan(0, 1), Height)) / 2), way.Y * (LetterOff + (Tall - Height) / 2));

        internal PaperBox Box(PaperPoint middle) =>
            new(middle.X - Width / 2, middle.Y - Tall / 2 - Typeface.Hang(Height), middle.X + Width / 2, middle.Y + Tall / 2 - Height + Typeface.Rise(Height));

        internal IEnumerable<Item> Items(PaperPoint middle)
        {
            for (var i = 0; i < Lines.Count; i++)
            {
                yield return new Text("title.view", Lines[i], middle + new PaperPoint(0, Tall / 2 - Height - i * (Height + 2 * Apart)), Height, Align.Centre);
            }

            if (Lines.Count > 1)
            {
                yield return new Stroke("detail.mark", [middle - new PaperPoint(Width / 2 + Apart / 2, 0), middle + new PaperPoint(Width / 2 + Apart / 2, 0)]);
            }
        }
    }

    private sealed record Ink(List<InkText> Texts, List<InkLine> Lines, List<InkArea> Areas);
}
