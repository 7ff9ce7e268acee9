using DetailGen.Drawing.Lettering;
using DetailGen.Drawing.Scenes;

namespace DetailGen.Drawing.Sheets;

/// <summary>How wide the columns of a table are for its rows to stand lowest.</summary>
internal static class ColumnWidths
{
    /// <summary>What a column may give another at a time, mm.</summary>
    private static readonly double[] Steps = [.. Enumerable.Range(1, 24).Select(step => (double)step)];

    /// <summary>
    /// The columns, together as wide as before: references and figures as wide as they need, those of words such that no exchange of a few mm between two of them saves height.
    /// </summary>
    internal static IReadOnlyList<Column> Fitted(TextSizes sizes, IReadOnlyList<Column> columns, IReadOnlyList<IReadOnlyList<Cell>> rows)
    {
        // The first column is a reference.
        int[] words = [.. Enumerable.Range(1, columns.Count - 1).Where(i => columns[i].Align == Align.Left)];
        double[] widths = [.. columns.Select((column, i) => Needed(sizes, column, [.. rows.Select(cells => cells[i])], whole: !words.Contains(i)))];
        var least = widths.ToArray();
        var spare = Math.Max(0, columns.Sum(column => column.Width) - widths.Sum()) / words.Length;
        foreach (var i in words)
        {
            widths[i] += spare;
        }

        var known = new Dictionary<(int Column, double Width), int[]>();
        var best = Cost(widths);
        while (Exchange() is { } better)
        {
            (widths, best) = better;
        }

        return [.. columns.Select((column, i) => column with { Width = widths[i] })];

        (double[] Widths, (double, int) Cost)? Exchange()
        {
            ((double[], (double, int))? found, var lowest) = (null, best);
            foreach (var from in words)
            {
                foreach (var step in Steps.Where(step => widths[from] - step >= least[from]))
                {
                    foreach (var to in words.Where(to => to != from))
                    {
                        var trial = widths.ToArray();
                        (trial[from], trial[to]) = (trial[from] - step, trial[to] + step);
                        if (Cost(trial) is var cost && cost.CompareTo(lowest) < 0)
                        {
                            (found, lowest) = ((trial, cost), cost);
                        }
                    }
                }
            }

            return found;
        }

        // Height first; of equal heights the fewest lines.
        (double Height, int Lines) Cost(double[] at)
        {
            int[][] lines = [.. words.Select(i => Lines(i, Math.Round(at[i], 6)))];
            return (
                Math.Round(Enumerable.Range(0, rows.Count).Sum(row => Table.Height(sizes, Math.Max(1, lines.Max(column => column[row])))), 6),
                lines.Sum(column => column.Sum()));
        }

        int[] Lines(int column, double width)
        {
            if (!known.TryGetValue((column, width), out var counts))
            {
                counts = [.. rows.Select(cells => Table.Lines(sizes, cells[column], columns[column] with { Width = width }).Count)];
                known.Add((column, width), counts);
            }

            return counts;
        }
    }

    /// <summary>What the column's head and its longest cell need, or the longest word of it.</summary>
    internal static double Needed(TextSizes sizes, Column column, IReadOnlyList<Cell> cells, bool whole) => column.Head.Select(head => new Cell(head, Bold: true)).Concat(cells)
        .SelectMany(cell => (whole ? [cell.Words] : cell.Words.Split(' ')).Select(words => Letters.Width(words, sizes.Notes, cell.Bold)))
        .Max() * Table.Slack + 2 * Table.Indent + 0.01;
}
