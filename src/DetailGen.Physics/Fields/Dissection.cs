namespace DetailGen.Physics.Fields;

/// <summary>The triangles of a mesh halved again and again across their longer extent: the order in which unknowns are eliminated.</summary>
/// <remarks>A. George, Nested dissection of a regular finite element mesh, SIAM J. Numer. Anal. 10 (1973), from memory. Parting triangles keeps the parting line one
/// unknown wide; parting unknowns by their places takes in every unknown of each triangle on the line. Needles, as those between finely drawn arcs, are crossed in great number by any straight
/// line: where it would be very long, triangles are taken from neighbour to neighbour instead, if that parts fewer sides.</remarks>
internal sealed class Dissection
{
    private const int Few = 20; // triangles that are not parted further
    private const int Many = 200; // triangles of a part of which it pays to look for another parting line
    private const double Long = 4; // times the root of a part's triangles are the sides of a parting line that is very long; in a part of triangles like each other it has about 1.5 times
    private readonly Mesh _mesh;
    private readonly List<Part> _parts = [];
    private readonly int[] _order;
    private readonly double[] _x;
    private readonly double[] _y;
    private readonly int[] _mark; // of each triangle, the number of the set that it was last told to be in
    private int _sets;

    internal Dissection(Mesh mesh)
    {
        _mesh = mesh;
        var count = mesh.Triangles.Length;
        (_x, _y) = (new double[count], new double[count]);
        (_order, _mark) = (new int[count], new int[count]);
        for (var t = 0; t < count; t++)
        {
            var triangle = mesh.Triangles[t];
            var (a, b, c) = (mesh.Places[triangle.A], mesh.Places[triangle.B], mesh.Places[triangle.C]);
            (_x[t], _y[t], _order[t]) = (a.X + b.X + c.X, a.Y + b.Y + c.Y, t);
        }

        Cut(0, count);
    }

    /// <summary>The triangles <paramref name="From"/> to below <paramref name="To"/> of <see cref="Order"/>, either whole or as its two halves.</summary>
    internal readonly record struct Part(int From, int To, bool Whole);

    /// <summary>Every part after its halves.</summary>
    internal IReadOnlyList<Part> Parts => _parts;

    internal int[] Order => _order;

    private void Cut(int from, int to)
    {
        if (to - from <= Few)
        {
            _parts.Add(new(from, to, true));
            return;
        }

        double left = double.MaxValue, right = double.MinValue, bottom = double.MaxValue, top = double.MinValue;
        foreach (var t in _order.AsSpan(from, to - from))
        {
            (left, right, bottom, top) = (Math.Min(left, _x[t]), Math.Max(right, _x[t]), Math.Min(bottom, _y[t]), Math.Max(top, _y[t]));
        }

        var middle = (from + to) / 2;
        Sift(from, to - 1, middle, right - left >= top - bottom ? _x : _y);
        if (to - from > Many && Parted(from, middle, to) is var sides && sides > Long * Math.Sqrt(to - from))
        {
            var straight = _order[from..to];
            Sweep(from, to);
            if (Parted(from, middle, to) * 2 > sides)
            {
                straight.CopyTo(_order, from);
            }
        }

        Cut(from, middle);
        Cut(middle, to);
        _parts.Add(new(from, to, false));
    }

    /// <summary>How many sides have a triangle of either half beside them.</summary>
    private int Parted(int from, int middle, int to)
    {
        var (first, second) = (++_sets, ++_sets);
        for (var i = from; i < to; i++)
        {
            _mark[_order[i]] = i < middle ? first : second;
        }

        var count = 0;
        for (var i = from; i < middle; i++)
        {
            for (var slot = 3 * _order[i]; slot < (3 * _order[i]) + 3; slot++)
            {
                count += Beyond(slot) is var other && other >= 0 && _mark[other] == second ? 1 : 0;
            }
        }

        return count;
    }

    /// <summary>Orders triangles by how many sides lie between each and one at an end.</summary>
    private void Sweep(int from, int to)
    {
        var all = _order[from..to];
        var next = new int[all.Length];
        Walk(all, all[0], next);
        Walk(all, next[^1], next); // what is reached last lies at an end
        next.CopyTo(_order, from);
    }

    private void Walk(int[] all, int start, int[] reached)
    {
        var open = ++_sets;
        foreach (var t in all)
        {
            _mark[t] = open;
        }

        var (count, done) = (0, ++_sets);
        void Reach(int t)
        {
            _mark[t] = done;
            reached[count++] = t;
        }

        Reach(start);
        for (int i = 0, rest = 0; count < all.Length || i < count; i++)
        {
            if (i == count)
            {
                for (; _mark[all[rest]] == done; rest++)
                {
                }

                Reach(all[rest]); // no side joins it to those before
            }

            for (var slot = 3 * reached[i]; slot < (3 * reached[i]) + 3; slot++)
            {
                if (Beyond(slot) is var other && other >= 0 && _mark[other] == open)
                {
                    Reach(other);
                }
            }
        }
    }

    /// <summary>The triangle on the far side of the side opposite a corner; -1 where there is none.</summary>
    private int Beyond(int slot)
    {
        var side = _mesh.Sides[_mesh.SidesOf[slot]];
        var far = side.Slot == slot ? side.Other : side.Slot;
        return far < 0 ? -1 : far / 3;
    }

    /// <summary>Sorts only so far that nothing before the middle is greater than anything after it (C. A. R. Hoare, Comm. ACM 4 (1961), from memory).</summary>
    private void Sift(int low, int high, int middle, double[] keys)
    {
        while (low < high)
        {
            var pivot = keys[_order[(low + high) / 2]];
            int i = low, j = high;
            while (i <= j)
            {
                while (keys[_order[i]] < pivot)
                {
                    i++;
                }

                while (keys[_order[j]] > pivot)
                {
                    j--;
                }

                if (i <= j)
                {
                    (_order[i], _order[j]) = (_order[j], _order[i]);
                    (i, j) = (i + 1, j - 1);
                }
            }

            if (middle <= j)
            {
                high = j;
            }
            else if (middle >= i)
            {
                low = i;
            }
            else
            {
                return;
            }
        }
    }
}
