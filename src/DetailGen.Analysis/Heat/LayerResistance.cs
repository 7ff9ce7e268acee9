using DetailGen.Physics.Layers;
using DetailGen.Sections;

namespace DetailGen.Analysis.Heat;

/// <summary>A layer with its thermal resistance.</summary>
/// <param name="Resistance">m²·K/W; of a bridged layer that of what lies between its members; null where none is counted (a sheet).</param>
/// <param name="Bridged">Members and what lies between them side by side, m²·K/W; null where nothing crosses the layer.</param>
public sealed record LayerResistance(Layer Layer, double? Resistance, double? Bridged = null);

/// <summary>What fixings through a layer add to U.</summary>
/// <param name="Layer">The first of the rows that they go through.</param>
/// <param name="Amount">W/(m²·K).</param>
public sealed record FixingCorrection(Layer Layer, Fixings Fixings, double Amount);

/// <summary>A build-up with its resistances and its U-value: U = 1/R + ΔU, R = (R upper + R lower) / 2.</summary>
/// <param name="Surfaces">Rsi + Rse in m²·K/W.</param>
/// <param name="Upper">Limit of R with no heat passing between members and what lies between, m²·K/W; null where the method does not cover the layers, and R is the lower limit.</param>
/// <param name="Lower">Limit of R with each layer's parts side by side, m²·K/W.</param>
/// <param name="Total">R, surfaces included, m²·K/W.</param>
/// <param name="Corrections">Whether they are added or not.</param>
/// <param name="Corrected">The corrections are added; else they are below 3 % of U together, or there are none.</param>
/// <param name="UValue">W/(m²·K), with the corrections where they are added.</param>
public sealed record BuildupResistance(
    Buildup Buildup, IReadOnlyList<LayerResistance> Layers, double Surfaces, double? Upper, double Lower, double Total, IReadOnlyList<FixingCorrection> Corrections, bool Corrected,
    double UValue)
{
    /// <summary>Sum of the layers' thicknesses in mm.</summary>
    public double Thickness => Layers.Sum(layer => layer.Layer.Thickness);

    /// <summary>Members cross some layer.</summary>
    public bool IsBridged => Layers.Any(layer => layer.Bridged is not null);

    /// <summary>The combined method with corrections for fixings. Insulation is taken to be laid without gaps that count (level 0).</summary>
    /// <remarks>EN ISO 6946:2017, homogeneous and inhomogeneous layers, annex F (clause numbers still to be read).</remarks>
    public static BuildupResistance Of(Buildup buildup)
    {
        var flow = buildup.Flow == HeatFlow.Upwards ? Flow.Upwards : Flow.Horizontal;
        LayerResistance[] layers = [.. buildup.Layers.Select(layer => Of(layer, flow))];
        var surfaces = SurfaceResistance.Inside(flow) + SurfaceResistance.Outside;
        var slots = layers.Where(layer => layer.Resistance is not null).GroupBy(layer => layer.Layer.Slot).ToArray();
        Layer[] pierced = [.. slots.Select(slot => slot.First().Layer).Where(layer => layer.Fixings is not null)];
        var element = new Physics.Layers.Element(SurfaceResistance.Inside(flow), SurfaceResistance.Outside, SurfaceResistance.Outside, [.. slots.Reverse().Select(Row)], flow)
        {
            Corrections = new() { Fasteners = [.. pierced.Select(layer => Pins(layer, slots.First(slot => slot.Key == layer.Slot)))] },
        };
        if (CombinedMethod.Of(element) is not TransmittanceOutcome.Found { Result: var found })
        {
            var lower = surfaces + layers.Sum(layer => layer.Bridged ?? layer.Resistance ?? 0);
            return new(buildup, layers, surfaces, null, lower, lower, [], false, Transmittance.Of(lower));
        }

        return new(
            buildup, layers, surfaces, found.Upper, found.Lower, found.Total, [.. pierced.Zip(found.Fasteners, (layer, amount) => new FixingCorrection(layer, layer.Fixings!, amount))],
            found.CorrectionsApplied, found.Final);
    }

    private static LayerResistance Of(Layer layer, Flow flow)
    {
        double? between = (layer.Kind, layer.Material.Conductivity) switch
        {
            (LayerKind.Sheet, _) => null,
            (LayerKind.Air, _) or (_, null) => AirLayer.Resistance(layer.Thickness, flow),
            (_, { } conductivity) => Transmittance.Resistance(layer.Thickness / 1000, conductivity),
        };
        return new(layer, between, between is { } own && Crossed(layer, own) is { } bridged ? bridged.Parallel : null);
    }

    // rows of one slot, such as two layers of boards, lie on each other and are crossed as one
    private static ElementLayer Row(IGrouping<string, LayerResistance> slot)
    {
        var between = slot.Sum(layer => layer.Resistance!.Value);
        return slot.Count() == 1 && Crossed(slot.First().Layer, between) is { } bridged ? bridged : new ElementLayer.Plain(slot.Key, slot.Sum(layer => layer.Bridged ?? layer.Resistance!.Value));
    }

    private static ElementLayer.Bridged? Crossed(Layer layer, double between) =>
        layer is { Bridging: { Share: > 0 and < 1, Material.Conductivity: { } conductivity } members, Thickness: > 0 } && between > 0
            ? new(layer.Slot, [new(members.Share, Transmittance.Resistance(layer.Thickness / 1000, conductivity), conductivity), new(1 - members.Share, between)])
            : null;

    private static Fasteners Pins(Layer layer, IEnumerable<LayerResistance> rows)
    {
        var (pins, thickness) = (layer.Fixings!, rows.Sum(row => row.Layer.Thickness) / 1000);
        return new(layer.Slot, pins.PerArea, Math.PI / 4 * pins.Diameter * pins.Diameter / 1e6, pins.Material.Conductivity ?? 0, thickness, thickness);
    }
}
