using System.Collections.Immutable;

namespace DetailGen.Physics.Layers;

/// <summary>U of a plane element: U = 1/R + ΔU, R = (R upper + R lower) / 2.</summary>
/// <param name="Total">R in m²·K/W.</param>
/// <param name="Upper">Limit with no heat crossing between paths.</param>
/// <param name="Lower">Limit with planes of one temperature between layers.</param>
/// <param name="Paths">Of the upper limit, largest fraction first; empty for a tapered element.</param>
/// <param name="Layers">m²·K/W in the order of the element; null for what lies beyond a well ventilated air layer and is left out.</param>
/// <param name="Areas">W/(m²·K) of each piece of a tapered element; else empty.</param>
/// <param name="AirGaps">W/(m²·K), null where there is no such correction; <paramref name="Rain"/> likewise.</param>
/// <param name="Fasteners">W/(m²·K) in the order of the corrections.</param>
/// <param name="CorrectionsApplied">False where there are none, or where they are small and left out.</param>
/// <param name="Final">W/(m²·K), corrections included where they are applied.</param>
public sealed record ElementTransmittance(
    double Total,
    double Upper,
    double Lower,
    ImmutableArray<HeatPath> Paths,
    ImmutableArray<double?> Layers,
    ImmutableArray<double> Areas,
    double? AirGaps,
    ImmutableArray<double> Fasteners,
    double? Rain,
    bool CorrectionsApplied,
    double Final)
{
    public double Uncorrected => 1 / Total;

    /// <summary>(upper − lower) / (2·total).</summary>
    public double MaximumRelativeError => (Upper - Lower) / (2 * Total);
}

/// <summary>One way straight through the layers, as the upper limit counts it.</summary>
/// <param name="Fraction">Share of the area.</param>
/// <param name="Resistance">Films included, m²·K/W.</param>
public sealed record HeatPath(double Fraction, double Resistance);

/// <summary>U, or the reasons why the method does not give one.</summary>
public abstract record TransmittanceOutcome
{
    private TransmittanceOutcome()
    {
    }

    /// <summary>The method covers the element.</summary>
    public sealed record Found(ElementTransmittance Result) : TransmittanceOutcome;

    /// <summary>It does not.</summary>
    public sealed record Refused(ImmutableArray<ElementFault> Faults) : TransmittanceOutcome;
}

/// <summary>Why an element has no U by this method.</summary>
/// <param name="Layer">Index from inside, null for the whole.</param>
public sealed record ElementFault(int? Layer, string Reason, string Hint);
