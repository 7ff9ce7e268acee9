namespace DetailGen.Physics.Fields;

/// <summary>Solves A·x = b for a symmetric positive definite sparse A by A = L·D·Lᵀ, unknowns ordered by nested dissection of the elements that they belong to.</summary>
/// <remarks>Ordering: A. George, Nested dissection of a regular finite element mesh, SIAM J. Numer. Anal. 10 (1973). Factor row by row along the
/// elimination tree: T. A. Davis, Direct Methods for Sparse Linear Systems, SIAM (2006). Both from memory.</remarks>
internal static class SparseFactor
{
    private const int Few = 4; // elements that are not parted further

    /// <param name="rows">For each unknown its neighbours and coefficients, the diagonal among them.</param>
    /// <param name="elements">Unknowns that have coefficients with each other, all of them together.</param>
    internal static double[] Solve(Dictionary<int, double>[] rows, double[] right, (double X, double Y)[] places, int[][] elements)
    {
        var n = rows.Length;
        var order = Order(elements, places, n);
        var rank = new int[n];
        for (var k = 0; k < n; k++)
        {
            rank[order[k]] = k;
        }

        int[] parent = new int[n], flag = new int[n], count = new int[n], pattern = new int[n];
        var upper = new (int Row, double Value)[n][];
        for (var k = 0; k < n; k++)
        {
            upper[k] = [.. rows[order[k]].Where(e => rank[e.Key] <= k).Select(e => (rank[e.Key], e.Value))];
            (parent[k], flag[k]) = (-1, k);
            foreach (var (row, _) in upper[k])
            {
                for (var i = row; flag[i] != k; i = parent[i])
                {
                    parent[i] = parent[i] < 0 ? k : parent[i];
                    count[i]++;
                    flag[i] = k;
                }
            }
        }

        var start = new int[n + 1];
        for (var k = 0; k < n; k++)
        {
            start[k + 1] = start[k] + count[k];
            count[k] = 0;
        }

        var index = new int[start[n]];
        var value = new double[start[n]];
        double[] diagonal = new double[n], y = new double[n];
        for (var k = 0; k < n; k++)
        {
            var top = n;
            flag[k] = k;
            foreach (var (row, entry) in upper[k])
            {
                y[row] += entry;
                var length = 0;
                for (var i = row; flag[i] != k; i = parent[i])
                {
                    pattern[length++] = i;
                    flag[i] = k;
                }
                while (length > 0)
                {
                    pattern[--top] = pattern[--length];
                }
            }

            (diagonal[k], y[k]) = (y[k], 0);
            for (; top < n; top++)
            {
                var i = pattern[top];
                var yi = y[i];
                y[i] = 0;
                var end = start[i] + count[i];
                for (var p = start[i]; p < end; p++)
                {
                    y[index[p]] -= value[p] * yi;
                }

                var l = yi / diagonal[i];
                diagonal[k] -= l * yi;
                (index[end], value[end]) = (k, l);
                count[i]++;
            }
        }

        var x = new double[n];
        for (var k = 0; k < n; k++)
        {
            x[k] = right[order[k]];
        }

        for (var k = 0; k < n; k++)
        {
            for (var p = start[k]; p < start[k + 1]; p++)
            {
                x[index[p]] -= value[p] * x[k];
            }
        }

        for (var k = n - 1; k >= 0; k--)
        {
            x[k] /= diagonal[k];
            for (var p = start[k]; p < start[k + 1]; p++)
            {
                x[k] -= value[p] * x[index[p]];
            }
        }

        var answer = new double[n];
        for (var k = 0; k < n; k++)
        {
            answer[order[k]] = x[k];
        }

        return answer;
    }

    // Elements are halved across their longer extent; the unknowns that both halves share part the rest, and come after both. Parting elements keeps the parting line
    // one unknown wide; parting unknowns by their places takes in every unknown of each element on the line.
    private static int[] Order(int[][] elements, (double X, double Y)[] places, int count)
    {
        var order = new List<int>(count);
        var taken = new bool[count];
        var seenBy = new int[count];
        var parts = 0;
        var middles = Array.ConvertAll(elements, element => (X: element.Sum(i => places[i].X) / element.Length, Y: element.Sum(i => places[i].Y) / element.Length));
        void Take(int unknown)
        {
            if (!taken[unknown])
            {
                taken[unknown] = true;
                order.Add(unknown);
            }
        }

        void Cut(Span<int> set)
        {
            if (set.Length <= Few)
            {
                foreach (var element in set)
                {
                    Array.ForEach(elements[element], Take);
                }

                return;
            }

            double left = double.MaxValue, right = double.MinValue, bottom = double.MaxValue, top = double.MinValue;
            foreach (var element in set)
            {
                var (x, y) = middles[element];
                (left, right, bottom, top) = (Math.Min(left, x), Math.Max(right, x), Math.Min(bottom, y), Math.Max(top, y));
            }

            var keys = new double[set.Length];
            for (var k = 0; k < set.Length; k++)
            {
                keys[k] = right - left >= top - bottom ? middles[set[k]].X : middles[set[k]].Y;
            }

            keys.AsSpan().Sort(set);
            var near = set[..(set.Length / 2)];
            var far = set[near.Length..];
            var first = ++parts;
            foreach (var element in near)
            {
                foreach (var unknown in elements[element])
                {
                    seenBy[unknown] = first;
                }
            }

            var line = new List<int>();
            foreach (var element in far)
            {
                foreach (var unknown in elements[element])
                {
                    if (seenBy[unknown] == first && !taken[unknown])
                    {
                        taken[unknown] = true;
                        line.Add(unknown);
                    }
                }
            }

            Cut(near);
            Cut(far);
            order.AddRange(line);
        }

        Cut(Enumerable.Range(0, elements.Length).ToArray());
        for (var unknown = 0; unknown < count; unknown++)
        {
            Take(unknown); // what no element has
        }

        return [.. order];
    }
}
