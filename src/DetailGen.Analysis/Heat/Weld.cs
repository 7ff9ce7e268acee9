using DetailGen.Sections;

namespace DetailGen.Analysis.Heat;

/// <summary>An outline with its holes, corners by number: anticlockwise outside, clockwise in holes.</summary>
internal sealed record WeldedPiece(int Solid, IReadOnlyList<int> Outline, IReadOnlyList<IReadOnlyList<int>> Holes);

/// <summary>
/// Regions that share their corners and edges exactly: corners that nearly meet become one, and an edge takes in every corner that lies on it. Slits and overlaps
/// of rounding vanish.
/// </summary>
/// <param name="Corners">mm.</param>
internal sealed record Weld(IReadOnlyList<Point> Corners, IReadOnlyList<WeldedPiece> Pieces)
{
    /// <summary>What is closer is one; mm.</summary>
    internal const double Reach = 0.05;

    internal static Weld Of(IReadOnlyList<Region> regions)
    {
        var corners = new List<Point>();
        var near = new Dictionary<(long, long), List<int>>();
        var rough = regions.SelectMany((region, solid) => region.Pieces.Select(piece =>
            (solid, Outline: piece.Outline.Select(Number).ToArray(), Holes: piece.Holes.Select(hole => hole.Select(Number).ToArray()).ToArray()))).ToArray();
        var pieces = new List<WeldedPiece>();
        foreach (var (solid, outline, holes) in rough)
        {
            if (Ring(outline, corners) is { } ring)
            {
                pieces.Add(new(solid, ring, [.. holes.Select(hole => Ring(hole, corners)).OfType<List<int>>()]));
            }
        }

        return new(corners, pieces);

        int Number(Point corner)
        {
            var (x, y) = ((long)Math.Floor(corner.X / Reach), (long)Math.Floor(corner.Y / Reach));
            for (var i = x - 1; i <= x + 1; i++)
            {
                for (var j = y - 1; j <= y + 1; j++)
                {
                    foreach (var known in near.GetValueOrDefault((i, j)) ?? [])
                    {
                        if ((corners[known] - corner).Length <= Reach)
                        {
                            return known;
                        }
                    }
                }
            }

            corners.Add(corner);
            (near.TryGetValue((x, y), out var cell) ? cell : near[(x, y)] = []).Add(corners.Count - 1);
            return corners.Count - 1;
        }
    }

    /// <summary>Edges that one piece has alone, in its direction, as closed lines: the outer outlines anticlockwise, voids clockwise.</summary>
    internal IReadOnlyList<IReadOnlyList<int>> Exposed()
    {
        var edges = new HashSet<(int From, int To)>();
        foreach (var ring in Pieces.SelectMany(piece => piece.Holes.Prepend(piece.Outline)))
        {
            for (var i = 0; i < ring.Count; i++)
            {
                var (from, to) = (ring[i], ring[(i + 1) % ring.Count]);
                if (!edges.Remove((to, from)))
                {
                    edges.Add((from, to));
                }
            }
        }

        var next = edges.GroupBy(edge => edge.From).ToDictionary(group => group.Key, group => new Queue<int>(group.Select(edge => edge.To).Order()));
        var loops = new List<IReadOnlyList<int>>();
        foreach (var start in next.Keys.Order())
        {
            while (next[start].Count > 0)
            {
                var loop = new List<int>();
                for (var at = start; next.TryGetValue(at, out var ways) && ways.Count > 0; at = ways.Dequeue())
                {
                    loop.Add(at);
                }

                loops.Add(loop);
            }
        }

        return loops;
    }

    /// <summary>mm²; positive where the line runs anticlockwise.</summary>
    internal double Area(IReadOnlyList<int> loop) =>
        Enumerable.Range(0, loop.Count).Sum(i => Point.Cross(Corners[loop[i]], Corners[loop[(i + 1) % loop.Count]])) / 2;

    private static List<int>? Ring(int[] rough, List<Point> corners)
    {
        var ring = new List<int>();
        for (var i = 0; i < rough.Length; i++)
        {
            var (from, to) = (rough[i], rough[(i + 1) % rough.Length]);
            if (from != to)
            {
                ring.Add(from);
                ring.AddRange(Between(corners, from, to));
            }
        }

        // a sliver folded together leaves a line that runs to and fro
        for (var i = 0; i < ring.Count && ring.Count > 2;)
        {
            var (before, after) = ((i + ring.Count - 1) % ring.Count, (i + 1) % ring.Count);
            if (ring[before] != ring[after] && ring[i] != ring[after])
            {
                i++;
                continue;
            }

            if (ring[before] == ring[after])
            {
                ring.RemoveAt(Math.Max(i, after));
                ring.RemoveAt(Math.Min(i, after));
            }
            else
            {
                ring.RemoveAt(i);
            }

            i = Math.Max(0, i - 2);
        }

        return ring.Count > 2 ? ring : null;
    }

    private static IEnumerable<int> Between(List<Point> corners, int from, int to)
    {
        var (a, b) = (corners[from], corners[to]);
        var (along, length) = ((b - a).Unit, (b - a).Length);
        var box = new Bounds(Math.Min(a.X, b.X), Math.Min(a.Y, b.Y), Math.Max(a.X, b.X), Math.Max(a.Y, b.Y)).Grow(Reach);
        return Enumerable.Range(0, corners.Count)
            .Where(i => i != from && i != to && box.Contains(corners[i]) && Math.Abs(Point.Cross(along, corners[i] - a)) <= Reach
                && Point.Dot(along, corners[i] - a) is var at && at > 0 && at < length)
            .OrderBy(i => Point.Dot(along, corners[i] - a)).ThenBy(i => i);
    }
}
