using DetailGen.Details.Reading;
using DetailGen.Details.Reading.Shapes;

namespace DetailGen.Details.Parameters;

/// <summary>Whether a wall or roof describes all that any junction takes from it, and names nothing in its layers that it does not have.</summary>
internal static class ConstructionCheck
{
    /// <summary>Sizes and choices that builders take, by the layer for which they take them.</summary>
    private static readonly (string Layer, string[] Sizes)[] Taken =
    [
        ("leaf", ["wall.thickness", "wall.bearing-leaf"]),
        ("cavity", ["tie.length"]),
        ("membrane", ["roof.membrane", "roof.finish-thickness", "roof.fall", "roof.fall-run", "roof.bearing", "roof.depth", "roof.tied-to-wall"]),
        ("insulation", ["roof.insulation", "roof.board-lower", "roof.board-upper", "roof.board-stagger"]),
        ("vapour-control", ["roof.vcl", "vcl.lap"]),
        ("deck", ["roof.deck-gap"]),
        ("slab", ["roof.slab-bearing"]),
        ("joists", ["roof.joists", "roof.joist-width", "roof.joist-centres", "roof.joist-wall-gap", "roof.joist-grade"]),
    ];

    public static Outcome<Component> Of(Outcome<Component> read)
    {
        if (!read.IsGood || read.Value.Kind == ComponentKind.Junction)
        {
            return read;
        }

        List<Diagnostic> faults = [.. Faults(read.Value)];
        return faults.Count == 0 ? read : Outcome.Bad<Component>(faults);
    }

    private static IEnumerable<Diagnostic> Faults(Component one)
    {
        string[] keys = [.. one.Parameters.Select(parameter => parameter.Key), .. one.Derived.Select(derived => derived.Key)];
        List<MapNode> layers = [.. (one.Layers?.Items ?? []).Cast<MapNode>()];
        string[] needed = one.Kind == ComponentKind.Wall ? ["leaf"]
            : ["membrane", "insulation", "vapour-control", .. layers.Exists(layer => layer.Must("as") == "slab") ? (string[])["slab", "screed"] : ["joists", "deck", "firring"]];
        string[] behaviours = [.. layers.Select(layer => layer.Must("as"))];
        foreach (var word in needed.Except(behaviours))
        {
            yield return Messages.LacksLayer(one.At, one.Id, word);
        }

        foreach (var (layer, key) in Taken.Where(taken => behaviours.Contains(taken.Layer)).SelectMany(taken => taken.Sizes, (taken, key) => (taken.Layer, key)).Where(taken => !keys.Contains(taken.key)))
        {
            yield return Messages.LacksSize(one.At, one.Id, key, layer);
        }

        var slots = one.Slots.Select(slot => slot.Key).Distinct().ToArray();
        foreach (var layer in layers)
        {
            foreach (var (node, _) in Named(layer, "slot", "head-slot").Where(named => !slots.Contains(named.Node.Text) && !IsAir(layer)))
            {
                yield return Messages.UnknownSlot(node.At, node.Text, slots);
            }

            var sizes = Named(layer, layer["thickness"] is null ? "slot" : "thickness", "centres", "width").Concat(layer["fixings"] is MapNode fixings ? Named(fixings, "count", "diameter", "into", "over") : []);
            foreach (var (node, key) in sizes.Where(named => FixingSize.Of(named.Node.Text).Key is { } size && !keys.Contains(size)))
            {
                yield return Messages.UnknownSize(node.At, key, node.Text, keys);
            }
        }
    }

    // air without anything in it is of no material
    private static bool IsAir(MapNode layer) => layer.Text("kind") == "air" && layer["centres"] is null;

    private static IEnumerable<(ScalarNode Node, string Key)> Named(MapNode map, params string[] keys) =>
        from key in keys
        from node in map[key] is ListNode list ? list.Items : map[key] is { } single ? [single] : []
        select ((ScalarNode)node, key);
}
