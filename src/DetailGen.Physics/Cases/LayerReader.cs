using System.Collections.Immutable;
using DetailGen.Physics.Layers;
using DetailGen.Physics.Moisture;

namespace DetailGen.Physics.Cases;

/// <summary>Materials of a case.</summary>
/// <param name="Conductivity">W/(m·K).</param>
/// <param name="Mu">Vapour resistance factor, null where unknown.</param>
/// <param name="AirEquivalent">sd in m whatever the thickness; null where unknown.</param>
internal sealed record CaseMaterial(double Conductivity, double? Mu, double? AirEquivalent);

/// <summary>Reads layers, from inside to outside, in the forms that all kinds of case share. mm become m here.</summary>
internal static class LayerReader
{
    internal static Dictionary<string, CaseMaterial> Materials(Fields fields)
    {
        var materials = new Dictionary<string, CaseMaterial>(StringComparer.Ordinal);
        if (fields.Map("materials") is { } map)
        {
            foreach (var entry in map.Entries)
            {
                if (map.MapOf(entry.Value, map.Path(entry.Key), "lambda_w_mk", "mu", "sd_m") is { } material)
                {
                    materials[entry.Key] = new(
                        material.Needed("lambda_w_mk", Bound.Conductivity), material.Number("mu", Bound.VapourFactor), material.Number("sd_m", Bound.AirEquivalent));
                }
            }
        }

        return materials;
    }

    /// <summary>Layers for a U-value.</summary>
    internal static ImmutableArray<ElementLayer> Layers(Fields fields, IReadOnlyDictionary<string, CaseMaterial> materials) =>
        [.. fields.NeededList("layers").Select(item => Layer(fields, item.Item, item.Path, materials)).OfType<ElementLayer>()];

    /// <summary>Layers for a moisture calculation.</summary>
    internal static ImmutableArray<VapourLayer> VapourLayers(Fields fields, IReadOnlyDictionary<string, CaseMaterial> materials) =>
        [.. fields.NeededList("layers").Select(item => VapourLayer(fields, item.Item, item.Path, materials)).OfType<VapourLayer>()];

    private static readonly string[] LayerKeys = ["name", "material", "d_mm", "lambda_w_mk", "r_m2k_w", "air", "parts", "group", "tapered"];

    private static readonly string[] FormKeys = ["r_m2k_w", "air", "parts", "tapered"];

    private static ElementLayer? Layer(Fields owner, Written written, string path, IReadOnlyDictionary<string, CaseMaterial> materials)
    {
        if (owner.MapOf(written, path, LayerKeys) is not { } fields)
        {
            return null;
        }

        var material = Material(fields, materials);
        var name = Name(fields);
        switch (Form(fields))
        {
            case "parts":
                return Bridged(fields, name);
            case "air":
                return Air(fields, name);
            case "tapered":
                return new ElementLayer.Tapered(name, Conductivity(fields, material), [.. fields.NeededList("tapered").Select(item => Piece(fields, item.Item, item.Path)).OfType<TaperedPiece>()]);
            case "r_m2k_w":
                return new ElementLayer.Plain(name, fields.Needed("r_m2k_w", Bound.Resistance));
            case "lambda_w_mk":
                return new ElementLayer.Plain(name, fields.Needed("d_mm", Bound.Thickness) / 1000 / Conductivity(fields, material));
            default:
                return null;
        }
    }

    /// <summary>The key that says which form the layer has; null and a fault where there is none or more than one.</summary>
    private static string? Form(Fields fields)
    {
        string[] own = [.. FormKeys.Where(fields.Has)];
        // A material beside a form of its own names the layer; a conductivity beside it would be a second form, but for a tapered layer, which needs one.
        string[] forms = own is ["tapered"] || !fields.Has("lambda_w_mk") ? own : [.. own, "lambda_w_mk"];
        if (fields.Has("group") && !fields.Has("parts"))
        {
            fields.Fault("group", Messages.GroupWithoutParts(fields.Here));
        }

        if (forms.Length > 1)
        {
            fields.Fault(Messages.TwoForms(fields.Here, forms));
            return null;
        }

        if (forms.Length == 0 && !fields.Has("material"))
        {
            fields.Fault(Messages.NoForm(fields.Here));
            return null;
        }

        return forms.Length == 1 ? forms[0] : "lambda_w_mk";
    }

    private static string Name(Fields fields)
    {
        if (fields.Words("name") is { } name)
        {
            return name;
        }

        if (fields.Words("material") is { } material)
        {
            return material;
        }

        if (!fields.Has("name") && !fields.Has("material"))
        {
            fields.Fault(Messages.NoName(fields.Here));
        }

        return "";
    }

    private static CaseMaterial? Material(Fields fields, IReadOnlyDictionary<string, CaseMaterial> materials)
    {
        if (fields.Words("material") is not { } name)
        {
            return null;
        }

        if (materials.TryGetValue(name, out var material))
        {
            return material;
        }

        fields.Fault("material", Messages.UnknownName(fields.Path("material"), name, [.. materials.Keys]));
        return null;
    }

    private static double Conductivity(Fields fields, CaseMaterial? material)
    {
        if (fields.Has("lambda_w_mk") && fields.Has("material"))
        {
            fields.Fault(Messages.EitherOr(fields.Here, "lambda_w_mk", "material", both: true));
        }

        return fields.Number("lambda_w_mk", Bound.Conductivity) ?? material?.Conductivity ?? (fields.Has("material") ? double.NaN : fields.Missing("lambda_w_mk", double.NaN));
    }

    private static ElementLayer.Air? Air(Fields fields, string name)
    {
        var thickness = fields.Needed("d_mm", Bound.Thickness) / 1000;
        if (fields.Map("air", "emissivity", "mean_t_c", "step_k", "openings_mm2") is not { } air)
        {
            return null;
        }

        double[] emissivities = air.Has("emissivity") ? [.. air.List("emissivity").Select(item => air.NumberOf(item.Item, item.Path, Bound.Fraction))] : [0.9, 0.9];
        if (emissivities.Length != 2)
        {
            air.Fault("emissivity", Messages.Coordinates(air.Path("emissivity"), emissivities.Length, "2, one of each face"));
            return null;
        }

        return new(name, new(
            thickness, emissivities[0], emissivities[1], air.Number("mean_t_c", Bound.AirTemperature) ?? 10, air.Number("step_k", Bound.TemperatureStep) ?? 5,
            air.Number("openings_mm2", Bound.SmallArea) ?? 0));
    }

    private static ElementLayer.Bridged Bridged(Fields fields, string name)
    {
        var thickness = fields.Number("d_mm", Bound.Thickness);
        ImmutableArray<BridgedPart> parts = [.. fields.NeededList("parts").Select(item => Part(fields, item.Item, item.Path, thickness)).OfType<BridgedPart>()];
        var sum = parts.Sum(part => part.Fraction);
        if (parts.Length > 0 && !double.IsNaN(sum) && Math.Abs(sum - 1) > 1e-6)
        {
            fields.Fault("parts", Messages.FractionsDoNotSum($"{name} ({fields.Path("parts")})", Messages.Number(sum)));
        }

        return new(name, parts, fields.Words("group"));
    }

    private static BridgedPart? Part(Fields owner, Written written, string path, double? thickness)
    {
        if (owner.MapOf(written, path, "fraction", "lambda_w_mk", "r_m2k_w") is not { } fields)
        {
            return null;
        }

        var fraction = fields.Needed("fraction", Bound.Fraction);
        var conductivity = fields.Number("lambda_w_mk", Bound.Conductivity);
        if (fields.Has("lambda_w_mk") == fields.Has("r_m2k_w"))
        {
            fields.Fault(Messages.EitherOr(path, "lambda_w_mk", "r_m2k_w", both: fields.Has("r_m2k_w")));
            return null;
        }

        if (conductivity is null)
        {
            return new(fraction, fields.Needed("r_m2k_w", Bound.Resistance));
        }

        return new(fraction, (thickness ?? (owner.Has("d_mm") ? double.NaN : owner.Missing("d_mm", double.NaN))) / 1000 / conductivity.Value, conductivity);
    }

    private static TaperedPiece? Piece(Fields owner, Written written, string path)
    {
        if (owner.MapOf(written, path, "area_m2", "d_mm") is not { } fields)
        {
            return null;
        }

        ImmutableArray<double> thicknesses = [.. fields.NeededList("d_mm").Select(item => fields.NumberOf(item.Item, item.Path, Bound.ThicknessOrNone) / 1000)];
        if (thicknesses.Length is not (0 or 2 or 3))
        {
            fields.Fault("d_mm", Messages.Coordinates(fields.Path("d_mm"), thicknesses.Length, "2 (rectangle) or 3 (triangle)"));
        }

        return new(fields.Needed("area_m2", Bound.Area), thicknesses);
    }

    private static VapourLayer? VapourLayer(Fields owner, Written written, string path, IReadOnlyDictionary<string, CaseMaterial> materials)
    {
        if (owner.MapOf(written, path, [.. LayerKeys, "mu", "sd_m"]) is not { } fields)
        {
            return null;
        }

        if (FormKeys.Skip(1).FirstOrDefault(fields.Has) is { } form)
        {
            fields.Fault(form, Messages.OnlyPlainOrGiven(path, form));
            return null;
        }

        var material = Material(fields, materials);
        var name = Name(fields);
        var thickness = fields.Number("d_mm", Bound.Thickness) / 1000;
        var resistance = Form(fields) switch
        {
            "r_m2k_w" => fields.Needed("r_m2k_w", Bound.Resistance),
            "lambda_w_mk" => (thickness ?? fields.Missing("d_mm", double.NaN)) / Conductivity(fields, material),
            _ => double.NaN,
        };
        return new(name, resistance, AirEquivalent(fields, name, path, thickness, material));
    }

    /// <summary>sd in m: the layer's own figure, else its material's.</summary>
    private static double AirEquivalent(Fields fields, string name, string path, double? thickness, CaseMaterial? material)
    {
        if (fields.Has("mu") && fields.Has("sd_m"))
        {
            fields.Fault(Messages.EitherOr(path, "mu", "sd_m", both: true));
            return double.NaN;
        }

        var (mu, whole) = fields.Has("mu") || fields.Has("sd_m")
            ? (fields.Number("mu", Bound.VapourFactor), fields.Number("sd_m", Bound.AirEquivalent))
            : (material?.Mu, material?.AirEquivalent);
        switch (mu, whole, thickness)
        {
            case (_, { } equivalent, _):
                return equivalent;
            case ({ } factor, null, { } metres):
                return factor * metres;
            case ({ }, null, null):
                fields.Fault(Messages.MuWithoutThickness(name, path));
                return double.NaN;
            default:
                fields.Fault(Messages.NoVapourFigure(name, path));
                return double.NaN;
        }
    }
}
