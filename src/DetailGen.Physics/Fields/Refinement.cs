namespace DetailGen.Physics.Fields;

/// <summary>Which triangles are refined.</summary>
internal static class Refinement
{
    internal const double Finest = 1e-6; // mm; sides shorter than this are not halved, lest corners run together in rounding
    private const double Marked = 0.6; // share of the gap that the marked triangles hold (W. Dörfler, SIAM J. Numer. Anal. 33 (1996), from memory)

    // What a round may foresee: a triangle of a smooth field halved loses three quarters of its gap, one at a corner less. The figures below were tried on the check cases; whatever
    // they are, the bounds hold, for the next field is measured anew.
    private const double Foresight = 0.1; // the gap is not foreseen to fall below this share in one round
    private const double Growth = 3; // nor do the triangles of a round become more than this many times as many
    private const double Fall = 2.2; // power of the number of pieces by which the gap of each piece is foreseen to be smaller
    private const double Safety = 0.7; // share of the wanted gap that is aimed at

    /// <summary>Refined until what is foreseen of the gap is small enough, or as much smaller as can be foreseen with some trust.</summary>
    internal static Mesh Closer(MeshField field, double wanted)
    {
        var (mesh, gaps) = (field.Mesh, field.Gaps);
        var sum = gaps.Sum();
        var aim = Math.Max(wanted * Safety, sum * Foresight);
        while (sum > aim && mesh.Triangles.Length < Growth * field.Mesh.Triangles.Length)
        {
            var (finer, from) = mesh.Refine(Largest(mesh, gaps, Marked * sum));
            if (finer.Triangles.Length == mesh.Triangles.Length)
            {
                break;
            }

            var pieces = new int[gaps.Length];
            foreach (var parent in from)
            {
                pieces[parent]++;
            }

            gaps = [.. from.Select(parent => pieces[parent] == 1 ? gaps[parent] : gaps[parent] * Math.Pow(pieces[parent], -Fall))];
            (mesh, sum) = (finer, gaps.Sum());
        }

        return mesh;
    }

    private static bool[] Largest(Mesh mesh, double[] gaps, double share)
    {
        var marked = new bool[gaps.Length];
        var order = Enumerable.Range(0, gaps.Length).ToArray();
        Array.Sort(gaps.Select(gap => -gap).ToArray(), order);
        foreach (var t in order)
        {
            if (share <= 0)
            {
                break;
            }

            marked[t] = mesh.Extent(t) > Finest;
            share -= gaps[t];
        }

        return marked;
    }

    /// <summary>Triangles that one of the places is in or near, for their size.</summary>
    internal static bool[] Around(Mesh mesh, IReadOnlyList<(double X, double Y)> places)
    {
        var marked = new bool[mesh.Triangles.Length];
        for (var t = 0; t < marked.Length; t++)
        {
            var longest = mesh.Extent(t);
            for (var corner = 0; corner < 3 && !marked[t] && longest > Finest; corner++)
            {
                var place = mesh.Places[mesh.Triangles[t][corner]];
                foreach (var (x, y) in places)
                {
                    double dx = place.X - x, dy = place.Y - y;
                    marked[t] |= (dx * dx) + (dy * dy) <= 0.25 * longest * longest;
                }
            }
        }

        return marked;
    }
}
