using DetailGen.Drawing.Lettering;
using DetailGen.Drawing.Scenes;

namespace DetailGen.Drawing.Sheets.Companions;

/// <summary>Lines of one figure, such as a temperature.</summary>
/// <param name="Row">Of the lines.</param>
/// <param name="Words">Written in them.</param>
internal sealed record FiguredLines(string Row, string Words, IReadOnlyList<IReadOnlyList<PaperPoint>> Lines);

/// <summary>A figure that stands in a line.</summary>
/// <param name="Gap">Where no line is drawn.</param>
internal sealed record LineFigure(Text Text, PaperBox Gap);

/// <summary>
/// Finds where the figures of lines stand: in their line, which makes room for them, clear of every other line and figure; else where the drawing breaks off.
/// </summary>
internal static class IsothermLabels
{
    private const double Beside = 0.9; // white between a figure and its own line
    internal const double Above = 0.6; // white between a figure and its neighbours
    private const double Apart = 1.2; // white between two figures
    private const double Step = 0.7;
    private const double FromEnds = 3;
    private const double Again = 70; // along a line, from one of its figures to the next
    private const double MostBend = 0.7;

    /// <param name="outlines">What figures rather keep clear of, but may stand in; it is cut there.</param>
    /// <param name="taken">What they keep clear of.</param>
    /// <param name="within">Where they stand.</param>
    internal static IReadOnlyList<LineFigure> Place(TextSizes sizes, IReadOnlyList<FiguredLines> all, IReadOnlyList<IReadOnlyList<PaperPoint>> outlines, IEnumerable<PaperBox> taken, PaperBox within)
    {
        var boxes = taken.ToList();
        var placed = new List<LineFigure>();
        foreach (var figured in all)
        {
            foreach (var line in figured.Lines)
            {
                var others = all.SelectMany(one => one.Lines).Where(one => !ReferenceEquals(one, line)).ToArray();
                if (Best(sizes, figured, line, others, outlines, boxes, within, null) is not { } first)
                {
                    continue;
                }

                Put(first.Figure);
                if (Best(sizes, figured, line, others, outlines, boxes, within, first.At) is { } second)
                {
                    Put(second.Figure);
                }
            }
        }

        return placed;

        void Put(LineFigure figure)
        {
            placed.Add(figure);
            boxes.Add(figure.Gap.Grow(Apart));
        }
    }

    /// <summary>Figures of lines that had no room for them, in a column where the roof breaks off, each with a thin line to the end of its own.</summary>
    /// <param name="edge">Where the lines end.</param>
    /// <param name="way">1 where the roof runs to the right, −1 where to the left.</param>
    internal static IEnumerable<Item> Beyond(TextSizes sizes, IEnumerable<FiguredLines> bare, double edge, int way)
    {
        const double reach = 9;
        var (height, pitch) = (sizes.Notes, sizes.ByNotes(3.6));
        var ends = bare.Select(one => (one.Words, Ends: one.Lines.SelectMany(line => new[] { line[0], line[^1] }).Where(end => Math.Abs(end.X - edge) < 0.01).ToArray()))
            .Where(one => one.Ends.Length > 0).Select(one => (one.Words, End: one.Ends.MaxBy(end => end.Y))).OrderBy(one => one.End.Y).ToArray();
        for (var i = 0; i < ends.Length; i++)
        {
            var (words, end) = ends[i];
            PaperPoint at = new(edge + (way * reach), ends.Average(one => one.End.Y) + ((i - ((ends.Length - 1) / 2.0)) * pitch));
            yield return new Stroke("note.leader", [end, at]);
            yield return new Text("analysis.figure", words, at + new PaperPoint(way, -height / 2), height, way > 0 ? Align.Left : Align.Right);
        }
    }

    // The best place, as far from the last one as it must be.
    private static (LineFigure Figure, double At)? Best(
        TextSizes sizes, FiguredLines figured, IReadOnlyList<PaperPoint> line, IReadOnlyList<PaperPoint>[] others, IReadOnlyList<IReadOnlyList<PaperPoint>> outlines, List<PaperBox> boxes,
        PaperBox within, double? last)
    {
        var (along, height) = (Lengths(line), sizes.Notes);
        var half = (sizes.Typeface.Width(figured.Words, height) * Table.Slack / 2) + Beside;
        (double Cost, LineFigure Figure, double At)? best = null;
        for (var at = FromEnds + half; at <= along[^1] - FromEnds - half; at += Step)
        {
            if (last is { } before && Math.Abs(at - before) < Again)
            {
                continue;
            }

            var (from, middle, to) = (PlaceAt(line, along, at - half), PlaceAt(line, along, at), PlaceAt(line, along, at + half));
            var way = to - from;
            var upright = Math.Abs(way.Y) > Math.Abs(way.X);
            var skew = Math.Atan2(Math.Min(Math.Abs(way.X), Math.Abs(way.Y)), Math.Max(Math.Abs(way.X), Math.Abs(way.Y))) * 180 / Math.PI;
            var across = height / 2;
            var gap = upright ? new PaperBox(middle.X - across, middle.Y - half, middle.X + across, middle.Y + half) : new(middle.X - half, middle.Y - across, middle.X + half, middle.Y + across);
            if (PaperLines.Distance(middle, from, to) > MostBend || !within.Holds(gap) || boxes.Exists(box => box.Meets(gap)))
            {
                continue;
            }

            var clear = Clearance(gap, others);
            if (clear < 0)
            {
                continue;
            }

            // a second figure stands as far off as it can
            var cost = (last is { } one ? -Math.Abs(at - one) / 40 : 0) + (skew / 10) + (2 - clear) + (4 * outlines.Count(outline => PaperLines.Crosses(outline, gap.Grow(Above))));
            if (best is null || cost < best.Value.Cost - 1e-9)
            {
                var text = upright
                    ? new Text("analysis.figure", figured.Words, middle + new PaperPoint(across, 0), height, Align.Centre, 90)
                    : new Text("analysis.figure", figured.Words, middle - new PaperPoint(0, across), height, Align.Centre);
                best = (cost, new(text, gap), at);
            }
        }

        return best is { } found ? (found.Figure, found.At) : null;
    }

    /// <summary>How far other lines keep from a figure, up to 2 mm; below nothing where they do not keep the least.</summary>
    private static double Clearance(PaperBox gap, IReadOnlyList<PaperPoint>[] others)
    {
        foreach (var wide in (double[])[2, 1, Above])
        {
            if (!others.Any(other => PaperLines.Crosses(other, gap.Grow(wide))))
            {
                return wide;
            }
        }

        return -1;
    }

    private static double[] Lengths(IReadOnlyList<PaperPoint> line)
    {
        var along = new double[line.Count];
        for (var i = 1; i < line.Count; i++)
        {
            along[i] = along[i - 1] + (line[i] - line[i - 1]).Length;
        }

        return along;
    }

    private static PaperPoint PlaceAt(IReadOnlyList<PaperPoint> line, double[] along, double at)
    {
        var i = Array.BinarySearch(along, at) is var found && found >= 0 ? found : ~found;
        i = Math.Clamp(i, 1, line.Count - 1);
        var length = along[i] - along[i - 1];
        return length == 0 ? line[i] : line[i - 1] + ((at - along[i - 1]) / length * (line[i] - line[i - 1]));
    }
}
