using DetailGen.Drawing.Lettering;
using DetailGen.Drawing.Scenes;

namespace DetailGen.Drawing.Sheets.Companions;

/// <summary>Something of words that stands in a column, laid from its upper left corner (0, 0) downwards.</summary>
/// <param name="Lay">What it looks like in a width, and its height.</param>
internal sealed record Block(Func<double, (IReadOnlyList<Item> Items, double Height)> Lay, Binding Binding = Binding.None)
{
    /// <summary>Title of the list that it belongs to; null for what is no list.</summary>
    internal string? List { get; init; }
}

/// <summary>How a block hangs on others.</summary>
internal enum Binding
{
    None,

    /// <summary>It heads the next one.</summary>
    Head,

    /// <summary>It goes on from the one before.</summary>
    GoesOn,
}

/// <summary>Fills columns with blocks, each column from the top downwards.</summary>
internal static class Columns
{
    internal const double Between = 6;
    private const double Apart = 4;
    private const double Pitch = 4.25;

    /// <summary>Columns of at least that width side by side; none where the room is narrower.</summary>
    internal static IReadOnlyList<PaperBox> In(PaperBox room, double least)
    {
        var count = Math.Max(0, (int)Math.Floor((room.Width + Between) / (least + Between)));
        var width = ((room.Width + Between) / count) - Between;
        return [.. Enumerable.Range(0, count).Select(i => room.Left + (i * (width + Between))).Select(left => room with { Left = left, Right = left + width })];
    }

    /// <summary>Each block in the first column that still holds it; one that goes on from another never stands before it.</summary>
    /// <returns>What was laid, and the blocks that found no room, in their order.</returns>
    internal static (IReadOnlyList<Item> Items, IReadOnlyList<Block> Left) Fill(IReadOnlyList<Block> blocks, IReadOnlyList<PaperBox> columns)
    {
        var (items, left) = (new List<Item>(), new List<Block>());
        double[] tops = [.. columns.Select(column => column.Top)];
        var from = 0;
        for (var next = 0; next < blocks.Count;)
        {
            // a head stands with what it heads
            var together = blocks.Skip(next).TakeWhile(block => block.Binding == Binding.Head).Count() + 1;
            Block[] group = [.. blocks.Skip(next).Take(together)];
            next += together;
            from = group[0].Binding == Binding.GoesOn ? from : 0;
            while (from < columns.Count && tops[from] - group.Sum(block => block.Lay(columns[from].Width).Height) < columns[from].Bottom)
            {
                from++;
            }

            if (from == columns.Count)
            {
                left.AddRange(group);
                continue;
            }

            foreach (var block in group)
            {
                var (laid, height) = block.Lay(columns[from].Width);
                var at = new PaperPoint(columns[from].Left, tops[from]);
                items.AddRange(laid.Select(item => Moving.By(item, at)));
                tops[from] -= height;
            }
        }

        return (items, left);
    }

    internal static Block Of(TextSizes sizes, TextTable table) => new(width =>
    {
        Cell[][] rows = [.. table.Rows.Select(row => row.Select(words => new Cell(words)).ToArray())];
        var laid = Table.Lay(sizes, "schedule", table.Title, Widths(sizes, table, rows, width), rows, new(0, 0), double.NegativeInfinity);
        return (laid.Items, laid.Box.Height + Apart);
    });

    /// <summary>A title and a block for each paragraph, so that a long list may go on in the next column.</summary>
    internal static IEnumerable<Block> Of(TextSizes sizes, TextList list)
    {
        yield return Heading(sizes, list.Title) with { List = list.Title };
        for (var i = 0; i < list.Paragraphs.Count; i++)
        {
            var (number, words, under) = ((i + 1).ToString(System.Globalization.CultureInfo.InvariantCulture), list.Paragraphs[i], i == list.Paragraphs.Count - 1 ? Apart : 1.2);
            yield return new(width => Numbered(sizes, number, words, width, under), i == 0 ? Binding.None : Binding.GoesOn) { List = list.Title };
        }
    }

    /// <summary>What goes on upon a further sheet, each list under its title again.</summary>
    internal static IReadOnlyList<Block> Continued(TextSizes sizes, IReadOnlyList<Block> rest) =>
    [
        .. rest.SelectMany((block, i) => block.Binding == Binding.GoesOn && (i == 0 || rest[i - 1].List != block.List)
            ? [Heading(sizes, $"{block.List}, continued") with { List = block.List }, block with { Binding = Binding.None }]
            : new[] { block }),
    ];

    private static Block Heading(TextSizes sizes, string title) => new(width =>
    {
        var (letter, pitch) = (sizes.Titles, sizes.ByTitles(6));
        var lines = sizes.Typeface.Wrap(title, letter, width / Table.Slack);
        return ([.. lines.Select((line, i) => new Text("block.notes", line, new(0, -sizes.ByTitles(4.3) - (i * pitch)), letter))], (lines.Count * pitch) + 0.5);
    }, Binding.Head);

    private static (IReadOnlyList<Item> Items, double Height) Numbered(TextSizes sizes, string number, string words, double width, double under)
    {
        var (indent, first, pitch) = (sizes.ByWord(6, "10", bold: true), -sizes.ByNotes(3.2), sizes.ByNotes(Pitch));
        var lines = sizes.Typeface.Wrap(words, sizes.Notes, (width - indent) / Table.Slack);
        return ([new Text("block.notes", number, new(0, first), sizes.Notes, Bold: true), new Paragraph("block.notes", lines, new(indent, first), sizes.Notes, pitch)], (lines.Count * pitch) + under);
    }

    /// <summary>Lines with what they mean.</summary>
    internal static Block Of(TextSizes sizes, string title, IReadOnlyList<(Func<PaperPoint, IEnumerable<Item>> Sign, string Words)> entries) => new(width =>
    {
        const double sample = 16;
        var items = new List<Item> { new Text("key", title, new(0, -sizes.ByTitles(4.3)), sizes.Titles) };
        var y = -sizes.ByTitles(6.5);
        foreach (var (sign, words) in entries)
        {
            var lines = sizes.Typeface.Wrap(words, sizes.Notes, (width - sample - 3) / Table.Slack);
            items.AddRange(sign(new(0, y - sizes.ByNotes(2))));
            items.Add(new Paragraph("key", lines, new(sample + 3, y - sizes.ByNotes(3.2)), sizes.Notes, sizes.ByNotes(Pitch)));
            y -= (lines.Count * sizes.ByNotes(Pitch)) + 1;
        }

        return (items, -y + Apart);
    });

    // Figures take what they need; words share the rest evenly, none more than it needs nor less than its longest word.
    private static IReadOnlyList<Column> Widths(TextSizes sizes, TextTable table, Cell[][] rows, double width)
    {
        double Needed(int i, bool whole) => (rows.Select(row => row[i].Words).SelectMany(words => whole ? [words] : words.Split(' ')).Select(words => sizes.Typeface.Width(words, sizes.Notes))
            .Concat(table.Columns[i].Head.Select(head => sizes.Typeface.Width(head, sizes.Notes, bold: true))).Max() * Table.Slack) + (2 * Table.Indent) + 0.01;
        (double Least, double Most)[] needed = [.. table.Columns.Select((column, i) => (Needed(i, column.IsFigures), Needed(i, whole: true)))];
        double Sum(double share) => needed.Sum(one => Math.Clamp(share, one.Least, one.Most));
        var (low, high) = (0.0, width);
        for (var i = 0; i < 50; i++)
        {
            var middle = (low + high) / 2;
            (low, high) = Sum(middle) > width ? (low, middle) : (middle, high);
        }

        var spare = Math.Max(0, width - Sum(low)) / table.Columns.Count(column => !column.IsFigures);
        return [.. table.Columns.Select((column, i) => new Column(Math.Clamp(low, needed[i].Least, needed[i].Most) + (column.IsFigures ? 0 : spare), column.Head, column.IsFigures ? Align.Right : Align.Left))];
    }
}
