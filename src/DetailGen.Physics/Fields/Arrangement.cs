using System.Collections.Immutable;

namespace DetailGen.Physics.Fields;

/// <summary>From regions and boundary lines to the coarsest conforming triangles, every triangle with its region and every exposed edge with its line;
/// or the faults of the geometry.</summary>
internal sealed class Arrangement
{
    private const double Grid = 1e8; // steps per mm
    private const double Reach = 0.001; // mm; what is closer counts as touching
    private const long Cell = (long)(Reach * Grid); // corners that meet lie in one or in neighbours
    private const double Sliver = 1e-5; // mm; corners that lie on a side but for rounding are nearer, and a triangle of this height does no harm
    private const double CommonArea = 0.01; // mm²
    private const int MostCrossings = 1000; // of edges of unlike regions
    private readonly FieldCase _asked;
    private readonly List<(long X, long Y)> _corners = [];
    private readonly List<(double X, double Y)> _written = []; // the corners as they were first met
    private readonly Dictionary<(long, long), List<int>> _cells = [];
    private readonly List<FieldFault> _faults = [];

    private Arrangement(FieldCase asked) => _asked = asked;

    internal static (Mesh? Mesh, ImmutableArray<FieldFault> Faults) Build(FieldCase asked)
    {
        var work = new Arrangement(asked);
        var mesh = work.Run();
        return work._faults.Count > 0 ? (null, [.. work._faults]) : (mesh, []);
    }

    private Mesh? Run()
    {
        var edges = new List<(int A, int B, int Region)>();
        for (var r = 0; r < _asked.Regions.Length; r++)
        {
            Sides(r, edges);
        }

        if (_faults.Count > 0)
        {
            return null;
        }

        var lines = _asked.Boundary.Select(b => b.Line.Select(Corner).ToArray()).ToArray();
        if (!Cross(edges))
        {
            return null;
        }

        var along = new Along(_corners, Reach * Grid);
        var net = new Triangulation(_corners);
        var pieces = new Dictionary<(int A, int B), List<int>>();
        foreach (var edge in edges)
        {
            foreach (var piece in along.Pieces((edge.A, edge.B)))
            {
                (pieces.TryGetValue(piece, out var regions) ? regions : pieces[piece] = []).Add(edge.Region);
            }
        }

        foreach (var (a, b) in pieces.Keys.Order())
        {
            if (!net.Hold(a, b))
            {
                _faults.Add(Messages.CannotMesh(Place(a), Place(b)));
                return null;
            }
        }

        net.Blunt(Sliver * Grid);
        var triangles = Owned(net.Triangles(), pieces);
        var exposed = _faults.Count == 0 ? Exposed(triangles, lines, along) : [];
        var mesh = Mesh.Of(Upright(triangles) ? [.. _written] : [.. _corners.Select(c => (c.X / Grid, c.Y / Grid))], [.. triangles], exposed);
        foreach (var place in _faults.Count == 0 ? mesh.PiecesWithout(k => _asked.Boundary[k].Environment is not null) : [])
        {
            _faults.Add(Messages.NotConnected(new(place.X, place.Y)));
        }

        return mesh;
    }

    // The grid decides what lies beside what. The field is that of the corners as written, unless a triangle is so thin that it would be turned over by these.
    private bool Upright(List<Triangle> triangles) => triangles.All(t =>
    {
        var (a, b, c) = (_written[t.A], _written[t.B], _written[t.C]);
        return ((b.X - a.X) * (c.Y - a.Y)) - ((b.Y - a.Y) * (c.X - a.X)) > 0;
    });

    private void Sides(int region, List<(int A, int B, int Region)> edges)
    {
        var (path, first, before) = ($"regions.{region}", edges.Count, _faults.Count);
        foreach (var ring in _asked.Regions[region].Holes.Prepend(_asked.Regions[region].Outline))
        {
            var ids = ring.Select(Corner).ToArray();
            for (var i = 0; i < ids.Length; i++)
            {
                var (a, b) = (ids[i], ids[(i + 1) % ids.Length]);
                edges.Add((a, b, region));
                if (a == b || Distance(a, b) < 0.01)
                {
                    _faults.Add(Messages.ShortEdge(path, Place(a)));
                }
            }
        }

        foreach (var hole in _asked.Regions[region].Holes)
        {
            if (hole.Any(p => !Within(_asked.Regions[region].Outline, p) && !On(_asked.Regions[region].Outline, p)))
            {
                _faults.Add(Messages.HoleOutside(path));
            }
        }

        var own = edges[first..];
        foreach (var (i, j) in Near(own))
        {
            if (Meet(own[i], own[j]) is { } at)
            {
                _faults.Add(Messages.CrossesItself(path, at));
                return;
            }
        }

        if (_faults.Count == before)
        {
            NoArea(region);
        }
    }

    // What is nowhere thicker than the reach falls together to a line, of which nothing else could be said but that no boundary lies on it.
    private void NoArea(int region)
    {
        var (path, outline, holes) = ($"regions.{region}", _asked.Regions[region].Outline, _asked.Regions[region].Holes);
        if (IsFlat(outline))
        {
            _faults.Add(Messages.NoArea(path, hole: false, outline[0]));
        }

        _faults.AddRange(holes.Where(hole => IsFlat(hole)).Select(hole => Messages.NoArea(path, hole: true, hole[0])));

        static bool IsFlat(ImmutableArray<FieldPlace> ring)
        {
            var (area, longest) = (0.0, 0.0);
            for (var i = 0; i < ring.Length; i++)
            {
                var (p, q) = (ring[i], ring[(i + 1) % ring.Length]);
                area += ((p.X - ring[0].X) * (q.Y - ring[0].Y)) - ((p.Y - ring[0].Y) * (q.X - ring[0].X));
                longest = Math.Max(longest, double.Hypot(q.X - p.X, q.Y - p.Y));
            }

            return Math.Abs(area) <= Reach * longest; // twice the area: a triangle as high as the reach
        }
    }

    // Where edges of two regions cross, the regions share an area. It may be small enough to be let pass; many crossings are not, and would only cost time.
    private bool Cross(List<(int A, int B, int Region)> edges)
    {
        var crossings = 0;
        foreach (var (i, j) in Near(edges))
        {
            if (Meet(edges[i], edges[j]) is not { } at)
            {
                continue;
            }

            Corner(at);
            if (++crossings > MostCrossings)
            {
                _faults.Add(Messages.ManyCrossings(Math.Min(edges[i].Region, edges[j].Region), Math.Max(edges[i].Region, edges[j].Region), at, MostCrossings));
                return false;
            }
        }

        return true;
    }

    // Which regions a triangle lies in changes across their edges only, so it is found from neighbour to neighbour: corners that were moved onto an edge leave no sliver in doubt.
    private List<Triangle> Owned(List<(int A, int B, int C)> net, Dictionary<(int A, int B), List<int>> pieces)
    {
        var beside = new Dictionary<(int, int), int>(); // directed side → its triangle
        for (var t = 0; t < net.Count; t++)
        {
            var (a, b, c) = net[t];
            (beside[(a, b)], beside[(b, c)], beside[(c, a)]) = (t, t, t);
        }

        var regions = new int[]?[net.Count];
        var open = new Stack<int>();
        void Enter(int t, int[] from, (int, int) side)
        {
            if (regions[t] is null)
            {
                regions[t] = pieces.TryGetValue(side, out var owners) ? Beyond(from, owners) : from;
                open.Push(t);
            }
        }

        foreach (var ((a, b), t) in beside)
        {
            if (!beside.ContainsKey((b, a)))
            {
                Enter(t, [], Key(a, b));
            }
        }

        while (open.TryPop(out var t))
        {
            var (a, b, c) = net[t];
            foreach (var (p, q) in new[] { (a, b), (b, c), (c, a) })
            {
                if (beside.TryGetValue((q, p), out var other))
                {
                    Enter(other, regions[t]!, Key(p, q));
                }
            }
        }

        var triangles = new List<Triangle>();
        var common = new SortedDictionary<(int, int), (double Area, FieldPlace At)>();
        for (var t = 0; t < net.Count; t++)
        {
            var (a, b, c) = net[t];
            var own = regions[t]!;
            if (own.Length > 0)
            {
                triangles.Add(new(a, b, c, own[0]));
            }

            foreach (var further in own.Skip(1))
            {
                var (p, q, s) = (Place(a), Place(b), Place(c));
                var area = (((q.X - p.X) * (s.Y - p.Y)) - ((q.Y - p.Y) * (s.X - p.X))) / 2;
                common[(own[0], further)] = (area + common.GetValueOrDefault((own[0], further)).Area, new((p.X + q.X + s.X) / 3, (p.Y + q.Y + s.Y) / 3));
            }
        }

        foreach (var ((one, other), (area, at)) in common.Where(e => e.Value.Area > CommonArea))
        {
            _faults.Add(Messages.Overlap(one, other, area, at));
        }

        return triangles;
    }

    /// <summary>The regions on the far side of an edge: those that own it are left where they were entered, and entered where they were not.</summary>
    private static int[] Beyond(int[] from, List<int> owners)
    {
        var there = new SortedSet<int>(from);
        foreach (var owner in owners)
        {
            if (!there.Remove(owner))
            {
                there.Add(owner);
            }
        }

        return [.. there];
    }

    private Dictionary<(int, int), int> Exposed(List<Triangle> triangles, int[][] lines, Along along)
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
                foreach (var (a, b) in along.Pieces((lines[k][i - 1], lines[k][i])))
                {
                    if (!covered.TryGetValue((a, b), out var other))
                    {
                        _faults.Add(Messages.LineOffEdge($"boundary.{k}.line", Place(a), Place(b)));
                    }
                    else if (other >= 0)
                    {
                        _faults.Add(Messages.CoveredTwice($"boundary.{k}.line", Place(a), Place(b)));
                    }
                    else
                    {
                        covered[(a, b)] = k;
                    }
                }
            }
        }

        _faults.AddRange(covered.Where(c => c.Value < 0).Select(c => c.Key).Order().Take(5).Select(c => Messages.Uncovered(Place(c.Item1), Place(c.Item2))));
        return covered;
    }

    /// <summary>Pairs of edges whose boxes meet, each once, going from left to right.</summary>
    private IEnumerable<(int Later, int Earlier)> Near(List<(int A, int B, int Region)> edges)
    {
        var boxes = edges.Select(e => (
            Left: Math.Min(_corners[e.A].X, _corners[e.B].X), Right: Math.Max(_corners[e.A].X, _corners[e.B].X),
            Low: Math.Min(_corners[e.A].Y, _corners[e.B].Y), High: Math.Max(_corners[e.A].Y, _corners[e.B].Y))).ToArray();
        var standing = new List<int>();
        foreach (var i in Enumerable.Range(0, boxes.Length).OrderBy(i => boxes[i].Left))
        {
            standing.RemoveAll(j => boxes[j].Right < boxes[i].Left);
            foreach (var j in standing)
            {
                if (boxes[j].Low <= boxes[i].High && boxes[i].Low <= boxes[j].High)
                {
                    yield return (i, j);
                }
            }

            standing.Add(i);
        }
    }

    private FieldPlace? Meet((int A, int B, int Region) e, (int A, int B, int Region) f)
    {
        if (e.A == f.A || e.A == f.B || e.B == f.A || e.B == f.B)
        {
            return null;
        }

        var (p, q, r, s) = (Place(e.A), Place(e.B), Place(f.A), Place(f.B));
        double dx = q.X - p.X, dy = q.Y - p.Y, ex = s.X - r.X, ey = s.Y - r.Y, cross = (dx * ey) - (dy * ex);
        if (cross == 0 || Away(p, r, s) <= Reach || Away(q, r, s) <= Reach || Away(r, p, q) <= Reach || Away(s, p, q) <= Reach)
        {
            return null;
        }

        double t = (((r.X - p.X) * ey) - ((r.Y - p.Y) * ex)) / cross, u = (((r.X - p.X) * dy) - ((r.Y - p.Y) * dx)) / cross;
        return t is > 0 and < 1 && u is > 0 and < 1 ? new(p.X + (t * dx), p.Y + (t * dy)) : null;
    }

    private int Corner(FieldPlace at)
    {
        long x = (long)Math.Round(at.X * Grid), y = (long)Math.Round(at.Y * Grid), cx = x / Cell, cy = y / Cell;
        for (var i = cx - 1; i <= cx + 1; i++)
        {
            for (var j = cy - 1; j <= cy + 1; j++)
            {
                foreach (var known in _cells.GetValueOrDefault((i, j)) ?? [])
                {
                    if (Math.Max(Math.Abs(_corners[known].X - x), Math.Abs(_corners[known].Y - y)) <= Cell)
                    {
                        return known;
                    }
                }
            }
        }

        _corners.Add((x, y));
        _written.Add((at.X, at.Y));
        (_cells.TryGetValue((cx, cy), out var cell) ? cell : _cells[(cx, cy)] = []).Add(_corners.Count - 1);
        return _corners.Count - 1;
    }

    private static (int, int) Key(int a, int b) => a < b ? (a, b) : (b, a);

    private FieldPlace Place(int corner) => new(_corners[corner].X / Grid, _corners[corner].Y / Grid);

    private double Distance(int a, int b) => double.Hypot(Place(a).X - Place(b).X, Place(a).Y - Place(b).Y);

    private static double Away(FieldPlace at, FieldPlace p, FieldPlace q)
    {
        double dx = q.X - p.X, dy = q.Y - p.Y;
        var t = Math.Clamp((((at.X - p.X) * dx) + ((at.Y - p.Y) * dy)) / Math.Max((dx * dx) + (dy * dy), 1e-300), 0, 1);
        return double.Hypot(at.X - p.X - (t * dx), at.Y - p.Y - (t * dy));
    }

    private static bool On(ImmutableArray<FieldPlace> ring, FieldPlace at) =>
        Enumerable.Range(0, ring.Length).Any(i => Away(at, ring[i], ring[(i + 1) % ring.Length]) <= Reach);

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
