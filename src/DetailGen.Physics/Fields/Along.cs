namespace DetailGen.Physics.Fields;

/// <summary>Which corners lie on an edge.</summary>
internal sealed class Along
{
    private readonly List<(long X, long Y)> _corners;
    private readonly double _reach;
    private readonly int[] _order; // corners from left to right
    private readonly long[] _lefts;

    /// <param name="reach">In steps of the corners' grid: what is closer lies on the edge.</param>
    internal Along(List<(long X, long Y)> corners, double reach)
    {
        (_corners, _reach) = (corners, reach);
        _order = [.. Enumerable.Range(0, corners.Count).OrderBy(i => corners[i].X)];
        _lefts = [.. _order.Select(i => corners[i].X)];
    }

    /// <summary>The edge cut at every corner that lies on it, each piece with its smaller corner first.</summary>
    internal IEnumerable<(int A, int B)> Pieces((int A, int B) edge)
    {
        var ((px, py), (qx, qy)) = (_corners[edge.A], _corners[edge.B]);
        double dx = qx - px, dy = qy - py, square = (dx * dx) + (dy * dy), slack = _reach * Math.Sqrt(square);
        var on = new List<(double At, int Corner)>();
        var from = Array.BinarySearch(_lefts, (long)(Math.Min(px, qx) - _reach));
        for (var i = First(from); i < _order.Length && _lefts[i] <= Math.Max(px, qx) + _reach; i++)
        {
            var corner = _order[i];
            double x = _corners[corner].X - px, y = _corners[corner].Y - py;
            if (corner != edge.A && corner != edge.B && Math.Abs((dx * y) - (dy * x)) <= slack && (dx * x) + (dy * y) is var at && at > 0 && at < square)
            {
                on.Add((at, corner));
            }
        }

        on.Sort();
        var last = edge.A;
        foreach (var (_, to) in on.Append((square, edge.B)))
        {
            yield return (Math.Min(last, to), Math.Max(last, to));
            last = to;
        }
    }

    /// <summary>The first of equal ones, or the next greater.</summary>
    private int First(int found)
    {
        if (found < 0)
        {
            return ~found;
        }

        while (found > 0 && _lefts[found - 1] == _lefts[found])
        {
            found--;
        }

        return found;
    }
}
