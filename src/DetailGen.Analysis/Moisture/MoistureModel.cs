using DetailGen.Analysis.Heat;
using DetailGen.Physics.Layers;
using DetailGen.Sections;

namespace DetailGen.Analysis.Moisture;

/// <summary>A layer on its way from the room outwards.</summary>
/// <param name="Resistance">Thermal, m²·K/W; 0 for a sheet.</param>
/// <param name="LeastSd">Equivalent air layer with the lesser of the material's two vapour factors, m.</param>
/// <param name="MostSd">The same with the greater, m.</param>
public sealed record MoistureLayer(Layer Layer, double Resistance, double LeastSd, double MostSd)
{
    /// <summary>read, memory or common-practice; null where no figure of the material goes in (air).</summary>
    public string? Confidence => Layer.IsAir ? null : Layer.Material.Vapour!.Confidence;
}

/// <summary>A wall or roof away from the junction as plain layers, ready for calculations of condensation.</summary>
/// <param name="Layers">From the room outwards.</param>
/// <param name="LeftOut">What lies over the water barrier, open to the rain, from inside.</param>
/// <param name="Rsi">Inside film of the heat flow, m²·K/W.</param>
/// <param name="Rse">m²·K/W.</param>
public sealed record MoistureModel(Buildup Buildup, IReadOnlyList<MoistureLayer> Layers, IReadOnlyList<Layer> LeftOut, double Rsi, double Rse)
{
    /// <summary>Equivalent air layer of air, however thick, in m.</summary>
    /// <remarks>ISO 13788:2012 (clause still to be read; the check cases count a void so, from memory).</remarks>
    public const double SdOfAir = 0.01;

    /// <exception cref="ArgumentException">A material's resistance to vapour is not known, or no layer is left.</exception>
    public static MoistureModel Of(Buildup buildup, Section section)
    {
        var resistances = BuildupResistance.Of(buildup);
        // outside first: what lies before the outermost water barrier stands in the rain
        var cover = buildup.Layers.TakeWhile(layer => !IsWaterBarrier(layer, section)).Count();
        cover = cover == buildup.Layers.Count ? 0 : cover; // none: nothing keeps the rain off, all layers count
        MoistureLayer[] layers = [.. resistances.Layers.Skip(cover).Reverse().Select(Of)];
        if (layers.Length == 0)
        {
            throw new ArgumentException($"The build-up {buildup.Id} has no layers.", nameof(buildup));
        }

        var flow = buildup.Flow == HeatFlow.Upwards ? Flow.Upwards : Flow.Horizontal;
        return new(buildup, layers, [.. buildup.Layers.Take(cover).Reverse()], SurfaceResistance.Inside(flow), SurfaceResistance.Outside);
    }

    /// <summary>All layers with both films, m²·K/W.</summary>
    public double Total => Rsi + Layers.Sum(layer => layer.Resistance) + Rse;

    private static bool IsWaterBarrier(Layer layer, Section section) =>
        section.Parts.FirstOrDefault(part => part.Id == layer.PartId) is { } part && part.Roles.HasFlag(Roles.WaterBarrier);

    private static MoistureLayer Of(LayerResistance row)
    {
        var layer = row.Layer;
        if (layer.IsAir)
        {
            return new(layer, row.Resistance ?? 0, SdOfAir, SdOfAir);
        }

        var vapour = layer.Material.Vapour ?? throw new ArgumentException($"The resistance of {layer.Material.Id} to vapour is not known.", nameof(row));
        var (dry, wet) = vapour.Sd is { } sheet ? (sheet, sheet) : (vapour.MuDry * layer.Thickness / 1000, vapour.MuWet * layer.Thickness / 1000);
        return new(layer, row.Resistance ?? 0, Math.Min(dry, wet), Math.Max(dry, wet));
    }
}
