using DetailGen.Drawing.Scenes;

namespace DetailGen.Drawing.Annotation.Notes;

/// <summary>A placed note as items: reference, lines, leader, end.</summary>
internal static class NoteDrawing
{
    internal static void Draw(Surface surface, PlacedNote placed)
    {
        var (block, column, option) = (placed.Block, placed.Column, placed.Option);
        var note = block.Note;
        var bend = option.BendAt(column.Side);
        surface.Group("note.text", "note " + note.Id, () =>
        {
            var first = Text(surface, placed);
            var port = new PaperPoint(
                column.Side > 0 ? Math.Max(first.Left - Column.TextGap, bend.X) : Math.Min(first.Right + Column.TextGap, bend.X), option.Level);
            var way = option.Tip - bend;
            // The line ends in the head, and at the bend where the head reaches back to it.
            var end = option.Ending == Ending.Arrow ? option.Tip - Math.Min(1, ArrowLength(surface) * 0.9 / way.Length) * way : option.Tip;
            surface.Line("note.leader", port, bend, end);
            surface.Hard.Add((port, bend));
            End(surface, option, (1 / way.Length) * way);
        }, option.PartId);
        surface.Hard.Add((bend, option.Tip));
        surface.Tips.Add(option.Tip);
    }

    /// <summary>Writes the lines and gives the box of the first, the outside on the left.</summary>
    private static PaperBox Text(Surface surface, PlacedNote placed)
    {
        var (block, column, option) = (placed.Block, placed.Column, placed.Option);
        var baseLine = option.Level - block.Middle;

        // On paper's right of the drawing text begins at the shoulder, on its left at the column's edge. The pen turns x round itself.
        var onRight = column.Side > 0 != surface.Mirrored;
        var far = column.Bend + column.Side * (Column.Shoulder + placed.ColumnWidth);
        var near = column.Bend + column.Side * Column.Shoulder;
        var start = onRight ? near : far;
        var lead = block.Lead;
        if (lead > 0)
        {
            Write(block.Note.Reference, 0, baseLine, true);
        }

        if (block.Lines[0].Length > 0)
        {
            Write(block.Lines[0], lead, baseLine, false);
        }

        if (block.Lines.Count > 1)
        {
            var at = new PaperPoint(surface.Mirrored ? -start : start, baseLine - block.Pitch);
            var paragraph = new Paragraph("note.text", [.. block.Lines.Skip(1)], at, block.Height, block.Pitch);
            surface.Add(paragraph);
            surface.Texts.Add(surface.Turn(surface.Sizes.Typeface.Box(paragraph)));
        }

        var (left, right) = surface.Mirrored ? (start - block.FirstWidth, start) : (start, start + block.FirstWidth);
        return new(left, baseLine - surface.Sizes.Typeface.Hang(block.Height), right, baseLine + surface.Sizes.Typeface.Rise(block.Height));

        void Write(string words, double offset, double at, bool bold)
        {
            var width = surface.Sizes.Typeface.Width(words, block.Height, bold);
            surface.Words("note.text", words, surface.Mirrored ? start - offset - width : start + offset, at, block.Height, bold);
        }
    }

    private static double ArrowLength(Surface surface) => surface.Sizes.ByNotes(2.5);

    private static void End(Surface surface, Option option, PaperPoint way)
    {
        if (option.Ending == Ending.Dot)
        {
            surface.Dot("note.leader", option.Tip, option.DotSize);
            return;
        }

        var length = ArrowLength(surface);
        var half = length * Math.Tan(7.5 * Math.PI / 180);
        var foot = option.Tip - length * way;
        var side = new PaperPoint(-way.Y, way.X);
        surface.Black("note.leader", option.Tip, foot + half * side, foot - half * side);
    }
}
