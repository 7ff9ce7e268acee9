using DetailGen.Drawing.Scenes;

namespace DetailGen.Drawing.Annotation.Notes;

/// <summary>A place where a leader may end.</summary>
/// <param name="Clearance">Distance to the part's edge, mm.</param>
/// <param name="Best">The best clearance that the part offers.</param>
internal readonly record struct TipPlace(PaperPoint At, double Clearance, double Best);

/// <summary>Places on the middle of a part's visible pieces, well apart, at most a dozen.</summary>
internal static class Tips
{
    internal const int Most = 12;
    private const double Apart = 4;

    /// <summary>A place nearer to an edge is on it, mm.</summary>
    private const double Touch = 0.02;

    /// <param name="bands">Sheets and black fixings, which are drawn over what they lie in.</param>
    internal static List<TipPlace> Of(Shape shape, IEnumerable<Shape> bands)
    {
        var over = Over(shape, bands);
        var found = new List<(PaperPoint At, double Clearance)>();
        Along(shape, over, shape.Box.Bottom, shape.Box.Height, true, found);
        Along(shape, over, shape.Box.Left, shape.Box.Width, false, found);
        if (found.Count == 0)
        {
            return [];
        }

        // The clearest first, then what stands farthest from those taken: spread over the part, the heart included.
        var best = found.Max(place => place.Clearance);
        var enough = Math.Min(1, 0.8 * best);
        var rest = found.Where(place => place.Clearance >= enough - 1e-9)
            .OrderByDescending(place => Math.Round(place.Clearance, 3)).ThenBy(place => Math.Round(place.At.Y, 3)).ThenBy(place => Math.Round(place.At.X, 3)).ToList();
        var taken = new List<TipPlace>();
        while (taken.Count < Most && rest.Count > 0)
        {
            var (next, distance) = (0, -1.0);
            for (var i = 0; i < rest.Count && taken.Count > 0; i++)
            {
                var nearest = double.MaxValue;
                foreach (var other in taken)
                {
                    nearest = Math.Min(nearest, (other.At - rest[i].At).Length);
                }

                (next, distance) = nearest > distance + 1e-6 ? (i, nearest) : (next, distance);
            }

            if (taken.Count > 0 && distance < Math.Min(Apart, 1.5 + best))
            {
                break;
            }

            taken.Add(new(rest[next].At, rest[next].Clearance, best));
            rest.RemoveAt(next);
        }

        return taken;
    }

    /// <summary>Places in the middle of the part's stretches on a straight way.</summary>
    /// <param name="way">Of length 1.</param>
    internal static IEnumerable<TipPlace> Along(Shape shape, IEnumerable<Shape> bands, PaperPoint from, PaperPoint way, double length)
    {
        var over = Over(shape, bands);
        foreach (var at in Middles(shape, from, way, length))
        {
            var point = from + at * way;
            var clearance = Clearance(shape, over, point);
            if (clearance > Touch)
            {
                yield return new(point, clearance, clearance);
            }
        }
    }

    private static List<double> Middles(Shape shape, PaperPoint from, PaperPoint way, double length)
    {
        Span<Cut> cuts = stackalloc Cut[Shape.MostCuts];
        cuts = cuts[..shape.Cuts(from, way, length, cuts)];
        var middles = new List<double>();
        for (var i = shape.Contains(from.X, from.Y) ? 1 : 0; i + 1 < cuts.Length; i += 2)
        {
            middles.Add((cuts[i].At + cuts[i + 1].At) / 2);
        }

        return middles;
    }

    private static Shape[] Over(Shape shape, IEnumerable<Shape> bands) => shape.Look == Look.Band ? [] : [.. bands.Where(band => !ReferenceEquals(band, shape) && band.Box.Meets(shape.Box))];

    private static double Clearance(Shape shape, Shape[] over, PaperPoint point) =>
        over.Aggregate(shape.Clearance(point), (least, band) => band.Contains(point.X, point.Y) ? 0 : Math.Min(least, band.EdgeDistance(point.X, point.Y)));

    private static void Along(Shape shape, Shape[] over, double start, double extent, bool level, List<(PaperPoint At, double Clearance)> found)
    {
        var count = (int)Math.Clamp(Math.Ceiling(extent / 3), 3, 13);
        for (var i = 0; i < count; i++)
        {
            var at = start + extent * (i + 0.5) / count;
            foreach (var (from, to) in shape.Spans(at, level))
            {
                var middle = (from + to) / 2;
                var point = level ? new PaperPoint(middle, at) : new PaperPoint(at, middle);
                var clearance = Clearance(shape, over, point);
                if (clearance > Touch)
                {
                    found.Add((point, clearance));
                }
            }
        }
    }
}
