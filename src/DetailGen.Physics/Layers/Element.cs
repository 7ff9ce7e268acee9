using System.Collections.Immutable;

namespace DetailGen.Physics.Layers;

/// <summary>A plane building element. Resistances in m²·K/W.</summary>
/// <param name="Rsi">Surface resistance inside, 0 or more.</param>
/// <param name="Rse">Surface resistance outside, 0 or more.</param>
/// <param name="RseSheltered">Surface resistance beyond a well ventilated air layer.</param>
/// <param name="Layers">From inside to outside.</param>
/// <param name="Flow">Direction of the heat, for air layers.</param>
public sealed record Element(double Rsi, double Rse, double RseSheltered, ImmutableArray<ElementLayer> Layers, Flow Flow = Flow.Horizontal)
{
    /// <summary>What is added to U; empty for none.</summary>
    public Corrections Corrections { get; init; } = new();
}

/// <summary>One layer of an element.</summary>
public abstract record ElementLayer(string Name)
{
    /// <summary>A layer of one material.</summary>
    /// <param name="Resistance">m²·K/W, 0 or more.</param>
    public sealed record Plain(string Name, double Resistance) : ElementLayer(Name);

    /// <summary>A layer of air.</summary>
    public sealed record Air(string Name, AirSpace Space) : ElementLayer(Name);

    /// <summary>A layer that other material crosses.</summary>
    /// <param name="Parts">Fractions of the area sum to 1.</param>
    /// <param name="Group">Layers of one group are crossed in line, with the same fractions in the same order; others independently of each other.</param>
    public sealed record Bridged(string Name, ImmutableArray<BridgedPart> Parts, string? Group = null) : ElementLayer(Name)
    {
        /// <summary>Of all parts side by side, m²·K/W.</summary>
        public double Parallel => 1 / Parts.Sum(part => part.Fraction / part.Resistance);

        /// <summary>Of the part with the largest area, the first of equals, m²·K/W.</summary>
        public double Largest => Parts.MaxBy(part => part.Fraction)!.Resistance;
    }

    /// <summary>A layer whose thickness changes over the area.</summary>
    /// <param name="Conductivity">W/(m·K).</param>
    /// <param name="Pieces">Areas that together make the element.</param>
    public sealed record Tapered(string Name, double Conductivity, ImmutableArray<TaperedPiece> Pieces) : ElementLayer(Name);
}

/// <summary>A share of a layer that is all of one material.</summary>
/// <param name="Fraction">Share of the area, above 0.</param>
/// <param name="Resistance">m²·K/W, above 0.</param>
/// <param name="Conductivity">W/(m·K); null where only the resistance is known.</param>
public sealed record BridgedPart(double Fraction, double Resistance, double? Conductivity = null);

/// <summary>A rectangle or a triangle of a tapered layer.</summary>
/// <param name="Area">m².</param>
/// <param name="Thicknesses">m; two for a rectangle (one edge and the edge across), three for a triangle (one at each corner).</param>
public sealed record TaperedPiece(double Area, ImmutableArray<double> Thicknesses);

/// <summary>What is added to U for what the layers do not show; null for what there is not.</summary>
/// <param name="SmallOnesAreLeftOut">Corrections whose sum is below 3 % of U are not added.</param>
public sealed record Corrections(AirGaps? AirGaps = null, RainOnInverted? Rain = null, bool SmallOnesAreLeftOut = true)
{
    /// <summary>One for each kind, and for each layer that they go through.</summary>
    public ImmutableArray<Fasteners> Fasteners { get; init; } = [];
}

/// <summary>Gaps in an insulation layer.</summary>
/// <param name="Level">0 none that matter, 1 gaps through the insulation, 2 gaps with air moving on its warm side.</param>
public sealed record AirGaps(string Layer, int Level);

/// <summary>Mechanical fasteners through an insulation layer.</summary>
/// <param name="PerArea">1/m².</param>
/// <param name="Section">Area of one in m².</param>
/// <param name="Conductivity">W/(m·K).</param>
/// <param name="Insulation">Thickness of the insulation in m.</param>
/// <param name="Within">Length of the fastener inside the insulation in m, at most its thickness.</param>
public sealed record Fasteners(string Layer, double PerArea, double Section, double Conductivity, double Insulation, double Within);

/// <summary>Rain that runs between the insulation of an inverted roof and its membrane.</summary>
/// <param name="Rain">Mean of the heating season in mm a day.</param>
/// <param name="Factor">f·x in W·day/(m²·K·mm): share that reaches the membrane, and heat that it takes away.</param>
public sealed record RainOnInverted(string Layer, double Rain, double Factor);
