using DetailGen.Drawing.Annotation.Dimensions;
using DetailGen.Drawing.Scenes;
using DetailGen.Sections;

namespace DetailGen.Drawing.Annotation;

/// <summary>The lie of the drawing: where the free air above the roof and the room below it begin, the outside on the left; paper mm.</summary>
/// <param name="WallRight">Right-hand end of what stands up above the roof.</param>
/// <param name="RoofTop">Highest place of the roof right of that.</param>
/// <param name="RoomLeft">Right-hand end of what hangs below the ceiling.</param>
/// <param name="Ceiling">Lowest place of the roof right of that.</param>
/// <param name="RoofEnd">Where the roof breaks off.</param>
/// <param name="Foot">Where the wall breaks off.</param>
internal sealed record Ground(double WallRight, double RoofTop, double RoomLeft, double Ceiling, double RoofEnd, double Foot)
{
    // A fillet or a fall is still roof, an upstand is wall.
    private const double Rise = 6;

    internal static Ground Of(Surface surface)
    {
        var drawn = surface.Drawn;
        var (top, bottom) = Skyline(surface, drawn.Right - 0.5);
        var (roofTop, ceiling) = (top, bottom);
        var (wallRight, roomLeft) = (drawn.Left, drawn.Left);
        for (var x = drawn.Right - 0.5; x > drawn.Left && (wallRight == drawn.Left || roomLeft == drawn.Left); x -= 0.5)
        {
            var (high, low) = Skyline(surface, x);
            if (wallRight == drawn.Left)
            {
                (wallRight, roofTop) = high > top + Rise ? (x + 0.5, roofTop) : (wallRight, Math.Max(roofTop, high));
            }

            if (roomLeft == drawn.Left)
            {
                (roomLeft, ceiling) = low < bottom - Rise / 2 ? (x + 0.5, ceiling) : (roomLeft, Math.Min(ceiling, low));
            }
        }

        return new(wallRight, roofTop, roomLeft, ceiling, drawn.Right, drawn.Bottom);
    }

    /// <summary>The outermost edge on the weather side over the heights that the figures span: they stand 10 off that.</summary>
    internal static double WeatherEdge(IEnumerable<Figure> figures, Surface surface)
    {
        var ends = figures.Select(figure => Rounding.Ends(figure.Measure)).ToArray();
        if (ends.Length == 0)
        {
            return surface.DrawnWithBreaks.Left;
        }

        var (low, high) = (ends.Min(end => end.Low) / surface.Scale, ends.Max(end => end.High) / surface.Scale);
        return surface.Shapes.Where(shape => shape.Look != Look.Open && shape.Box.Bottom < high && shape.Box.Top > low).Select(shape => shape.Box.Left).DefaultIfEmpty(surface.Drawn.Left).Min();
    }

    /// <summary>Whether the surface laid to a fall is drawn.</summary>
    internal bool IsSeen(Surface surface, Fall fall) => surface.At(fall.At) is var at && at.X > surface.Drawn.Left && at.X < RoofEnd;

    /// <summary>The white of the roof's void, where it is large enough for words; null otherwise.</summary>
    internal static PaperBox? Void(Surface surface)
    {
        const double Least = 10;
        PaperBox? best = null;
        foreach (var shape in surface.Shapes)
        {
            if (shape.Look != Look.Open || !shape.Id.StartsWith("roof.void", StringComparison.Ordinal))
            {
                continue;
            }

            // Stretches of like height along the void, between what stands in it.
            var (from, high, low) = (double.NaN, 0.0, 0.0);
            for (var x = shape.Box.Left + 0.25; x <= shape.Box.Right + 0.5; x += 0.5)
            {
                var spans = x < shape.Box.Right ? shape.Spans(x, false) : [];
                var (bottom, top) = spans.Count == 0 ? (0, 0) : spans.MaxBy(span => span.To - span.From);
                if (!double.IsNaN(from) && (top - bottom < Least || Math.Min(top, high) - Math.Max(bottom, low) < 0.7 * (high - low)))
                {
                    var box = new PaperBox(from, low + 1, x - 0.5, high - 1);
                    best = best is null || box.Width * box.Height > best.Value.Width * best.Value.Height ? box : best;
                    from = double.NaN;
                }

                if (top - bottom >= Least)
                {
                    (from, high, low) = double.IsNaN(from) ? (x, top, bottom) : (from, Math.Min(high, top), Math.Max(low, bottom));
                }
            }
        }

        return best;
    }

    private static (double Top, double Bottom) Skyline(Surface surface, double x)
    {
        var (top, bottom) = (double.MinValue, double.MaxValue);
        foreach (var shape in surface.Shapes)
        {
            if (shape.Look == Look.Open || x < shape.Box.Left || x > shape.Box.Right)
            {
                continue;
            }

            foreach (var (from, to) in shape.Spans(x, false))
            {
                (top, bottom) = (Math.Max(top, to), Math.Min(bottom, from));
            }
        }

        return (top, bottom);
    }
}
