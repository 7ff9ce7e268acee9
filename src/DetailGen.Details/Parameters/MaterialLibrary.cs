using DetailGen.Details.Reading;
using DetailGen.Details.Reading.Shapes;
using DetailGen.Sections;

namespace DetailGen.Details.Parameters;

/// <summary>All materials; a material is read when somebody asks for it.</summary>
public sealed class MaterialLibrary
{
    private static IReadOnlyList<string> NeedsUnlessAir { get; } = ["fill", "layer", "conductivity", "density"];

    private readonly EntryIndex _index;

    private MaterialLibrary(EntryIndex index) => _index = index;

    public static MaterialLibrary Load(Shelf shelf) => new(new(shelf.Under("presets/materials/"), ListFaults));

    public static MaterialLibrary Load() => Load(Shelf.Shipped);

    /// <summary>In ordinal order.</summary>
    public IReadOnlyList<string> Ids => _index.Ids;

    /// <summary>Faults of a practice's own files; empty for those that ship.</summary>
    public IReadOnlyList<Diagnostic> Faults => _index.Faults;

    /// <summary>Null where there is no such material.</summary>
    public DesignMaterial? Find(string id) => _index.Find(id) is { } node ? Read(node) : null;

    /// <summary>Every material, by id in ordinal order.</summary>
    public IReadOnlyList<DesignMaterial> All => [.. Ids.Select(id => Find(id)!)];

    /// <summary>Checks a file of materials as a whole.</summary>
    internal static IReadOnlyList<Diagnostic> ListFaults(Node root)
    {
        var faults = ShapeCheck.Check(root, MaterialShape.Shape);
        return faults.Count > 0 ? faults : [.. ((ListNode)root).Items.OfType<MapNode>().SelectMany(node => AirFaults(node).Concat(UnknownFaults(node)))];
    }

    // only air has neither fill nor layer nor values of its own
    private static IEnumerable<Diagnostic> AirFaults(MapNode node) => node.Text("kind") == "air"
        ? []
        : NeedsUnlessAir.Where(key => node[key] is null).Select(key => Messages.MissingKey(node.At, key, node.Must("id")));

    // a value without a word on how far it is known
    private static IEnumerable<Diagnostic> UnknownFaults(MapNode node) =>
        node["confidence"] is not MapNode known ? []
        : MaterialShape.ValuesKnown.Where(key => node[key] is not null && known[key] is null).Select(key => Messages.MissingKey(known.At, key, $"{node.Must("id")}.confidence"));

    private static DesignMaterial Read(MapNode node)
    {
        var mu = (MapNode)node["mu"]!;
        var confidence = (MapNode)node["confidence"]!;
        var material = new Material(
            node.Must("id"), node.Must("name"), node.Must("kind"), node.Text("fill") ?? "", node.Text("layer") ?? "",
            (double?)node.Number("conductivity"), (double)(node.Number("density") ?? 0), node.Must("origin"))
        {
            Vapour = new((double)mu.Number("dry")!, (double)mu.Number("wet")!, (double?)(node.Number("sd") / 1000), confidence.Must("vapour")),
        };
        return new(material, (double)node.Number("specific-heat")!,
            node.Text("fire"),
            new(confidence.Text("conductivity"), confidence.Text("density"), confidence.Must("specific-heat"), confidence.Must("vapour"), confidence.Text("fire")),
            SourceShape.Read((MapNode)node["source"]!), node.Text("note"), node.At);
    }
}
