using DetailGen.Physics.Fields;

namespace DetailGen.Analysis.Heat;

/// <summary>Heat between two of the airs beside a junction: Q = L2D·(difference of temperature), and Ψ = L2D − Σ U·l over the plane elements that part the two.</summary>
/// <param name="Coupling">L2D of the pair in W/(m·K).</param>
/// <param name="PsiInternal">W/(m·K) with inside dimensions.</param>
/// <param name="PsiExternal">The same with outside dimensions.</param>
/// <param name="Flank">What parts the two away from the junction; null where wall and roof both do.</param>
public sealed record PairHeat(string Warm, string Cold, Proven Coupling, Proven PsiInternal, Proven PsiExternal, FlankHeat? Flank);

/// <summary>The coupling coefficients of a junction, one for each pair of airs.</summary>
/// <remarks>
/// ISO 10211:2017, calculation with more than two boundary temperatures (from memory, clause number still to be read). One air a degree warmer than all others loses
/// E₁ = L₁₂ + L₁₃, an energy and so proven between bounds as every L2D is; the pairs follow as L₁₂ = (E₁ + E₂ − E₃) / 2.
/// </remarks>
internal static class Pairs
{
    /// <summary>A first look at an energy, so that its error can be held against that of the junction.</summary>
    private const double Glance = 0.02;

    internal static IReadOnlyList<PairHeat> Of(JunctionHeat heat)
    {
        if (heat.Model.Between is not { } between)
        {
            return [new("room", "outside", heat.Coupling, heat.PsiInternal, heat.PsiExternal, null)];
        }

        var (outside, lower, higher) = (heat.Coupling, Energy(heat, "lower-room"), Energy(heat, "higher-room"));
        var (wall, roof) = (heat.Flanks.Single(flank => flank.Id == "wall"), heat.Flanks.Single(flank => flank.Id == "roof"));
        return
        [
            Pair("higher-room", "outside", Half(higher, outside, lower), wall),
            Pair("lower-room", "outside", Half(lower, outside, higher), roof),
            Pair("lower-room", "higher-room", Half(lower, higher, outside), JunctionHeat.Plane(between)),
        ];
    }

    private static PairHeat Pair(string warm, string cold, Proven coupling, FlankHeat flank) =>
        new(warm, cold, coupling, coupling - (flank.Internal / 1000 * flank.UValue), coupling - (flank.External / 1000 * flank.UValue), flank);

    private static Proven Half(Proven one, Proven other, Proven rest) => 0.5 * (one - (rest - other));

    /// <summary>What one air couples with all others, no farther off than the coupling of the junction.</summary>
    private static Proven Energy(JunctionHeat heat, string warm)
    {
        var glance = JunctionHeat.CouplingOf(JunctionHeat.Solved(Warming(heat, warm, Glance)));
        var wanted = heat.Conditions.WantedError * Math.Min(1, heat.Coupling.Value / glance.Upper);
        return JunctionHeat.CouplingOf(JunctionHeat.Solved(Warming(heat, warm, Math.Max(1e-6, wanted))));
    }

    private static FieldCase Warming(JunctionHeat heat, string warm, double wanted) => heat.Model.Case with
    {
        Boundary = [.. heat.Model.Case.Boundary.Select(line => line.Environment is { } air ? line with { Environment = air with { Temperature = air.Name == warm ? 1 : 0 } } : line)],
        HumidityFilm = null,
        WantedError = wanted,
    };
}
