using DetailGen.Drawing.Auditing;
using DetailGen.Drawing.Lettering;
using DetailGen.Drawing.Scenes;

namespace DetailGen.Drawing.Sheets;

/// <summary>The ring round what an inset shows, with its letter beside it, or on a line where there is no white so near.</summary>
internal static class InsetMark
{
    /// <summary>From the ring, or the line's end, to the middle of the letter, mm: half the letter's diagonal and white.</summary>
    private const double LetterOff = 3.2;

    /// <summary>White between the letter and lines, and other words, which it must not seem to belong to; beside its line; mm.</summary>
    private const double LetterClear = 0.8, WordsClear = 2, LineClear = 0.6;

    /// <summary>So far off the ring, mm, a letter is its own without a line.</summary>
    private const double Beside = 1.5;

    /// <summary>How far off the letter is tried, mm.</summary>
    private static readonly double[] Further = [0, Beside, 3, 6, 10, 15, 20, 28, 36];

    private const int Ways = 24;

    /// <param name="ink">Of the page that the view is on.</param>
    /// <param name="inset">Its name, and what is written of it: with the sheet that it is on where that is another.</param>
    /// <param name="ring">In the view's own mm.</param>
    /// <param name="origin">Of the view on the page, mm.</param>
    /// <returns>In the view's own mm; null where the ring would cut a text, or no white is left for the letter.</returns>
    internal static Group? Of(TextSizes sizes, PageInk ink, (string Name, string Mark) inset, Ring ring, PaperPoint origin)
    {
        if (ink.Texts.Exists(text => CutsThrough(text.Box, ring.Centre + origin, ring.Diameter / 2)))
        {
            return null;
        }

        // Most of the page is too far off to be looked at again for each place.
        var near = Near(ink, ring.Centre + origin, ring.Diameter / 2 + Further[^1] + 2 * sizes.ByTitles(LetterOff) + WordsClear);

        // A longer mark stands as much farther off as it is wider.
        var wider = (sizes.Typeface.Width(inset.Mark, sizes.Titles) - sizes.Typeface.Width(inset.Name, sizes.Titles)) / 2;
        foreach (var further in Further)
        {
            for (var i = 0; i < Ways; i++)
            {
                var (sin, cos) = Math.SinCos(Math.PI * (0.25 + 2.0 * i / Ways));
                var way = new PaperPoint(cos, sin);
                var (from, to) = (ring.Centre + ring.Diameter / 2 * way, ring.Centre + (ring.Diameter / 2 + further) * way);
                var middle = to + sizes.ByTitles(LetterOff) * way + new PaperPoint(wider * cos, 0);
                var letter = new Text("title.view", inset.Mark, middle - new PaperPoint(0, sizes.Titles / 2), sizes.Titles, Align.Centre);
                if (IsWhite(near, sizes.Typeface.Box(letter).Shift(origin).Grow(LetterClear)) && (further <= Beside || IsClear(near, from + origin, to + origin)))
                {
                    return new Group("detail.mark", "inset " + inset.Name, further <= Beside ? [ring, letter] : [ring, new Stroke("detail.mark", [from, to]), letter]);
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

    private sealed record Ink(List<InkText> Texts, List<InkLine> Lines, List<InkArea> Areas);
}
