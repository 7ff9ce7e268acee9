using DetailGen.Drawing.Scenes;

namespace DetailGen.Drawing.Emitters.Plain;

/// <summary>
/// The broken lines of the layer map, as multiples of the line's width d (ISO 128-2:2022, from memory): dash 12, long dash 24, gap 3, dot a half.
/// </summary>
internal static class Dashes
{
    private const double Dot = 0.5;

    /// <summary>Pen down and pen up by turns, mm; empty for a continuous line.</summary>
    /// <exception cref="ArgumentException">A line type that the layer map does not have.</exception>
    public static double[] Pattern(LayerRow row) => row.LineType switch
    {
        "continuous" => [],
        "dashed" => [12 * row.Width, 3 * row.Width],
        "dash-dot" => [12 * row.Width, 3 * row.Width, Dot * row.Width, 3 * row.Width],
        "chain" => [24 * row.Width, 3 * row.Width, Dot * row.Width, 3 * row.Width],
        _ => throw new ArgumentException($"The layer {row.Name} has the line type '{row.LineType}'; it can be continuous, dashed, dash-dot or chain."),
    };

    /// <summary>The pattern stretched or pressed a little, so that a line of this length begins and ends on a whole dash; empty where only one dash fits.</summary>
    /// <param name="closed">A ring ends where it begins, so its last gap stands too.</param>
    public static double[] Fit(double[] pattern, double length, bool closed)
    {
        if (pattern.Length == 0 || !(length > 0))
        {
            return [];
        }

        var period = pattern.Sum();
        var end = closed ? 0 : pattern[0];
        var repeats = Math.Round((length - end) / period);
        if (repeats < 1)
        {
            return [];
        }

        var factor = length / (repeats * period + end);
        return Array.ConvertAll(pattern, dash => dash * factor);
    }

    public static double Length(IReadOnlyList<PaperPoint> points, bool closed)
    {
        var length = closed && points.Count > 1 ? (points[0] - points[^1]).Length : 0;
        for (var i = 1; i < points.Count; i++)
        {
            length += (points[i] - points[i - 1]).Length;
        }

        return length;
    }

    /// <summary>The dashes of a line one by one, corners kept; the line itself where the pattern is empty.</summary>
    public static IEnumerable<IReadOnlyList<PaperPoint>> Split(IReadOnlyList<PaperPoint> points, bool closed, double[] fitted)
    {
        var dash = new List<PaperPoint>();
        var (part, left, drawn) = (0, fitted[0], true);
        dash.Add(points[0]);
        for (var i = 1; i < points.Count + (closed ? 1 : 0); i++)
        {
            var (from, to) = (points[i - 1], points[i % points.Count]);
            var (length, done) = ((to - from).Length, 0.0);
            while (length - done > left)
            {
                done += left;
                var here = from + done / length * (to - from);
                if (drawn)
                {
                    dash.Add(here);
                    yield return dash;
                }

                dash = [here];
                part = (part + 1) % fitted.Length;
                (left, drawn) = (fitted[part], !drawn);
            }

            left -= length - done;
            if (drawn)
            {
                dash.Add(to);
            }
        }

        if (drawn && dash.Count > 1)
        {
            yield return dash;
        }
    }
}
