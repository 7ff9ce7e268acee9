using DetailGen.Physics.Fields;
using DetailGen.Physics.Layers;

namespace DetailGen.Analysis.Heat;

/// <summary>A value of which it is proven that the true one of the model lies between two bounds.</summary>
public readonly record struct Proven(double Value, double Lower, double Upper)
{
    public static Proven operator -(Proven a, Proven b) => new(a.Value - b.Value, a.Lower - b.Upper, a.Upper - b.Lower);

    public static Proven operator *(double positive, Proven a) => new(positive * a.Value, positive * a.Lower, positive * a.Upper);
}

/// <summary>U of a plane element beside the junction, and the lengths that psi takes off; mm.</summary>
/// <param name="UValue">W/(m²·K), without corrections for fixings.</param>
public sealed record FlankHeat(string Id, Proven UValue, double Internal, double External);

/// <summary>What the field of a junction says.</summary>
/// <param name="Coupling">L2D in W/(m·K).</param>
/// <param name="PsiInternal">Ψ in W/(m·K) with inside dimensions.</param>
/// <param name="PsiExternal">Ψ in W/(m·K) with outside dimensions.</param>
/// <param name="Factor">Least temperature factor on the inside surfaces with the films of the heat flow, and where, mm.</param>
/// <param name="MouldFactor">The same with the film of the mould criterion.</param>
/// <param name="Coldest">Inside surface temperature at that place with the films of the heat flow, °C.</param>
/// <param name="Flows">Heat into the solid in W/m by environment.</param>
/// <param name="Subdivision">The comparison of two subdivisions of the junction's mesh.</param>
/// <param name="HeatBalance">Sum of the flows over the largest.</param>
public sealed record JunctionHeat(
    ThermalModel Model, HeatConditions Conditions, Proven Coupling, Proven PsiInternal, Proven PsiExternal, IReadOnlyList<FlankHeat> Flanks, TemperatureFactor Factor,
    TemperatureFactor MouldFactor, double Coldest, IReadOnlyList<(string Environment, double Flow)> Flows, Subdivision? Subdivision, double HeatBalance, int Unknowns, IReadOnlyList<string> Warnings)
{
    /// <summary>Heat into the solid in W/m through each line of the model's boundary, in their order.</summary>
    public required IReadOnlyList<double> FlowsByLine { get; init; }

    /// <summary>With the films of the heat flow.</summary>
    public required Isotherms Isotherms { get; init; }

    /// <summary>With the films of the heat flow.</summary>
    public required FluxLines FluxLines { get; init; }

    /// <summary>With the films of the heat flow.</summary>
    public required SurfaceTemperatures Surfaces { get; init; }

    /// <summary>What each two of the airs exchange; calculated when it is first asked for.</summary>
    public IReadOnlyList<PairHeat> Pairs => _pairs.Value;

    private Lazy<IReadOnlyList<PairHeat>> _pairs = new([]);

    /// <summary>Solves the field of a model.</summary>
    /// <exception cref="InvalidOperationException">The model cannot be solved; one that was derived from a section that tiles always can.</exception>
    public static JunctionHeat Of(ThermalModel model, HeatConditions conditions)
    {
        var answer = Solved(model.Case);
        FlankHeat[] flanks = [.. model.Flanks.Select(flank => Plane(flank))];
        var coupling = CouplingOf(answer);
        Proven Psi(Func<FlankHeat, double> length) => flanks.Aggregate(coupling, (left, flank) => left - (length(flank) / 1000 * flank.UValue));
        var factor = answer.Factor!;
        var heat = new JunctionHeat(
            model, conditions, coupling, Psi(flank => flank.Internal), Psi(flank => flank.External), flanks, factor, answer.HumidityFactor!,
            conditions.Outside + (factor.Value * (conditions.Inside - conditions.Outside)), answer.Flows, answer.Subdivision, answer.HeatBalance!.Value, answer.Unknowns, answer.Warnings)
        {
            FlowsByLine = answer.FlowsByLine,
            Isotherms = answer.Isotherms!,
            FluxLines = answer.FluxLines!,
            Surfaces = answer.Surfaces!,
        };
        heat._pairs = new(() => Heat.Pairs.Of(heat));
        return heat;
    }

    internal static FlankHeat Plane(Flank flank) => new(flank.Id, UValue(flank), flank.Internal, flank.External);

    private static Proven UValue(Flank flank)
    {
        if (flank.Bay is { } bay)
        {
            return 1000 / bay.Width * CouplingOf(Solved(bay.Case));
        }

        var u = Transmittance.Of(flank.Resistances.Inside + flank.Resistances.Outside + flank.Layers.Sum(layer => Transmittance.Resistance(layer.Thickness / 1000, layer.Conductivity)));
        return new(u, u, u);
    }

    internal static Proven CouplingOf(FieldAnswer answer) => new(answer.Coupling!.Value, answer.Bounds!.Value.Lower, answer.Bounds.Value.Upper);

    internal static FieldAnswer Solved(FieldCase asked) => FieldEngine.Solve(asked) switch
    {
        FieldOutcome.Solved solved => solved.Answer,
        FieldOutcome.Refused refused => throw new InvalidOperationException(string.Join(" ", refused.Faults.Select(fault => $"{fault.Path}: {fault.Reason}"))),
        _ => throw new System.Diagnostics.UnreachableException(),
    };
}
