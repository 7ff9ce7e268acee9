using System.Collections.Immutable;

namespace DetailGen.Physics.Fields;

/// <summary>From regions and boundary lines to the coarsest conforming triangles, every triangle with its region and every exposed edge with its line;
/// or the faults of the geometry.</summary>
internal sealed class Arrangement
{
    private const double Grid = 1e5; // steps per mm: a hundredth of the reach
    private const double Reach = 0.001; // mm; what is closer counts as touching
    private const double CommonArea = 0.01; // mm²
    private readonly FieldCase asked;
    private readonly List<(long X, long Y)> corners = [];
    private readonly Dictionary<(long, long), List<int>> cells = [];
    private readonly List<FieldFault> faults = [];

    private Arrangement(FieldCase asked) => this.asked = asked;

    internal static (Mesh? Mesh, ImmutableArray<FieldFault> Faults) Build(FieldCase asked)
    {
        var work = new Arrangement(asked);
        var mesh = work.Run();
        return work.faults.Count > 0 ? (null, [.. work.faults]) : (mesh, []);
    }

    private Mesh? Run()
    {
        var edges = new List<(int A, int B)>();
        for (var r = 0; r < asked.Regions.Length; r++)
        {
            foreach (var ring in asked.Regions[r].Holes.Prepend(asked.Regions[r].Outline))
            {
                var ids = ring.Select(Corner).ToArray();
                var sides = ids.Select((a, i) => (a, b: ids[(i + 1) % ids.Length])).ToArray();
                for (var i = 0; i < sides.Length; i++)
                {
                    if (sides[i].a == sides[i].b || Distance(sides[i].a, sides[i].b) < 0.01)
                    {
                        faults.Add(Messages.ShortEdge($"regions.{r}", Place(sides[i].a)));
                    }

                    for (var j = 0; j < i; j++)
                    {
                        if (Meet(sides[i], sides[j]) is { } at)
                        {
                            faults.Add(Messages.CrossesItself($"regions.{r}", at));
                        }
                    }
                }

                edges.AddRange(sides);
            }

            foreach (var hole in asked.Regions[r].Holes)
            {
                if (hole.Any(p => !Within(asked.Regions[r].Outline, p) && !On(asked.Regions[r].Outline, p)))
                {
                    faults.Add(Messages.HoleOutside($"regions.{r}"));
                }
            }
        }

        if (faults.Count > 0)
        {
            return null;
        }

        var lines = asked.Boundary.Select(b => b.Line.Select(Corner).ToArray()).ToArray();
        for (var i = 0; i < edges.Count; i++)
        {
            for (var j = 0; j < i; j++)
            {
                if (Meet(edges[i], edges[j]) is { } at)
                {
                    Corner(at);
                }
            }
        }

        var pieces = edges.SelectMany(Pieces).Distinct().Order().ToArray();
        var net = new Triangulation(corners);
        foreach (var (a, b) in pieces)
        {
            if (!net.Hold(a, b))
            {
                faults.Add(Messages.CannotMesh(Place(a), Place(b)));
                return null;
            }
        }

        var triangles = new List<Triangle>();
        var common = new SortedDictionary<(int, int), (double Area, FieldPlace At)>();
        var boxes = asked.Regions.Select(r => (r.Outline.Min(p => p.X), r.Outline.Min(p => p.Y), r.Outline.Max(p => p.X), r.Outline.Max(p => p.Y))).ToArray();
        foreach (var (a, b, c) in net.Triangles())
        {
            var (p, q, s) = (Place(a), Place(b), Place(c));
            var middle = new FieldPlace((p.X + q.X + s.X) / 3, (p.Y + q.Y + s.Y) / 3);
            var first = -1;
            for (var r = 0; r < boxes.Length; r++)
            {
                var (x0, y0, x1, y1) = boxes[r];
                if (middle.X < x0 || middle.X > x1 || middle.Y < y0 || middle.Y > y1 || !Within(asked.Regions[r], middle))
                {
                    continue;
                }

                if (first < 0)
                {
                    first = r;
                    continue;
                }

                var area = (((q.X - p.X) * (s.Y - p.Y)) - ((q.Y - p.Y) * (s.X - p.X))) / 2;
                common[(first, r)] = (area + common.GetValueOrDefault((first, r)).Area, middle);
            }

            if (first >= 0)
            {
                triangles.Add(new(a, b, c, first));
            }
        }

        foreach (var ((first, second), (area, at)) in common.Where(e => e.Value.Area > CommonArea))
        {
            faults.Add(Messages.Overlap(first, second, area, at));
        }

        var exposed = faults.Count == 0 ? Exposed(triangles, lines) : [];
        var mesh = Mesh.Of([.. corners.Select(c => (c.X / Grid, c.Y / Grid))], [.. triangles], exposed);
        foreach (var place in faults.Count == 0 ? mesh.PiecesWithout(k => asked.Boundary[k].Environment is not null) : [])
        {
            faults.Add(Messages.NotConnected(new(place.X, place.Y)));
        }

        return mesh;
    }

    private Dictionary<(int, int), int> Exposed(List<Triangle> triangles, int[][] lines)
    {
        var sides = new Dictionary<(int, int), int>();
        foreach (var side in triangles.SelectMany(t => new[] { Key(t.B, t.C), Key(t.C, t.A), Key(t.A, t.B) }))
        {
            sides[side] = sides.GetValueOrDefault(side) + 1;
        }

        var covered = sides.Where(s => s.Value == 1).ToDictionary(s => s.Key, _ => -1);
        for (var k = 0; k < lines.Length; k++)
        {
            for (var i = 1; i < lines[k].Length; i++)
            {
                foreach (var (a, b) in Pieces((lines[k][i - 1], lines[k][i])))
                {
                    if (!covered.TryGetValue((a, b), out var other))
                    {
                        faults.Add(Messages.LineOffEdge($"boundary.{k}.line", Place(a), Place(b)));
                    }
                    else if (other >= 0)
                    {
                        faults.Add(Messages.CoveredTwice($"boundary.{k}.line", Place(a), Place(b)));
                    }
                    else
                    {
                        covered[(a, b)] = k;
                    }
                }
            }
        }

        faults.AddRange(covered.Where(c => c.Value < 0).Select(c => c.Key).Order().Take(5).Select(c => Messages.Uncovered(Place(c.Item1), Place(c.Item2))));
        return covered;
    }

    /// <summary>The edge cut at every corner that lies on it, each piece with its smaller corner first.</summary>
    private IEnumerable<(int A, int B)> Pieces((int A, int B) edge)
    {
        var (p, q) = (Place(edge.A), Place(edge.B));
        var on = Enumerable.Range(0, corners.Count).Where(i => i != edge.A && i != edge.B && Away(Place(i), p, q) <= Reach)
            .OrderBy(i => Distance(i, edge.A)).Append(edge.B);
        var from = edge.A;
        foreach (var to in on)
        {
            yield return (Math.Min(from, to), Math.Max(from, to));
            from = to;
        }
    }

    private FieldPlace? Meet((int A, int B) e, (int A, int B) f)
    {
        if (e.A == f.A || e.A == f.B || e.B == f.A || e.B == f.B)
        {
            return null;
        }

        var (p, q, r, s) = (Place(e.A), Place(e.B), Place(f.A), Place(f.B));
        double dx = q.X - p.X, dy = q.Y - p.Y, ex = s.X - r.X, ey = s.Y - r.Y, cross = (dx * ey) - (dy * ex);
        if (cross == 0 || new[] { Away(p, r, s), Away(q, r, s), Away(r, p, q), Away(s, p, q) }.Min() <= Reach)
        {
            return null;
        }

        double t = (((r.X - p.X) * ey) - ((r.Y - p.Y) * ex)) / cross, u = (((r.X - p.X) * dy) - ((r.Y - p.Y) * dx)) / cross;
        return t is > 0 and < 1 && u is > 0 and < 1 ? new(p.X + (t * dx), p.Y + (t * dy)) : null;
    }

    private int Corner(FieldPlace at)
    {
        long x = (long)Math.Round(at.X * Grid), y = (long)Math.Round(at.Y * Grid), cx = x / 100, cy = y / 100;
        for (var i = cx - 1; i <= cx + 1; i++)
        {
            for (var j = cy - 1; j <= cy + 1; j++)
            {
                foreach (var known in cells.GetValueOrDefault((i, j)) ?? [])
                {
                    if (Math.Max(Math.Abs(corners[known].X - x), Math.Abs(corners[known].Y - y)) <= 100)
                    {
                        return known;
                    }
                }
            }
        }

        corners.Add((x, y));
        (cells.TryGetValue((cx, cy), out var cell) ? cell : cells[(cx, cy)] = []).Add(corners.Count - 1);
        return corners.Count - 1;
    }

    private static (int, int) Key(int a, int b) => a < b ? (a, b) : (b, a);

    private FieldPlace Place(int corner) => new(corners[corner].X / Grid, corners[corner].Y / Grid);

    private double Distance(int a, int b) => double.Hypot(Place(a).X - Place(b).X, Place(a).Y - Place(b).Y);

    private static double Away(FieldPlace at, FieldPlace p, FieldPlace q)
    {
        double dx = q.X - p.X, dy = q.Y - p.Y;
        var t = Math.Clamp((((at.X - p.X) * dx) + ((at.Y - p.Y) * dy)) / Math.Max((dx * dx) + (dy * dy), 1e-300), 0, 1);
        return double.Hypot(at.X - p.X - (t * dx), at.Y - p.Y - (t * dy));
    }

    private static bool On(ImmutableArray<FieldPlace> ring, FieldPlace at) =>
        Enumerable.Range(0, ring.Length).Any(i => Away(at, ring[i], ring[(i + 1) % ring.Length]) <= Reach);

    private static bool Within(FieldRegion region, FieldPlace at) => Within(region.Outline, at) && !region.Holes.Any(hole => Within(hole, at));

    private static bool Within(ImmutableArray<FieldPlace> ring, FieldPlace at)
    {
        var inside = false;
        for (int i = 0, j = ring.Length - 1; i < ring.Length; j = i++)
        {
            var (p, q) = (ring[i], ring[j]);
            inside ^= p.Y > at.Y != q.Y > at.Y && at.X < p.X + ((q.X - p.X) * (at.Y - p.Y) / (q.Y - p.Y));
        }

        return inside;
    }
}
