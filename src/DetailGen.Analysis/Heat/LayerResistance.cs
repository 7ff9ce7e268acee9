using DetailGen.Physics.Layers;
using DetailGen.Sections;

namespace DetailGen.Analysis.Heat;

/// <summary>A layer with its thermal resistance.</summary>
/// <param name="Resistance">m²·K/W; null where none is counted (a sheet).</param>
public sealed record LayerResistance(Layer Layer, double? Resistance);

/// <summary>A build-up with its resistances and its U-value.</summary>
/// <param name="Surfaces">Rsi + Rse in m²·K/W.</param>
/// <param name="Total">Surfaces included, m²·K/W.</param>
/// <param name="UValue">W/(m²·K), bridging and corrections left out.</param>
public sealed record BuildupResistance(Buildup Buildup, IReadOnlyList<LayerResistance> Layers, double Surfaces, double Total, double UValue)
{
    /// <summary>Sum of the layers' thicknesses in mm.</summary>
    public double Thickness => Layers.Sum(layer => layer.Layer.Thickness);

    /// <summary>Plain resistance of homogeneous layers; of a bridged layer that of what lies between its members.</summary>
    /// <remarks>EN ISO 6946:2017, homogeneous layers (clause number still to be read).</remarks>
    public static BuildupResistance Of(Buildup buildup)
    {
        var flow = buildup.Flow == HeatFlow.Upwards ? Flow.Upwards : Flow.Horizontal;
        LayerResistance[] layers = [.. buildup.Layers.Select(layer => new LayerResistance(layer, Resistance(layer, flow)))];
        var surfaces = SurfaceResistance.Inside(flow) + SurfaceResistance.Outside;
        var total = surfaces + layers.Sum(layer => layer.Resistance ?? 0);
        return new(buildup, layers, surfaces, total, Transmittance.Of(total));
    }

    private static double? Resistance(Layer layer, Flow flow) => (layer.Kind, layer.Material.Conductivity) switch
    {
        (LayerKind.Sheet, _) => null,
        (LayerKind.Air, _) or (_, null) => AirLayer.Resistance(layer.Thickness, flow),
        (_, { } conductivity) => Transmittance.Resistance(layer.Thickness / 1000, conductivity),
    };
}
