using DetailGen.Details.Parameters;
using DetailGen.Details.Reading;
using DetailGen.Details.Reading.Shapes;

namespace DetailGen.Details.Climates;

/// <summary>All climates; a climate is read when somebody asks for it.</summary>
public sealed class ClimateLibrary
{
    private readonly EntryIndex _index;

    private ClimateLibrary(EntryIndex index) => _index = index;

    public static ClimateLibrary Load(Shelf shelf) => new(new(shelf.Under("presets/climates/"), ListFaults));

    /// <summary>What ships.</summary>
    public static ClimateLibrary Load() => Load(Shelf.Shipped);

    /// <summary>In ordinal order.</summary>
    public IReadOnlyList<string> Ids => _index.Ids;

    /// <summary>Faults of a practice's own files; empty for those that ship.</summary>
    public IReadOnlyList<Diagnostic> Faults => _index.Faults;

    /// <summary>Every climate, by id in ordinal order.</summary>
    public IReadOnlyList<DesignClimate> All => [.. Ids.Select(id => Find(id)!)];

    /// <summary>Null where there is no such climate.</summary>
    public DesignClimate? Find(string id) => _index.Find(id) is { } node ? Read(node) : null;

    /// <summary>The climate of a nation's details where the preset names none: a practice's own before those that ship, then the first by id; null where none says so.</summary>
    public DesignClimate? UsualFor(string nation) => All.Where(climate => climate.UsualFor.Contains(nation, StringComparer.Ordinal))
        .OrderByDescending(climate => _index.OfPractice.Contains(climate.Id)).ThenBy(climate => climate.Id, StringComparer.Ordinal).FirstOrDefault();

    /// <summary>Checks a file of climates as a whole.</summary>
    internal static IReadOnlyList<Diagnostic> ListFaults(Node root)
    {
        var faults = ShapeCheck.Check(root, ClimateShape.Shape);
        return faults.Count > 0
            ? faults
            : [.. ((ListNode)root).Items.OfType<MapNode>().SelectMany(Months).Where(month => month["humidity"] is null == month["vapour-pressure"] is null)
                .Select(month => Messages.OneOf(month.At, "A month", "humidity", "vapour-pressure"))];
    }

    private static IEnumerable<MapNode> Months(MapNode climate) => ClimateShape.Months.Select(month => (MapNode)((MapNode)climate["months"]!)[month]!);

    private static DesignClimate Read(MapNode node) => new(
        node.Must("id"), node.Must("title"),
        [.. Months(node).Select(month => new ClimateMonth((double)month.Number("temperature")!, (double?)month.Number("humidity"), (double?)month.Number("vapour-pressure"), month.At))],
        [.. (node["usual-for"] as ListNode)?.Items.OfType<ScalarNode>().Select(nation => nation.Text) ?? []],
        node.Must("origin"), SourceShape.Read((MapNode)node["source"]!), node.Text("note"), node.At);
}
