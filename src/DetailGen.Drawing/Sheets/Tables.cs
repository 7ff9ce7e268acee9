using System.Globalization;
using DetailGen.Drawing.Annotation;
using DetailGen.Drawing.Lettering;
using DetailGen.Drawing.Scenes;

namespace DetailGen.Drawing.Sheets;

/// <summary>The tables of a sheet: layer schedule, check list, revisions, and the general notes.</summary>
internal static class Tables
{
    private const double NotePitch = 4.25;
    private const string NotesTitle = "General notes and cautions";
    private const string Numbered = "Notes by number";

    /// <summary>Whole stacks as far as the zone holds; the number of stacks laid tells what is left for the next sheet.</summary>
    internal static (IReadOnlyList<Item> Items, int Laid, PaperBox Box) Schedule(TextSizes sizes, IReadOnlyList<ScheduleBlock> stacks, PaperBox zone)
    {
        // As many stacks as fit, closer together if that makes room for one more.
        for (var laid = stacks.Count; laid > 0; laid--)
        {
            var rows = Rows(stacks.Take(laid));
            var columns = ScheduleColumns(sizes, zone.Width, rows);
            foreach (var tighter in (double[])[0, Table.Tight])
            {
                if (Table.HeightOf(sizes, "Layer schedule", columns, rows, tighter) <= zone.Height)
                {
                    var table = Table.Lay(sizes, "schedule", "Layer schedule", columns, rows, new(zone.Left, zone.Top), zone.Bottom - 1e-6, tighter);
                    return (table.Items, laid, table.Box);
                }
            }
        }

        return ([], 0, zone);
    }

    /// <summary>What it takes where its columns together should take no more than <paramref name="width"/>, mm.</summary>
    internal static (double Width, double Height) ScheduleNeeds(TextSizes sizes, IReadOnlyList<ScheduleBlock> stacks, double width)
    {
        var rows = Rows(stacks);
        var columns = ScheduleColumns(sizes, width, rows);
        return (columns.Sum(column => column.Width), Table.HeightOf(sizes, "Layer schedule", columns, rows));
    }

    /// <summary>The whole check list, as many lines as fit; what is left goes on elsewhere.</summary>
    internal static (IReadOnlyList<Item> Items, int Laid, PaperBox Box) CheckList(
        TextSizes sizes, IReadOnlyList<CheckLine> checks, int furtherPasses, PaperBox zone, bool continuing)
    {
        var table = Checks(sizes, continuing ? "Check list, continued" : "Check list", checks, check => check.Text, zone);
        var further = table.RowsLaid < checks.Count ? "continued" : Passing(furtherPasses);
        return Closed(sizes, table, further, zone);
    }

    /// <summary>All of it but what passes, that as far as it fits and then counted; null where the zone does not hold it.</summary>
    internal static (IReadOnlyList<Item> Items, PaperBox Box)? WholeCheckList(TextSizes sizes, IReadOnlyList<CheckLine> checks, int furtherPasses, PaperBox zone)
    {
        var table = Checks(sizes, "Check list", checks, check => check.Text, zone);
        if (checks.Skip(table.RowsLaid).Any(check => check.Verdict != Verdict.Pass))
        {
            return null;
        }

        var (items, laid, box) = Closed(sizes, table, Passing(furtherPasses + checks.Count - table.RowsLaid), zone);
        return laid > 0 ? (items, box) : null;
    }

    private static string Passing(int count) => count switch
    {
        0 => "",
        1 => "1 further check passes",
        _ => $"{Count(count)} further checks pass",
    };

    /// <summary>What the whole list takes with its title and its last line, mm.</summary>
    internal static double CheckListHeight(TextSizes sizes, IReadOnlyList<CheckLine> checks, double width) =>
        sizes.ByNotes(LastLine) + Table.HeightOf(sizes, "Check list", CheckColumns(sizes, checks, width), CheckRows(checks, check => check.Text));

    /// <summary>What of the check list belongs on the first sheet: a table of what fails, is broken, waived or passes by the least, as much as fits; below it in words what a person must confirm, and how much there is besides.</summary>
    /// <returns>Whole: nothing is left for further sheets.</returns>
    internal static (IReadOnlyList<Item> Items, bool Whole, PaperBox Box) Foremost(TextSizes sizes, IReadOnlyList<CheckLine> checks, int furtherPasses, PaperBox zone)
    {
        var confirm = checks.Where(check => check.Foremost && check.Verdict == Verdict.ToConfirm).ToList();
        var rows = checks.Where(check => check.Foremost && check.Verdict != Verdict.ToConfirm).ToList();
        var unnamed = checks.Count(check => check.Verdict == Verdict.ToConfirm) - confirm.Count;
        var width = zone.Width / Table.Slack;
        while (true)
        {
            var reserve = sizes.Typeface.Wrap(Remainder(confirm, unnamed, rows, checks.Count + furtherPasses, shown: true), sizes.Notes, width).Count * sizes.ByNotes(NotePitch);
            if (confirm.Count > 0 && reserve > zone.Height * MostInWords)
            {
                confirm.RemoveAt(confirm.Count - 1);
                unnamed++;
                continue;
            }

            var table = Checks(sizes, "Check list", rows, check => check.Name, zone with { Bottom = zone.Bottom + reserve });
            var left = rows.Skip(table.RowsLaid).ToList();
            var passes = furtherPasses + checks.Count(check => check.Verdict == Verdict.Pass) - rows.Take(table.RowsLaid).Count(check => check.Verdict == Verdict.Pass);
            var words = Remainder(confirm, unnamed, [.. left.Where(check => check.Verdict != Verdict.Pass)], passes, shown: table.RowsLaid > 0);
            var (items, _, box) = Closed(sizes, table, words, zone);
            return (items, unnamed == 0 && left.TrueForAll(check => check.Verdict == Verdict.Pass), box);
        }
    }

    /// <summary>Where the zone holds no more: that there is a check list.</summary>
    internal static (IReadOnlyList<Item> Items, PaperBox Box) Elsewhere(TextSizes sizes, PaperBox zone)
    {
        var (items, _, box) = Closed(sizes, Table.Empty(sizes, "checklist", "Check list", new(zone.Left, zone.Top), zone.Width), "see further sheets", zone);
        return (items, box);
    }

    /// <summary>How much of the room of a check list may go into words.</summary>
    private const double MostInWords = 0.45;

    private static string Remainder(List<CheckLine> confirm, int unnamed, IReadOnlyList<CheckLine> open, int passes, bool shown)
    {
        var more = new List<string>();
        more.AddRange(open.GroupBy(check => check.Verdict).OrderBy(group => group.Key).Select(group => $"{Count(group.Count())}{(shown ? " more" : "")} {VerdictSign.Words(group.Key)}"));
        if (unnamed > 0)
        {
            more.Add(confirm.Count > 0 ? $"{Count(unnamed)} more to confirm" : $"{Count(unnamed)} to confirm");
        }

        var elsewhere = more.Count > 0 ? ": see further sheets" : "";
        if (passes > 0)
        {
            more.Add(Passing(passes));
        }

        var named = confirm.Count > 0 ? $"To confirm: {string.Join("; ", confirm.Select(check => check.Name))}. " : "";
        return named + string.Join(", ", more) + elsewhere;
    }

    /// <summary>Under a check list, for what is counted only.</summary>
    private const double LastLine = 4.5;

    private static Table Checks(TextSizes sizes, string title, IReadOnlyList<CheckLine> checks, Func<CheckLine, string> words, PaperBox zone)
    {
        var columns = CheckColumns(sizes, checks, zone.Width);
        if ((sizes.Notes > TextSizes.Usual.Notes || sizes.Typeface != Typeface.Shipped) && columns[0].Width < ColumnWidths.Needed(sizes, new(0, ["Rule or"]), checks.Select(check => new Cell(words(check))), whole: false))
        {
            // Rather counted in words than with words torn.
            return Table.Empty(sizes, "checklist", title, new(zone.Left, zone.Top), zone.Width);
        }

        var table = Table.Lay(sizes, "checklist", title, columns, CheckRows(checks, words), new(zone.Left, zone.Top), zone.Bottom + sizes.ByNotes(LastLine));
        return table.RowsLaid > 0 ? table : Table.Empty(sizes, "checklist", title, new(zone.Left, zone.Top), zone.Width);
    }

    private static Column[] CheckColumns(TextSizes sizes, IReadOnlyList<CheckLine> checks, double width)
    {
        // as wide as the longest of its words with the sign beside it
        var verdict = checks.Select(check => sizes.ByWord(check.Verdict switch { Verdict.ToConfirm => 23, Verdict.Waived => 18, _ => 16.5 }, VerdictSign.Words(check.Verdict)))
            .Append(sizes.ByWord(16.5, "verdict", bold: true)).Max();
        var spare = width - verdict - ColumnWidths.Needed(sizes, new(0, ["Rule or"]), [], whole: true);
        var (required, drawn) = (Wide(sizes.ByWord(16.5, "required", bold: true), check => check.Required), Wide(sizes.ByWord(13, "drawn", bold: true), check => check.Drawn));
        var first = width - required - drawn - verdict;
        string[] head = first < ColumnWidths.Needed(sizes, new(0, ["Rule or check"]), [], whole: true) ? ["Rule or", "check"] : ["Rule or check"];
        return [new(first, head), new(required, ["required"]), new(drawn, ["drawn"]), new(verdict, ["verdict"])];

        // No unit is torn: as wide as the longest word, up to half of what the first column can do without. In a wide table no figure is parted from its sign and unit either.
        double Wide(double least, Func<CheckLine, string> of)
        {
            var needed = ColumnWidths.Needed(sizes, new(0, []), checks.Select(check => new Cell(of(check))).Prepend(new("")), whole: false);
            if (width > sizes.ByNotes(WideTable))
            {
                needed = checks.Select(check => ColumnWidths.Needed(sizes, of(check))).Where(whole => whole <= sizes.ByNotes(WideFigure)).Append(needed).Max();
            }

            return Math.Clamp(needed, least, Math.Max(least, spare / 2));
        }
    }

    /// <summary>From here on a check list has room for its figures in one line, mm.</summary>
    private const double WideTable = 100;

    /// <summary>No figure with sign and unit is wider; what is, is words, which may be broken. mm.</summary>
    private const double WideFigure = 28;

    private static IReadOnlyList<Cell>[] CheckRows(IReadOnlyList<CheckLine> checks, Func<CheckLine, string> words) =>
    [
        .. checks.Select(check => (IReadOnlyList<Cell>)[new(words(check)), new(check.Required), new(check.Drawn), new(VerdictSign.Words(check.Verdict), Sign: check.Verdict)]),
    ];

    private static (IReadOnlyList<Item> Items, int Laid, PaperBox Box) Closed(TextSizes sizes, Table table, string words, PaperBox zone)
    {
        var lines = sizes.Typeface.Wrap(words, sizes.Notes, zone.Width / Table.Slack);
        var (box, first, pitch) = (table.Box, sizes.ByNotes(3.6), sizes.ByNotes(NotePitch));
        return (
            [.. table.Items, .. lines.Select((line, i) => new Text("checklist", line, new(zone.Left, box.Bottom - first - (i * pitch)), sizes.Notes))],
            table.RowsLaid,
            box with { Bottom = box.Bottom - first - (Math.Max(0, lines.Count - 1) * pitch) - sizes.ByNotes(0.8) });
    }

    /// <summary>The latest revision at the top; older ones that find no room are told in the last row.</summary>
    // The table stands on the title block, so it is laid from the height that its rows need.
    internal static IReadOnlyList<Item> Revisions(TextSizes sizes, IReadOnlyList<RevisionLine> revisions, PaperBox zone)
    {
        var (columns, rows) = RevisionRows(sizes, revisions, zone.Height);
        return Table.Lay(sizes, "revisions", "", columns, rows, new(zone.Left, zone.Bottom + Table.HeightOf(sizes, "", columns, rows)), zone.Bottom - 1e-6).Items;
    }

    /// <summary>What the revisions take of a height, mm.</summary>
    internal static double RevisionsHeight(TextSizes sizes, IReadOnlyList<RevisionLine> revisions, double most) =>
        RevisionRows(sizes, revisions, most) is var (columns, rows) ? Table.HeightOf(sizes, "", columns, rows) : 0;

    private static (Column[] Columns, List<IReadOnlyList<Cell>> Rows) RevisionRows(TextSizes sizes, IReadOnlyList<RevisionLine> revisions, double most)
    {
        var (number, date, name) = (sizes.ByWord(16, "P01.1"), sizes.ByWord(23, "2026-11-25"), sizes.ByWord(25, "Checked", bold: true));
        Column[] columns = [new(number, ["Rev"]), new(date, ["Date"]), new(180 - (number + date + (2 * name)), ["Description"]), new(name, ["Drawn"]), new(name, ["Checked"])];
        List<IReadOnlyList<Cell>> rows = [.. revisions.Select(line => (IReadOnlyList<Cell>)[new(line.Revision), new(line.Date), new(line.Description), new(line.Drawn), new(line.Checked)])];
        IReadOnlyList<Cell> earlier = [new(""), new(""), new("earlier revisions: see register"), new(""), new("")];
        var shown = rows;
        for (var kept = rows.Count - 1; Table.HeightOf(sizes, "", columns, shown) > most && kept >= 0; kept--)
        {
            shown = [.. rows.Take(kept), earlier];
        }

        return (columns, shown);
    }

    /// <summary>Numbered general notes in one column; the whole text is laid, and its box tells whether it fitted.</summary>
    internal static (IReadOnlyList<Item> Items, PaperBox Box) Notes(TextSizes sizes, IReadOnlyList<string> notes, PaperBox zone)
    {
        var (indent, first, pitch) = (sizes.ByWord(5, "10"), sizes.ByNotes(3.2), sizes.ByNotes(NotePitch));
        var title = zone.Height > 15;
        var items = new List<Item>();
        var y = zone.Top;
        if (title)
        {
            var heading = sizes.Typeface.Width(NotesTitle, sizes.Titles) * Table.Slack <= zone.Width ? NotesTitle : "Notes and cautions";
            items.Add(new Text("block.notes", heading, new(zone.Left, y - sizes.ByTitles(4.3)), sizes.Titles));
            y -= sizes.ByTitles(6.5);
        }

        for (var i = 0; i < notes.Count; i++)
        {
            var lines = sizes.Typeface.Wrap(notes[i], sizes.Notes, (zone.Width - indent) / Table.Slack);
            items.Add(new Text("block.notes", Count(i + 1), new(zone.Left, y - first), sizes.Notes, Bold: true));
            items.Add(new Paragraph("block.notes", lines, new(zone.Left + indent, y - first), sizes.Notes, pitch));
            y -= lines.Count * pitch + 1.2;
        }

        return (items, zone with { Bottom = y });
    }

    /// <summary>What the notes take with their title, mm.</summary>
    internal static double NotesHeight(TextSizes sizes, IReadOnlyList<string> notes, double width) => -Notes(sizes, notes, new(0, double.NegativeInfinity, width, 0)).Box.Bottom;

    /// <summary>Notes that stand on the view as numbers only, as many as fit.</summary>
    internal static (IReadOnlyList<Item> Items, int Laid, PaperBox Box) Keyed(TextSizes sizes, IReadOnlyList<KeyedNote> notes, PaperBox zone, string title = Numbered)
    {
        var (columns, rows) = KeyedTable(sizes, notes, zone.Width);
        var table = Table.Lay(sizes, "note.text", title, columns, rows, new(zone.Left, zone.Top), zone.Bottom);
        return (table.Items, table.RowsLaid, table.Box);
    }

    /// <summary>All of them in two columns; null where they do not fit.</summary>
    internal static (IReadOnlyList<Item> Items, PaperBox Box)? KeyedInTwo(TextSizes sizes, IReadOnlyList<KeyedNote> notes, PaperBox zone)
    {
        const double apart = 4;
        var width = (zone.Width - apart) / 2;

        // Half in each where they hold it, which leaves the most room below; else as much as goes into the first.
        foreach (var most in (int[])[(notes.Count + 1) / 2, notes.Count])
        {
            var (items, laid, box) = Keyed(sizes, [.. notes.Take(most)], zone with { Right = zone.Left + width });
            if (laid < notes.Count)
            {
                var (others, rest, beside) = Keyed(sizes, [.. notes.Skip(laid)], zone with { Left = zone.Right - width }, Numbered + ", continued");
                (items, laid, box) = ([.. items, .. others], laid + rest, box with { Right = beside.Right, Bottom = Math.Min(box.Bottom, beside.Bottom) });
            }

            if (laid == notes.Count)
            {
                return (items, box);
            }
        }

        return null;
    }

    internal static double KeyedHeight(TextSizes sizes, IReadOnlyList<KeyedNote> notes, double width)
    {
        var (columns, rows) = KeyedTable(sizes, notes, width);
        return Table.HeightOf(sizes, Numbered, columns, rows);
    }

    private static (Column[] Columns, IReadOnlyList<Cell>[] Rows) KeyedTable(TextSizes sizes, IReadOnlyList<KeyedNote> notes, double width) =>
    (
        [new(KeyColumn(sizes), []), new(width - KeyColumn(sizes), [])],
        [.. notes.Select(note => (IReadOnlyList<Cell>)[new(note.Key.Length > 0 ? note.Key : "–", Bold: true), new(note.Words)])]);

    private static double KeyColumn(TextSizes sizes) => sizes.ByWord(10, "W10", bold: true);

    private static IReadOnlyList<Column> ScheduleColumns(TextSizes sizes, double width, IReadOnlyList<IReadOnlyList<Cell>> rows)
    {
        var share = width / 8;
        Column[] columns =
        [
            new(share, ["Ref"]), new(share, ["Element"]), new(share, ["Material"]), new(share, ["Thickness", "mm"], Align.Right),
            new(share, ["λ", "W/mK"], Align.Right), new(share, ["R", "m²K/W"], Align.Right), new(share, ["Function"]), new(share, ["Source or", "remark"]),
        ];
        return ColumnWidths.Fitted(sizes, columns, rows);
    }

    private static IReadOnlyList<Cell>[] Rows(IEnumerable<ScheduleBlock> stacks) =>
    [
        .. stacks.SelectMany(stack => stack.Rows).Select(row => (IReadOnlyList<Cell>)
        [
            new(row.Reference), new(row.Element, row.Sum), new(row.Material, row.Sum), new(row.Thickness, row.Sum), new(row.Conductivity, row.Sum),
            new(row.Resistance, row.Sum), new(row.Function), new(row.Remark),
        ]),
    ];

    private static string Count(int number) => number.ToString(CultureInfo.InvariantCulture);
}
