namespace DetailGen.Physics.Fields;

/// <summary>Steady conduction ∇·(λ∇u) = 0 with films λ∂u/∂n = (T − u)/Rs, solved twice on one mesh.</summary>
/// <remarks>Energy E(u) = ∫λ|∇u|² + Σ∫(u − T)²/Rs. Quadratic elements give a conforming field, so their energy is not below the true one.
/// Crouzeix–Raviart elements with the side's mean in the film term are the hybrid form of lowest-order Raviart–Thomas fluxes, which here are free of
/// sources and continuous across sides: an admissible flux of the complementary principle, so their energy is not above it.
/// The local difference of the two fluxes, summed, is the gap itself (W. Prager, J. L. Synge, Quart. Appl. Math. 5 (1947); L. D. Marini, SIAM J. Numer. Anal. 22 (1985); from memory).</remarks>
internal sealed class MeshField
{
    private const double Rounding = 1e-9; // share of the energy by which the bounds are widened: far above what the direct solve loses
    private readonly Conditions asked;
    private readonly Dictionary<(int, int), int> sideNumber = [];
    private readonly Assembly quadratic;
    private readonly double?[] held;

    internal MeshField(Mesh mesh, Conditions asked)
    {
        (Mesh, this.asked) = (mesh, asked);
        foreach (var side in mesh.Triangles.SelectMany(t => t.Sides))
        {
            sideNumber.TryAdd(side, sideNumber.Count);
        }

        var middles = sideNumber.Keys.Select(s => ((mesh.Places[s.Item1].X + mesh.Places[s.Item2].X) / 2, (mesh.Places[s.Item1].Y + mesh.Places[s.Item2].Y) / 2)).ToArray();
        int[][] ofTriangles = [.. mesh.Triangles.Select(Nodes)];
        quadratic = new([.. mesh.Places, .. middles], ofTriangles);
        var mean = new Assembly(middles, [.. ofTriangles.Select(all => new[] { all[3] - mesh.Places.Length, all[4] - mesh.Places.Length, all[5] - mesh.Places.Length })]);
        held = new double?[quadratic.Size];
        var meanHeld = new double?[mean.Size];
        var used = new bool[mesh.Places.Length];
        foreach (var t in mesh.Triangles)
        {
            used[t.A] = used[t.B] = used[t.C] = true;
            var (area, g) = Shape(t);
            var nodes = Nodes(t);
            var k = asked.Conductivity[t.Region] * area;
            for (var at = 0; at < 3; at++)
            {
                var slopes = Slopes(g, at);
                for (var i = 0; i < 6; i++)
                {
                    for (var j = 0; j < 6; j++)
                    {
                        quadratic.Add(nodes[i], nodes[j], k / 3 * ((slopes[i].X * slopes[j].X) + (slopes[i].Y * slopes[j].Y)));
                    }
                }
            }

            for (var i = 0; i < 3; i++)
            {
                for (var j = 0; j < 3; j++)
                {
                    mean.Add(nodes[3 + i] - mesh.Places.Length, nodes[3 + j] - mesh.Places.Length, 4 * k * ((g[i].X * g[j].X) + (g[i].Y * g[j].Y)));
                }
            }
        }

        foreach (var (side, line) in Open())
        {
            var on = OnSide(side);
            if (line.Holds)
            {
                foreach (var i in on)
                {
                    Clash |= held[i] is { } other && other != line.Temperature;
                    held[i] = held[i] is { } one && one != line.Temperature ? (one + line.Temperature) / 2 : line.Temperature;
                }

                meanHeld[sideNumber[side]] = line.Temperature;
                continue;
            }

            var h = line.Conductance(mesh.Length(side));
            for (var i = 0; i < 3; i++)
            {
                quadratic.Load(on[i], h * line.Temperature * (i < 2 ? 1 : 4) / 6);
                for (var j = 0; j < 3; j++)
                {
                    quadratic.Add(on[i], on[j], h * Mass[i, j] / 30);
                }
            }

            mean.Add(sideNumber[side], sideNumber[side], h);
            mean.Load(sideNumber[side], h * line.Temperature);
        }

        for (var i = 0; i < used.Length; i++)
        {
            held[i] = used[i] ? held[i] : 0; // a corner of lines or voids only
        }

        Values = quadratic.Solve(held);
        var means = mean.Solve(meanHeld);
        Unknowns = Math.Max(held.Count(v => v is null), meanHeld.Count(v => v is null));
        Gaps = new double[mesh.Triangles.Length];
        var filmGap = new Dictionary<(int, int), double>();
        foreach (var (side, line) in Open().Where(o => !o.Line.Holds))
        {
            var h = line.Conductance(mesh.Length(side));
            var c = means[sideNumber[side]];
            filmGap[side] = h * Square(side, c);
            Upper += h * Square(side, line.Temperature);
            Lower += h * (c - line.Temperature) * (c - line.Temperature);
        }

        for (var t = 0; t < Gaps.Length; t++)
        {
            var triangle = mesh.Triangles[t];
            var (area, g) = Shape(triangle);
            var nodes = Nodes(triangle);
            var k = asked.Conductivity[triangle.Region] * area;
            double cx = 0, cy = 0;
            for (var i = 0; i < 3; i++)
            {
                var c = means[nodes[3 + i] - mesh.Places.Length];
                (cx, cy) = (cx - (2 * c * g[i].X), cy - (2 * c * g[i].Y));
            }

            for (var at = 0; at < 3; at++)
            {
                double ux = 0, uy = 0;
                var slopes = Slopes(g, at);
                for (var i = 0; i < 6; i++)
                {
                    (ux, uy) = (ux + (Values[nodes[i]] * slopes[i].X), uy + (Values[nodes[i]] * slopes[i].Y));
                }

                Gaps[t] += k / 3 * (((ux - cx) * (ux - cx)) + ((uy - cy) * (uy - cy)));
                Upper += k / 3 * ((ux * ux) + (uy * uy));
            }

            Lower += k * ((cx * cx) + (cy * cy));
            Gaps[t] += triangle.Sides.Sum(s => filmGap.GetValueOrDefault(s));
        }

        (Lower, Upper) = (Lower * (1 - Rounding), Upper * (1 + Rounding));
    }

    private static readonly double[,] Mass = { { 4, -1, 2 }, { -1, 4, 2 }, { 2, 2, 16 } };

    internal Mesh Mesh { get; }

    /// <summary>From 0 to 1 at the corners, then at the middles of the sides.</summary>
    internal double[] Values { get; }

    /// <summary>Energy in W/(m·K): the true one lies between. No bounds where two held temperatures clash.</summary>
    internal double Lower { get; }

    internal double Upper { get; }

    /// <summary>Share of each triangle in the gap of the bounds.</summary>
    internal double[] Gaps { get; }

    internal int Unknowns { get; }

    /// <summary>Two held temperatures meet at a point: the energy has no bound.</summary>
    internal bool Clash { get; }

    /// <summary>Heat into the solid in W/m for a temperature difference of 1 K, by boundary line. They sum to nothing but rounding on any mesh.</summary>
    internal double[] Flows()
    {
        var flows = new double[asked.Lines.Length];
        var told = new HashSet<int>();
        foreach (var (side, number) in Mesh.Exposed.OrderBy(e => e.Value))
        {
            if (asked.Lines[number] is not { } line)
            {
                continue;
            }

            var on = OnSide(side);
            flows[number] += line.Holds
                ? on.Where(told.Add).Sum(i => quadratic.Reaction(i, Values))
                : line.Conductance(Mesh.Length(side)) * (line.Temperature - ((Values[on[0]] + Values[on[1]] + (4 * Values[on[2]])) / 6));
        }

        return flows;
    }

    /// <summary>The least value on the lines asked for, and where: at a corner or at the bottom of a side's parabola.</summary>
    internal (double Value, double X, double Y)? Coldest(Func<int, bool> onLine)
    {
        (double Value, double X, double Y)? coldest = null;
        foreach (var (side, _) in Mesh.Exposed.Where(e => onLine(e.Value)).OrderBy(e => e.Key))
        {
            var on = OnSide(side);
            double a = Values[on[0]], b = Values[on[1]], m = Values[on[2]], bend = 2 * (a + b - (2 * m)), slope = (4 * m) - (3 * a) - b;
            var bottom = bend > 0 ? Math.Clamp(-slope / (2 * bend), 0, 1) : a <= b ? 0 : 1;
            foreach (var s in new[] { 0, bottom, 1 })
            {
                var value = a + (s * (slope + (s * bend)));
                if (coldest is null || value < coldest.Value.Value)
                {
                    var (p, q) = (Mesh.Places[side.Item1], Mesh.Places[side.Item2]);
                    coldest = (value, p.X + (s * (q.X - p.X)), p.Y + (s * (q.Y - p.Y)));
                }
            }
        }

        return coldest;
    }

    /// <summary>The value at a place; null when it lies farther than this (mm) from all triangles.</summary>
    internal double? At(double x, double y, double reach)
    {
        double best = -reach, share0 = 0, share1 = 0;
        Triangle? home = null;
        foreach (var t in Mesh.Triangles)
        {
            var (_, g) = Shape(t);
            double l0 = 1 + Along(g[0], t.A), l1 = 1 + Along(g[1], t.B), l2 = 1 - l0 - l1;
            var depth = Math.Min(l0 / double.Hypot(g[0].X, g[0].Y), Math.Min(l1 / double.Hypot(g[1].X, g[1].Y), l2 / double.Hypot(g[2].X, g[2].Y)));
            if (depth > best || (home is null && depth >= best))
            {
                (best, home, share0, share1) = (depth, t, l0, l1);
            }
        }

        double Along((double X, double Y) g, int corner) => (g.X * (x - Mesh.Places[corner].X)) + (g.Y * (y - Mesh.Places[corner].Y));
        if (home is not { } found)
        {
            return null;
        }

        var n = Nodes(found);
        double a = share0, b = share1, c = 1 - a - b;
        return (Values[n[0]] * a * ((2 * a) - 1)) + (Values[n[1]] * b * ((2 * b) - 1)) + (Values[n[2]] * c * ((2 * c) - 1))
            + (4 * ((Values[n[3]] * b * c) + (Values[n[4]] * c * a) + (Values[n[5]] * a * b)));
    }

    private IEnumerable<((int, int) Side, Conditions.Line Line)> Open() =>
        Mesh.Exposed.Where(e => asked.Lines[e.Value] is not null).Select(e => (e.Key, asked.Lines[e.Value]!));

    /// <summary>∫(u − c)² along the side over its length.</summary>
    private double Square((int, int) side, double c)
    {
        var on = OnSide(side);
        var sum = 0.0;
        for (var i = 0; i < 3; i++)
        {
            for (var j = 0; j < 3; j++)
            {
                sum += Mass[i, j] / 30 * (Values[on[i]] - c) * (Values[on[j]] - c);
            }
        }

        return sum;
    }

    private int[] OnSide((int, int) side) => [side.Item1, side.Item2, Mesh.Places.Length + sideNumber[side]];

    /// <summary>Corners A, B, C, then the middles of the sides opposite them: places in <see cref="Values"/>.</summary>
    internal int[] Nodes(Triangle t) => [t.A, t.B, t.C, .. t.Sides.Select(s => Mesh.Places.Length + sideNumber[s])];

    /// <summary>Area in mm² and the gradients of the three shares in 1/mm.</summary>
    private (double Area, (double X, double Y)[] Gradients) Shape(Triangle t)
    {
        var (a, b, c) = (Mesh.Places[t.A], Mesh.Places[t.B], Mesh.Places[t.C]);
        var twice = ((b.X - a.X) * (c.Y - a.Y)) - ((b.Y - a.Y) * (c.X - a.X));
        return (twice / 2, [((b.Y - c.Y) / twice, (c.X - b.X) / twice), ((c.Y - a.Y) / twice, (a.X - c.X) / twice), ((a.Y - b.Y) / twice, (b.X - a.X) / twice)]);
    }

    /// <summary>Gradients of the six quadratic shapes at the middle of the side opposite corner <paramref name="at"/>.</summary>
    private static (double X, double Y)[] Slopes((double X, double Y)[] g, int at)
    {
        var slopes = new (double X, double Y)[6];
        double Share(int i) => i == at ? 0 : 0.5;
        for (var i = 0; i < 3; i++)
        {
            int j = (i + 1) % 3, k = (i + 2) % 3;
            slopes[i] = (((4 * Share(i)) - 1) * g[i].X, ((4 * Share(i)) - 1) * g[i].Y);
            slopes[3 + i] = (4 * ((Share(j) * g[k].X) + (Share(k) * g[j].X)), 4 * ((Share(j) * g[k].Y) + (Share(k) * g[j].Y)));
        }

        return slopes;
    }
}
