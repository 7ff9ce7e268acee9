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
        double[] widths = [.. columns.Select((column, i) => Math.Max(heads[i], Needed(sizes, column, [.. rows.Select(cells => cells[i])], whole: !words.Contains(i))))];
        var least = widths.ToArray();
        var spare = Math.Max(0, columns.Sum(column => column.Width) - widths.Sum()) / words.Length;
        foreach (var i in words)
        {
            widths[i] += spare;
        }

        var known = new Dictionary<(int Column, double Width), int[]>();
        var measured = new MeasuredCell?[rows.Count, columns.Count];
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
            var lines = Array.ConvertAll(words, i => Lines(i, Math.Round(at[i], 6)));
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

    /// <summary>A cell asked for dozens of widths: its words are measured once, as long as none has to be torn.</summary>
    private sealed class MeasuredCell(TextSizes sizes, Cell cell)
    {
        private readonly MeasuredWords[] _parts = Array.ConvertAll(cell.Words.Split('\n'), part => new MeasuredWords([.. Wrapping.Words(part)], sizes.Notes, cell.Bold));

        internal int Lines(Column column)
        {
            var (width, count) = (Table.Inner(sizes, cell, column), 0);
            foreach (var part in _parts)
            {
                if (part.Longest > width)
                {
                    return Table.Lines(sizes, cell, column).Count;
                }

                count += part.Starts(width, width).Count;
            }

            return count;
        }
    }

    /// <summary>What the column's head and its longest cell need, or the longest word of it.</summary>
    internal static double Needed(TextSizes sizes, Column column, IReadOnlyList<Cell> cells, bool whole) => column.Head.Select(head => new Cell(head, Bold: true)).Concat(cells)
        .SelectMany(cell => (whole ? [cell.Words] : cell.Words.Split(' ')).Select(words => Letters.Width(words, sizes.Notes, cell.Bold)))
        .Max() * Table.Slack + 2 * Table.Indent + 0.01;
}
