using DetailGen.Physics.Layers;

namespace DetailGen.Physics.Cases;

/// <summary>Reads cases of kind <c>u-value</c>.</summary>
internal static class UValueCaseReader
{
    internal static readonly string[] Keys = ["rsi_m2k_w", "rse_m2k_w", "layers", "heat_flow", "rse_sheltered_m2k_w", "three_percent_rule", "corrections"];

    internal static Element Read(Fields fields)
    {
        var inside = fields.Needed("rsi_m2k_w", Bound.Resistance);
        return new(
            inside, fields.Needed("rse_m2k_w", Bound.Resistance), fields.Number("rse_sheltered_m2k_w", Bound.Resistance) ?? inside,
            LayerReader.Layers(fields, LayerReader.Materials(fields)), FlowOf(fields.Choice("heat_flow", "horizontal", "up", "down")))
        {
            Corrections = Corrections(fields),
        };
    }

    private static Flow FlowOf(string? word) => word switch
    {
        "up" => Flow.Upwards,
        "down" => Flow.Downwards,
        _ => Flow.Horizontal,
    };

    private static Corrections Corrections(Fields fields)
    {
        var small = fields.Flag("three_percent_rule") ?? true;
        return fields.Map("corrections", "air_gaps", "fasteners", "rain") is { } map ? new(Gaps(map), Rain(map), small) { Fasteners = Pins(map) is { } pins ? [pins] : [] } : new(SmallOnesAreLeftOut: small);
    }

    private static AirGaps? Gaps(Fields map)
    {
        if (map.Map("air_gaps", "layer", "level") is not { } gaps)
        {
            return null;
        }

        var level = gaps.Needed("level", new(value => value is 0 or 1 or 2, "0, 1 or 2"));
        return new(gaps.NeededWords("layer") ?? "", double.IsNaN(level) ? 0 : (int)level);
    }

    private static Fasteners? Pins(Fields map)
    {
        if (map.Map("fasteners", "layer", "per_m2", "area_mm2", "diameter_mm", "lambda_w_mk", "d0_mm", "d1_mm") is not { } pins)
        {
            return null;
        }

        if (pins.Has("area_mm2") == pins.Has("diameter_mm"))
        {
            pins.Fault(Messages.EitherOr(pins.Here, "area_mm2", "diameter_mm", both: pins.Has("area_mm2")));
        }

        var section = pins.Number("area_mm2", Bound.FixingArea) ?? Math.PI / 4 * Math.Pow(pins.Number("diameter_mm", Bound.FixingDiameter) ?? double.NaN, 2);
        var insulation = pins.Needed("d0_mm", Bound.Thickness);
        var within = pins.Number("d1_mm", new(value => value > 0 && !(value > insulation), "above 0 and at most d0_mm")) ?? insulation;
        return new(
            pins.NeededWords("layer") ?? "", pins.Needed("per_m2", Bound.PerSquareMetre), section / 1e6, pins.Needed("lambda_w_mk", Bound.Conductivity), insulation / 1000, within / 1000);
    }

    private static RainOnInverted? Rain(Fields map) => map.Map("rain", "layer", "p_mm_day", "fx") is { } rain
        ? new(rain.NeededWords("layer") ?? "", rain.Needed("p_mm_day", Bound.Rain), rain.Needed("fx", Bound.RainFactor))
        : null;
}
