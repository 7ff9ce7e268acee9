namespace DetailGen.Physics.Fields;

/// <summary>A triangulation of points on a whole-number grid that holds given segments as edges. Orientation is exact (128 bits),
/// so no rounding can turn a triangle over; only which diagonal is chosen depends on floating point.</summary>
/// <remarks>Incremental insertion with edge flips: C. L. Lawson 1977; forcing segments by flips: S. W. Sloan 1993 (both from memory).</remarks>
internal sealed class Triangulation
{
    private readonly List<(long X, long Y)> _points = [];
    private readonly Dictionary<(int, int), int> _apex = []; // directed edge, anticlockwise → the third corner
    private readonly HashSet<(int, int)> _held = [];
    private readonly int[] _from; // of each point, the end of some edge that leaves it: whatever takes a triangle away puts others round its corners
    private (int A, int B) _near;

    /// <param name="corners">Distinct points.</param>
    internal Triangulation(IReadOnlyList<(long X, long Y)> corners)
    {
        _points.AddRange(corners);
        long minX = corners.Min(p => p.X), maxX = corners.Max(p => p.X), minY = corners.Min(p => p.Y), maxY = corners.Max(p => p.Y);
        var reach = 16 * (Math.Max(maxX - minX, maxY - minY) + 1);
        var n = corners.Count;
        _points.Add((minX - reach, minY - reach));
        _points.Add((maxX + reach, minY - reach));
        _points.Add((minX, maxY + reach));
        _from = new int[_points.Count];
        Add(n, n + 1, n + 2);
        for (var p = 0; p < n; p++)
        {
            Insert(p);
        }
    }

    /// <summary>Triangles of the given points, anticlockwise, in a fixed order.</summary>
    internal List<(int A, int B, int C)> Triangles()
    {
        var given = _points.Count - 3;
        return [.. _apex.Where(e => e.Key.Item1 < e.Key.Item2 && e.Key.Item1 < e.Value && e.Key.Item2 < given && e.Value < given
                || e.Key.Item1 < e.Value && e.Value < e.Key.Item2 && e.Key.Item2 < given)
            .Select(e => (e.Key.Item1, e.Key.Item2, e.Value)).Order()];
    }

    /// <summary>Makes the segment an edge; false when another held segment or a point lies in its way.</summary>
    internal bool Hold(int a, int b)
    {
        var queue = new Queue<(int, int)>(Crossing(a, b));
        var left = 100 + (queue.Count * queue.Count * 4);
        while (queue.TryDequeue(out var e))
        {
            if (_held.Contains(Key(e.Item1, e.Item2)) || left-- < 0)
            {
                return false;
            }

            var (u, v) = e;
            int c = _apex[(u, v)], d = _apex[(v, u)];
            if (Turn(c, d, u) * Turn(c, d, v) >= 0)
            {
                queue.Enqueue(e); // not convex yet
                continue;
            }

            Flip(u, v);
            if (c != a && c != b && d != a && d != b && Cross(a, b, c, d))
            {
                queue.Enqueue((c, d));
            }
        }

        _held.Add(Key(a, b));
        return _apex.ContainsKey((a, b)) || _apex.ContainsKey((b, a));
    }

    /// <summary>Flips away slivers, triangles as flat as the rounding of their corners, as far as held segments let it: beside one, the coefficients of all others would drown.
    /// Each flip makes the flatter of two triangles less flat, so that flips come to an end.</summary>
    /// <param name="reach">Height that a sliver stays below.</param>
    internal void Blunt(double reach)
    {
        var given = _points.Count - 3;
        bool IsSliver(int a, int b, int c) => Height(a, b, c) < reach;
        var open = new Queue<(int, int)>(_apex.Where(e => IsSliver(e.Key.Item1, e.Key.Item2, e.Value)).Select(e => Key(e.Key.Item1, e.Key.Item2)).Distinct().Order());
        while (open.TryDequeue(out var side))
        {
            var (u, v) = side;
            if (_held.Contains(side) || !_apex.TryGetValue((u, v), out var c) || !_apex.TryGetValue((v, u), out var d) || Math.Max(Math.Max(u, v), Math.Max(c, d)) >= given
                || (!IsSliver(u, v, c) && !IsSliver(v, u, d)))
            {
                continue;
            }

            if (Turn(c, d, u) * Turn(c, d, v) < 0 && Math.Min(Height(c, d, v), Height(d, c, u)) > Math.Min(Height(u, v, c), Height(v, u, d)))
            {
                Flip(u, v);
                foreach (var (a, b) in new[] { (u, c), (c, v), (v, d), (d, u) })
                {
                    open.Enqueue(Key(a, b));
                }
            }
        }
    }

    private List<(int, int)> Crossing(int a, int b)
    {
        List<(int, int)> crossing = [];
        if (_apex.ContainsKey((a, b)) || _apex.ContainsKey((b, a)))
        {
            return crossing;
        }

        // the triangle round a that the segment leaves through its far side
        var u = _from[a];
        do
        {
            var v = _apex[(a, u)];
            if (Turn(a, b, u) < 0 && Turn(a, b, v) > 0)
            {
                var (p, q) = (u, v);
                while (true)
                {
                    crossing.Add((p, q));
                    if (!_apex.TryGetValue((q, p), out var next) || next == b)
                    {
                        break;
                    }

                    (p, q) = Turn(a, b, next) < 0 ? (next, q) : (p, next);
                }

                break;
            }

            u = v;
        }
        while (u != _from[a]);

        return crossing;
    }

    private void Insert(int p)
    {
        var (a, b) = _near == default ? _apex.Keys.First() : _near;
        if (!_apex.ContainsKey((a, b)))
        {
            (a, b) = _apex.Keys.First();
        }

        if (Turn(a, b, p) < 0)
        {
            (a, b) = (b, a);
        }

        var c = _apex[(a, b)];
        while (true)
        {
            if (Turn(b, c, p) < 0)
            {
                a = c;
            }
            else if (Turn(c, a, p) < 0)
            {
                b = c;
            }
            else
            {
                break;
            }

            c = _apex[(a, b)];
        }

        Remove(a, b, c);
        if (Turn(a, b, p) == 0)
        {
            SplitSide(a, b, c, p);
        }
        else if (Turn(b, c, p) == 0)
        {
            SplitSide(b, c, a, p);
        }
        else if (Turn(c, a, p) == 0)
        {
            SplitSide(c, a, b, p);
        }
        else
        {
            Add(a, b, p);
            Add(b, c, p);
            Add(c, a, p);
            Legalise(a, b, p);
            Legalise(b, c, p);
            Legalise(c, a, p);
        }

        _near = _apex.ContainsKey((a, p)) ? (a, p) : default;
    }

    private void SplitSide(int a, int b, int c, int p)
    {
        var d = _apex[(b, a)];
        Remove(b, a, d);
        Add(a, p, c);
        Add(p, b, c);
        Add(b, p, d);
        Add(p, a, d);
        Legalise(b, c, p);
        Legalise(c, a, p);
        Legalise(a, d, p);
        Legalise(d, b, p);
    }

    private void Legalise(int a, int b, int p)
    {
        if (_apex.TryGetValue((b, a), out var d) && Inside(a, b, p, d) && Turn(p, d, a) > 0 != Turn(p, d, b) > 0 && Turn(p, d, a) != 0 && Turn(p, d, b) != 0)
        {
            Flip(a, b);
            Legalise(a, d, p);
            Legalise(d, b, p);
        }
    }

    private void Flip(int u, int v)
    {
        int c = _apex[(u, v)], d = _apex[(v, u)];
        Remove(u, v, c);
        Remove(v, u, d);
        Add(c, d, v);
        Add(d, c, u);
    }

    private void Add(int a, int b, int c)
    {
        (_apex[(a, b)], _apex[(b, c)], _apex[(c, a)]) = (c, a, b);
        (_from[a], _from[b], _from[c]) = (b, c, a);
    }

    private void Remove(int a, int b, int c)
    {
        _apex.Remove((a, b));
        _apex.Remove((b, c));
        _apex.Remove((c, a));
    }

    private bool Cross(int a, int b, int c, int d) =>
        Math.Sign(Turn(a, b, c)) * Math.Sign(Turn(a, b, d)) < 0 && Math.Sign(Turn(c, d, a)) * Math.Sign(Turn(c, d, b)) < 0;

    private static (int, int) Key(int a, int b) => a < b ? (a, b) : (b, a);

    private int Turn(int a, int b, int c)
    {
        var ((ax, ay), (bx, by), (cx, cy)) = (_points[a], _points[b], _points[c]);
        return Int128.Sign(((Int128)(bx - ax) * (cy - ay)) - ((Int128)(by - ay) * (cx - ax)));
    }

    /// <summary>Of a triangle over its longest side.</summary>
    private double Height(int a, int b, int c)
    {
        var ((ax, ay), (bx, by), (cx, cy)) = (_points[a], _points[b], _points[c]);
        var twice = (double)Int128.Abs(((Int128)(bx - ax) * (cy - ay)) - ((Int128)(by - ay) * (cx - ax)));
        return twice / Math.Max(double.Hypot(bx - ax, by - ay), Math.Max(double.Hypot(cx - bx, cy - by), double.Hypot(ax - cx, ay - cy)));
    }

    private bool Inside(int a, int b, int c, int d)
    {
        var (dx, dy) = _points[d];
        (double X, double Y, double S) At(int i)
        {
            double x = _points[i].X - dx, y = _points[i].Y - dy;
            return (x, y, (x * x) + (y * y));
        }

        var (p, q, r) = (At(a), At(b), At(c));
        var det = (p.S * ((q.X * r.Y) - (q.Y * r.X))) + (q.S * ((r.X * p.Y) - (r.Y * p.X))) + (r.S * ((p.X * q.Y) - (p.Y * q.X)));
        return det > 1e-9 * ((p.S * q.S) + (q.S * r.S) + (r.S * p.S)); // a clear gain only, so that flips come to an end
    }
}
