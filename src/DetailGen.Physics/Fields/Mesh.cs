namespace DetailGen.Physics.Fields;

/// <summary>Corners anticlockwise, and the region it lies in.</summary>
internal readonly record struct Triangle(int A, int B, int C, int Region)
{
    /// <summary>Side i lies opposite corner i; smaller corner first.</summary>
    internal (int, int)[] Sides => [Mesh.Key(B, C), Mesh.Key(C, A), Mesh.Key(A, B)];
}

/// <summary>A conforming triangulation.</summary>
/// <param name="places">Corners in mm.</param>
/// <param name="exposed">Exposed side → number of its boundary line.</param>
internal sealed class Mesh((double X, double Y)[] places, Triangle[] triangles, Dictionary<(int, int), int> exposed)
{
    internal (double X, double Y)[] Places { get; } = places;

    internal Triangle[] Triangles { get; } = triangles;

    internal Dictionary<(int, int), int> Exposed { get; } = exposed;

    internal static (int, int) Key(int a, int b) => a < b ? (a, b) : (b, a);

    internal double Length((int A, int B) side) => double.Hypot(Places[side.A].X - Places[side.B].X, Places[side.A].Y - Places[side.B].Y);

    /// <summary>Halves the marked triangles across their longest sides, and others as far as conformity asks. Angles never fall below half the least
    /// of the start (M.-C. Rivara 1984, from memory); needles along a thin layer stay needles where the field does not ask for more.</summary>
    internal Mesh Refine(bool[] marked)
    {
        var cut = new Dictionary<(int, int), int>();
        var places = Places.ToList();
        void Cut((int, int) side)
        {
            if (cut.TryAdd(side, places.Count))
            {
                var (p, q) = (Places[side.Item1], Places[side.Item2]);
                places.Add(((p.X + q.X) / 2, (p.Y + q.Y) / 2));
            }
        }

        for (var t = 0; t < Triangles.Length; t++)
        {
            if (marked[t])
            {
                Cut(Longest(Triangles[t]));
            }
        }

        for (var before = -1; before != cut.Count;)
        {
            before = cut.Count;
            foreach (var triangle in Triangles)
            {
                if (triangle.Sides.Any(cut.ContainsKey))
                {
                    Cut(Longest(triangle));
                }
            }
        }

        var halves = new List<Triangle>();
        void Split(Triangle t)
        {
            var sides = t.Sides;
            var longest = Longest(t);
            var at = cut.ContainsKey(longest) ? Array.IndexOf(sides, longest) : Array.FindIndex(sides, cut.ContainsKey);
            if (at < 0)
            {
                halves.Add(t);
                return;
            }

            var (a, b, c) = at == 0 ? (t.A, t.B, t.C) : at == 1 ? (t.B, t.C, t.A) : (t.C, t.A, t.B);
            var m = cut[Key(b, c)];
            Split(new(a, b, m, t.Region));
            Split(new(a, m, c, t.Region));
        }

        double Far(int a, int b) => double.Hypot(places[a].X - places[b].X, places[a].Y - places[b].Y);
        (int, int) Longest(Triangle t) => t.Sides.MaxBy(s => (Far(s.Item1, s.Item2), s.Item1, s.Item2));
        foreach (var triangle in Triangles)
        {
            Split(triangle);
        }

        var exposed = new Dictionary<(int, int), int>();
        foreach (var (side, line) in Exposed)
        {
            if (cut.TryGetValue(side, out var m))
            {
                exposed[Key(side.Item1, m)] = exposed[Key(m, side.Item2)] = line;
            }
            else
            {
                exposed[side] = line;
            }
        }

        return new([.. places], [.. halves], exposed);
    }

    /// <summary>A place in each connected solid none of whose exposed sides is anchored. Solids that touch at a corner only count as apart.</summary>
    internal IEnumerable<(double X, double Y)> PiecesWithout(Func<int, bool> anchored)
    {
        var piece = Enumerable.Range(0, Triangles.Length).ToArray();
        int Root(int t)
        {
            while (piece[t] != t)
            {
                t = piece[t] = piece[piece[t]];
            }

            return t;
        }

        var owner = new Dictionary<(int, int), int>();
        for (var t = 0; t < Triangles.Length; t++)
        {
            foreach (var side in Triangles[t].Sides)
            {
                if (!owner.TryAdd(side, t))
                {
                    piece[Root(t)] = Root(owner[side]);
                }
            }
        }

        var held = Exposed.Where(e => anchored(e.Value)).Select(e => Root(owner[e.Key])).ToHashSet();
        return Enumerable.Range(0, Triangles.Length).Where(t => Root(t) == t && !held.Contains(t)).Select(t => Places[Triangles[t].A]);
    }
}
