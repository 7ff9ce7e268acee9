namespace DetailGen.Physics.Fields;

/// <summary>Solves A·x = b for a symmetric positive definite sparse A by A = L·D·Lᵀ, unknowns ordered by nested dissection of their places.</summary>
/// <remarks>Ordering: A. George, Nested dissection of a regular finite element mesh, SIAM J. Numer. Anal. 10 (1973). Factor row by row along the
/// elimination tree: T. A. Davis, Direct Methods for Sparse Linear Systems, SIAM (2006). Both from memory.</remarks>
internal static class SparseFactor
{
    /// <param name="rows">For each unknown its neighbours and coefficients, the diagonal among them.</param>
    internal static double[] Solve(Dictionary<int, double>[] rows, double[] right, (double X, double Y)[] places)
    {
        var n = rows.Length;
        var order = Order(rows, places);
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

    private static int[] Order(Dictionary<int, double>[] rows, (double X, double Y)[] places)
    {
        var order = new List<int>(rows.Length);
        var part = new int[rows.Length];
        var parts = 0;
        void Cut(int[] set)
        {
            if (set.Length <= 12)
            {
                order.AddRange(set);
                return;
            }

            double width = set.Max(i => places[i].X) - set.Min(i => places[i].X), height = set.Max(i => places[i].Y) - set.Min(i => places[i].Y);
            var key = Array.ConvertAll(set, i => width >= height ? (places[i].X, places[i].Y, i) : (places[i].Y, places[i].X, i));
            Array.Sort(key, set);
            var half = set.Length / 2;
            var far = ++parts;
            foreach (var i in set.AsSpan(half))
            {
                part[i] = far;
            }

            var near = ++parts;
            List<int> kept = [], wall = [];
            foreach (var i in set.AsSpan(0, half))
            {
                part[i] = near;
                (rows[i].Keys.Any(j => part[j] == far) ? wall : kept).Add(i);
            }

            Cut([.. kept]);
            Cut(set[half..]);
            order.AddRange(wall);
        }

        Cut([.. Enumerable.Range(0, rows.Length)]);
        return [.. order];
    }
}
