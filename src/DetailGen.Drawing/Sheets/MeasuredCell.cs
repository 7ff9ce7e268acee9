using DetailGen.Drawing.Lettering;

namespace DetailGen.Drawing.Sheets;

/// <summary>A cell asked for several widths: its words are measured once, as long as none has to be torn.</summary>
internal sealed class MeasuredCell(TextSizes sizes, Cell cell)
{
    private readonly MeasuredWords[] _parts = Array.ConvertAll(cell.Words.Split('\n'), part => new MeasuredWords(sizes.Typeface, [.. Wrapping.Words(part)], sizes.Notes, cell.Bold));

    /// <summary>How many it takes in a column.</summary>
    internal int Lines(Column column)
    {
        var (inner, count) = (Table.Inner(sizes, cell, column.Width), 0);
        foreach (var part in _parts)
        {
            if (part.Longest > inner)
            {
                return Table.Lines(sizes, cell, column).Count;
            }

            count += part.Count(inner);
        }

        return count;
    }
}
