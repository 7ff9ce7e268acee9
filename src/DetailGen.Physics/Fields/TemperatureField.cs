namespace DetailGen.Physics.Fields;

/// <summary>Temperature u of steady conduction ∇·(λ∇u) = 0 with films λ∂u/∂n = (T − u)/Rs, in quadratic elements.</summary>
/// <remarks>It makes ∫λ|∇u|² + Σ∫(u − T)²/Rs least among the fields of the mesh, so that this energy is not below the true one.</remarks>
internal sealed class TemperatureField
{
    private const double Balance = 1e-10; // share of the largest flow that may be missing: corrected until then
    private const int MostCorrections = 3;
    private readonly Conditions _asked;
    private readonly double[] _below; // what is too small for the last digits of the values
    private readonly double[] _supplied; // W/m that each node is short of: from outside where it is held, rounding elsewhere

    internal TemperatureField(Mesh mesh, Conditions asked, Dissection dissection)
    {
        (Mesh, _asked) = (mesh, asked);
        var held = Held();
        var number = new int[held.Length];
        Array.Fill(number, -1);
        for (var slot = 0; slot < mesh.SidesOf.Length; slot++)
        {
            number[mesh.Triangles[slot / 3][slot % 3]] = number[mesh.Places.Length + mesh.SidesOf[slot]] = 0;
        }

        for (var node = 0; node < number.Length; node++)
        {
            number[node] = number[node] < 0 || held[node] is not null ? -1 : Unknowns++; // a corner of lines or voids only has no unknown
        }

        var system = new Elements(mesh.Triangles.Length, Unknowns);
        Span<int> nodes = stackalloc int[Elements.Nodes];
        for (var t = 0; t < mesh.Triangles.Length; t++)
        {
            var matrix = system.Matrix.AsSpan(Elements.Square * t, Elements.Square);
            var shape = new Shape(mesh, t);
            shape.Stiffness(asked.Conductivity[mesh.Triangles[t].Region], matrix);
            NodesOf(mesh, t, nodes);
            for (var side = 0; side < 3; side++)
            {
                var exposed = mesh.Sides[mesh.SidesOf[(3 * t) + side]];
                if (exposed.Line < 0 || asked.Lines[exposed.Line] is not { Holds: false } line)
                {
                    continue;
                }

                var h = line.Conductance(mesh.Length(exposed));
                Span<int> on = [(side + 1) % 3, (side + 2) % 3, 3 + side];
                for (var i = 0; i < 3; i++)
                {
                    Load(nodes[on[i]], h * line.Temperature * (i < 2 ? 1 : 4) / 6);
                    for (var j = 0; j < 3; j++)
                    {
                        matrix[(on[i] * Elements.Nodes) + on[j]] += h * Shape.Mass[i, j] / 30;
                    }
                }
            }

            for (var i = 0; i < Elements.Nodes; i++)
            {
                system.Unknown[(Elements.Nodes * t) + i] = number[nodes[i]];
                if (held[nodes[i]] is { } known)
                {
                    for (var j = 0; j < Elements.Nodes; j++)
                    {
                        Load(nodes[j], -known * matrix[(j * Elements.Nodes) + i]);
                    }
                }
            }
        }

        void Load(int node, double value)
        {
            if (number[node] >= 0)
            {
                system.Load[number[node]] += value;
            }
        }

        var factor = new Factor(dissection, system);
        var x = factor.Solve(system.Load);
        Values = [.. number.Select((unknown, node) => unknown >= 0 ? x[unknown] : held[node] ?? 0)];
        _below = new double[Values.Length];
        _supplied = Supplied();
        for (var i = 0; i < MostCorrections && !Balanced(number); i++)
        {
            Correct(factor, number);
            _supplied = Supplied();
        }
    }

    internal Mesh Mesh { get; }

    /// <summary>From 0 to 1 at the corners, then at the middles of the sides.</summary>
    internal double[] Values { get; }

    internal int Unknowns { get; }

    /// <summary>Two held temperatures meet at a point: the energy has no bound.</summary>
    internal bool Clash { get; private set; }

    /// <summary>Corners of a triangle, then the middles of the sides opposite these.</summary>
    internal static void NodesOf(Mesh mesh, int triangle, Span<int> nodes)
    {
        for (var i = 0; i < 3; i++)
        {
            nodes[i] = mesh.Triangles[triangle][i];
            nodes[3 + i] = mesh.Places.Length + mesh.SidesOf[(3 * triangle) + i];
        }
    }

    internal void ValuesOf(int triangle, Span<double> values)
    {
        Span<int> nodes = stackalloc int[Elements.Nodes];
        NodesOf(Mesh, triangle, nodes);
        for (var i = 0; i < Elements.Nodes; i++)
        {
            values[i] = Values[nodes[i]];
        }
    }

    /// <summary>Values at the ends of a side, then at its middle.</summary>
    internal (double A, double B, double Middle) On(int side) => (Values[Mesh.Sides[side].A], Values[Mesh.Sides[side].B], Values[Mesh.Places.Length + side]);

    /// <summary>Heat into the solid in W/m for a temperature difference of 1 K, by boundary line. They sum to nothing but rounding on any mesh.</summary>
    internal double[] Flows()
    {
        var flows = new double[_asked.Lines.Length];
        var told = new bool[Values.Length];
        foreach (var side in Enumerable.Range(0, Mesh.Sides.Length).Where(s => Mesh.Sides[s].Line >= 0).OrderBy(s => Mesh.Sides[s].Line))
        {
            var exposed = Mesh.Sides[side];
            if (_asked.Lines[exposed.Line] is not { } line)
            {
                continue;
            }

            if (!line.Holds)
            {
                double Off(int node) => line.Temperature - Values[node] - _below[node];
                flows[exposed.Line] += line.Conductance(Mesh.Length(exposed)) * (Off(exposed.A) + Off(exposed.B) + (4 * Off(Mesh.Places.Length + side))) / 6;
                continue;
            }

            foreach (var node in new[] { exposed.A, exposed.B, Mesh.Places.Length + side })
            {
                flows[exposed.Line] += told[node] ? 0 : _supplied[node];
                told[node] = true;
            }
        }

        return flows;
    }

    /// <summary>Where the temperature along the lines asked for rises both ways, the coldest first: at corners and at the bottoms of the sides' parabolas.</summary>
    /// <param name="doubt">Of a side: by how much its temperatures may be off.</param>
    internal List<Low> Lows(Func<int, bool> onLine, Func<Side, double> doubt)
    {
        var lows = new List<(double Value, int Side, double At)>();
        var passed = new HashSet<int>(); // corners from which a side falls
        var doubts = new Dictionary<int, double>(); // of corners: that of the more doubtful side
        for (var at = 0; at < Mesh.Sides.Length; at++)
        {
            var side = Mesh.Sides[at];
            if (side.Line < 0 || !onLine(side.Line))
            {
                continue;
            }

            var (a, b, m) = On(at);
            double bend = 2 * (a + b - (2 * m)), slope = (4 * m) - (3 * a) - b;
            var bottom = bend > 0 ? Math.Clamp(-slope / (2 * bend), 0, 1) : a <= b ? 0 : 1;
            var value = bottom == 0 ? a : bottom == 1 ? b : a + (bottom * (slope + (bottom * bend)));
            foreach (var (corner, end) in new[] { (side.A, a), (side.B, b) })
            {
                doubts[corner] = Math.Max(doubts.GetValueOrDefault(corner), doubt(side));
                if (value < end)
                {
                    passed.Add(corner);
                }
            }

            lows.Add((value, at, bottom));
        }

        var told = new HashSet<int>();
        var found = new List<Low>();
        foreach (var (value, at, bottom) in lows)
        {
            var side = Mesh.Sides[at];
            var corner = bottom == 0 ? side.A : bottom == 1 ? side.B : -1;
            if (corner < 0 || (!passed.Contains(corner) && told.Add(corner)))
            {
                var (p, q) = (Mesh.Places[side.A], Mesh.Places[side.B]);
                found.Add(new(value, p.X + (bottom * (q.X - p.X)), p.Y + (bottom * (q.Y - p.Y)), corner, corner < 0 ? doubt(side) : doubts[corner]));
            }
        }

        return [.. found.OrderBy(low => low.Value)];
    }

    /// <summary>The value at a place; null when it lies farther than this (mm) from all triangles.</summary>
    internal double? At(double x, double y, double reach)
    {
        double best = -reach, share0 = 0, share1 = 0;
        var home = -1;
        for (var t = 0; t < Mesh.Triangles.Length; t++)
        {
            var (shape, triangle) = (new Shape(Mesh, t), Mesh.Triangles[t]);
            double l0 = 1 + Along(shape.Share(0), triangle.A), l1 = 1 + Along(shape.Share(1), triangle.B), l2 = 1 - l0 - l1;
            var depth = Math.Min(l0 / Steep(shape.Share(0)), Math.Min(l1 / Steep(shape.Share(1)), l2 / Steep(shape.Share(2))));
            if (depth > best || (home < 0 && depth >= best))
            {
                (best, home, share0, share1) = (depth, t, l0, l1);
            }
        }

        double Along((double X, double Y) g, int corner) => (g.X * (x - Mesh.Places[corner].X)) + (g.Y * (y - Mesh.Places[corner].Y));
        double Steep((double X, double Y) g) => double.Hypot(g.X, g.Y);
        if (home < 0)
        {
            return null;
        }

        Span<double> v = stackalloc double[Elements.Nodes];
        ValuesOf(home, v);
        double a = share0, b = share1, c = 1 - a - b;
        return (v[0] * a * ((2 * a) - 1)) + (v[1] * b * ((2 * b) - 1)) + (v[2] * c * ((2 * c) - 1)) + (4 * ((v[3] * b * c) + (v[4] * c * a) + (v[5] * a * b)));
    }

    private double?[] Held()
    {
        var held = new double?[Mesh.Places.Length + Mesh.Sides.Length];
        for (var at = 0; at < Mesh.Sides.Length; at++)
        {
            var side = Mesh.Sides[at];
            if (side.Line < 0 || _asked.Lines[side.Line] is not { Holds: true } line)
            {
                continue;
            }

            foreach (var node in new[] { side.A, side.B, Mesh.Places.Length + at })
            {
                Clash |= held[node] is { } other && other != line.Temperature;
                held[node] = held[node] is { } one && one != line.Temperature ? (one + line.Temperature) / 2 : line.Temperature;
            }
        }

        return held;
    }

    // A thin sheet that conducts well makes coefficients so large that their rounding alone is a source of heat. Taken from differences of temperature, and so that each triangle gives what it
    // takes, what a node is short of is free of that.
    private double[] Supplied()
    {
        var lack = new double[Values.Length];
        Span<int> nodes = stackalloc int[Elements.Nodes];
        Span<double> matrix = stackalloc double[Elements.Square];
        for (var t = 0; t < Mesh.Triangles.Length; t++)
        {
            NodesOf(Mesh, t, nodes);
            new Shape(Mesh, t).Stiffness(_asked.Conductivity[Mesh.Triangles[t].Region], matrix);
            for (var i = 1; i < Elements.Nodes; i++)
            {
                var taken = 0.0;
                for (var j = 1; j < Elements.Nodes; j++)
                {
                    taken += matrix[(i * Elements.Nodes) + j] * (Values[nodes[j]] - Values[nodes[0]] + (_below[nodes[j]] - _below[nodes[0]]));
                }

                lack[nodes[i]] += taken;
                lack[nodes[0]] -= taken;
            }
        }

        for (var at = 0; at < Mesh.Sides.Length; at++)
        {
            var side = Mesh.Sides[at];
            if (side.Line < 0 || _asked.Lines[side.Line] is not { Holds: false } line)
            {
                continue;
            }

            var h = line.Conductance(Mesh.Length(side)) / 30;
            ReadOnlySpan<int> on = [side.A, side.B, Mesh.Places.Length + at];
            for (var i = 0; i < 3; i++)
            {
                for (var j = 0; j < 3; j++)
                {
                    lack[on[i]] -= h * Shape.Mass[i, j] * (line.Temperature - Values[on[j]] - _below[on[j]]);
                }
            }
        }

        return lack;
    }

    // what the nodes that are not held are short of together is what the flows do not balance by
    private bool Balanced(int[] number)
    {
        var rest = 0.0;
        for (var node = 0; node < number.Length; node++)
        {
            rest += number[node] < 0 ? 0 : _supplied[node];
        }

        return Math.Abs(rest) <= Balance * Flows().Max(Math.Abs);
    }

    // iterative refinement (J. H. Wilkinson, Rounding Errors in Algebraic Processes, 1963, from memory)
    private void Correct(Factor factor, int[] number)
    {
        var load = new double[Unknowns];
        for (var node = 0; node < number.Length; node++)
        {
            if (number[node] >= 0)
            {
                load[number[node]] = -_supplied[node];
            }
        }

        var by = factor.Solve(load);
        for (var node = 0; node < number.Length; node++)
        {
            if (number[node] >= 0)
            {
                var (value, more) = (Values[node], _below[node] + by[number[node]]);
                Values[node] = value + more;
                _below[node] = more - (Values[node] - value);
            }
        }
    }
}

/// <summary>A place on a surface from which the temperature rises both ways.</summary>
/// <param name="Corner">Of the mesh; -1 inside a side.</param>
/// <param name="Doubt">By how much the value may be off, as far as two fields that differ there tell: no bound.</param>
internal readonly record struct Low(double Value, double X, double Y, int Corner, double Doubt);
