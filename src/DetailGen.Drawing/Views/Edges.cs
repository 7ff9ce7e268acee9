using DetailGen.Drawing.Fills;
using DetailGen.Drawing.Scenes;

namespace DetailGen.Drawing.Views;

/// <summary>A straight edge of a cut part before it is known whether it is drawn.</summary>
/// <param name="Width">Class of its line, mm.</param>
/// <param name="Order">Of two equals the part built earlier keeps the edge.</param>
internal sealed record Edge(PaperPoint A, PaperPoint B, string Row, double Width, int Order, string PartId)
{
    public double Length => (B - A).Length;
}

/// <summary>Edges that neighbours share are drawn once, with the heavier line; what remains is chained into polylines.</summary>
internal static class Edges
{
    /// <summary>Parallel edges of different parts nearer than this would merge on paper.</summary>
    private const double Near = 0.345;

    private const double Coincident = 0.03;

    /// <summary>How long two parts touch, mm, by their places in <paramref name="edges"/>' part ids.</summary>
    public static Dictionary<(string, string), double> Touching(IReadOnlyList<Edge> edges)
    {
        var sum = new Dictionary<(string, string), double>();
        for (var i = 0; i < edges.Count; i++)
        {
            for (var j = i + 1; j < edges.Count; j++)
            {
                if (edges[i].PartId != edges[j].PartId && Overlap(edges[i], edges[j]) is { } lap)
                {
                    var pair = string.CompareOrdinal(edges[i].PartId, edges[j].PartId) < 0 ? (edges[i].PartId, edges[j].PartId) : (edges[j].PartId, edges[i].PartId);
                    sum[pair] = sum.GetValueOrDefault(pair) + lap.To - lap.From;
                }
            }
        }

        return sum;
    }

    /// <summary>What is left of each edge after heavier neighbours took their share.</summary>
    public static List<Edge> Once(IReadOnlyList<Edge> edges)
    {
        var kept = new List<Edge>();
        for (var i = 0; i < edges.Count; i++)
        {
            var taken = new List<(double From, double To)>();
            for (var j = 0; j < edges.Count; j++)
            {
                if (i != j && edges[i].PartId != edges[j].PartId && Heavier(edges[j], edges[i]) && Overlap(edges[i], edges[j]) is { } lap)
                {
                    taken.Add((lap.From, lap.To));
                }
            }

            kept.AddRange(Rest(edges[i], taken));
        }

        return kept;
    }

    /// <summary>What is left of an edge outside the areas, their borders counted as inside.</summary>
    public static IEnumerable<Edge> Outside(Edge edge, IReadOnlyList<Area> areas)
    {
        const double Border = 0.03;
        var taken = new List<(double From, double To)>();
        var d = Planes.Unit(edge.B - edge.A);
        foreach (var area in areas)
        {
            if (!area.Box.Grow(Border).Meets(Box(edge)))
            {
                continue;
            }

            var cuts = new List<double> { 0, edge.Length };
            foreach (var ring in area.Rings)
            {
                for (int i = 0, j = ring.Count - 1; i < ring.Count; j = i++)
                {
                    var (a, b) = (Planes.Cross(d, ring[j] - edge.A), Planes.Cross(d, ring[i] - edge.A));
                    if ((a > 0) != (b > 0))
                    {
                        cuts.Add(Planes.Dot(ring[j] + a / (a - b) * (ring[i] - ring[j]) - edge.A, d));
                    }

                    if (Math.Abs(b) <= Border)
                    {
                        cuts.Add(Planes.Dot(ring[i] - edge.A, d));
                    }
                }
            }

            cuts.RemoveAll(s => s < 0 || s > edge.Length);
            cuts.Sort();
            for (var i = 0; i + 1 < cuts.Count; i++)
            {
                var middle = edge.A + (cuts[i] + cuts[i + 1]) / 2 * d;
                if (cuts[i + 1] - cuts[i] > 1e-6 && (area.Contains(middle) || area.EdgeDistance(middle) <= Border))
                {
                    taken.Add((cuts[i], cuts[i + 1]));
                }
            }
        }

        return Rest(edge, taken);
    }

    /// <summary>What of an edge lies within the areas, their borders counted as inside.</summary>
    public static IEnumerable<Edge> Inside(Edge edge, IReadOnlyList<Area> areas)
    {
        var along = Planes.Unit(edge.B - edge.A);
        return Rest(edge, [.. Outside(edge, areas).Select(piece => (Planes.Dot(piece.A - edge.A, along), Planes.Dot(piece.B - edge.A, along)))]);
    }

    /// <summary>Joins edges of one row into polylines, closed where they come back.</summary>
    public static IEnumerable<Stroke> Chain(IReadOnlyList<Edge> edges)
    {
        foreach (var row in edges.GroupBy(edge => edge.Row, StringComparer.Ordinal).OrderBy(group => group.Min(edge => edge.Width)).ThenBy(group => group.Key, StringComparer.Ordinal))
        {
            foreach (var stroke in ChainRow([.. row], row.Key))
            {
                yield return stroke;
            }
        }
    }

    private static IEnumerable<Stroke> ChainRow(Edge[] edges, string row)
    {
        // Ends 2i and 2i+1 are those of edge i; partner[e] is the end that e is joined to.
        var partner = new int[edges.Length * 2];
        Array.Fill(partner, -1);
        PaperPoint End(int e) => e % 2 == 0 ? edges[e / 2].A : edges[e / 2].B;
        PaperPoint Away(int e) => Planes.Unit(e % 2 == 0 ? edges[e / 2].B - edges[e / 2].A : edges[e / 2].A - edges[e / 2].B);
        var pairs = new List<(double Rank, int E, int F)>();
        var byX = Enumerable.Range(0, partner.Length).OrderBy(e => End(e).X).ThenBy(e => e).ToArray();
        for (var i = 0; i < byX.Length; i++)
        {
            for (var j = i + 1; j < byX.Length && End(byX[j]).X - End(byX[i]).X <= Coincident; j++)
            {
                var (e, f) = (Math.Min(byX[i], byX[j]), Math.Max(byX[i], byX[j]));
                if (e / 2 != f / 2 && (End(e) - End(f)).Length <= Coincident && Planes.Dot(Away(e), Away(f)) < 0.95)
                {
                    pairs.Add(((edges[e / 2].PartId == edges[f / 2].PartId ? 0 : 2) + 1 + Planes.Dot(Away(e), Away(f)), e, f));
                }
            }
        }

        foreach (var (_, e, f) in pairs.OrderBy(pair => pair.Rank).ThenBy(pair => pair.E).ThenBy(pair => pair.F))
        {
            if (partner[e] < 0 && partner[f] < 0)
            {
                (partner[e], partner[f]) = (f, e);
            }
        }

        var used = new bool[edges.Length];
        // Open chains first, from their free ends; what is left then is closed.
        foreach (var start in Enumerable.Range(0, partner.Length).Where(e => partner[e] < 0).Concat(Enumerable.Range(0, partner.Length)))
        {
            if (used[start / 2])
            {
                continue;
            }

            var points = new List<PaperPoint> { End(start) };
            var at = start;
            var closed = false;
            while (true)
            {
                used[at / 2] = true;
                var far = at ^ 1;
                points.Add(End(far));
                var next = partner[far];
                if (next < 0)
                {
                    break;
                }

                if (next == start)
                {
                    closed = true;
                    points.RemoveAt(points.Count - 1);
                    break;
                }

                at = next;
            }

            yield return new Stroke(row, Straightened(points, closed), closed) { PartId = edges[start / 2].PartId };
        }
    }

    private static PaperPoint[] Straightened(List<PaperPoint> points, bool closed)
    {
        for (var i = points.Count - (closed ? 1 : 2); i >= (closed ? 0 : 1) && points.Count > 2; i--)
        {
            var (before, at, after) = (points[(i + points.Count - 1) % points.Count], points[i], points[(i + 1) % points.Count]);
            if (Planes.Distance(at, before, after) < 0.002)
            {
                points.RemoveAt(i);
            }
        }

        return [.. points];
    }

    private static bool Heavier(Edge a, Edge b) =>
        Math.Abs(a.Width - b.Width) > 1e-9 ? a.Width > b.Width : a.Order != b.Order ? a.Order < b.Order : string.CompareOrdinal(a.PartId, b.PartId) < 0;

    private static PaperBox Box(Edge edge) =>
        new(Math.Min(edge.A.X, edge.B.X), Math.Min(edge.A.Y, edge.B.Y), Math.Max(edge.A.X, edge.B.X), Math.Max(edge.A.Y, edge.B.Y));

    private static (double From, double To)? Overlap(Edge edge, Edge other)
    {
        if (!Box(edge).Meets(Box(other), Near))
        {
            return null;
        }

        var d = edge.B - edge.A;
        var length = d.Length;
        d = 1 / length * d;
        var (a, b) = (other.A - edge.A, other.B - edge.A);
        var (offA, offB) = (Planes.Cross(d, a), Planes.Cross(d, b));
        if (Math.Abs(offA - offB) > 0.03 * other.Length + 0.002)
        {
            return null;
        }

        var (from, to) = (Planes.Dot(a, d), Planes.Dot(b, d));
        var (offFrom, offTo) = (offA, offB);
        if (from > to)
        {
            (from, to, offFrom, offTo) = (to, from, offTo, offFrom);
        }

        var (low, high) = (Math.Max(0, from), Math.Min(length, to));
        if (high - low < 0.01)
        {
            return null;
        }

        double Off(double s) => Math.Abs(offFrom + (offTo - offFrom) * (s - from) / (to - from));
        var off = Math.Max(Off(low), Off(high));
        return off <= Coincident || off <= Near && high - low > 1 ? (low, high) : null;
    }

    private static IEnumerable<Edge> Rest(Edge edge, List<(double From, double To)> taken)
    {
        taken.Sort();
        var d = Planes.Unit(edge.B - edge.A);
        double at = 0;
        foreach (var (from, to) in taken.Append((edge.Length, edge.Length)))
        {
            if (from - at > 0.02)
            {
                yield return edge with { A = edge.A + at * d, B = edge.A + from * d };
            }

            at = Math.Max(at, to);
        }
    }
}
