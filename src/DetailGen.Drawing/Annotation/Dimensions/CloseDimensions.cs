using DetailGen.Drawing.Scenes;
using DetailGen.Sections;

namespace DetailGen.Drawing.Annotation.Dimensions;

/// <summary>Short sizes that stand beside what they measure, in white.</summary>
internal static class CloseDimensions
{
    private static readonly double[] Offsets = [3.5, 5, 6.5, 8, 10, 12, 15, 18, 22, 27, 33, 40];

    /// <summary>So little of a face under the end of a line is no part in its way, mm.</summary>
    private const double Touching = 0.3;

    /// <summary>Farther off, or through more that is built, a size that its part's note gives too tells less than it crosses, mm.</summary>
    private const double MostForTold = 25;

    /// <param name="told">Whether notes give these sizes too, so that one without room is no loss.</param>
    internal static void Place(Surface surface, IEnumerable<Figure> figures, bool told)
    {
        foreach (var figure in figures.OrderBy(figure => figure.Measure.Id, StringComparer.Ordinal))
        {
            if ((Best(surface, figure, ends: 1) ?? Best(surface, figure, ends: -Touching)) is { } place && !(told && place.Cost > MostForTold))
            {
                Draw(surface, figure, place);
            }
            else if (!told && figure.Measure.Told is { } words && surface.ById.ContainsKey(words.PartId))
            {
                surface.Told.Add((words.PartId, words.With(figure.Text)));
            }
            else if (!told)
            {
                surface.Unplaced.Add(new("dimension", figure.Measure.Id, "No white beside it is large enough."));
            }
        }
    }

    /// <summary>Whether the note of its part gives the size in words, so that it may stand there alone; the same figure in another note is another size.</summary>
    internal static bool IsTold(Section section, Figure figure) => section.Parts.Any(part => part.Id == figure.Measure.Told?.PartId
        && part.Words.Note.Split([' ', ';', ',', '×'], StringSplitOptions.RemoveEmptyEntries).Contains(figure.Text, StringComparer.Ordinal));

    private sealed record Spot(Dimension Dimension, double Line, PaperBox Box, double Cost);

    /// <param name="ends">How far parts keep off the ends of the line, mm; where a size ends at a face, the line may end on it rather than find no place.</param>
    private static Spot? Best(Surface surface, Figure figure, double ends)
    {
        Spot? best = null;
        var (from, to) = (surface.At(figure.Measure.From), surface.At(figure.Measure.To));
        var level = figure.Measure.Axis == Axis.Horizontal;
        var (low, high) = level ? (Math.Min(from.X, to.X), Math.Max(from.X, to.X)) : (Math.Min(from.Y, to.Y), Math.Max(from.Y, to.Y));
        var (near, far) = level ? (Math.Min(from.Y, to.Y), Math.Max(from.Y, to.Y)) : (Math.Min(from.X, to.X), Math.Max(from.X, to.X));
        var height = surface.Sizes.Notes;
        var width = surface.Sizes.Typeface.Width(figure.Text, height) * 1.02;
        double[] within = FigureInSpan.Fits(width, high - low) ? [FigureInSpan.Middles(low, high, width, level && surface.Mirrored).First()] : [];
        foreach (var offset in Offsets)
        {
            foreach (var line in (ReadOnlySpan<double>)[far + offset, near - offset])
            {
                foreach (var along in (ReadOnlySpan<double>)[.. within, high + 1.5 + width / 2, low - 1.5 - width / 2])
                {
                    var outside = along < low || along > high;
                    var least = offset + (outside ? 8 : 0);
                    if (best is not null && least >= best.Cost - 1e-9)
                    {
                        continue;
                    }

                    var at = level ? surface.Turn(new PaperPoint(along, line)) + new PaperPoint(0, 0.6) : new PaperPoint((surface.Mirrored ? -line : line) - 0.6, along);
                    var box = surface.Turn(surface.Sizes.Typeface.Box(new Text("dim.chain", figure.Text, at, height, Align.Centre, level ? 0 : 90)));
                    var (a, b) = level ? (new PaperPoint(low, line), new PaperPoint(high, line)) : (new PaperPoint(line, low), new PaperPoint(line, high));
                    var cost = least + Witnesses(surface, from, to, line, level);
                    if (cost < 1000 && (best is null || cost < best.Cost - 1e-9) && surface.Free(box, 1, 1) && SpanIsFree(surface, a, b, ends)
                        && Drawn(surface, figure, line, at) is var drawn && InkIsFree(surface, drawn))
                    {
                        best = new(drawn, line, box, cost);
                    }
                }
            }
        }

        return best;
    }

    private static bool SpanIsFree(Surface surface, PaperPoint a, PaperPoint b, double ends)
    {
        var box = Surface.Around(a, b).Grow(1);
        var (across, up) = a.Y == b.Y ? (ends - 1, 0.0) : (0.0, ends - 1);
        PaperBox clear = new(box.Left - across, box.Bottom - up, box.Right + across, box.Top + up);
        return surface.Soft.TrueForAll(line => !Lines.Cross(a, b, line.From, line.To)) && surface.Shapes.All(shape => shape.Look == Look.Open || !shape.Meets(clear));
    }

    /// <summary>Whether its line, also where it is drawn on under the figure, and the strokes at its ends keep off what stands there.</summary>
    private static bool InkIsFree(Surface surface, Dimension dimension)
    {
        var picture = Scenes.Dimensions.Picture(dimension, surface.Sizes.Typeface);
        var (a, b) = surface.PiecesOf(picture.Line).Single();
        var box = Surface.Around(a, b).Grow(1);
        return surface.Texts.TrueForAll(text => !Lines.Meets(text.Grow(1), a, b))
            && surface.Hard.TrueForAll(line => !Lines.Meets(box, line.From, line.To))
            && picture.Ends.OfType<Stroke>().SelectMany(surface.PiecesOf).All(
                stroke => surface.Texts.TrueForAll(text => !Lines.Meets(text.Grow(Surface.StrokeGap), stroke.From, stroke.To)));
    }

    private static double Witnesses(Surface surface, PaperPoint from, PaperPoint to, double line, bool level)
    {
        var cost = 0.0;
        foreach (var point in (ReadOnlySpan<PaperPoint>)[from, to])
        {
            var end = WitnessEnd(point, line, level);
            foreach (var shape in surface.Shapes)
            {
                cost += shape.Look == Look.Open ? 0 : 4 * Math.Min(2, shape.Inside(point, end));
            }

            cost += surface.Texts.Exists(text => Lines.Meets(text.Grow(0.5), point, end)) || surface.Hard.Exists(hard => Lines.Cross(point, end, hard.From, hard.To)) ? 1000 : 0;
        }

        return cost;
    }

    /// <summary>A witness line runs past the dimension line, and the oblique stroke there reaches less far.</summary>
    private static PaperPoint WitnessEnd(PaperPoint point, double line, bool level)
    {
        var end = line + Math.Sign(line - (level ? point.Y : point.X)) * Scenes.Dimensions.Past;
        return level ? point with { Y = end } : point with { X = end };
    }

    private static Dimension Drawn(Surface surface, Figure figure, double line, PaperPoint figureAt)
    {
        var (from, to) = (surface.At(figure.Measure.From), surface.At(figure.Measure.To));
        var level = figure.Measure.Axis == Axis.Horizontal;
        var span = level ? Math.Abs(to.X - from.X) : Math.Abs(to.Y - from.Y);
        var end = span < 2.5 ? Terminator.Dot : Terminator.Stroke;
        return new(
            "dim.chain", "dim.stroke", surface.Turn(from), surface.Turn(to), !level, level || !surface.Mirrored ? line : -line, figure.Text, figureAt,
            figure.Model, surface.Sizes.Notes, end, end)
        {
            MeasureId = figure.Measure.Id,
        };
    }

    private static void Draw(Surface surface, Figure figure, Spot place)
    {
        surface.Size(place.Dimension);
        surface.Texts.Add(place.Box);
        foreach (var point in (ReadOnlySpan<PaperPoint>)[surface.At(figure.Measure.From), surface.At(figure.Measure.To)])
        {
            surface.Soft.Add((point, WitnessEnd(point, place.Line, figure.Measure.Axis == Axis.Horizontal)));
        }
    }
}
