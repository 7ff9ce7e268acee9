using System.Globalization;
using DetailGen.Drawing.Annotation;
using DetailGen.Drawing.Lettering;
using DetailGen.Drawing.Scenes;
using DetailGen.Drawing.Sheets.Companions;
using DetailGen.Drawing.Views;

namespace DetailGen.Drawing.Sheets;

/// <summary>Lays the sheets around a view: what the first has no room for goes to further sheets, whole tables and whole stacks at a time.</summary>
internal static class PageComposer
{
    private const double Inset = 2;

    /// <summary>A zone for notes lower than this has room for the caution alone.</summary>
    private const double CautionOnly = 15;

    /// <summary>What a check list needs for its counts alone, and for a few of its lines, mm.</summary>
    private const double CountsOnly = 17, FewLines = 30;

    /// <param name="spare">Whether a sheet without tables follows those that have some.</param>
    /// <returns>The sheets with the view where it is to stand and the lower left corner of its title, page mm; they are laid once, wherever that is.</returns>
    internal static Func<Placement, PaperPoint, IReadOnlyList<Page>> Lay(
        SheetFormat format, SheetText text, double scale, IReadOnlyList<KeyEntry> key, IReadOnlyList<KeyedNote> keyed, IReadOnlyList<CompanionSheet> companions, bool spare = false)
    {
        var first = new List<Item>();
        var notesDone = Notes(format, text, first, out var notesFoot);
        var checksLeft = Checks(format, text, first, notesFoot, Below(format, text, key, keyed, notesFoot), out var checksFoot);
        var keyedDone = Numbers(format, keyed, first, ref checksFoot);
        var keyDone = Signs(format, text, key, first, checksFoot) || Signs(format, text, [.. key.Where(entry => !entry.IsSpare)], first, checksFoot);
        var stacks = text.Schedule.ToList();
        if (format.Zone("schedule") is { } scheduleZone)
        {
            // A number that is not listed on its sheet is lost on its reader; the schedule can be turned to, and takes the room below the list.
            var room = UnderView(scheduleZone);
            if (!keyedDone && Tables.KeyedInTwo(format.TextSizes, keyed, room) is { } list)
            {
                first.AddRange(list.Items);
                keyedDone = true;
                room = room with { Top = list.Box.Bottom - Inset };
            }

            var table = Tables.Schedule(format.TextSizes, stacks, room);
            table = table.Items.Any(item => IsOnMark(format, item)) ? Tables.Schedule(format.TextSizes, stacks, AboveMark(format, room)) : table;
            first.AddRange(table.Items);
            stacks.RemoveRange(0, table.Laid);
        }

        var leftOver = new LeftOver(stacks, keyDone ? [] : key, checksLeft, notesDone ? [] : text.Notes, keyedDone ? [] : keyed, text);
        IReadOnlyList<IReadOnlyList<Item>> further = [.. FurtherPages.Lay(format, leftOver), .. spare ? (Item[][])[[]] : []];
        var count = 1 + further.Count + companions.Count;

        Item[] around = [.. Fixed(format, text, scale, 1, count)];
        Page[] others =
        [
            .. further.Select((items, i) => Page(2 + i, [], [.. Fixed(format, text, scale, 2 + i, count), .. items])),
            .. companions.Select((companion, i) => Page(2 + further.Count + i, companion.Placements, [.. Fixed(format, text, companion.Scale, 2 + further.Count + i, count), .. companion.Items])),
        ];
        return (view, titleAt) => [Page(1, [view], [.. around, .. ViewTitle.Of(format.TextSizes, "1", text.ViewTitle, scale, titleAt), .. first]), .. others];

        Page Page(int number, IReadOnlyList<Placement> placements, IReadOnlyList<Item> items) => new(number, format.Paper, format.Width, format.Height, placements, items);
    }

    /// <summary>A zone less its distance from its neighbours.</summary>
    internal static PaperBox Inner(PaperBox zone) => zone.Grow(-Inset);

    /// <summary>A zone below that of the view, which keeps its own distance.</summary>
    private static PaperBox UnderView(PaperBox zone) => Inner(zone) with { Top = zone.Top };

    /// <summary>A zone in which a table keeps clear of the centring mark, which reaches 5 into the drawing space.</summary>
    private static PaperBox BesideMark(SheetFormat format, PaperBox zone) =>
        Inner(zone) with { Left = zone.Left, Right = Math.Min(zone.Right - Inset, format.Space.Right - 6) };

    /// <summary>The same at the foot of the sheet.</summary>
    private static PaperBox AboveMark(SheetFormat format, PaperBox zone) =>
        zone.Left < format.Width / 2 && zone.Right > format.Width / 2 ? zone with { Bottom = Math.Max(zone.Bottom, format.Space.Bottom + 6) } : zone;

    private static IEnumerable<Item> Fixed(SheetFormat format, SheetText text, double scale, int number, int count)
    {
        var title = format.Zones["title-block"];
        var sheet = $"{number.ToString(CultureInfo.InvariantCulture)}/{count.ToString(CultureInfo.InvariantCulture)}";
        var form = TitleBlockForm.Of(format.TextSizes, text.Title, $"{ViewTitle.Words(scale)} at {format.Paper}", format.Paper, sheet, title, slim: title.Height < 50, format.Logo);
        IEnumerable<Item> items = [.. Frame.Of(format), form];
        return format.Zone("revisions") is { } zone ? items.Concat(Tables.Revisions(format.TextSizes, text.Revisions, zone)) : items;
    }

    private static bool Notes(SheetFormat format, SheetText text, List<Item> items, out double foot)
    {
        foot = double.PositiveInfinity;
        if (format.Zone("notes") is not { } zone)
        {
            return false;
        }

        var whole = zone.Height < CautionOnly ? null : NotesIn(format, text, Inner(zone) with { Left = zone.Left });
        if (whole is null)
        {
            var (caution, lowest) = Caution(format, text, zone);
            items.Add(caution);
            foot = zone.Height < CautionOnly ? foot : lowest;
            return false;
        }

        items.AddRange(whole.Value.Items);
        foot = whole.Value.Box.Bottom;
        return true;
    }

    /// <summary>The general notes; null where they leave no room for the counts of a check list in their column.</summary>
    private static (IReadOnlyList<Item> Items, PaperBox Box)? NotesIn(SheetFormat format, SheetText text, PaperBox zone)
    {
        var laid = Tables.Notes(format.TextSizes, text.Notes, zone);
        PaperBox[] under = [.. format.Zones.Where(one => one.Key is "checklist" or "key" && one.Value.Left == zone.Left && one.Value.Top <= zone.Top).Select(one => one.Value)];
        var foot = under.Length == 0 ? zone.Bottom - Inset : under.Min(one => one.Bottom) + format.TextSizes.ByNotes(CountsOnly);
        return laid.Box.Bottom >= foot ? laid : null;
    }

    /// <summary>The caution alone, for a sheet without room for the notes, and its foot.</summary>
    private static (Paragraph Caution, double Foot) Caution(SheetFormat format, SheetText text, PaperBox zone)
    {
        var (sizes, width) = (format.TextSizes, (zone.Width - 2 * Inset) / Table.Slack);
        var lines = sizes.Typeface.Wrap(text.Caution, sizes.Notes, width);
        var caution = new Paragraph("block.notes", lines, new(zone.Left + Inset, zone.Top - sizes.ByNotes(3.2)), sizes.Notes, sizes.ByNotes(4.25));
        return (caution, sizes.Typeface.Box(caution).Bottom);
    }

    /// <summary>The format as this detail needs it: no more for the revisions than they take, so that tables reach down to them, and a strip for the caution as high as it is.</summary>
    internal static SheetFormat Fitted(SheetFormat format, SheetText text) => WithCaution(WithRevisions(format, text), text);

    private static SheetFormat WithRevisions(SheetFormat format, SheetText text) => format.Zone("revisions") is not { } zone ? format : format with
    {
        Zones = format.Zones.ToDictionary(
            one => one.Key, one => one.Key == "revisions" ? zone with { Top = Math.Min(zone.Top, zone.Bottom + Tables.RevisionsHeight(format.TextSizes, text.Revisions, zone.Width, zone.Height)) } : one.Value, StringComparer.Ordinal),
    };

    /// <summary>The format with a strip for the caution as high as the caution is, where it has such a strip: what stands over it begins higher.</summary>
    private static SheetFormat WithCaution(SheetFormat format, SheetText text)
    {
        if (format.Zone("notes") is not { Height: < CautionOnly } zone || Caution(format, text, zone).Foot is var foot && foot >= zone.Bottom)
        {
            return format;
        }

        var by = Math.Ceiling(zone.Bottom - foot);
        return format with
        {
            Zones = format.Zones.ToDictionary(
                one => one.Key, one => one.Key == "notes" ? zone with { Top = zone.Top + by } : one.Value.Bottom >= zone.Top ? one.Value with { Bottom = one.Value.Bottom + by } : one.Value, StringComparer.Ordinal),
        };
    }

    /// <summary>The foot of the check list: above the numbered notes and the key, as far as a common column holds them and some of the list; else the list has all of it.</summary>
    private static double? Below(SheetFormat format, SheetText text, IReadOnlyList<KeyEntry> key, IReadOnlyList<KeyedNote> keyed, double notesFoot)
    {
        var (countsOnly, fewLines) = (format.TextSizes.ByNotes(CountsOnly), format.TextSizes.ByNotes(FewLines));
        if (format.Zone("checklist") is not { } checks)
        {
            return null;
        }

        var under = format.Zone("key") is { } zone && IsUnderChecks(format, zone);
        var room = BesideMark(format, UnderChecks(format, checks));
        var top = Math.Min(notesFoot, checks.Top);
        var foot = under ? room.Bottom : checks.Bottom;
        var numbers = keyed.Count > 0 ? Tables.KeyedHeight(format.TextSizes, keyed, room.Width) + Inset : 0;
        foot += foot + numbers <= top - countsOnly ? numbers : 0;
        if (!under)
        {
            return foot;
        }

        var signs = Key.HeightIn(format.TextSizes, room.Width, key, text.ShortForms) + Inset;
        foot += foot + signs <= top - fewLines ? signs : 0;
        return foot;
    }

    /// <summary>Lays what the zone of the check list holds, and tells what is left for further sheets.</summary>
    private static IReadOnlyList<CheckLine> Checks(SheetFormat format, SheetText text, List<Item> items, double notesFoot, double? bottom, out double foot)
    {
        foot = double.PositiveInfinity;
        if (format.Zone("checklist") is not { } zone || bottom is not { } least)
        {
            return text.Checks;
        }

        var inner = BesideMark(format, zone);

        // In a common column the list begins right under the notes.
        var below = format.Zone("notes") is { } notes && notes.Left == zone.Left && notes.Bottom >= zone.Top;
        inner = inner with { Bottom = least, Top = below && !double.IsPositiveInfinity(notesFoot) ? notesFoot - Inset : inner.Top };
        if (CheckTables.Whole(format.TextSizes, text.Checks, text.FurtherPasses, inner) is { } all)
        {
            items.AddRange(all.Items);
            foot = all.Box.Bottom;
            return [];
        }

        var (laid, left, box) = CheckTables.Foremost(format.TextSizes, text.Checks, text.FurtherPasses, inner);
        if (box.Bottom < inner.Bottom - 1)
        {
            (laid, box) = CheckTables.Elsewhere(format.TextSizes, inner);
            left = text.Checks;
            if (box.Bottom < inner.Bottom - 1)
            {
                foot = inner.Top;
                return text.Checks;
            }
        }

        items.AddRange(laid);
        foot = box.Bottom;
        return left;
    }

    /// <summary>The words of the notes that stand on the view as numbers, below the check list down to the foot of their column: who reads a number looks for it on the same sheet.</summary>
    private static bool Numbers(SheetFormat format, IReadOnlyList<KeyedNote> keyed, List<Item> items, ref double foot)
    {
        if (keyed.Count == 0 || format.Zone("checklist") is not { } checks || double.IsPositiveInfinity(foot))
        {
            return keyed.Count == 0;
        }

        var room = BesideMark(format, UnderChecks(format, checks)) with { Top = foot - Inset };
        var (laid, rows, box) = room.Height < format.TextSizes.ByNotes(15) ? ([], 0, room) : Tables.Keyed(format.TextSizes, keyed, room);
        if (rows < keyed.Count)
        {
            return false;
        }

        items.AddRange(laid);
        foot = box.Bottom;
        return true;
    }

    /// <summary>The zone of the check list, or that of the key which goes on under it.</summary>
    private static PaperBox UnderChecks(SheetFormat format, PaperBox checks) => format.Zone("key") is { } key && IsUnderChecks(format, key) ? key : checks;

    private static bool IsUnderChecks(SheetFormat format, PaperBox zone) =>
        format.Zone("checklist") is { } checks && zone.Left == checks.Left && zone.Top <= checks.Bottom + 1e-6;

    private static bool Signs(SheetFormat format, SheetText text, IReadOnlyList<KeyEntry> key, List<Item> items, double checksFoot)
    {
        if (format.Zone("key") is not { } zone)
        {
            return false;
        }

        // In a common column the key rises to the foot of what stands above it.
        var inner = Inner(zone) with { Left = zone.Left };
        inner = inner with { Top = IsUnderChecks(format, zone) && !double.IsPositiveInfinity(checksFoot) ? checksFoot - Inset : inner.Top };
        var clear = AboveMark(format, inner);
        inner = Key.HeightIn(format.TextSizes, clear.Width, key, text.ShortForms, clear.Height) <= clear.Height ? clear : inner;
        if (Key.HeightIn(format.TextSizes, inner.Width, key, text.ShortForms, inner.Height) > inner.Height)
        {
            return false;
        }

        // With less height it goes down beside the mark, if the mark comes between its columns.
        var laid = Key.Lay(format.TextSizes, key, text.ShortForms, inner);
        if (laid.Any(item => IsOnMark(format, item)))
        {
            return false;
        }

        items.AddRange(laid);
        return true;
    }

    private static bool IsOnMark(SheetFormat format, Item item)
    {
        const double Clear = 1;
        var box = item is Text words ? format.TextSizes.Typeface.Box(words) : ItemBounds.Of([item]);
        return Frame.CentringMarks(format).Any(mark => Lines.Meets(box.Grow(Clear), mark.Points[0], mark.Points[1]));
    }
}
