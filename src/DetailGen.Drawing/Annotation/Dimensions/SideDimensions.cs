using DetailGen.Drawing.Lettering;
using DetailGen.Drawing.Scenes;
using DetailGen.Sections;

namespace DetailGen.Drawing.Annotation.Dimensions;

/// <summary>The chains of one side of the drawing: lines in rows outside the outline, figures that touch nothing.</summary>
internal sealed class SideDimensions(Surface surface, Side side)
{
    internal const double First = 10;
    internal const double Next = 7;
    private const double Raise = 4;
    private const double Over = 1.5;
    private const double FigureGap = 1;
    private const double Dotted = 2.5;

    private bool IsLevel => side is Side.Below or Side.Above;

    private int Outwards => side is Side.Below or Side.Weather ? -1 : 1;

    /// <summary>How far the side's annotation reaches: the outermost line with its figures and witness ends.</summary>
    internal double Reach { get; private set; }

    /// <summary>Outermost witness end at a level, by level in paper mm.</summary>
    internal List<(double At, double End)> Witnessed { get; } = [];

    /// <param name="least">The first line stands at least here (outwards); a coordinate across the lines.</param>
    internal void Place(IReadOnlyList<(string Chain, Figure Figure)> figures, double edge, double? least = null)
    {
        Reach = edge;
        var rows = DimensionRows.Assign(figures.Where(one => DimensionRows.Fits(one.Figure.Measure, side)), surface.Scale);
        if (rows.Count == 0)
        {
            return;
        }

        var line = edge + Outwards * First;
        line = least is { } asked && Outwards * (asked - line) > 0 ? asked : line;
        for (var row = 0; row <= rows.Max(one => one.Row); row++)
        {
            var here = rows.Where(one => one.Row == row).OrderBy(one => one.Low).ThenBy(one => one.Figure.Measure.Id, StringComparer.Ordinal).ToArray();
            var figuresAt = FigurePlaces(here);
            if (row > 0)
            {
                // Raised figures stand towards the top or the left; the line there moves off for them.
                line += Outwards * (FacesDrawing && figuresAt.Any(place => place.Up > 0) ? Next + Raise : Next);
            }

            foreach (var (one, place) in here.Zip(figuresAt))
            {
                Draw(one, here, line, place.Along, place.Up);
            }

            Reach = line + Outwards * Over;
            if (!FacesDrawing)
            {
                var top = figuresAt.Max(place => place.Up);
                Reach = line + Outwards * (top + 0.6 + 2.5);
                line += Outwards * top;
            }
        }
    }

    // Figures stand over a level line and left of an upright one, as seen on paper.
    private bool FacesDrawing => side switch { Side.Below => true, Side.Above => false, Side.Roof => !surface.Mirrored, _ => surface.Mirrored };

    private static (double Along, double Up)[] FigurePlaces(Rowed[] row)
    {
        var places = new (double Along, double Up)[row.Length];
        var taken = new List<(double Low, double High, double Up)>();
        var widths = row.Select(one => Letters.Width(one.Figure.Text, 2.5) * 1.02).ToArray();
        foreach (var i in Enumerable.Range(0, row.Length).OrderBy(i => Fits(i) ? 0 : 1).ThenBy(i => i))
        {
            var middle = (row[i].Low + row[i].High) / 2;
            if (Fits(i))
            {
                places[i] = (middle, 0);
            }
            else
            {
                places[i] = Candidates(i).First(place => taken.TrueForAll(other =>
                    Math.Abs(other.Up - place.Up) > 0.1 || place.Along - widths[i] / 2 >= other.High + FigureGap || place.Along + widths[i] / 2 <= other.Low - FigureGap));
            }

            taken.Add((places[i].Along - widths[i] / 2, places[i].Along + widths[i] / 2, places[i].Up));
        }

        return places;

        bool Fits(int i) => widths[i] + 1 <= row[i].Span;

        IEnumerable<(double Along, double Up)> Candidates(int i)
        {
            var middle = (row[i].Low + row[i].High) / 2;
            var (before, after) = (i == 0 ? double.MaxValue : row[i].Low - row[i - 1].High, i == row.Length - 1 ? double.MaxValue : row[i + 1].Low - row[i].High);
            var need = widths[i] + 3;
            if (after >= need)
            {
                yield return (row[i].High + 1.5 + widths[i] / 2, 0);
            }

            if (before >= need)
            {
                yield return (row[i].Low - 1.5 - widths[i] / 2, 0);
            }

            for (var up = Raise; ; up += Raise)
            {
                yield return (middle, up);
                yield return (middle + widths[i] / 2, up);
                yield return (middle - widths[i] / 2, up);
            }
        }
    }

    private void Draw(Rowed one, Rowed[] row, double line, double along, double up)
    {
        var measure = one.Figure.Measure;
        var (from, to) = (Start(measure.From, line), Start(measure.To, line));
        var tierRow = one.Row == 0 ? "dim.chain" : "dim.overall";
        var paperLine = IsLevel || !surface.Mirrored ? line : -line;

        // Up is towards the top of the figure: up the sheet, or to its left.
        var figureAt = IsLevel ? surface.Turn(new PaperPoint(along, line)) + new PaperPoint(0, 0.6 + up) : new PaperPoint(paperLine - 0.6 - up, along);
        surface.Add(new Dimension(
            tierRow, "dim.stroke", surface.Turn(from), surface.Turn(to), !IsLevel, paperLine, one.Figure.Text, figureAt, one.Figure.Model,
            End(row, IsLevel ? from.X : from.Y), End(row, IsLevel ? to.X : to.Y))
        {
            MeasureId = measure.Id,
        });
        var box = surface.Turn(Letters.Box(new Text(tierRow, one.Figure.Text, figureAt, 2.5, Align.Centre, IsLevel ? 0 : 90)));
        surface.Texts.Add(box);
        surface.Hard.Add(IsLevel ? (new(from.X, line), new(to.X, line)) : (new(line, from.Y), new(line, to.Y)));
        if (up > 0)
        {
            var tick = IsLevel
                ? (new PaperPoint(along, line), new PaperPoint(along, line + up))
                : (new PaperPoint(line, along), new PaperPoint(surface.Mirrored ? line + up : line - up, along));
            if (along > one.Low && along < one.High)
            {
                surface.Line(tierRow, tick.Item1, tick.Item2);
            }
        }

        Witness(from, line);
        Witness(to, line);
    }

    private void Witness(PaperPoint from, double line)
    {
        var (start, end) = IsLevel ? (from.Y, line) : (from.X, line);
        var way = Math.Sign(end - start);
        var (a, b) = (start + way, end + way * Over);
        surface.Soft.Add(IsLevel ? (new(from.X, a), new(from.X, b)) : (new(a, from.Y), new(b, from.Y)));
        Witnessed.Add((IsLevel ? from.X : from.Y, b));
    }

    private static Terminator End(Rowed[] row, double at) =>
        row.Any(one => one.Span < Dotted && (Math.Abs(one.Low - at) < 0.01 || Math.Abs(one.High - at) < 0.01)) ? Terminator.Dot : Terminator.Stroke;

    /// <summary>Where the witness line starts: the place itself, or the outermost edge on the line's way out, so that it never runs through the drawing.</summary>
    private PaperPoint Start(Point model, double line)
    {
        var at = surface.At(model);
        var best = IsLevel ? at.Y : at.X;
        foreach (var shape in surface.Shapes)
        {
            if (shape.Look == Look.Open)
            {
                continue;
            }

            foreach (var nudge in (ReadOnlySpan<double>)[-0.02, 0.02])
            {
                foreach (var (low, high) in shape.Spans((IsLevel ? at.X : at.Y) + nudge, !IsLevel))
                {
                    var edge = Outwards > 0 ? high : low;
                    best = Outwards * (edge - best) > 0 && Outwards * (line - edge) > 0 ? edge : best;
                }
            }
        }

        return IsLevel ? at with { Y = best } : at with { X = best };
    }
}
