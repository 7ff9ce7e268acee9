namespace DetailGen.Physics.Fields;

/// <summary>Steady conduction solved twice on one mesh: for the temperature, whose energy is not below the true one, and for the flow, which bounds it from below.</summary>
/// <remarks>The gap of the two energies is ∫|λ∇u − q|²/λ + Σ∫Rs(qₙ − (T − u)/Rs)² for any two such fields, so each triangle's share of it is known
/// (W. Prager, J. L. Synge, Quart. Appl. Math. 5 (1947), from memory).</remarks>
internal sealed class MeshField
{
    private const double Rounding = 1e-9; // share of the energy by which the bounds are widened: far above what the direct solve loses

    // three places that sum polynomials to the fifth power exactly (Gauss)
    private static readonly (double At, double Weight)[] Places = [((1 - Math.Sqrt(0.6)) / 2, 5.0 / 18), (0.5, 8.0 / 18), ((1 + Math.Sqrt(0.6)) / 2, 5.0 / 18)];

    internal MeshField(Mesh mesh, Conditions asked)
    {
        Mesh = mesh;
        var dissection = new Dissection(mesh);
        Temperature = new(mesh, asked, dissection);
        Gaps = new double[mesh.Triangles.Length];
        Doubts = new double[mesh.Sides.Length];
        Unknowns = Temperature.Unknowns;
        if (Temperature.Clash)
        {
            return;
        }

        var flow = new FlowField(mesh, asked, dissection);
        Unknowns = Math.Max(Unknowns, flow.Unknowns);
        Span<double> u = stackalloc double[Elements.Nodes];
        for (var t = 0; t < Gaps.Length; t++)
        {
            var shape = new Shape(mesh, t);
            var k = asked.Conductivity[mesh.Triangles[t].Region];
            Temperature.ValuesOf(t, u);
            var psi = flow.ValuesOf(t);
            for (var at = 0; at < 3; at++)
            {
                var (ux, uy) = shape.Slope(u, at);
                var (px, py) = shape.Slope(psi, at);
                double dx = (k * ux) - py, dy = (k * uy) + px;
                Upper += k * shape.Area / 3 * ((ux * ux) + (uy * uy));
                Gaps[t] += shape.Area / 3 * ((dx * dx) + (dy * dy)) / k;
            }

            for (var i = 0; i < 3; i++)
            {
                var own = mesh.SidesOf[(3 * t) + i];
                var side = mesh.Sides[own];
                if (side.Line < 0 || asked.Lines[side.Line] is not { Holds: false } line)
                {
                    continue;
                }

                var (length, a, b) = (mesh.Length(side), (i + 1) % 3, (i + 2) % 3);
                foreach (var (s, weight) in Places)
                {
                    var here = line.Temperature - (u[a] + (s * ((4 * u[3 + i]) - (3 * u[a]) - u[b] + (s * 2 * (u[a] + u[b] - (2 * u[3 + i]))))));
                    var along = ((4 * psi[3 + i]) - (3 * psi[a]) - psi[b] + (s * 4 * (psi[a] + psi[b] - (2 * psi[3 + i])))) / length;
                    var off = (line.Film * FlowField.Millimetres * along) - here;
                    Upper += line.Conductance(length) * weight * here * here;
                    Gaps[t] += line.Conductance(length) * weight * off * off;
                    Doubts[own] = Math.Max(Doubts[own], Math.Abs(off));
                }
            }
        }

        var gap = Gaps.Sum();
        (Lower, Upper) = ((Upper - gap) * (1 - Rounding), Upper * (1 + Rounding));
    }

    internal Mesh Mesh { get; }

    internal TemperatureField Temperature { get; }

    /// <summary>Energy in W/(m·K): the true one lies between. No bounds where two held temperatures clash.</summary>
    internal double Lower { get; }

    internal double Upper { get; }

    /// <summary>Share of each triangle in the gap of the bounds.</summary>
    internal double[] Gaps { get; }

    /// <summary>By side with a film: the most by which the surface's temperature differs from the one that the heat flow through the film asks for.</summary>
    internal double[] Doubts { get; }

    /// <summary>Of the larger of the two systems.</summary>
    internal int Unknowns { get; }
}
