using DetailGen.Drawing.Lettering;

namespace DetailGen.Drawing.Sheets;

/// <summary>How wide the columns of a table are for its rows to stand lowest.</summary>
internal static class ColumnWidths
{
    /// <summary>
    /// The columns, together as wide as before: references and figures as wide as they need, those of words such that no exchange of a few mm between two of them saves height
    /// or, where a head would reach over its column, none that leaves a head too little.
    /// </summary>
    internal static IReadOnlyList<Column> Fitted(TextSizes sizes, IReadOnlyList<Column> columns, IReadOnlyList<IReadOnlyList<Cell>> rows)
    {
        double[] heads = [.. columns.Select(column => Needed(sizes, column, [], whole: true))];
        var fitted = new WidthSearch(sizes, columns, rows, new double[columns.Count]).Best();
        return fitted.Zip(heads).All(pair => pair.First.Width >= pair.Second - Table.Indent) ? fitted : new WidthSearch(sizes, columns, rows, heads).Best();
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
