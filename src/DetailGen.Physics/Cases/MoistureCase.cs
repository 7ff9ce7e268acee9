using System.Collections.Immutable;
using DetailGen.Physics.Moisture;

namespace DetailGen.Physics.Cases;

/// <summary>A case of kind <c>moisture</c>.</summary>
/// <param name="SurfaceHumidity">Allowed at the inside surface, above 0 to 1.</param>
/// <param name="Interstitial">Null where only the surface is looked at.</param>
internal sealed record MoistureCase(Climate Climate, double SurfaceHumidity, CondensationCase? Interstitial);

/// <summary>Reads cases of kind <c>moisture</c>.</summary>
internal static class MoistureCaseReader
{
    internal static readonly string[] Keys = ["layers", "rsi_m2k_w", "rse_m2k_w", "climate", "surface_rh_max", "max_strip_r_m2k_w", "initial", "start_month"];

    /// <summary>Most strips that layers are cut into.</summary>
    private const int MostStrips = 2000;

    /// <summary>Null where faults leave nothing to calculate.</summary>
    internal static MoistureCase? Read(Fields fields, Faults faults)
    {
        var before = faults.Count;
        var climate = fields.Map("climate", "external_t_c", "external_rh", "internal_t_c", "internal_rh", "vapour_excess_pa", "vapour_excess_factor") is { } map
            ? ReadClimate(map)
            : fields.Has("climate") ? null : fields.Missing<Climate?>("climate", null);
        var allowed = fields.Number("surface_rh_max", Bound.Fraction) ?? 0.8;
        var strip = fields.Number("max_strip_r_m2k_w", Bound.StripResistance) ?? 0.25;
        var materials = LayerReader.Materials(fields);
        ImmutableArray<VapourLayer> layers = fields.Has("layers") ? LayerReader.VapourLayers(fields, materials) : [];
        var (inside, outside) = fields.Has("layers")
            ? (fields.Needed("rsi_m2k_w", Bound.Resistance), fields.Needed("rse_m2k_w", Bound.Resistance))
            : (fields.Number("rsi_m2k_w", Bound.Resistance) ?? 0, fields.Number("rse_m2k_w", Bound.Resistance) ?? 0);
        var start = fields.Choice("start_month", [.. Month.Names]) is { } month ? Month.Names.IndexOf(month) : (int?)null;
        var initial = Initial(fields, layers);
        if (faults.Count == before && layers.Length > 0)
        {
            Whole(fields, layers, inside + outside, strip);
        }

        return faults.Count > before || climate is null
            ? null
            : new(climate, allowed, layers.Length > 0 ? new(layers, inside, outside, climate, strip, initial, start) : null);
    }

    private static void Whole(Fields fields, ImmutableArray<VapourLayer> layers, double films, double strip)
    {
        if (!(layers.Sum(layer => layer.AirEquivalent) > 0))
        {
            fields.Fault("layers", Messages.AllVapourPasses());
        }

        if (!(films + layers.Sum(layer => layer.Resistance) > 0))
        {
            fields.Fault("layers", Messages.NoThermalResistance());
        }

        var strips = layers.Sum(layer => Math.Ceiling(layer.Resistance / strip)) + layers.Length;
        if (strips > MostStrips)
        {
            fields.Fault("layers", Messages.TooManyStrips(strips, MostStrips));
        }
    }

    private static ImmutableArray<InitialWater> Initial(Fields fields, ImmutableArray<VapourLayer> layers)
    {
        if (!fields.Has("initial"))
        {
            return [];
        }

        var water = ImmutableArray.CreateBuilder<InitialWater>();
        foreach (var (item, path) in fields.List("initial"))
        {
            if (fields.MapOf(item, path, "after_layer", "mass_g_m2") is not { } entry)
            {
                continue;
            }

            var (after, mass) = (entry.Needed("after_layer"), entry.Needed("mass_g_m2", Bound.Water));
            if (!double.IsNaN(after) && !(double.IsInteger(after) && after >= 1 && after < layers.Length))
            {
                entry.Fault("after_layer", Messages.NoSuchInterface(entry.Path("after_layer"), Messages.Number(after), layers.Length));
            }
            else if (!double.IsNaN(after) && !(layers.Take((int)after).Sum(layer => layer.AirEquivalent) > 0 && layers.Skip((int)after).Sum(layer => layer.AirEquivalent) > 0))
            {
                entry.Fault("after_layer", Messages.InterfaceAtSurface(entry.Path("after_layer")));
            }
            else if (!double.IsNaN(after))
            {
                water.Add(new((int)after, mass));
            }
        }

        return water.ToImmutable();
    }

    private static Climate? ReadClimate(Fields climate)
    {
        var outside = Months(climate, "external_t_c", Bound.AirTemperature);
        var humidity = Months(climate, "external_rh", Bound.Humidity);
        var inside = Months(climate, "internal_t_c", Bound.AirTemperature);
        if (climate.Has("internal_rh") == climate.Has("vapour_excess_pa"))
        {
            climate.Fault(Messages.EitherOr(climate.Here, "internal_rh", "vapour_excess_pa", both: climate.Has("internal_rh")));
            return null;
        }

        var factor = climate.Number("vapour_excess_factor", Bound.Between(1, 10, "")) ?? 1;
        var own = climate.Has("internal_rh") ? Months(climate, "internal_rh", Bound.Humidity) : Months(climate, "vapour_excess_pa", Bound.VapourExcess);
        if (outside is not { } outer || humidity is not { } wet || inside is not { } inner || own is not { } given)
        {
            return null;
        }

        var single = climate.At.Get("vapour_excess_pa") is Written.Number or Written.List { Items.Count: 1 };
        ImmutableArray<double> external = [.. outer.Zip(wet, (temperature, share) => share * Saturation.Pressure(temperature))];
        return new(outer, external, inner,
        [
            .. Enumerable.Range(0, 12).Select(month => climate.Has("internal_rh")
                ? given[month] * Saturation.Pressure(inner[month])
                : external[month] + factor * (single ? VapourExcess.At(outer[month], given[month]) : given[month])),
        ]);
    }

    /// <summary>One number for all months, or twelve; null with a fault where it is something else or missing.</summary>
    private static ImmutableArray<double>? Months(Fields fields, string key, Bound bound)
    {
        switch (fields.At.Get(key))
        {
            case null:
                return fields.Missing<ImmutableArray<double>?>(key, null);
            case Written.List list when list.Items.Count is not (1 or 12):
                fields.Fault(key, Messages.MonthCount(fields.Path(key), list.Items.Count));
                return null;
            case Written.List list:
                var numbers = fields.ListOf(list, fields.Path(key)).Select(item => fields.NumberOf(item.Item, item.Path, bound)).ToList();
                return numbers.Count == 1 ? [.. Enumerable.Repeat(numbers[0], 12)] : [.. numbers];
            case { } written:
                return [.. Enumerable.Repeat(fields.NumberOf(written, fields.Path(key), bound), 12)];
        }
    }
}
