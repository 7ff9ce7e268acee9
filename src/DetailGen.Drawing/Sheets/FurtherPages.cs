using DetailGen.Drawing.Annotation;
using DetailGen.Drawing.Lettering;
using DetailGen.Drawing.Scenes;

namespace DetailGen.Drawing.Sheets;

/// <summary>What found no room on the first sheet.</summary>
internal sealed record LeftOver(
    IReadOnlyList<ScheduleBlock> Stacks, IReadOnlyList<KeyEntry> Key, IReadOnlyList<CheckLine> Checks, IReadOnlyList<string> Notes,
    IReadOnlyList<KeyedNote> Keyed, SheetText Text)
{
    internal bool IsEmpty => Stacks.Count == 0 && Key.Count == 0 && Checks.Count == 0 && Notes.Count == 0 && Keyed.Count == 0;
}

/// <summary>Sheets that hold tables only, filled from the upper left, in columns beside and above the title block.</summary>
internal static class FurtherPages
{
    private const double Apart = 6;
    private const double ScheduleWidth = 206;

    /// <summary>Narrower than this a check list has no room for its rules.</summary>
    private const double LeastHalf = 80;

    internal static IReadOnlyList<IReadOnlyList<Item>> Lay(SheetFormat format, LeftOver rest)
    {
        var pages = new List<IReadOnlyList<Item>>();
        while (!rest.IsEmpty)
        {
            var page = new Flow(format);
            rest = Fill(page, rest);
            pages.Add(page.Items);
        }

        return pages;
    }

    /// <summary>Whether the widest table has room on such a sheet: no column is narrower than its longest word, and each stack stands on one sheet.</summary>
    internal static bool Hold(SheetFormat format, IReadOnlyList<ScheduleBlock> stacks)
    {
        var page = new Flow(format);
        var width = Math.Min(format.TextSizes.ByNotes(ScheduleWidth), page.Width);
        return stacks.All(stack => Tables.ScheduleWidth(page.Sizes, [stack], width) <= width + 1e-6 && page.Room(width, Tables.ScheduleHeight(page.Sizes, [stack], width)) is not null);
    }

    private static LeftOver Fill(Flow page, LeftOver rest)
    {
        var sizes = page.Sizes;
        var width = Math.Min(sizes.ByNotes(ScheduleWidth), page.Width);
        if (rest.Stacks.Count > 0 && page.Room(width, Tables.ScheduleHeight(sizes, [.. rest.Stacks.Take(1)], width)) is { } zone)
        {
            var (items, laid, box) = Tables.Schedule(sizes, rest.Stacks, zone);
            page.Put(items, box);
            rest = rest with { Stacks = [.. rest.Stacks.Skip(laid)] };
            if (rest.Stacks.Count > 0)
            {
                return rest;
            }
        }
        else if (rest.Stacks.Count > 0 && page.IsEmpty)
        {
            throw new InvalidOperationException($"A stack of {rest.Stacks[0].Rows.Count} layers does not fit a whole sheet.");
        }

        if (rest.Key.Count > 0 && page.Room(page.Half, Key.HeightIn(sizes, page.Half, rest.Key, rest.Text.ShortForms)) is { } keyZone)
        {
            page.Put(Key.Lay(sizes, rest.Key, rest.Text.ShortForms, keyZone), keyZone with { Bottom = keyZone.Top - Key.HeightIn(sizes, keyZone.Width, rest.Key, rest.Text.ShortForms) });
            rest = rest with { Key = [] };
        }

        while (rest.Checks.Count > 0 && page.Room(page.Half, sizes.ByNotes(40)) is { } checkZone)
        {
            var (items, laid, box) = Tables.CheckList(sizes, rest.Checks, rest.Text.FurtherPasses, checkZone, rest.Checks.Count < rest.Text.Checks.Count);
            page.Put(items, box);
            rest = rest with { Checks = [.. rest.Checks.Skip(laid)] };
        }

        if (rest.Notes.Count > 0 && page.Room(page.Half, Tables.NotesHeight(sizes, rest.Notes, page.Half)) is { } noteZone)
        {
            var (items, box) = Tables.Notes(sizes, rest.Notes, noteZone);
            page.Put(items, box);
            rest = rest with { Notes = [] };
        }

        if (rest.Keyed.Count > 0 && page.Room(page.Half, sizes.ByNotes(30)) is { } keyedZone)
        {
            var (items, laid, box) = Tables.Keyed(sizes, rest.Keyed, keyedZone);
            page.Put(items, box);
            rest = rest with { Keyed = [.. rest.Keyed.Skip(laid)] };
        }

        return rest;
    }

    /// <summary>Fills columns from the left, each from the top down, keeping clear of title block and revisions.</summary>
    private sealed class Flow(SheetFormat format)
    {
        private readonly PaperBox _space = Clear(format);
        private readonly List<Item> _items = [];
        private double _left = Clear(format).Left;
        private double _right = Clear(format).Left;
        private double _top = Clear(format).Top;

        // Where columns begin: under the last table that takes more than half the sheet.
        private double _shelf = Clear(format).Top;

        // Clear of the centring marks, which reach 5 into the drawing space.
        private static PaperBox Clear(SheetFormat format) => format.Space.Grow(-6);

        internal IReadOnlyList<Item> Items => _items;

        internal bool IsEmpty => _items.Count == 0;

        internal TextSizes Sizes => format.TextSizes;

        internal double Width => _space.Width;

        /// <summary>Width of a table that shares the sheet with another beside it; on a sheet too narrow for two it has the whole.</summary>
        internal double Half => (_space.Width - Apart) / 2 is var half && half >= Sizes.ByNotes(LeastHalf) ? Math.Min(Sizes.ByNotes(120), half) : _space.Width;

        /// <summary>A place of that width and at least that height: under the last table, or in a new column; null where there is none.</summary>
        internal PaperBox? Room(double width, double height)
        {
            if (Column(_left, width, _top, height) is { } under)
            {
                return under;
            }

            if (_items.Count == 0 || Column(_right + Apart, width, _shelf, height) is not { } beside)
            {
                return null;
            }

            (_left, _top) = (_right + Apart, _shelf);
            return beside;
        }

        internal void Put(IReadOnlyList<Item> items, PaperBox box)
        {
            _items.AddRange(items);
            _top = box.Bottom - Apart;
            if (box.Width > _space.Width / 2 + Apart)
            {
                _shelf = _top;
            }
            else
            {
                _right = Math.Max(_right, box.Right);
            }
        }

        private PaperBox? Column(double left, double width, double top, double height)
        {
            var block = format.Zones["title-block"];
            var foot = left + width > block.Left ? format.TitleTop + Apart : _space.Bottom;
            return left + width <= _space.Right + 1e-6 && top - height >= foot ? new(left, foot, left + width, top) : null;
        }
    }
}
