using DetailGen.Drawing.Lettering;
using DetailGen.Drawing.Scenes;

namespace DetailGen.Drawing.Sheets;

/// <summary>A column of a table; mm.</summary>
/// <param name="Head">Lines of the head, bold.</param>
internal sealed record Column(double Width, IReadOnlyList<string> Head, Align Align = Align.Left);

/// <summary>A cell; a sign of shape stands before its words, so that colour alone tells nothing.</summary>
internal sealed record Cell(string Words, bool Bold = false, Verdict? Sign = null);

/// <summary>A table with its rules, laid from its upper left corner downwards.</summary>
internal sealed record Table(IReadOnlyList<Item> Items, PaperBox Box, int RowsLaid)
{
    private const double Pitch = 4.5;

    /// <summary>What the pitch of rows gives way by where a whole block of rows would otherwise go to another sheet; with more, letters would come nearer to the rules than a print keeps open.</summary>
    internal const double Tight = 0.14;

    /// <summary>From the upper rule of a row to the base line of its first line: as much white over ascenders as under descenders.</summary>
    private const double Rise = 3.18;

    /// <summary>What the heavy outer rule takes of the first and the last row.</summary>
    private const double Heavy = 0.25;
    private const double LinePitch = 3.75;
    internal const double Indent = 1.2;
    private const double TitleBand = 6.5;
    private const double SignWidth = 3.6;

    /// <summary>Another font of the same widths may come out a little wider in another reader, so every box keeps this much in hand.</summary>
    internal const double Slack = 1.06;

    /// <summary>Lays as many rows as fit above <paramref name="foot"/>; no row is ever cut.</summary>
    /// <param name="row">Row of the layer map for the words.</param>
    /// <param name="title">Above the table, or empty for none.</param>
    /// <param name="tighter">What each row is lower than usual, 0 to <see cref="Tight"/>.</param>
    internal static Table Lay(
        TextSizes sizes, string row, string title, IReadOnlyList<Column> columns, IReadOnlyList<IReadOnlyList<Cell>> rows, PaperPoint corner, double foot, double tighter = 0)
    {
        var items = new List<Item>();
        var top = corner.Y;
        if (title.Length > 0)
        {
            items.Add(Title(sizes, row, title, corner));
            top -= sizes.ByTitles(TitleBand);
        }

        var right = corner.X + columns.Sum(column => column.Width);
        var edges = new List<double> { top };
        var y = top - Heavy;
        var heads = columns.Max(column => column.Head.Count);
        if (heads > 0)
        {
            Put(sizes, items, row, columns, [.. columns.Select(column => column.Head)], corner.X, y, bold: _ => true, sign: _ => null);
            y -= Height(sizes, heads);
            edges.Add(y);
        }

        var laid = 0;
        foreach (var cells in rows)
        {
            IReadOnlyList<string>[] lines = [.. cells.Select((cell, i) => Lines(sizes, cell, columns[i]))];
            var height = Height(sizes, Math.Max(1, lines.Max(cell => cell.Count))) - tighter;
            if (y - height - Heavy < foot)
            {
                break;
            }

            Put(sizes, items, row, columns, lines, corner.X, y + tighter / 2, i => cells[i].Bold, i => cells[i].Sign);
            y -= height;
            edges.Add(y);
            laid++;
        }

        y -= Heavy;
        var rules = new List<Item>();
        for (var i = 1; i + 1 < edges.Count; i++)
        {
            rules.Add(Frame.Line("table.inner", new(corner.X, edges[i]), new(right, edges[i])));
        }

        var x = corner.X;
        foreach (var column in columns.SkipLast(1))
        {
            x += column.Width;
            rules.Add(Frame.Line("table.inner", new(x, top), new(x, y)));
        }

        rules.Add(Frame.Box("table.outer", new(corner.X, y, right, top)));
        return new([.. rules, .. items], new(corner.X, y, right, corner.Y), laid);
    }

    /// <summary>A title over nothing: a head without rows tells no more.</summary>
    internal static Table Empty(TextSizes sizes, string row, string title, PaperPoint corner, double width) =>
        new([Title(sizes, row, title, corner)], new(corner.X, corner.Y - sizes.ByTitles(TitleBand), corner.X + width, corner.Y), 0);

    private static Text Title(TextSizes sizes, string row, string title, PaperPoint corner) => new(row, title, new(corner.X, corner.Y - sizes.Titles - 0.8), sizes.Titles);

    /// <summary>Height of a table with these rows, title and head included.</summary>
    internal static double HeightOf(TextSizes sizes, string title, IReadOnlyList<Column> columns, IReadOnlyList<IReadOnlyList<Cell>> rows, double tighter = 0) =>
        HeightOf(sizes, title, columns, rows.Select(cells => cells.Select((cell, i) => Lines(sizes, cell, columns[i]).Count).Max()), tighter);

    /// <param name="lines">Of the highest cell of each row.</param>
    internal static double HeightOf(TextSizes sizes, string title, IReadOnlyList<Column> columns, IEnumerable<int> lines, double tighter = 0) =>
        (title.Length > 0 ? sizes.ByTitles(TitleBand) : 0) + 2 * Heavy
        + (columns.Max(column => column.Head.Count) is > 0 and var heads ? Height(sizes, heads) : 0)
        + lines.Sum(most => Height(sizes, Math.Max(1, most)) - tighter);

    internal static double Height(TextSizes sizes, int lines) => sizes.ByNotes(Pitch) + (lines - 1) * sizes.ByNotes(LinePitch);

    internal static IReadOnlyList<string> Lines(TextSizes sizes, Cell cell, Column column) => sizes.Typeface.Wrap(cell.Words, sizes.Notes, Inner(sizes, cell, column.Width), cell.Bold);

    /// <summary>What a column so wide leaves a cell's words, mm.</summary>
    internal static double Inner(TextSizes sizes, Cell cell, double width) => (width - 2 * Indent - (cell.Sign is null ? 0 : sizes.ByNotes(SignWidth))) / Slack;

    private static void Put(
        TextSizes sizes, List<Item> items, string row, IReadOnlyList<Column> columns, IReadOnlyList<string>[] cells, double left, double top, Func<int, bool> bold,
        Func<int, Verdict?> sign)
    {
        var (rise, pitch) = (sizes.ByNotes(Rise), sizes.ByNotes(LinePitch));
        for (var i = 0; i < columns.Count; i++)
        {
            var (width, align) = (columns[i].Width, columns[i].Align);
            var start = left + Indent;
            if (sign(i) is { } verdict)
            {
                items.AddRange(VerdictSign.Of(sizes, row, verdict, new(start, top - rise)));
                start += sizes.ByNotes(SignWidth);
            }

            for (var line = 0; line < cells[i].Count; line++)
            {
                var x = align switch { Align.Right => left + width - Indent, Align.Centre => left + width / 2, _ => start };
                if (cells[i][line].Length > 0)
                {
                    items.Add(new Text(row, cells[i][line], new(x, top - rise - line * pitch), sizes.Notes, align, Bold: bold(i)));
                }
            }

            left += width;
        }
    }
}
