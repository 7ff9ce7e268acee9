using DetailGen.Drawing.Lettering;
using DetailGen.Drawing.Scenes;

namespace DetailGen.Drawing.Sheets;

/// <summary>How wide the columns of a table are for its rows to stand lowest.</summary>
internal static class ColumnWidths
{
    /// <summary>What a column may give another at a time, mm.</summary>
    private static readonly double[] Steps = [.. Enumerable.Range(1, 24).Select(step => (double)step)];

    /// <summary>
    /// The columns, together as wide as before: references and figures as wide as they need, those of words such that no exchange of a few mm between two of them saves height
    /// or, where a head would reach over its column, none that leaves a head too little.
    /// </summary>
    internal static IReadOnlyList<Column> Fitted(TextSizes sizes, IReadOnlyList<Column> columns, IReadOnlyList<IReadOnlyList<Cell>> rows)
    {
        double[] heads = [.. columns.Select(column => Needed(sizes, column, [], whole: true))];
        var fitted = Fitted(sizes, columns, rows, new double[columns.Count]);
        return fitted.Zip(heads).All(pair => pair.First.Width >= pair.Second - Table.Indent) ? fitted : Fitted(sizes, columns, rows, heads);
    }

    private static IReadOnlyList<Column> Fitted(TextSizes sizes, IReadOnlyList<Column> columns, IReadOnlyList<IReadOnlyList<Cell>> rows, double[] heads)
    {
        // The first column is a reference.
        int[] words = [.. Enumerable.Range(1, columns.Count - 1).Where(i => columns[i].Align == Align.Left)];
        double[] least = [.. columns.Select((column, i) => Math.Max(heads[i], Needed(sizes, column, rows.Select(cells => cells[i]), whole: !words.Contains(i))))];
        var spare = Math.Max(0, columns.Sum(column => column.Width) - least.Sum());
        var known = new Dictionary<(int Column, double Width), int[]>();
        var measured = new MeasuredCell?[rows.Count, columns.Count];
        var (widths, lines, best) = (least, Array.Empty<int[]>(), default((double, int)));

        // From the same for each, and from what each would take in one line: an exchange is between two columns, and may need a third.
        var wishes = words.Select(i => Needed(sizes, columns[i], rows.Select(cells => cells[i]), whole: true) - least[i]).ToArray();
        var all = wishes.Sum();
        double[][] starts = [[.. words.Select(_ => spare / words.Length)], .. all > 0 ? (double[][])[[.. wishes.Select(wish => Math.Floor(spare * wish / all * 1e6) / 1e6)]] : []];
        return starts.Select(start => From(start)).MinBy(found => found.Cost).Columns;

        (IReadOnlyList<Column> Columns, (double Height, int Lines) Cost) From(double[] more)
        {
            widths = [.. least];
            for (var i = 0; i < words.Length; i++)
            {
                widths[words[i]] += more[i];
            }

            lines = Array.ConvertAll(words, i => Lines(i, widths[i])); // of each cell, column by column
            best = Cost();
            while (Exchange() is { } better)
            {
                var (from, to, step, cost) = better;
                widths[from] -= step;
                widths[to] += step;
                (lines, best) = (Array.ConvertAll(words, i => Lines(i, widths[i])), cost);
            }

            return ([.. columns.Select((column, i) => column with { Width = widths[i] })], best);
        }

        (int From, int To, double Step, (double, int) Cost)? Exchange()
        {
            ((int, int, double, (double, int))? found, var lowest) = (null, best);
            for (var from = 0; from < words.Length; from++)
            {
                var (giver, given) = (words[from], lines[from]);
                foreach (var step in Steps.Where(step => widths[giver] - step >= least[giver]))
                {
                    lines[from] = Lines(giver, widths[giver] - step);
                    for (var to = 0; to < words.Length; to++)
                    {
                        if (to == from)
                        {
                            continue;
                        }

                        var (taker, taken) = (words[to], lines[to]);
                        lines[to] = Lines(taker, widths[taker] + step);
                        if (Cost() is var cost && cost.CompareTo(lowest) < 0)
                        {
                            (found, lowest) = ((giver, taker, step, cost), cost);
                        }

                        lines[to] = taken;
                    }
                }

                lines[from] = given;
            }

            return found;
        }

        // Height first; of equal heights the fewest lines.
        (double Height, int Lines) Cost()
        {
            var (height, count) = (0.0, 0);
            for (var row = 0; row < rows.Count; row++)
            {
                var most = 1;
                foreach (var column in lines)
                {
                    most = Math.Max(most, column[row]);
                    count += column[row];
                }

                height += Table.Height(sizes, most);
            }

            return (Math.Round(height, 6), count);
        }

        int[] Lines(int column, double width)
        {
            width = Math.Round(width, 6);
            if (!known.TryGetValue((column, width), out var counts))
            {
                counts = new int[rows.Count];
                for (var row = 0; row < counts.Length; row++)
                {
                    counts[row] = (measured[row, column] ??= new(sizes, rows[row][column])).Lines(columns[column] with { Width = width });
                }

                known.Add((column, width), counts);
            }

            return counts;
        }
    }

    /// <summary>What the column's head and its longest cell need, or the longest word of it.</summary>
    internal static double Needed(TextSizes sizes, Column column, IEnumerable<Cell> cells, bool whole) =>
        column.Head.Select(head => new Cell(head, Bold: true)).Concat(cells).Max(cell => Around(whole ? sizes.Typeface.Width(cell.Words, sizes.Notes, cell.Bold) : LongestWord(sizes, cell)));

    /// <summary>What words need in one line.</summary>
    internal static double Needed(TextSizes sizes, string words) => Around(sizes.Typeface.Width(words, sizes.Notes));

    private static double Around(double width) => width * Table.Slack + 2 * Table.Indent + 0.01;

    private static double LongestWord(TextSizes sizes, Cell cell)
    {
        var longest = 0.0;
        foreach (var word in cell.Words.AsSpan().Split(' '))
        {
            longest = Math.Max(longest, sizes.Typeface.Width(cell.Words.AsSpan(word), sizes.Notes, cell.Bold));
        }

        return longest;
    }
}
