using System.Globalization;
using DetailGen.Drawing.Annotation;
using DetailGen.Drawing.Scenes;

namespace DetailGen.Drawing.Sheets;

/// <summary>Lays the sheets around a view: what the first has no room for goes to further sheets, whole tables and whole stacks at a time.</summary>
internal static class PageComposer
{
    private const double Inset = 2;

    /// <param name="view">Where the view stands; its title is added here.</param>
    /// <param name="titleAt">Lower left corner of the view's title, page mm.</param>
    internal static IReadOnlyList<Page> Lay(
        SheetFormat format, SheetText text, double scale, Placement view, PaperPoint titleAt, IReadOnlyList<KeyEntry> key,
        IReadOnlyList<KeyedNote> keyed)
    {
        var first = new List<Item>(ViewTitle.Of("1", text.ViewTitle, scale, titleAt));
        var stacks = text.Schedule.ToList();
        if (format.Zone("schedule") is { } scheduleZone)
        {
            var (items, laid, _) = Tables.Schedule(stacks, Inner(scheduleZone));
            first.AddRange(items);
            stacks.RemoveRange(0, laid);
        }

        var notesDone = Notes(format, text, first, out var notesFoot);
        var checksDone = Checks(format, text, first, notesFoot, out var checksFoot);
        var keyDone = Signs(format, text, key, first, checksFoot);
        var leftOver = new LeftOver(stacks, keyDone ? [] : key, checksDone ? [] : text.Checks, notesDone ? [] : text.Notes, keyed, text);
        var further = FurtherPages.Lay(format, leftOver);
        var count = 1 + further.Count;

        List<Page> pages = [Page(1, [view], first)];
        for (var i = 0; i < further.Count; i++)
        {
            pages.Add(Page(i + 2, [], further[i]));
        }

        return pages;

        Page Page(int number, IReadOnlyList<Placement> placements, IReadOnlyList<Item> items) => new(
            number, format.Paper, format.Width, format.Height, placements, [.. Fixed(format, text, scale, number, count), .. items]);
    }

    /// <summary>A zone less its distance from its neighbours.</summary>
    internal static PaperBox Inner(PaperBox zone) => zone.Grow(-Inset);

    private static IEnumerable<Item> Fixed(SheetFormat format, SheetText text, double scale, int number, int count)
    {
        var title = format.Zones["title-block"];
        var sheet = $"{number.ToString(CultureInfo.InvariantCulture)}/{count.ToString(CultureInfo.InvariantCulture)}";
        var form = TitleBlockForm.Of(text.Title, $"{ViewTitle.Words(scale)} at {format.Paper}", format.Paper, sheet, new(title.Left, title.Bottom), slim: title.Height < 50);
        IEnumerable<Item> items = [.. Frame.Of(format), form];
        return format.Zone("revisions") is { } zone ? items.Concat(Tables.Revisions(text.Revisions, zone)) : items;
    }

    private static bool Notes(SheetFormat format, SheetText text, List<Item> items, out double foot)
    {
        foot = double.PositiveInfinity;
        if (format.Zone("notes") is not { } zone)
        {
            return false;
        }

        if (zone.Height < 15)
        {
            var lines = Lettering.Wrapping.Wrap(text.Caution, Table.Text, (zone.Width - 2 * Inset) / Table.Slack);
            items.Add(new Paragraph("block.notes", [.. lines.Take(2)], new(zone.Left + Inset, zone.Top - 4), Table.Text, 4.25));
            return false;
        }

        var (laid, box) = Tables.Notes(text.Notes, Inner(zone) with { Left = zone.Left });
        items.AddRange(laid);
        foot = box.Bottom;
        return true;
    }

    private static bool Checks(SheetFormat format, SheetText text, List<Item> items, double notesFoot, out double foot)
    {
        foot = double.PositiveInfinity;
        if (format.Zone("checklist") is not { } zone)
        {
            return false;
        }

        var inner = Inner(zone) with { Left = zone.Left };

        // In a common column the list begins right under the notes.
        var below = format.Zone("notes") is { } notes && notes.Left == zone.Left && notes.Bottom >= zone.Top;
        inner = inner with { Top = below && !double.IsPositiveInfinity(notesFoot) ? notesFoot - Inset : inner.Top };
        var (laid, whole, box) = Tables.Foremost(text.Checks, text.FurtherPasses, inner);
        items.AddRange(laid);
        foot = box.Bottom;
        return whole;
    }

    private static bool Signs(SheetFormat format, SheetText text, IReadOnlyList<KeyEntry> key, List<Item> items, double checksFoot)
    {
        if (format.Zone("key") is not { } zone)
        {
            return false;
        }

        // In a common column the key may rise to the foot of the check list above it.
        var inner = Inner(zone) with { Left = zone.Left };
        inner = inner with { Top = double.IsPositiveInfinity(checksFoot) || checksFoot < inner.Top ? inner.Top : Math.Min(inner.Top, checksFoot - Inset) };
        if (Key.HeightIn(inner.Width, key, text.ShortForms) > inner.Height)
        {
            return false;
        }

        items.AddRange(Key.Lay(key, text.ShortForms, inner));
        return true;
    }
}
