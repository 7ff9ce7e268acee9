using DetailGen.Drawing.Lettering;

namespace DetailGen.Drawing.Scenes;

/// <summary>A dimension taken apart into what is seen, in drawing order.</summary>
/// <param name="Witnesses">None where the point lies on the dimension line.</param>
/// <param name="Line">The dimension line, drawn on under a figure that stands on it beyond its end.</param>
/// <param name="Tick">From the middle of the line to a figure that stands off it; null otherwise.</param>
/// <param name="Ends">Strokes or dots, at From and at To.</param>
public sealed record DimensionPicture(IReadOnlyList<Stroke> Witnesses, Stroke Line, Stroke? Tick, IReadOnlyList<Item> Ends, Text Figure)
{
    public IEnumerable<Item> Items => [.. Witnesses, Line, .. Tick is null ? [] : new[] { Tick }, .. Ends, Figure];
}

/// <summary>How a dimension looks. The sizes are decisions of this project; only the kinds of terminator follow ISO 129-1:2018.</summary>
public static class Dimensions
{
    /// <summary>From the measured point to where its witness line begins, mm.</summary>
    public const double Offset = 1.0;

    /// <summary>How far a witness line runs past the dimension line, mm.</summary>
    public const double Past = 1.5;

    /// <summary>Length of an oblique stroke, mm, whatever the height of figures: longer ones would reach into them.</summary>
    public const double StrokeLength = 2.5;

    public const double DotDiameter = 0.8;

    /// <summary>From the dimension line to the figure's base line, mm.</summary>
    public const double Gap = 0.6;

    /// <summary>How far before its figure a tick ends, mm.</summary>
    public const double TickEnd = 0.7;

    // A figure whose base line is further off than this, or that stands under the line, is off it by a row and needs a tick to it.
    private const double Raised = 2.5;

    /// <summary>The plain picture of a dimension, for formats without dimensions of their own and for the blocks of those that have them.</summary>
    public static DimensionPicture Picture(Dimension dimension, Typeface typeface)
    {
        // Everything is laid out as if the line were level, read from the foot; an upright one is the same turned by 90 degrees.
        var frame = new Frame(dimension.Vertical);
        var (from, to, figure) = (frame.Flat(dimension.From), frame.Flat(dimension.To), frame.Flat(dimension.FigureAt));
        var line = dimension.Vertical ? -dimension.Line : dimension.Line;

        var witnesses = new List<Stroke>(2);
        AddWitness(witnesses, dimension, frame, from, line);
        AddWitness(witnesses, dimension, frame, to, line);

        var half = typeface.Width(dimension.Figure, dimension.Height) / 2;
        var (left, right) = (Math.Min(from.X, to.X), Math.Max(from.X, to.X));
        Stroke? tick = null;
        if (figure.Y - line is > Raised or < 0)
        {
            var end = figure.Y > line ? figure.Y - TickEnd : figure.Y + dimension.Height + TickEnd;
            tick = new(dimension.Row, [frame.Real(new((left + right) / 2, line)), frame.Real(new(figure.X, end))]) { PartId = dimension.PartId };
        }
        else if (figure.X > right || figure.X < left)
        {
            (left, right) = (Math.Min(left, figure.X - half), Math.Max(right, figure.X + half));
        }

        var along = from.X <= to.X ? (left, right) : (right, left);
        return new(
            witnesses,
            new(dimension.Row, [frame.Real(new(along.Item1, line)), frame.Real(new(along.Item2, line))]) { PartId = dimension.PartId },
            tick,
            [End(dimension, dimension.FromEnd, frame, new(from.X, line)), End(dimension, dimension.ToEnd, frame, new(to.X, line))],
            new(dimension.Row, dimension.Figure, dimension.FigureAt, dimension.Height, Align.Centre, dimension.Vertical ? 90 : 0) { PartId = dimension.PartId });
    }

    private static void AddWitness(List<Stroke> witnesses, Dimension dimension, Frame frame, PaperPoint point, double line)
    {
        var way = Math.Sign(line - point.Y);
        if (way == 0)
        {
            return;
        }

        // A point nearer than the offset keeps the piece across the line.
        var start = Math.Abs(line - point.Y) > Offset ? point.Y + way * Offset : line;
        witnesses.Add(new(dimension.Row, [frame.Real(new(point.X, start)), frame.Real(new(point.X, line + way * Past))]) { PartId = dimension.PartId });
    }

    private static Item End(Dimension dimension, Terminator end, Frame frame, PaperPoint at)
    {
        if (end == Terminator.Dot)
        {
            return new Dot(dimension.TerminatorRow, frame.Real(at), DotDiameter) { PartId = dimension.PartId };
        }

        var reach = StrokeLength / 2 * Math.Sqrt(0.5);
        return new Stroke(dimension.TerminatorRow, [frame.Real(new(at.X - reach, at.Y - reach)), frame.Real(new(at.X + reach, at.Y + reach))])
        {
            PartId = dimension.PartId,
        };
    }

    /// <summary>Turns an upright dimension level and back: read from the right, x along the line runs up and y away from it runs left.</summary>
    private readonly record struct Frame(bool Vertical)
    {
        public PaperPoint Flat(PaperPoint real) => Vertical ? new(real.Y, -real.X) : real;

        public PaperPoint Real(PaperPoint flat) => Vertical ? new(-flat.Y, flat.X) : flat;
    }
}
