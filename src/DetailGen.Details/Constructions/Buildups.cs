using System.Globalization;
using DetailGen.Details.Parameters;
using DetailGen.Details.Parts;
using DetailGen.Sections;

namespace DetailGen.Details.Constructions;

/// <summary>Layers for schedule, stack note and heat, as the stacks placed them.</summary>
internal static class Buildups
{
    private static readonly Material Air = new("air", "Air", "air", "", "", null, 0, "tabulated");

    /// <param name="y">Level of a line that crosses all layers, mm.</param>
    public static Buildup Wall(Site site, PlacedWall wall, string title, double y)
    {
        var layers = new List<Layer>();
        foreach (var placed in wall.Layers.Where(placed => placed.Width >= 0.001))
        {
            var layer = placed.Layer;
            var material = layer.As == WallBehaviour.Cavity ? Air : site.Sizes.Material(layer.Slot);
            var remark = layer.Repeat is { } keys ? Repeated(site, "", keys.Width, keys.Centres) : layer.Remark;
            layers.Add(new($"W{layers.Count + 1}", layer.Slot, layer.Slot, layer.Name, material, placed.Width, layer.Kind, layer.Function, remark)
            {
                Told = Told(layer.Told, material) + Units(site, layer, material),
                Bridging = layer.Repeat is { } members ? new(site.Sizes.Material(layer.Slot), site.Length(members.Width), site.Length(members.Centres)) : null,
                Fixings = FixingsOf(site, layer.Fixings),
            });
        }

        return new("wall", title, HeatFlow.Horizontal, layers, (new(site.Face(Faces.Weather), y), new(site.Face(Faces.Room), y)));
    }

    /// <param name="x">Station of a line that crosses all layers, mm.</param>
    public static Buildup Roof(Site site, PlacedRoof roof, string title, double x)
    {
        var layers = new List<Layer>();
        foreach (var placed in roof.Layers)
        {
            layers.AddRange(Rows(site, roof, placed, layers.Count + 1));
        }

        return new("roof", title, HeatFlow.Upwards, layers, (new(x, roof.Plane.At(x)), new(x, roof.Foot)));
    }

    /// <summary>The rows of a roof's layer, as a rule one.</summary>
    /// <param name="first">Number of the first.</param>
    private static IEnumerable<Layer> Rows(Site site, PlacedRoof roof, PlacedRoofLayer placed, int first) => placed.Layer.As switch
    {
        RoofBehaviour.Insulation => Boards(site, placed.Layer, first),
        RoofBehaviour.Firring => [], // in the row of the joists
        RoofBehaviour.Joists => [Joists(site, roof, placed, first)],
        RoofBehaviour.Membrane => [Membrane(site, placed, first)],
        _ => [Plain(site, placed, first)],
    };

    // The upper layer first, as the rows go.
    private static IEnumerable<Layer> Boards(Site site, RoofLayer layer, int first)
    {
        var boards = PlacedRoof.Boards(site);
        var material = site.Sizes.Material(layer.Slot);
        for (var number = boards.Count; number >= 1; number--)
        {
            var which = boards.Count == 1 ? "" : number == 1 ? ", lower" : ", upper";
            yield return new(
                $"R{first + boards.Count - number}", layer.Slot, $"{layer.Slot}.{number}", layer.Name + which, material, boards[number - 1], LayerKind.Solid,
                boards.Count > 1 && number == boards.Count ? $"{layer.Function}, staggered" : layer.Function, layer.Remark)
            {
                Told = Told(layer.Told + which, material),
                Fixings = FixingsOf(site, layer.Fixings),
            };
        }
    }

    // What a stack's line ends in: a joist that the section runs along, or the void beside those that it cuts. Its height changes with the fall.
    private static Layer Joists(Site site, PlacedRoof roof, PlacedRoofLayer placed, int number)
    {
        var slot = placed.Layer.Slot;
        var across = site.Sizes.Is("roof.joists", "across");
        var (member, element, told, function) = across
            ? (slot + ".1", "Joists and firrings", "", "structure, air between")
            : ("roof.void", "Void between joists", "void at the upstand", "unventilated air space");
        return new(
            $"R{number}", slot, member, element, Air, placed.Thickness + roof.Find(RoofBehaviour.Firring)!.Thickness, LayerKind.Bridged, function,
            Repeated(site, "joists ", "roof.joist-width", "roof.joist-centres"))
        {
            Told = told,
            Tapers = true,
            Shortest = across ? Repeated(site, "Joists ", "roof.joist-width", "roof.joist-centres", "roof.joist-depth") : "",
            Bridging = new(site.Sizes.Material(slot), site.Length("roof.joist-width"), site.Length("roof.joist-centres")),
        };
    }

    private static Layer Membrane(Site site, PlacedRoofLayer placed, int number)
    {
        var layer = placed.Layer;
        var material = site.Sizes.Material(layer.Slot);
        string With(string said) => string.Join(", ", Laid(site, material).Prepend(said).Where(word => word.Length > 0));
        return new($"R{number}", layer.Slot, layer.Slot, layer.Name, material, placed.Thickness, layer.Kind, layer.Function, With(layer.Remark))
        {
            Told = Told(With(layer.Told), material),
        };
    }

    private static Layer Plain(Site site, PlacedRoofLayer placed, int number)
    {
        var layer = placed.Layer;
        var paved = layer.As == RoofBehaviour.Finish && site.Sizes.Is("roof.finish", "paving");
        var slot = paved ? "roof.paving" : layer.Slot;
        var material = site.Sizes.Material(slot);
        return new($"R{number}", layer.Slot, slot, layer.Name, material, placed.Thickness, layer.Kind, layer.Function, Remark(site, layer, paved))
        {
            Told = Told(paved ? "{material} slabs on supports" : layer.Told + (IsUnbonded(site, layer) ? ", unbonded on a sheet" : ""), material),
            Tapers = layer.As == RoofBehaviour.Screed,
        };
    }

    /// <summary>Null where the detail has none.</summary>
    internal static Fixings? FixingsOf(Site site, LayerFixings? fixings)
    {
        if (fixings is null || !site.Sizes.HasMaterial(fixings.Slot))
        {
            return null;
        }

        double Length(FixingSize size) => size.Key is { } key ? site.Length(key) : (double)size.Micrometres / 1000;
        var area = Length(fixings.Over.Along) * Length(fixings.Over.Across) / 1e6;
        var number = fixings.Count is { } key ? site.Sizes.Number(key) : 1;
        return number == 0 ? null : new(fixings.Name, site.Sizes.Material(fixings.Slot), number / area, Length(fixings.Diameter));
    }

    // How the membrane is laid, and in how many layers where it may be several.
    private static IEnumerable<string> Laid(Site site, Material material)
    {
        if (site.Sizes.Has("roof.membrane-layers"))
        {
            var count = site.Sizes.Number("roof.membrane-layers");
            yield return string.Create(CultureInfo.InvariantCulture, $"{count} {(count == 1 ? "layer" : "layers")}");
        }

        if (material.Fill == "asphalt")
        {
            // It is its weight that holds it, and what sticks to boards tears over their joints, whatever is said of how a sheet would be held (BS 8218:1998, as contractors' specifications give it).
            yield return "on a separating layer";
        }
        else if (site.Sizes.HasChoice("membrane.fixing"))
        {
            yield return site.Sizes.Choice("membrane.fixing") switch { "adhered" => "bonded", "mechanical" => "mechanically fixed", _ => "loose-laid" };
        }
    }

    // Blocks in courses of bricks.
    private static string Units(Site site, WallLayer layer, Material material) =>
        layer.As == WallBehaviour.Leaf && PlacedWall.Course(site, layer.Slot, layer.Course) <= Courses.Brick && !material.IsBrick && !material.IsCast ? ", coursing units" : "";

    // A bonded screed is the usual one.
    private static bool IsUnbonded(Site site, RoofLayer layer) => layer.As == RoofBehaviour.Screed && site.Sizes.HasChoice("roof.screed-bond") && site.Sizes.Is("roof.screed-bond", "unbonded");

    private static string Told(string template, Material material) => template.Replace("{material}", Wording.Plain(material.Name), StringComparison.Ordinal);

    // Short, so that a row takes one line; mm, as the dabs of a lining are told.
    private static string Remark(Site site, RoofLayer layer, bool paved) =>
        layer.As == RoofBehaviour.Screed ? (IsUnbonded(site, layer) ? "unbonded; " : "") + "at upstand"
        : paved ? string.Create(CultureInfo.InvariantCulture, $"slabs {site.Length("roof.paving"):0.##}")
        : layer.Remark;

    private static string Repeated(Site site, string what, string width, string centres, string? depth = null)
    {
        var size = depth is null ? "" : string.Create(CultureInfo.InvariantCulture, $" × {site.Length(depth):0.##}");
        return string.Create(CultureInfo.InvariantCulture, $"{what}{site.Length(width):0.##}{size} at {site.Length(centres):0.##}");
    }
}
