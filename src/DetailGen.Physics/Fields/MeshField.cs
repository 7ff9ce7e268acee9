namespace DetailGen.Physics.Fields;

/// <summary>Steady conduction solved twice on one mesh: for the temperature, whose energy is not below the true one, and for the flow, which bounds it from below.</summary>
/// <remarks>The gap of the two energies is ∫|λ∇u − q|²/λ + Σ∫Rs(qₙ − (T − u)/Rs)² for any two such fields, so each triangle's share of it is known
/// (W. Prager, J. L. Synge, Quart. Appl. Math. 5 (1947), from memory).</remarks>
internal sealed class MeshField
{
    private const double Rounding = 1e-9; // share of the energy by which the bounds are widened: far above what the direct solve loses

    // three places that sum polynomials to the fifth power exactly (Gauss)
    private static readonly (double At, double Weight)[] Places = [((1 - Math.Sqrt(0.6)) / 2, 5.0 / 18), (0.5, 8.0 / 18), ((1 + Math.Sqrt(0.6)) / 2, 5.0 / 18)];

    private readonly Conditions _asked;
    private readonly double[] _doubts; // by corner

    internal MeshField(Mesh mesh, Conditions asked)
    {
        (Mesh, _asked) = (mesh, asked);
        var dissection = new Dissection(mesh);
        Temperature = new(mesh, asked, dissection);
        Gaps = new double[mesh.Triangles.Length];
        _doubts = new double[mesh.Places.Length];
        Unknowns = Temperature.Unknowns;
        if (Temperature.Clash)
        {
            return;
        }

        var flow = new FlowField(mesh, asked, dissection);
        Flow = (mesh, flow);
        Unknowns = Math.Max(Unknowns, flow.Unknowns);
        var energy = Energy(flow);
        Gap = Gaps.Sum();
        (Lower, Upper) = ((energy - Gap) * (1 - Rounding), energy * (1 + Rounding));
    }

    private MeshField(Mesh mesh, MeshField coarse)
    {
        (Mesh, _asked, _doubts, Gaps, Flow) = (mesh, coarse._asked, coarse._doubts, [], coarse.Flow);
        Temperature = new(mesh, _asked, new Dissection(mesh));
        Unknowns = Math.Max(Temperature.Unknowns, coarse.Unknowns);
        (Lower, Upper, Gap) = (coarse.Lower, Energy(null) * (1 + Rounding), coarse.Gap);
    }

    internal Mesh Mesh { get; }

    internal TemperatureField Temperature { get; }

    /// <summary>The flow on the last mesh on which it was found; null where two held temperatures clash.</summary>
    internal (Mesh Mesh, FlowField Field)? Flow { get; }

    /// <summary>Energy in W/(m·K): the true one lies between. No bounds where two held temperatures clash.</summary>
    internal double Lower { get; }

    internal double Upper { get; }

    /// <summary>Share of each triangle in the gap of the bounds; empty where the flow was found on a coarser mesh only.</summary>
    internal double[] Gaps { get; }

    /// <summary>Their sum on the last mesh on which both fields were found.</summary>
    internal double Gap { get; }

    /// <summary>Of the largest system.</summary>
    internal int Unknowns { get; }

    /// <summary>By how much the temperatures of a side with a film may be off: the most by which, at its corners, they differ from those that the heat flow through the film asks for.
    /// Of corners that came after the flow was last found nothing is known.</summary>
    internal double Doubt(Side side) => Math.Max(OfCorner(side.A), OfCorner(side.B));

    /// <summary>On a finer mesh, for the temperature alone: what bounds the energy from below on this mesh does so still.</summary>
    internal MeshField Finer(Mesh mesh) => new(mesh, this);

    private double OfCorner(int corner) => corner < _doubts.Length ? _doubts[corner] : 0;

    /// <summary>Energy of the temperature; with a flow also what each triangle holds of the gap, and the doubts.</summary>
    private double Energy(FlowField? flow)
    {
        var energy = 0.0;
        Span<double> u = stackalloc double[Elements.Nodes];
        for (var t = 0; t < Mesh.Triangles.Length; t++)
        {
            var shape = new Shape(Mesh, t);
            var k = _asked.Conductivity[Mesh.Triangles[t].Region];
            Temperature.ValuesOf(t, u);
            var psi = flow is null ? [] : flow.ValuesOf(t);
            for (var at = 0; at < 3; at++)
            {
                var (ux, uy) = shape.Slope(u, at);
                energy += k * shape.Area / 3 * ((ux * ux) + (uy * uy));
                if (flow is not null)
                {
                    var (px, py) = shape.Slope(psi, at);
                    double dx = (k * ux) - py, dy = (k * uy) + px;
                    Gaps[t] += shape.Area / 3 * ((dx * dx) + (dy * dy)) / k;
                }
            }

            for (var i = 0; i < 3; i++)
            {
                var side = Mesh.Sides[Mesh.SidesOf[(3 * t) + i]];
                if (side.Line < 0 || _asked.Lines[side.Line] is not { Holds: false } line)
                {
                    continue;
                }

                var (length, a, b) = (Mesh.Length(side), (i + 1) % 3, (i + 2) % 3);
                foreach (var (s, weight) in Places)
                {
                    var here = line.Temperature - (u[a] + (s * ((4 * u[3 + i]) - (3 * u[a]) - u[b] + (s * 2 * (u[a] + u[b] - (2 * u[3 + i]))))));
                    energy += line.Conductance(length) * weight * here * here;
                    if (flow is not null)
                    {
                        var along = ((4 * psi[3 + i]) - (3 * psi[a]) - psi[b] + (s * 4 * (psi[a] + psi[b] - (2 * psi[3 + i])))) / length;
                        var off = (line.Film * FlowField.Millimetres * along) - here;
                        Gaps[t] += line.Conductance(length) * weight * off * off;
                        (_doubts[side.A], _doubts[side.B]) = (Math.Max(_doubts[side.A], Math.Abs(off)), Math.Max(_doubts[side.B], Math.Abs(off)));
                    }
                }
            }
        }

        return energy;
    }
}
