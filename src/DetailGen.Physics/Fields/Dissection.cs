namespace DetailGen.Physics.Fields;

/// <summary>The triangles of a mesh halved again and again across their longer extent: the order in which unknowns are eliminated.</summary>
/// <remarks>A. George, Nested dissection of a regular finite element mesh, SIAM J. Numer. Anal. 10 (1973), from memory. Parting triangles keeps the parting line one
/// unknown wide; parting unknowns by their places takes in every unknown of each triangle on the line.</remarks>
internal sealed class Dissection
{
    private const int Few = 20; // triangles that are not parted further
    private readonly List<Part> parts = [];
    private readonly int[] order;
    private readonly double[] x;
    private readonly double[] y;

    internal Dissection(Mesh mesh)
    {
        var count = mesh.Triangles.Length;
        (x, y) = (new double[count], new double[count]);
        order = new int[count];
        for (var t = 0; t < count; t++)
        {
            var triangle = mesh.Triangles[t];
            var (a, b, c) = (mesh.Places[triangle.A], mesh.Places[triangle.B], mesh.Places[triangle.C]);
            (x[t], y[t], order[t]) = (a.X + b.X + c.X, a.Y + b.Y + c.Y, t);
        }

        Cut(0, count);
    }

    /// <summary>The triangles <paramref name="From"/> to below <paramref name="To"/> of <see cref="Order"/>, either whole or as its two halves.</summary>
    internal readonly record struct Part(int From, int To, bool Whole);

    /// <summary>Every part after its halves.</summary>
    internal IReadOnlyList<Part> Parts => parts;

    internal int[] Order => order;

    private void Cut(int from, int to)
    {
        if (to - from <= Few)
        {
            parts.Add(new(from, to, true));
            return;
        }

        double left = double.MaxValue, right = double.MinValue, bottom = double.MaxValue, top = double.MinValue;
        foreach (var t in order.AsSpan(from, to - from))
        {
            (left, right, bottom, top) = (Math.Min(left, x[t]), Math.Max(right, x[t]), Math.Min(bottom, y[t]), Math.Max(top, y[t]));
        }

        var middle = (from + to) / 2;
        Sift(from, to - 1, middle, right - left >= top - bottom ? x : y);
        Cut(from, middle);
        Cut(middle, to);
        parts.Add(new(from, to, false));
    }

    /// <summary>Sorts only so far that nothing before the middle is greater than anything after it (C. A. R. Hoare, Comm. ACM 4 (1961), from memory).</summary>
    private void Sift(int low, int high, int middle, double[] keys)
    {
        while (low < high)
        {
            var pivot = keys[order[(low + high) / 2]];
            int i = low, j = high;
            while (i <= j)
            {
                while (keys[order[i]] < pivot)
                {
                    i++;
                }

                while (keys[order[j]] > pivot)
                {
                    j--;
                }

                if (i <= j)
                {
                    (order[i], order[j]) = (order[j], order[i]);
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
