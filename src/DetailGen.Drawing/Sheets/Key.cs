using DetailGen.Drawing.Lettering;
using DetailGen.Drawing.Scenes;

namespace DetailGen.Drawing.Sheets;

/// <summary>An entry of the key: a little picture, made by the code that draws the view, and its words.</summary>
/// <param name="Picture">Items in a box of 10 × 5 whose lower left corner is the origin.</param>
internal sealed record KeyEntry(string Words, IReadOnlyList<Item> Picture)
{
    /// <summary>Left out where the key has room beside the view without it alone.</summary>
    internal bool IsSpare { get; init; }
}

/// <summary>The key: exactly what occurs on the sheet, in as many columns as make it lowest.</summary>
internal static class Key
{
    internal const double SwatchWidth = 10;
    internal const double SwatchHeight = 5;
    private const double Indent = SwatchWidth + 2;

    /// <summary>Narrower columns break every entry into three lines and more.</summary>
    private const double Narrowest = 30;

    /// <summary>White between the words of a column and the next picture.</summary>
    private const double Apart = 2;

    /// <summary>White between two pictures, and between words of several lines: as it is usual, and where the key would else find no room.</summary>
    private static readonly (double Pictures, double Words)[] Whites = [(1.8, 1), (1.2, 0.7)];
    private const double Title = 6.5;
    private const double LinePitch = 3.75;

    /// <summary>Height that the key takes in a zone of this width, mm: the usual one where a zone of <paramref name="most"/> holds it, else the least.</summary>
    internal static double HeightIn(TextSizes sizes, double width, IReadOnlyList<KeyEntry> entries, IReadOnlyList<string> shortForms, double most = double.PositiveInfinity) =>
        Fitting(sizes, width, entries, shortForms, most).Height + Besides(sizes, width, shortForms);

    internal static IReadOnlyList<Item> Lay(TextSizes sizes, IReadOnlyList<KeyEntry> entries, IReadOnlyList<string> shortForms, PaperBox zone)
    {
        var grid = Fitting(sizes, zone.Width, entries, shortForms, zone.Height);
        List<Item> items = [new Text("key", "Key", new(zone.Left, zone.Top - sizes.ByTitles(4.3)), sizes.Titles)];
        var (title, pitch) = (sizes.ByTitles(Title), sizes.ByNotes(LinePitch));
        var left = zone.Left;
        foreach (var column in grid.Columns)
        {
            var top = zone.Top - title;
            foreach (var (entry, lines, height) in column)
            {
                var corner = new PaperPoint(left, top - (height + SwatchHeight) / 2);
                items.AddRange(entry.Picture.Select(item => Moving.By(item, corner)));
                for (var line = 0; line < lines.Count; line++)
                {
                    var lift = (SwatchHeight - sizes.Notes) / 2 + (lines.Count - 1) * pitch / 2 - line * pitch;
                    items.Add(new Text("key", lines[line], corner + new PaperPoint(Indent, lift), sizes.Notes));
                }

                top -= height;
            }

            left += grid.Pitch;
        }

        var y = zone.Top - title - grid.Height - sizes.ByNotes(3.4);
        foreach (var line in Lines(sizes, shortForms, zone.Width))
        {
            items.Add(new Text("key", line, new(zone.Left, y), sizes.Notes));
            y -= pitch;
        }

        return items;
    }

    private static Grid Fitting(TextSizes sizes, double width, IReadOnlyList<KeyEntry> entries, IReadOnlyList<string> shortForms, double most)
    {
        var room = most - Besides(sizes, width, shortForms) + 1e-6;
        var usual = Grid.Best(sizes, width, entries, Whites[0], room);
        return usual.Height <= room ? usual : Grid.Best(sizes, width, entries, Whites[1], room);
    }

    private static double Besides(TextSizes sizes, double width, IReadOnlyList<string> shortForms) => sizes.ByTitles(Title) + Lines(sizes, shortForms, width).Count * sizes.ByNotes(LinePitch) + 2;

    private sealed record Row(KeyEntry Entry, IReadOnlyList<string> Lines, double Height)
    {
        internal static Row Of(TextSizes sizes, KeyEntry entry, double width, (double Pictures, double Words) white)
        {
            var lines = sizes.Typeface.Wrap(entry.Words, sizes.Notes, width / Table.Slack);
            return new(entry, lines, Math.Max(SwatchHeight + white.Pictures, lines.Count * sizes.ByNotes(LinePitch) + white.Words));
        }
    }

    /// <summary>Entries in columns of one width, each filled from the top, in one order.</summary>
    private sealed record Grid(IReadOnlyList<IReadOnlyList<Row>> Columns, double Pitch, double Height)
    {
        /// <summary>Worth a line of words less that is broken, mm of height.</summary>
        private const double Broken = 3;

        private int Lines => Columns.Sum(column => column.Sum(row => row.Lines.Count));

        /// <summary>The lowest; in a room that is known, of those that it holds one with few words broken.</summary>
        internal static Grid Best(TextSizes sizes, double width, IReadOnlyList<KeyEntry> entries, (double Pictures, double Words) white, double room)
        {
            Grid? best = null;
            // No word is torn: a column is as wide as the longest.
            var longest = entries.SelectMany(entry => entry.Words.Split(' ')).Select(word => sizes.Typeface.Width(word, sizes.Notes)).DefaultIfEmpty(0).Max() * Table.Slack;
            for (var count = 1; best is null || (width + Apart) / count >= Math.Max(sizes.ByNotes(Narrowest), Indent + longest + Apart); count++)
            {
                var grid = In(sizes, count, (width + Apart) / count, entries, white);
                best = best is null || Cost(grid) < Cost(best) - 1e-9 ? grid : best;
            }

            return best;

            double Cost(Grid grid) => double.IsPositiveInfinity(room) ? grid.Height : grid.Height <= room ? grid.Height + Broken * grid.Lines : grid.Height + 1e6;
        }

        // The least height at which the entries, in order, fill no more columns than there are: one of the sums of entries that follow each other.
        private static Grid In(TextSizes sizes, int count, double pitch, IReadOnlyList<KeyEntry> entries, (double Pictures, double Words) white)
        {
            Row[] rows = [.. entries.Select(entry => Row.Of(sizes, entry, pitch - Indent - Apart, white))];
            var heights = new SortedSet<double>();
            for (var i = 0; i < rows.Length; i++)
            {
                var sum = 0.0;
                for (var j = i; j < rows.Length; j++)
                {
                    heights.Add(sum += rows[j].Height);
                }
            }

            foreach (var height in heights)
            {
                if (Filled(rows, height) is var columns && columns.Count <= count)
                {
                    return new(columns, pitch, columns.Max(column => column.Sum(row => row.Height)));
                }
            }

            return new([], pitch, 0);
        }

        private static List<List<Row>> Filled(Row[] rows, double height)
        {
            var (columns, used) = (new List<List<Row>>(), double.PositiveInfinity);
            foreach (var row in rows)
            {
                if (used + row.Height > height + 1e-6)
                {
                    columns.Add([]);
                    used = 0;
                }

                columns[^1].Add(row);
                used += row.Height;
            }

            return columns;
        }
    }

    private static IReadOnlyList<string> Lines(TextSizes sizes, IReadOnlyList<string> shortForms, double width) =>
        shortForms.Count == 0 ? [] : sizes.Typeface.Wrap(string.Join("; ", shortForms), sizes.Notes, width / Table.Slack);
}
