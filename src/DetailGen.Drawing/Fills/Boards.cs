using DetailGen.Drawing.Scenes;

namespace DetailGen.Drawing.Fills;

/// <summary>Fills that follow the faces of boards and timbers.</summary>
internal static class Boards
{
    /// <summary>Plies as lines between the faces, with ticks in every second one.</summary>
    public static IEnumerable<IReadOnlyList<PaperPoint>> Veneers(Strip strip)
    {
        var width = strip.Width((strip.Start + strip.End) / 2);
        var lines = (int)Math.Clamp(Math.Round(width / 0.9) - 1, 1, 5);
        for (var line = 1; line <= lines; line++)
        {
            yield return Between(strip, (double)line / (lines + 1));
        }

        for (var band = 1; band <= lines; band += 2)
        {
            var height = width / (lines + 1);
            for (var u = strip.Start + 1.25; u + height < strip.End; u += 2.5)
            {
                yield return [On(strip, u, (double)band / (lines + 1)), On(strip, u + height, (band + 1.0) / (lines + 1))];
            }
        }
    }

    /// <summary>Ticks along the core of a plasterboard.</summary>
    public static IEnumerable<IReadOnlyList<PaperPoint>> CoreTicks(Strip strip)
    {
        for (var u = strip.Start + 1.5; u < strip.End - 1; u += 3)
        {
            var (lo, hi, _, _) = strip.Faces(u);
            var half = Math.Min(0.6 * (hi - lo), 3) / 2 / Math.Sqrt(2);
            var middle = (lo + hi) / 2;
            yield return [strip.At(u - half, middle - half), strip.At(u + half, middle + half)];
        }
    }

    /// <summary>A broken line in the middle, for boards too thin for strands.</summary>
    public static IEnumerable<IReadOnlyList<PaperPoint>> MidLine(Strip strip)
    {
        for (var u = strip.Start; u < strip.End; u += 3)
        {
            yield return [On(strip, u, 0.5), On(strip, Math.Min(u + 2, strip.End), 0.5)];
        }
    }

    /// <summary>Grain along the timber: lines at uneven steps, each a slow wave.</summary>
    public static IEnumerable<IReadOnlyList<PaperPoint>> Grain(Strip strip, string partId)
    {
        var state = Mixing.Of(partId + "/grain");
        var middle = (strip.Start + strip.End) / 2;
        var (lo, hi, _, _) = strip.Faces(middle);
        for (var v = lo + 0.9 + 0.5 * Mixing.Draw(ref state); v < hi - 0.7; v += 1.2 + 0.8 * Mixing.Draw(ref state))
        {
            var share = (v - lo) / (hi - lo);
            var period = 18 + 12 * Mixing.Draw(ref state);
            var phase = 2 * Math.PI * Mixing.Draw(ref state);
            var count = Math.Max(2, (int)Math.Ceiling((strip.End - strip.Start) / (period / 24)));
            var line = new PaperPoint[count + 1];
            for (var i = 0; i <= count; i++)
            {
                var u = strip.Start + (strip.End - strip.Start) * i / count;
                var (a, b, _, _) = strip.Faces(u);
                line[i] = strip.At(u, a + share * (b - a) + 0.25 * Math.Sin(2 * Math.PI * (u - strip.Start) / period + phase));
            }

            yield return line;
        }
    }

    /// <summary>The saw cross of an end grain: both diagonals of a member, one of a packer, the height of a fillet.</summary>
    public static IEnumerable<IReadOnlyList<PaperPoint>> EndGrain(IReadOnlyList<PaperPoint> outline, PaperPoint axis, bool once)
    {
        var corners = Corners(outline);
        if (corners.Count == 3)
        {
            var longest = Enumerable.Range(0, 3).MaxBy(i => (corners[(i + 1) % 3] - corners[i]).Length);
            yield return [corners[(longest + 2) % 3], 0.5 * (corners[longest] + corners[(longest + 1) % 3])];
            yield break;
        }

        if (corners.Count != 4)
        {
            var left = Planes.Left(axis);
            var (u0, u1) = (outline.Min(p => Planes.Dot(p, axis)), outline.Max(p => Planes.Dot(p, axis)));
            var (v0, v1) = (outline.Min(p => Planes.Dot(p, left)), outline.Max(p => Planes.Dot(p, left)));
            corners = [u0 * axis + v0 * left, u1 * axis + v0 * left, u1 * axis + v1 * left, u0 * axis + v1 * left];
        }

        yield return [corners[0], corners[2]];
        if (!once)
        {
            yield return [corners[1], corners[3]];
        }
    }

    private static List<PaperPoint> Corners(IReadOnlyList<PaperPoint> outline)
    {
        var corners = new List<PaperPoint>();
        for (var i = 0; i < outline.Count; i++)
        {
            var (before, at, after) = (outline[(i + outline.Count - 1) % outline.Count], outline[i], outline[(i + 1) % outline.Count]);
            if (Math.Abs(Planes.Cross(Planes.Unit(at - before), Planes.Unit(after - at))) > 0.01)
            {
                corners.Add(at);
            }
        }

        return corners;
    }

    private static PaperPoint On(Strip strip, double u, double share)
    {
        var (lo, hi, _, _) = strip.Faces(u);
        return strip.At(u, lo + share * (hi - lo));
    }

    private static PaperPoint[] Between(Strip strip, double share) => [On(strip, strip.Start + 1e-6, share), .. strip.Turns.Select(u => On(strip, u, share)), On(strip, strip.End - 1e-6, share)];
}
