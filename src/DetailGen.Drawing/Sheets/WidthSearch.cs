using DetailGen.Drawing.Lettering;
using DetailGen.Drawing.Scenes;

namespace DetailGen.Drawing.Sheets;

/// <summary>
/// Looks for widths of the columns of words with which the rows of a table stand lowest: the room that all columns leave over is dealt out, and then given from one column to another by
/// a few mm as long as that saves height or, at the same height, lines. An exchange is between two columns and may need a third, so it sets out from two ways of dealing.
/// </summary>
internal sealed class WidthSearch
{
    /// <summary>What a column may give another at a time, mm.</summary>
    private static readonly double[] Steps = [.. Enumerable.Range(1, 24).Select(step => (double)step)];

    private readonly TextSizes _sizes;
    private readonly IReadOnlyList<Column> _columns;
    private readonly IReadOnlyList<IReadOnlyList<Cell>> _rows;

    /// <summary>Places of the columns of words, which are broken; the first column is a reference.</summary>
    private readonly int[] _words;

    /// <summary>What each column needs, mm: a column of words its longest word, the others the longest cell.</summary>
    private readonly double[] _least;

    private readonly Dictionary<(int Column, double Width), int[]> _counted = [];
    private readonly MeasuredCell?[,] _measured;

    /// <summary>As they are now, mm.</summary>
    private double[] _widths = [];

    /// <summary>Lines of each cell of the columns of words, column by column, with the widths of now.</summary>
    private int[][] _lines = [];

    /// <param name="heads">What each column's head needs at least, mm.</param>
    internal WidthSearch(TextSizes sizes, IReadOnlyList<Column> columns, IReadOnlyList<IReadOnlyList<Cell>> rows, double[] heads)
    {
        (_sizes, _columns, _rows) = (sizes, columns, rows);
        _words = [.. Enumerable.Range(1, columns.Count - 1).Where(i => columns[i].Align == Align.Left)];
        _least = [.. columns.Select((_, i) => Math.Max(heads[i], Needed(i, whole: !_words.Contains(i))))];
        _measured = new MeasuredCell?[rows.Count, columns.Count];
    }

    /// <summary>The columns with their widths, together as wide as before.</summary>
    internal IReadOnlyList<Column> Best() => Starts().Select(From).MinBy(found => found.Cost).Columns;

    /// <summary>What each column of words gets over what it needs, mm: all the same, or each in the share of what one line of its longest cell would take.</summary>
    private IEnumerable<double[]> Starts()
    {
        var spare = Math.Max(0, _columns.Sum(column => column.Width) - _least.Sum());
        yield return [.. _words.Select(_ => spare / _words.Length)];
        var wishes = _words.Select(i => Needed(i, whole: true) - _least[i]).ToArray();
        if (wishes.Sum() is > 0 and var all)
        {
            yield return [.. wishes.Select(wish => Math.Floor(spare * wish / all * 1e6) / 1e6)];
        }
    }

    private (IReadOnlyList<Column> Columns, (double Height, int Lines) Cost) From(double[] more)
    {
        _widths = [.. _least];
        for (var i = 0; i < _words.Length; i++)
        {
            _widths[_words[i]] += more[i];
        }

        _lines = AllLines();
        var best = Cost();
        while (Exchange(best) is { } better)
        {
            _widths[better.From] -= better.Step;
            _widths[better.To] += better.Step;
            (_lines, best) = (AllLines(), better.Cost);
        }

        return ([.. _columns.Select((column, i) => column with { Width = _widths[i] })], best);
    }

    /// <summary>The exchange between two columns that costs least; null where none costs less than this.</summary>
    private (int From, int To, double Step, (double, int) Cost)? Exchange((double, int) lowest)
    {
        (int, int, double, (double, int))? found = null;
        for (var from = 0; from < _words.Length; from++)
        {
            var (giver, given) = (_words[from], _lines[from]);
            foreach (var step in Steps.Where(step => _widths[giver] - step >= _least[giver]))
            {
                _lines[from] = Lines(giver, _widths[giver] - step);
                for (var to = 0; to < _words.Length; to++)
                {
                    if (to != from && CostWith(to, step) is var cost && cost.CompareTo(lowest) < 0)
                    {
                        (found, lowest) = ((giver, _words[to], step, cost), cost);
                    }
                }
            }

            _lines[from] = given;
        }

        return found;
    }

    /// <summary>The cost where a column of words is wider by so many mm.</summary>
    private (double Height, int Lines) CostWith(int to, double step)
    {
        var taken = _lines[to];
        _lines[to] = Lines(_words[to], _widths[_words[to]] + step);
        var cost = Cost();
        _lines[to] = taken;
        return cost;
    }

    // Height first; of equal heights the fewest lines.
    private (double Height, int Lines) Cost()
    {
        var (height, count) = (0.0, 0);
        for (var row = 0; row < _rows.Count; row++)
        {
            var most = 1;
            foreach (var column in _lines)
            {
                most = Math.Max(most, column[row]);
                count += column[row];
            }

            height += Table.Height(_sizes, most);
        }

        return (Math.Round(height, 6), count);
    }

    private int[][] AllLines() => Array.ConvertAll(_words, i => Lines(i, _widths[i]));

    private int[] Lines(int column, double width)
    {
        width = Math.Round(width, 6);
        if (!_counted.TryGetValue((column, width), out var counts))
        {
            counts = new int[_rows.Count];
            for (var row = 0; row < counts.Length; row++)
            {
                counts[row] = (_measured[row, column] ??= new(_sizes, _rows[row][column])).Lines(_columns[column] with { Width = width });
            }

            _counted.Add((column, width), counts);
        }

        return counts;
    }

    private double Needed(int column, bool whole) => ColumnWidths.Needed(_sizes, _columns[column], _rows.Select(cells => cells[column]), whole);
}
