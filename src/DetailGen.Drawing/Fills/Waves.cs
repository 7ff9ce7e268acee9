using DetailGen.Drawing.Scenes;

namespace DetailGen.Drawing.Fills;

/// <summary>The two waves between the faces of an insulation: soft loops for fibres, straight zigzags for rigid boards.</summary>
public static class Waves
{
    /// <summary>How far an extreme stays inside its face, mm.</summary>
    public const double Inset = 0.3;

    /// <summary>Where a part is thinner, the wave stops and the tip stays white, mm.</summary>
    public const double LeastWidth = 1.6;

    /// <summary>What a tie or a fixing leaves of a wave is dropped where it is shorter, mm: a crumb between two cuts reads as dirt.</summary>
    public static double LeastRun(Strip strip) => Math.Max(1.2, 0.4 * strip.Width((strip.Start + strip.End) / 2));

    /// <summary>Fewer half waves between faces that run together read as a scrawl: a small fillet stays white.</summary>
    private const int FewestInTaper = 4;

    private const double Flatness = 0.02;
    private const int Stations = 240;

    /// <summary>Loops of pitch 0.55 w held between 3 and 9, whole half waves from end to end.</summary>
    public static IReadOnlyList<PaperPoint> Loop(Strip strip, int variant)
    {
        if (Extremes(strip, variant, w => Math.Clamp(0.55 * w, 3, 9), endInset: Inset) is not { Count: > 1 } extremes)
        {
            return [];
        }

        var line = new List<PaperPoint> { extremes[0].At };
        for (var i = 0; i + 1 < extremes.Count; i++)
        {
            var (a, b) = (extremes[i], extremes[i + 1]);
            Flatten(line, a.At, a.At + a.Ahead * a.Tangent, b.At - b.Back * b.Tangent, b.At);
        }

        return line;
    }

    /// <summary>Straight strokes of pitch 0.8 w held between 3 and 12; the apexes of a butt joint lie on it.</summary>
    public static IReadOnlyList<PaperPoint> Zigzag(Strip strip, int variant) =>
        Extremes(strip, variant, w => Math.Clamp(0.8 * w, 3, 12), endInset: 0) is { Count: > 1 } extremes ? [.. extremes.Select(extreme => extreme.At)] : [];

    private static List<(PaperPoint At, PaperPoint Tangent, double Ahead, double Back)>? Extremes(Strip strip, int variant, Func<double, double> pitchOf, double endInset)
    {
        if (strip.Wide(LeastWidth) is not { } wide || wide.To - wide.From < 2 * endInset + 0.8)
        {
            return null;
        }

        var (from, to) = (wide.From + endInset, wide.To - endInset);
        var step = (to - from) / Stations;
        var pitches = Enumerable.Range(0, Stations).Select(i => pitchOf(strip.Width(from + (i + 0.5) * step))).ToArray();
        var (least, most, mean) = (pitches.Min(), pitches.Max(), pitches.Average());
        if (most < 2 * least)
        {
            Array.Fill(pitches, mean); // even loops look calmer than a pitch that follows every nibble
        }

        var waves = pitches.Sum(pitch => step / pitch);
        var halves = Math.Max(2, (int)Math.Round(2 * waves) + (variant >= 2 ? 1 : 0));
        if (halves < FewestInTaper && IsTapered(strip, from, to))
        {
            return null;
        }

        var sign = variant % 2 == 0 ? 1 : -1;
        var extremes = new List<(PaperPoint, PaperPoint, double, double)>();
        double phase = 0;
        var station = 0;
        for (var k = 0; k <= halves; k++)
        {
            var aim = waves * k / halves;
            while (station < Stations && phase + step / pitches[station] < aim - 1e-12)
            {
                phase += step / pitches[station++];
            }

            var u = k == halves ? to : Math.Min(to, from + station * step + (aim - phase) * pitches[Math.Min(station, Stations - 1)]);
            var (lo, hi, loSlope, hiSlope) = strip.Faces(k == 0 ? u + 1e-6 : k == halves ? u - 1e-6 : u);
            var upper = (k % 2 == 0) == sign > 0;
            var slope = upper ? hiSlope : loSlope;
            var stretch = Math.Sqrt(1 + slope * slope);
            var v = upper ? hi - Inset * stretch : lo + Inset * stretch;
            var pitch = pitches[Math.Min(station, Stations - 1)];
            var tangent = Planes.Unit(strip.At(1, slope));
            var handle = Math.Min(0.75 * pitch, 0.6 * (hi - lo));
            extremes.Add((strip.At(u, v), tangent, Within(strip, u, v, slope, handle), Within(strip, u, v, slope, -handle)));
        }

        return extremes;
    }

    private static bool IsTapered(Strip strip, double from, double to) =>
        (strip.Width(from), strip.Width((from + to) / 2), strip.Width(to)) is var (one, middle, other) && Math.Max(Math.Max(one, other), middle) > 2 * Math.Min(Math.Min(one, other), middle);

    // Where a face bends away behind an extreme, a full handle would throw the loop through it.
    private static double Within(Strip strip, double u, double v, double slope, double handle)
    {
        var step = 1 / Math.Sqrt(1 + slope * slope);
        for (var share = 1.0; share > 0.2; share -= 0.1)
        {
            var at = u + share * handle * step;
            var (lo, hi, _, _) = strip.Faces(at);
            var there = v + share * handle * step * slope;
            if (there >= lo + Inset - 0.05 && there <= hi - Inset + 0.05)
            {
                return share * Math.Abs(handle);
            }
        }

        return 0.2 * Math.Abs(handle);
    }

    private static void Flatten(List<PaperPoint> line, PaperPoint a, PaperPoint b, PaperPoint c, PaperPoint d)
    {
        var bend = Math.Max((a - 2 * b + c).Length, (b - 2 * c + d).Length);
        var pieces = Math.Clamp((int)Math.Ceiling(Math.Sqrt(6 * bend / (8 * Flatness))), 4, 64);
        for (var i = 1; i <= pieces; i++)
        {
            var t = (double)i / pieces;
            var s = 1 - t;
            line.Add(s * s * s * a + 3 * s * s * t * b + (3 * s * t * t * c + t * t * t * d));
        }
    }
}
