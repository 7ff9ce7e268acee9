using DetailGen.Drawing.Scenes;

namespace DetailGen.Drawing.Sheets.Companions;

/// <summary>Lines on paper, cut at upright rectangles and thinned. A line is closed where it ends where it begins.</summary>
internal static class PaperLines
{
    /// <summary>The share of a straight piece that lies in a rectangle, from 0 at <paramref name="a"/> to 1 at <paramref name="b"/>; null where it passes by.</summary>
    internal static (double From, double To)? Within(PaperPoint a, PaperPoint b, PaperBox box)
    {
        var (from, to) = (0.0, 1.0);
        foreach (var (start, way, least, most) in new[] { (a.X, b.X - a.X, box.Left, box.Right), (a.Y, b.Y - a.Y, box.Bottom, box.Top) })
        {
            if (way == 0)
            {
                if (start < least || start > most)
                {
                    return null;
                }

                continue;
            }

            var (near, far) = ((least - start) / way, (most - start) / way);
            (from, to) = (Math.Max(from, Math.Min(near, far)), Math.Min(to, Math.Max(near, far)));
        }

        return from < to ? (from, to) : null;
    }

    internal static bool Crosses(IReadOnlyList<PaperPoint> line, PaperBox box)
    {
        for (var i = 0; i + 1 < line.Count; i++)
        {
            if (Within(line[i], line[i + 1], box) is not null)
            {
                return true;
            }
        }

        return false;
    }

    internal static IReadOnlyList<IReadOnlyList<PaperPoint>> Inside(IReadOnlyList<PaperPoint> line, PaperBox box) =>
        Kept(line, (a, b) => Within(a, b, box) is { } within ? [within] : []);

    internal static IReadOnlyList<IReadOnlyList<PaperPoint>> Outside(IReadOnlyList<PaperPoint> line, PaperBox box) =>
        Kept(line, (a, b) => Within(a, b, box) is { } within ? [(0, within.From), (within.To, 1)] : [(0, 1)]);

    internal static IReadOnlyList<IReadOnlyList<PaperPoint>> Outside(IReadOnlyList<PaperPoint> line, IEnumerable<PaperBox> boxes) =>
        boxes.Aggregate<PaperBox, IReadOnlyList<IReadOnlyList<PaperPoint>>>([line], (lines, box) => [.. lines.SelectMany(one => Outside(one, box))]);

    /// <summary>The line with as few corners as keep it within a distance of what it was, mm (D. H. Douglas, T. K. Peucker, 1973, from memory).</summary>
    internal static IReadOnlyList<PaperPoint> Thinned(IReadOnlyList<PaperPoint> line, double within)
    {
        var kept = new bool[line.Count];
        (kept[0], kept[^1]) = (true, true);
        var open = new Stack<(int From, int To)>([(0, line.Count - 1)]);
        while (open.TryPop(out var piece))
        {
            var (farthest, distance) = (0, within);
            for (var i = piece.From + 1; i < piece.To; i++)
            {
                if (Distance(line[i], line[piece.From], line[piece.To]) is var now && now > distance)
                {
                    (farthest, distance) = (i, now);
                }
            }

            if (farthest > 0)
            {
                kept[farthest] = true;
                open.Push((piece.From, farthest));
                open.Push((farthest, piece.To));
            }
        }

        return [.. line.Where((_, i) => kept[i])];
    }

    /// <summary>From a place to the nearest of a straight piece.</summary>
    internal static double Distance(PaperPoint at, PaperPoint from, PaperPoint to)
    {
        var (way, off) = (to - from, at - from);
        var square = (way.X * way.X) + (way.Y * way.Y);
        var share = square == 0 ? 0 : Math.Clamp(((way.X * off.X) + (way.Y * off.Y)) / square, 0, 1);
        return (off - (share * way)).Length;
    }

    private static List<List<PaperPoint>> Kept(IReadOnlyList<PaperPoint> line, Func<PaperPoint, PaperPoint, IReadOnlyList<(double From, double To)>> shares)
    {
        var pieces = new List<List<PaperPoint>>();
        var goesOn = false;
        for (var i = 0; i + 1 < line.Count; i++)
        {
            var (a, b) = (line[i], line[i + 1]);
            PaperPoint At(double share) => share == 0 ? a : share == 1 ? b : a + (share * (b - a));
            (double From, double To)[] kept = [.. shares(a, b).Where(share => share.From < share.To)];
            foreach (var (from, to) in kept)
            {
                if (!goesOn || from > 0)
                {
                    pieces.Add([At(from)]);
                }

                pieces[^1].Add(At(to));
                goesOn = to == 1;
            }

            goesOn &= kept.Length > 0;
        }

        // a closed line that was cut somewhere is not cut where it happened to begin
        if (pieces.Count > 1 && line[0] == line[^1] && pieces[0][0] == line[0] && pieces[^1][^1] == line[^1])
        {
            pieces[0] = [.. pieces[^1], .. pieces[0].Skip(1)];
            pieces.RemoveAt(pieces.Count - 1);
        }

        return pieces;
    }
}
