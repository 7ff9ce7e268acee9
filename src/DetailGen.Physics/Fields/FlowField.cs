namespace DetailGen.Physics.Fields;

/// <summary>Heat flow q = λ∇u (W/m², from cold to warm) as (∂ψ/∂y, −∂ψ/∂x) of a flow function ψ in quadratic elements: free of sources and continuous across sides whatever ψ is.</summary>
/// <remarks>It makes the complementary energy ∫q²/λ + Σ∫Rs·qₙ² − 2Σ∫T·qₙ least among the flows of the mesh, so that what this bounds from below is not above the true energy
/// (the principle of Thomson; W. Prager, J. L. Synge, Quart. Appl. Math. 5 (1947), from memory). The equation for ψ is that for u with 1/λ for λ.</remarks>
internal sealed class FlowField
{
    private readonly double[] _values;

    internal FlowField(Mesh mesh, Conditions asked, Dissection dissection)
    {
        var unknowns = new FlowUnknowns(mesh, line => asked.Lines[line] is not null);
        Unknowns = unknowns.Count;
        var system = new Elements(mesh.Triangles.Length, Unknowns);
        var banks = new Dictionary<int, (int Value, int Hole, int Sign)[]>();
        Span<int> nodes = stackalloc int[Elements.Nodes];
        Span<double> load = stackalloc double[Elements.Nodes];
        for (var t = 0; t < mesh.Triangles.Length; t++)
        {
            var matrix = system.Matrix.AsSpan(Elements.Square * t, Elements.Square);
            new Shape(mesh, t).Stiffness(1 / asked.Conductivity[mesh.Triangles[t].Region], matrix);
            load.Clear();
            for (var side = 0; side < 3; side++)
            {
                var exposed = mesh.Sides[mesh.SidesOf[(3 * t) + side]];
                if (exposed.Line < 0 || asked.Lines[exposed.Line] is not { } line)
                {
                    continue;
                }

                Span<int> on = [(side + 1) % 3, (side + 2) % 3, 3 + side];
                load[on[0]] -= line.Temperature;
                load[on[1]] += line.Temperature;
                for (var i = 0; i < 3; i++)
                {
                    for (var j = 0; j < 3; j++)
                    {
                        matrix[(on[i] * Elements.Nodes) + on[j]] += line.Film * Millimetres * Shape.Bend[i, j] / (3 * mesh.Length(exposed));
                    }
                }
            }

            TemperatureField.NodesOf(mesh, t, nodes);
            for (var i = 0; i < Elements.Nodes; i++)
            {
                var unknown = system.Unknown[(Elements.Nodes * t) + i] = unknowns.Of[nodes[i]];
                if (unknown >= 0)
                {
                    system.Load[unknown] += load[i];
                }
            }

            var own = unknowns.BanksOf(t).ToArray();
            if (own.Length > 0)
            {
                banks[t] = own;
                system.Further[t] = Further(system.Unknown.AsSpan(Elements.Nodes * t, Elements.Nodes), matrix, own);
                foreach (var (value, hole, sign) in own)
                {
                    system.Load[hole] += sign * load[value];
                }
            }
        }

        var x = new Factor(dissection, system).Solve(system.Load);
        _values = [.. system.Unknown.Select(unknown => unknown < 0 ? 0 : x[unknown])];
        foreach (var (t, own) in banks)
        {
            foreach (var (value, hole, sign) in own)
            {
                _values[(Elements.Nodes * t) + value] += sign * x[hole];
            }
        }
    }

    /// <summary>ψ in W/m stands over mm: a slope along an edge is a thousandth of the flow in W/m².</summary>
    internal const double Millimetres = 1000;

    internal int Unknowns { get; }

    /// <summary>Six values of ψ in W/m for a temperature difference of 1 K: corners, then the middles of the sides opposite these.</summary>
    internal ReadOnlySpan<double> ValuesOf(int triangle) => _values.AsSpan(Elements.Nodes * triangle, Elements.Nodes);

    // values of the triangle are those of its nodes and, on the higher bank, those of holes besides: the matrix of the latter with both
    private static (int[] Unknown, double[] Matrix) Further(ReadOnlySpan<int> nodes, ReadOnlySpan<double> matrix, (int Value, int Hole, int Sign)[] banks)
    {
        var size = Elements.Nodes + banks.Length;
        var further = new double[size * size];
        for (var b = 0; b < banks.Length; b++)
        {
            for (var i = 0; i < Elements.Nodes; i++)
            {
                var with = banks[b].Sign * matrix[(banks[b].Value * Elements.Nodes) + i];
                further[((Elements.Nodes + b) * size) + i] = further[(i * size) + Elements.Nodes + b] = with;
            }

            for (var c = 0; c < banks.Length; c++)
            {
                further[((Elements.Nodes + b) * size) + Elements.Nodes + c] = banks[b].Sign * banks[c].Sign * matrix[(banks[b].Value * Elements.Nodes) + banks[c].Value];
            }
        }

        return ([.. nodes, .. banks.Select(bank => bank.Hole)], further);
    }
}
