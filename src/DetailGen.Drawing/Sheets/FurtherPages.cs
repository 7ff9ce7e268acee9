using DetailGen.Drawing.Annotation;
using DetailGen.Drawing.Lettering;
using DetailGen.Drawing.Scenes;

namespace DetailGen.Drawing.Sheets;

/// <summary>What found no room on the first sheet.</summary>
internal sealed record LeftOver(
    IReadOnlyList<ScheduleBlock> Stacks, IReadOnlyList<KeyEntry> Key, IReadOnlyList<CheckLine> Checks, IReadOnlyList<string> Notes,
    IReadOnlyList<KeyedNote> Keyed, SheetText Text)
{
    internal IReadOnlyList<CheckLine> Judged => [.. Checks.Where(check => !CheckTables.IsToConfirm(check))];

    internal IReadOnlyList<CheckLine> ToConfirm => [.. Checks.Where(CheckTables.IsToConfirm)];

    internal bool IsEmpty => Stacks.Count == 0 && Key.Count == 0 && Checks.Count == 0 && Notes.Count == 0 && Keyed.Count == 0;
}

/// <summary>Sheets that hold tables only, in columns beside and above the title block: full ones from the left, the last sheet's all to one height.</summary>
internal static class FurtherPages
{
    private const double Apart = 6;

    /// <summary>Narrower columns break most sentences of what is to be confirmed, and a schedule, into two lines and more; mm.</summary>
    private const double Narrowest = 160;

    /// <summary>Least of a list with its title that is worth beginning at the foot of a column, mm.</summary>
    private const double Begun = 40;

    /// <summary>In so many halvings the common height of the last sheet's columns is found, to about 10 mm.</summary>
    private const int Halvings = 5;

    internal static IReadOnlyList<IReadOnlyList<Item>> Lay(SheetFormat format, LeftOver rest)
    {
        var pages = new List<IReadOnlyList<Item>>();
        while (!rest.IsEmpty)
        {
            var page = new Flow(format, 0);
            var left = Fill(page, rest);
            pages.Add(left.IsEmpty ? Level(format, rest, page).Items : page.Items);
            rest = left;
        }

        return pages;
    }

    /// <summary>Whether the widest table has room on such a sheet: no column is narrower than its longest word, and each stack stands on one sheet.</summary>
    internal static bool Hold(SheetFormat format, IReadOnlyList<ScheduleBlock> stacks)
    {
        var most = new Flow(format, 0).Width;
        return stacks.All(stack => Tables.ScheduleNeeds(format.TextSizes, [stack], most) is var (width, height) && width <= most + 1e-6 && new Flow(format, 0).Room(height) is not null);
    }

    // The same with feet as high as they may be for all of it still to stand there.
    private static Flow Level(SheetFormat format, LeftOver rest, Flow page)
    {
        var (low, high) = (0.0, page.Columns > 1 ? format.Space.Height : 0);
        for (var i = 0; i < Halvings && high > 0; i++)
        {
            var middle = (low + high) / 2;
            var higher = new Flow(format, middle);
            var holds = Fill(higher, rest).IsEmpty;
            (low, high, page) = holds ? (middle, high, higher) : (low, middle, page);
        }

        return page;
    }

    // First what a reader of the first sheet looks for: the words of its numbers.
    private static LeftOver Fill(Flow page, LeftOver rest)
    {
        var sizes = page.Sizes;
        if (rest.Keyed.Count > 0 && page.Room(Least(rest.Keyed.Count, () => Tables.KeyedHeight(sizes, rest.Keyed, page.Width))) is { } keyedZone)
        {
            var (items, laid, box) = Tables.Keyed(sizes, rest.Keyed, keyedZone);
            page.Put(items, box);
            rest = rest with { Keyed = [.. rest.Keyed.Skip(laid)] };
        }

        while (rest.Stacks.Count > 0 && page.Room(Tables.ScheduleNeeds(sizes, [rest.Stacks[0]], page.Width).Height) is { } zone)
        {
            var (items, laid, box) = Tables.Schedule(sizes, rest.Stacks, zone);
            page.Put(items, box);
            rest = rest with { Stacks = [.. rest.Stacks.Skip(laid)] };
        }

        if (rest.Stacks.Count > 0 && page.IsWhole)
        {
            throw new InvalidOperationException($"A stack of {rest.Stacks[0].Rows.Count} layers does not fit a whole sheet.");
        }

        if (rest.Notes.Count > 0 && page.Room(Tables.NotesHeight(sizes, rest.Notes, page.Width)) is { } noteZone)
        {
            var (items, box) = Tables.Notes(sizes, rest.Notes, noteZone);
            page.Put(items, box);
            rest = rest with { Notes = [] };
        }

        if (rest.Key.Count > 0 && Key.HeightIn(sizes, page.Width, rest.Key, rest.Text.ShortForms) is var height && page.Room(height) is { } keyZone)
        {
            var box = keyZone with { Bottom = keyZone.Top - height };
            page.Put(Key.Lay(sizes, rest.Key, rest.Text.ShortForms, box), box);
            rest = rest with { Key = [] };
        }

        while (rest.Judged is { Count: > 0 } judged && page.Room(Least(judged.Count, () => CheckTables.VerdictsHeight(sizes, judged, page.Width))) is { } checkZone)
        {
            var continuing = judged.Count < rest.Text.Checks.Count(check => !CheckTables.IsToConfirm(check));
            var (items, laid, box) = CheckTables.Verdicts(sizes, judged, rest.Text.FurtherPasses, checkZone, continuing);
            page.Put(items, box);
            rest = rest with { Checks = [.. judged.Skip(laid), .. rest.ToConfirm] };
        }

        while (rest.Judged.Count == 0 && rest.ToConfirm is { Count: > 0 } confirm && page.Room(Least(confirm.Count, () => CheckTables.SentencesHeight(sizes, confirm, page.Width))) is { } sentenceZone)
        {
            var continuing = confirm.Count < rest.Text.Checks.Count(CheckTables.IsToConfirm);
            var untold = rest.Text.Checks.All(CheckTables.IsToConfirm) ? rest.Text.FurtherPasses : 0;
            var (items, laid, box) = CheckTables.Sentences(sizes, confirm, untold, sentenceZone, continuing);
            page.Put(items, box);
            rest = rest with { Checks = [.. confirm.Skip(laid)] };
        }

        return rest;

        // Many rows are too high whatever stands in them.
        double Least(int rows, Func<double> height) =>
            sizes.ByNotes(Begun) is var begun && rows * Table.Height(sizes, 1) >= begun ? begun : Math.Min(begun, height());
    }

    /// <summary>Columns of one width from the left, each filled from the top down, clear of title block and revisions.</summary>
    /// <param name="lift">Least height of their feet over the foot of the sheet, mm.</param>
    private sealed class Flow(SheetFormat format, double lift)
    {
        private readonly PaperBox[] _columns = [.. Clear(format, lift)];
        private readonly List<Item> _items = [];
        private int _at;
        private double _top = format.Space.Grow(-Apart).Top;

        // Clear of the centring marks, which reach 5 into the drawing space.
        private static IEnumerable<PaperBox> Clear(SheetFormat format, double lift)
        {
            var room = format.Space.Grow(-Apart);
            return from column in Companions.Columns.In(room, Math.Min(format.TextSizes.ByNotes(Narrowest), room.Width))
                   let foot = column.Right > format.Zones["title-block"].Left ? format.TitleTop + Apart : column.Bottom
                   select column with { Bottom = Math.Max(foot, format.Space.Bottom + lift) };
        }

        internal IReadOnlyList<Item> Items => _items;

        /// <summary>Nothing stands on it, and nothing keeps anything off.</summary>
        internal bool IsWhole => _items.Count == 0 && lift == 0;

        internal TextSizes Sizes => format.TextSizes;

        internal int Columns => _columns.Length;

        internal double Width => _columns[0].Width;

        /// <summary>A place of at least that height: under the last table, or in the next column; null where there is none.</summary>
        internal PaperBox? Room(double height)
        {
            for (; _at < _columns.Length; (_at, _top) = (_at + 1, _columns[0].Top))
            {
                if (_top - height >= _columns[_at].Bottom)
                {
                    return _columns[_at] with { Top = _top };
                }
            }

            return null;
        }

        internal void Put(IReadOnlyList<Item> items, PaperBox box)
        {
            _items.AddRange(items);
            _top = box.Bottom - Apart;
        }
    }
}
