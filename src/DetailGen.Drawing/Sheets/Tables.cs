using System.Globalization;
using DetailGen.Drawing.Annotation;
using DetailGen.Drawing.Lettering;
using DetailGen.Drawing.Scenes;

namespace DetailGen.Drawing.Sheets;

/// <summary>The tables of a sheet: layer schedule, check list, revisions, and the general notes.</summary>
internal static class Tables
{
    private const double Text = Table.Text;
    private const double NotePitch = 4.25;

    /// <summary>Whole stacks as far as the zone holds; the number of stacks laid tells what is left for the next sheet.</summary>
    internal static (IReadOnlyList<Item> Items, int Laid, PaperBox Box) Schedule(IReadOnlyList<ScheduleBlock> stacks, PaperBox zone)
    {
        var columns = ScheduleColumns(zone.Width);
        var laid = stacks.Count;
        while (laid > 0 && Table.HeightOf("Layer schedule", columns, Rows(stacks.Take(laid))) > zone.Height)
        {
            laid--;
        }

        if (laid == 0)
        {
            return ([], 0, zone);
        }

        var table = Table.Lay("schedule", "Layer schedule", columns, Rows(stacks.Take(laid)), new(zone.Left, zone.Top), zone.Bottom - 1e-6);
        return (table.Items, laid, table.Box);
    }

    internal static double ScheduleHeight(IReadOnlyList<ScheduleBlock> stacks, double width) =>
        Table.HeightOf("Layer schedule", ScheduleColumns(width), Rows(stacks));

    /// <summary>As many lines as fit, and a last line that counts the rest.</summary>
    /// <param name="continued">What does not fit goes on elsewhere, so that only passes beyond the list are counted, and those at its end.</param>
    internal static (IReadOnlyList<Item> Items, int Laid, PaperBox Box) CheckList(
        IReadOnlyList<CheckLine> checks, int furtherPasses, PaperBox zone, bool continued = false)
    {
        Column[] columns =
        [
            new(zone.Width - 16.5 - 13 - 23, ["Rule or check"]), new(16.5, ["required"]), new(13, ["drawn"]), new(23, ["verdict"]),
        ];
        const double lastLine = 4.5;
        IReadOnlyList<Cell>[] rows =
        [
            .. checks.Select(check => (IReadOnlyList<Cell>)[new(check.Rule), new(check.Required), new(check.Drawn), new(VerdictSign.Words(check.Verdict), Sign: check.Verdict)]),
        ];
        var table = Table.Lay("checklist", "Check list", columns, rows, new(zone.Left, zone.Top), zone.Bottom + lastLine);
        var left = checks.Skip(table.RowsLaid).ToList();
        var open = left.Count(check => check.Verdict is not (Verdict.Pass or Verdict.NotApplicable));
        var passes = furtherPasses + left.Count - open;
        var words = string.Join("; ", new[]
        {
            open > 0 ? $"{Count(open)} more to look at: see the report" : "",
            passes > 0 ? $"{Count(passes)} further checks pass" : "",
        }.Where(text => text.Length > 0));
        if (continued)
        {
            words = left.Count > 0 ? "continued" : furtherPasses > 0 ? $"{Count(furtherPasses)} further checks pass" : "";
        }

        var lines = Wrapping.Wrap(words, Text, zone.Width / Table.Slack);
        List<Item> items = [.. table.Items];
        for (var i = 0; i < lines.Count; i++)
        {
            items.Add(new Text("checklist", lines[i], new(zone.Left, table.Box.Bottom - 3.6 - i * NotePitch), Text));
        }

        return (items, table.RowsLaid, table.Box with { Bottom = table.Box.Bottom - 3.6 - Math.Max(0, lines.Count - 1) * NotePitch - 0.8 });
    }

    /// <summary>How many lines of the check list there are of each verdict, where the list itself stands on a further sheet.</summary>
    internal static (IReadOnlyList<Item> Items, PaperBox Box) CheckSummary(IReadOnlyList<CheckLine> checks, int furtherPasses, PaperBox zone)
    {
        Column[] columns = [new(zone.Width - 24, ["Check list: see further sheets"]), new(24, ["number"], Align.Right)];
        var counts = checks.GroupBy(check => check.Verdict).Select(group => (Verdict: group.Key, Count: group.Count() + (group.Key == Verdict.Pass ? furtherPasses : 0)));
        IReadOnlyList<Cell>[] rows =
        [
            .. counts.OrderBy(count => count.Verdict).Select(count => (IReadOnlyList<Cell>)[new(VerdictSign.Words(count.Verdict), Sign: count.Verdict), new(Count(count.Count))]),
        ];
        // A handful of rows, all of which stand whatever the zone leaves; the key below gives way.
        var table = Table.Lay("checklist", "Check list", columns, rows, new(zone.Left, zone.Top), zone.Top - Table.HeightOf("Check list", columns, rows) - 1);
        return (table.Items, table.Box);
    }

    /// <summary>The latest revision at the top; older ones that find no room are told in the last row.</summary>
    internal static IReadOnlyList<Item> Revisions(IReadOnlyList<RevisionLine> revisions, PaperBox zone)
    {
        Column[] columns = [new(16, ["Rev"]), new(23, ["Date"]), new(91, ["Description"]), new(25, ["Drawn"]), new(25, ["Checked"])];
        List<IReadOnlyList<Cell>> rows = [.. revisions.Select(line => (IReadOnlyList<Cell>)[new(line.Revision), new(line.Date), new(line.Description), new(line.Drawn), new(line.Checked)])];
        IReadOnlyList<Cell> earlier = [new(""), new(""), new("earlier revisions: see register"), new(""), new("")];
        var shown = rows;
        for (var kept = rows.Count - 1; Table.HeightOf("", columns, shown) > zone.Height && kept >= 0; kept--)
        {
            shown = [.. rows.Take(kept), earlier];
        }

        // The table stands on the title block, so it is laid from the height that its rows need.
        return Table.Lay("revisions", "", columns, shown, new(zone.Left, zone.Bottom + Table.HeightOf("", columns, shown)), zone.Bottom - 1e-6).Items;
    }

    /// <summary>Numbered general notes in one column; the whole text is laid, and its box tells whether it fitted.</summary>
    internal static (IReadOnlyList<Item> Items, PaperBox Box) Notes(IReadOnlyList<string> notes, PaperBox zone)
    {
        const double indent = 5;
        var title = zone.Height > 15;
        var items = new List<Item>();
        var y = zone.Top;
        if (title)
        {
            items.Add(new Text("block.notes", "General notes and cautions", new(zone.Left, y - 4.3), 3.5));
            y -= 6.5;
        }

        for (var i = 0; i < notes.Count; i++)
        {
            var lines = Wrapping.Wrap(notes[i], Text, (zone.Width - indent) / Table.Slack);
            items.Add(new Text("block.notes", Count(i + 1), new(zone.Left, y - 3.2), Text, Bold: true));
            items.Add(new Paragraph("block.notes", lines, new(zone.Left + indent, y - 3.2), Text, NotePitch));
            y -= lines.Count * NotePitch + 1.2;
        }

        return (items, zone with { Bottom = y });
    }

    /// <summary>Notes that stand on the view as numbers only, as many as fit.</summary>
    internal static (IReadOnlyList<Item> Items, int Laid, PaperBox Box) Keyed(IReadOnlyList<KeyedNote> notes, PaperBox zone)
    {
        Column[] columns = [new(10, ["No."]), new(zone.Width - 10, ["Note"])];
        IReadOnlyList<Cell>[] rows = [.. notes.Select(note => (IReadOnlyList<Cell>)[new(note.Key.Length > 0 ? note.Key : "–", Bold: true), new(note.Words)])];
        var table = Table.Lay("note.text", "Notes by number", columns, rows, new(zone.Left, zone.Top), zone.Bottom);
        return (table.Items, table.RowsLaid, table.Box);
    }

    private static Column[] ScheduleColumns(double width)
    {
        var slim = width < 200;
        var wide = (width - (slim ? 180 : 206)) / 4;
        return
        [
            new(9, ["Ref"]), new((slim ? 26 : 30) + wide, ["Element"]), new((slim ? 38 : 44) + wide, ["Material"]), new(20, ["Thickness", "mm"], Align.Right),
            new(18, ["λ", "W/(m·K)"], Align.Right), new(15, ["R", "m²K/W"], Align.Right), new((slim ? 28 : 36) + wide, ["Function"]),
            new((slim ? 26 : 34) + wide, ["Source or", "remark"]),
        ];
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
