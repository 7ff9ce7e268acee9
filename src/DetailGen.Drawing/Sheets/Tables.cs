using System.Globalization;
using DetailGen.Drawing.Annotation;
using DetailGen.Drawing.Lettering;
using DetailGen.Drawing.Scenes;

namespace DetailGen.Drawing.Sheets;

/// <summary>The tables of a sheet: layer schedule, revisions, numbered notes, and the general notes.</summary>
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

    /// <summary>The latest revision at the top; older ones that find no room are told in the last row.</summary>
    // The table stands on the title block, so it is laid from the height that its rows need.
    internal static IReadOnlyList<Item> Revisions(TextSizes sizes, IReadOnlyList<RevisionLine> revisions, PaperBox zone)
    {
        var (columns, rows) = RevisionRows(sizes, revisions, zone.Width, zone.Height);
        return Table.Lay(sizes, "revisions", "", columns, rows, new(zone.Left, zone.Bottom + Table.HeightOf(sizes, "", columns, rows)), zone.Bottom - 1e-6).Items;
    }

    /// <summary>What the revisions take of a height, mm.</summary>
    internal static double RevisionsHeight(TextSizes sizes, IReadOnlyList<RevisionLine> revisions, double width, double most) =>
        RevisionRows(sizes, revisions, width, most) is var (columns, rows) ? Table.HeightOf(sizes, "", columns, rows) : 0;

    private static (Column[] Columns, List<IReadOnlyList<Cell>> Rows) RevisionRows(TextSizes sizes, IReadOnlyList<RevisionLine> revisions, double width, double most)
    {
        var (number, date, name) = (sizes.ByWord(16, "P01.1"), sizes.ByWord(23, "2026-11-25"), sizes.ByWord(25, "Checked", bold: true));
        Column[] columns = [new(number, ["Rev"]), new(date, ["Date"]), new(width - (number + date + (2 * name)), ["Description"]), new(name, ["Drawn"]), new(name, ["Checked"])];
        List<IReadOnlyList<Cell>> rows = [.. revisions.Select(line => (IReadOnlyList<Cell>)[new(line.Revision), new(line.Date), new(line.Description), new(line.Drawn), new(line.Checked)])];
        IReadOnlyList<Cell> earlier = [new(""), new(""), new("earlier revisions: see register"), new(""), new("")];
        var shown = rows;
        for (var kept = rows.Count - 1; Table.HeightOf(sizes, "", columns, shown) > most + 1e-6 && kept >= 0; kept--)
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
