namespace DetailGen.Physics.Fields;

/// <summary>Corners anticlockwise, and the region it lies in.</summary>
internal readonly record struct Triangle(int A, int B, int C, int Region)
{
    internal int this[int corner] => corner switch { 0 => A, 1 => B, _ => C };
}

/// <summary>A side of one or two triangles.</summary>
/// <param name="Line">Number of its boundary line where it is exposed, else -1.</param>
/// <param name="Slot">Three times the triangle beside it, and the corner there that it lies opposite; from A to B is anticlockwise in that triangle.</param>
/// <param name="Other">The same of the triangle on its far side; -1 where there is none.</param>
internal readonly record struct Side(int A, int B, int Line, int Slot, int Other);

/// <summary>A conforming triangulation. Solids that touch at a corner only have a corner each.</summary>
internal sealed class Mesh
{
    /// <param name="places">Corners in mm.</param>
    /// <param name="exposed">Exposed sides, either way round, with the numbers of their boundary lines.</param>
    private Mesh((double X, double Y)[] places, Triangle[] triangles, IEnumerable<(int A, int B, int Line)> exposed)
    {
        (Places, Triangles) = (places, triangles);
        SidesOf = new int[3 * triangles.Length];
        var sides = new Side[SidesOf.Length];
        int[] first = new int[places.Length], next = new int[sides.Length];
        Array.Fill(first, -1);
        var count = 0;
        int Find(int a, int b)
        {
            var side = first[Math.Min(a, b)];
            while (side >= 0 && sides[side].A + sides[side].B != a + b)
            {
                side = next[side];
            }

            return side;
        }

        for (var slot = 0; slot < SidesOf.Length; slot++)
        {
            var triangle = triangles[slot / 3];
            int a = triangle[(slot + 1) % 3], b = triangle[(slot + 2) % 3], side = Find(a, b);
            if (side < 0)
            {
                side = count++;
                sides[side] = new(a, b, -1, slot, -1);
                (next[side], first[Math.Min(a, b)]) = (first[Math.Min(a, b)], side);
            }
            else
            {
                sides[side] = sides[side] with { Other = slot };
            }

            SidesOf[slot] = side;
        }

        foreach (var (a, b, line) in exposed)
        {
            var side = Find(a, b);
            sides[side] = sides[side] with { Line = line };
        }

        Sides = sides[..count];
    }

    internal (double X, double Y)[] Places { get; }

    internal Triangle[] Triangles { get; }

    internal Side[] Sides { get; }

    /// <summary>For each slot (three times the triangle, and a corner) the side opposite that corner.</summary>
    internal int[] SidesOf { get; }

    internal static Mesh Of((double X, double Y)[] places, Triangle[] triangles, Dictionary<(int A, int B), int> exposed)
    {
        var joined = new Mesh(places, triangles, exposed.Select(e => (e.Key.A, e.Key.B, e.Value)));
        var corners = new Groups(3 * triangles.Length);
        foreach (var side in joined.Sides.Where(side => side.Other >= 0))
        {
            corners.Join(Turn(side.Slot, 1), Turn(side.Other, 2));
            corners.Join(Turn(side.Slot, 2), Turn(side.Other, 1));
        }

        // the first solid at a corner keeps it, every further one gets its own
        var number = new Dictionary<int, int>();
        var taken = new bool[places.Length];
        var apart = places.ToList();
        int Corner(int slot)
        {
            if (!number.TryGetValue(corners.Of(slot), out var found))
            {
                var corner = triangles[slot / 3][slot % 3];
                found = taken[corner] ? apart.Count : corner;
                if (taken[corner])
                {
                    apart.Add(places[corner]);
                }

                taken[corner] = true;
                number[corners.Of(slot)] = found;
            }

            return found;
        }

        var renumbered = triangles.Select((t, i) => new Triangle(Corner(3 * i), Corner((3 * i) + 1), Corner((3 * i) + 2), t.Region)).ToArray();
        return new([.. apart], renumbered, joined.Sides.Where(side => side.Line >= 0)
            .Select(side => (renumbered[side.Slot / 3][(side.Slot + 1) % 3], renumbered[side.Slot / 3][(side.Slot + 2) % 3], side.Line)));
    }

    /// <summary>The slot so many corners further round the same triangle.</summary>
    internal static int Turn(int slot, int by) => (slot / 3 * 3) + ((slot + by) % 3);

    internal double Length(Side side) => Math.Sqrt(Square(side));

    /// <summary>Length of the longest side in mm.</summary>
    internal double Extent(int triangle) => Length(Sides[SidesOf[Longest(triangle)]]);

    /// <summary>Halves the marked triangles across their longest sides, and others as far as conformity asks. Angles never fall below half the least
    /// of the start (M.-C. Rivara 1984, from memory); needles along a thin layer stay needles where the field does not ask for more.</summary>
    /// <returns>The mesh, and for each of its triangles the one it came from.</returns>
    internal (Mesh Mesh, int[] From) Refine(bool[] marked)
    {
        var cut = new int[Sides.Length];
        Array.Fill(cut, -1);
        var places = new List<(double X, double Y)>(2 * Places.Length);
        places.AddRange(Places);
        var open = new Stack<int>();
        void Cut(int triangle)
        {
            var at = SidesOf[Longest(triangle)];
            if (cut[at] >= 0)
            {
                return;
            }

            var side = Sides[at];
            var (p, q) = (Places[side.A], Places[side.B]);
            cut[at] = places.Count;
            places.Add(((p.X + q.X) / 2, (p.Y + q.Y) / 2));
            open.Push(side.Slot / 3);
            if (side.Other >= 0)
            {
                open.Push(side.Other / 3);
            }
        }

        for (var t = 0; t < Triangles.Length; t++)
        {
            if (marked[t])
            {
                Cut(t);
                while (open.TryPop(out var beside))
                {
                    Cut(beside);
                }
            }
        }

        var halves = new List<Triangle>(2 * Triangles.Length);
        var from = new List<int>(2 * Triangles.Length);
        void Half(int a, int b, int apex, int middle, int t)
        {
            if (middle < 0)
            {
                halves.Add(new(a, b, apex, Triangles[t].Region));
                from.Add(t);
                return;
            }

            halves.Add(new(a, middle, apex, Triangles[t].Region));
            halves.Add(new(middle, b, apex, Triangles[t].Region));
            from.Add(t);
            from.Add(t);
        }

        for (var t = 0; t < Triangles.Length; t++)
        {
            var slot = Longest(t);
            var middle = cut[SidesOf[slot]];
            var (a, b, c) = (Triangles[t][slot % 3], Triangles[t][(slot + 1) % 3], Triangles[t][(slot + 2) % 3]);
            if (middle < 0)
            {
                Half(a, b, c, -1, t);
                continue;
            }

            Half(a, b, middle, cut[SidesOf[Turn(slot, 2)]], t);
            Half(c, a, middle, cut[SidesOf[Turn(slot, 1)]], t);
        }

        var exposed = new List<(int, int, int)>();
        for (var i = 0; i < Sides.Length; i++)
        {
            var side = Sides[i];
            if (side.Line >= 0 && cut[i] >= 0)
            {
                exposed.Add((side.A, cut[i], side.Line));
                exposed.Add((cut[i], side.B, side.Line));
            }
            else if (side.Line >= 0)
            {
                exposed.Add((side.A, side.B, side.Line));
            }
        }

        return (new([.. places], [.. halves], exposed), [.. from]);
    }

    /// <summary>A place in each connected solid none of whose exposed sides is anchored. Solids that touch at a corner only count as apart.</summary>
    internal IEnumerable<(double X, double Y)> PiecesWithout(Func<int, bool> anchored)
    {
        var pieces = Pieces();
        var held = Sides.Where(side => side.Line >= 0 && anchored(side.Line)).Select(side => pieces.Of(side.Slot / 3)).ToHashSet();
        return Enumerable.Range(0, Triangles.Length).Where(t => pieces.Of(t) == t && !held.Contains(t)).Select(t => Places[Triangles[t].A]);
    }

    /// <summary>Whether a connected solid has lines of unlike temperature, so that heat flows at all.</summary>
    /// <param name="temperature">Of a boundary line; null where it lets no heat pass.</param>
    internal bool Joins(Func<int, double?> temperature)
    {
        var pieces = Pieces();
        var first = new Dictionary<int, double>();
        return Sides.Where(side => side.Line >= 0).Any(side => temperature(side.Line) is { } one && !first.TryAdd(pieces.Of(side.Slot / 3), one) && first[pieces.Of(side.Slot / 3)] != one);
    }

    private Groups Pieces()
    {
        var pieces = new Groups(Triangles.Length);
        foreach (var side in Sides.Where(side => side.Other >= 0))
        {
            pieces.Join(side.Slot / 3, side.Other / 3);
        }

        return pieces;
    }

    private double Square(Side side)
    {
        double x = Places[side.A].X - Places[side.B].X, y = Places[side.A].Y - Places[side.B].Y;
        return (x * x) + (y * y);
    }

    /// <summary>The slot opposite the longest side; of equal ones the side with the greater number, so that both triangles beside it agree.</summary>
    private int Longest(int triangle)
    {
        var (best, length) = (-1, 0.0);
        for (var slot = 3 * triangle; slot < (3 * triangle) + 3; slot++)
        {
            var square = Square(Sides[SidesOf[slot]]);
            if (best < 0 || square > length || (square == length && SidesOf[slot] > SidesOf[best]))
            {
                (best, length) = (slot, square);
            }
        }

        return best;
    }
}
