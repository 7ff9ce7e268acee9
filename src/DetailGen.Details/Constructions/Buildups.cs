using System.Globalization;
using DetailGen.Details.Parts;
using DetailGen.Sections;

namespace DetailGen.Details.Constructions;

/// <summary>Layers for schedule, stack note and heat, as the stacks placed them.</summary>
internal static class Buildups
{
    private static readonly Material Air = new("air", "Air", "air", "", "", null, 0, "tabulated");

    /// <param name="y">Level of a line that crosses all layers, mm.</param>
    public static Buildup Wall(Site site, WallStack wall, string title, double y)
    {
        var layers = new List<Layer>();
        void Add(WallLayer layer, string slot, string name, Material material, double thickness, LayerKind kind, string function, string remark) =>
            layers.Add(new($"W{layers.Count + 1}", slot, slot, name, material, thickness, kind, function, remark));
        foreach (var placed in wall.Layers)
        {
            var layer = placed.Layer;
            if (layer.As != WallBehaviour.Cavity)
            {
                var remark = layer.Repeat is { } keys ? Repeated(site, layer.Name, keys.Width, keys.Centres) : layer.Remark;
                Add(layer, layer.Slot, layer.Name, site.Sizes.Material(layer.Slot), placed.Width, layer.Kind, layer.Function, remark);
                continue;
            }

            var filled = layer.Insulation is null ? 0 : site.Sizes.Is(layer.Fill ?? "", "partial") ? site.Length(layer.Insulation) : placed.Width;
            if (placed.Width - filled > 0)
            {
                Add(layer, layer.Slot, "Clear cavity", Air, placed.Width - filled, LayerKind.Air, layer.Function, "");
            }

            if (filled > 0)
            {
                Add(layer, layer.Insulation!, "Cavity insulation", site.Sizes.Material(layer.Insulation!), filled, LayerKind.Solid, "insulation", "");
            }
        }

        return new("wall", title, HeatFlow.Horizontal, layers, (new(site.Face(Faces.Weather), y), new(site.Face(Faces.Room), y)));
    }

    /// <param name="x">Station of a line that crosses all layers, mm.</param>
    public static Buildup Roof(Site site, RoofStack roof, string title, double x)
    {
        var layers = new List<Layer>();
        var firring = roof.Find(RoofBehaviour.Firring);
        foreach (var placed in roof.Layers)
        {
            var layer = placed.Layer;
            var reference = $"R{layers.Count + 1}";
            var material = site.Sizes.Material(layer.Slot);
            switch (layer.As)
            {
                case RoofBehaviour.Insulation:
                    var count = (int)site.Sizes.Number("roof.insulation-layers");
                    for (var number = count; number >= 1; number--)
                    {
                        var name = count == 1 ? layer.Name : layer.Name + (number == 1 ? ", lower layer" : ", upper layer");
                        layers.Add(new(
                            $"R{layers.Count + 1}", layer.Slot, $"{layer.Slot}.{number}", name, material, placed.Thickness / count, LayerKind.Solid,
                            layer.Function, count == 1 ? layer.Remark : "joints staggered"));
                    }

                    break;
                case RoofBehaviour.Firring:
                    break;
                case RoofBehaviour.Joists:
                    layers.Add(new(
                        reference, layer.Slot, site.Sizes.Is("roof.joists", "across") ? layer.Slot + ".1" : "roof.void", "Void", Air,
                        placed.Thickness + firring!.Thickness, LayerKind.Bridged, layer.Function,
                        Repeated(site, "joists and firrings", "roof.joist-width", "roof.joist-centres")));
                    break;
                default:
                    layers.Add(new(reference, layer.Slot, layer.Slot, layer.Name, material, placed.Thickness, Kind(site, layer), layer.Function, Remark(layer)));
                    break;
            }
        }

        return new("roof", title, HeatFlow.Upwards, layers, (new(x, roof.Plane.At(x)), new(x, roof.Foot)));
    }

    private static LayerKind Kind(Site site, RoofLayer layer) => layer.As switch
    {
        RoofBehaviour.Membrane or RoofBehaviour.VapourControl => LayerKind.Sheet,
        RoofBehaviour.Finish when site.Sizes.Is("roof.finish", "paving") => LayerKind.Sheet, // on open supports: outside air beneath
        _ => LayerKind.Solid,
    };

    private static string Remark(RoofLayer layer) => layer.As == RoofBehaviour.Screed ? "tapers; thickness at the upstand" : layer.Remark;

    private static string Repeated(Site site, string what, string width, string centres) => string.Create(
        CultureInfo.InvariantCulture, $"{what.ToLowerInvariant()} {site.Length(width):0.##} wide at {site.Length(centres):0.##} centres");
}
