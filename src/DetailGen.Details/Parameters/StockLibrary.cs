using DetailGen.Details.Quantities;
using DetailGen.Details.Reading;
using DetailGen.Details.Reading.Shapes;

namespace DetailGen.Details.Parameters;

/// <summary>All stock classes; a class is read when somebody asks for it.</summary>
public sealed class StockLibrary
{
    private readonly EntryIndex _index;

    private StockLibrary(EntryIndex index) => _index = index;

    public static StockLibrary Load(Shelf shelf) => new(new(shelf.Under("presets/stock/"), ListFaults));

    public static StockLibrary Load() => Load(Shelf.Shipped);

    /// <summary>In ordinal order.</summary>
    public IReadOnlyList<string> Ids => _index.Ids;

    /// <summary>Faults of a practice's own files; empty for those that ship.</summary>
    public IReadOnlyList<Diagnostic> Faults => _index.Faults;

    /// <summary>Classes of a practice that neither ship nor are named by a parameter, but nearly: a slip in the id would leave the sizes without effect.</summary>
    public IReadOnlyList<Diagnostic> Unread(IEnumerable<Component> components)
    {
        List<string> known = [.. Load().Ids, .. components.SelectMany(component => component.Parameters).SelectMany(parameter => parameter.StockByMaterial.Select(one => one.Stock).Append(parameter.Stock)).OfType<string>()];
        return [.. _index.OfPractice.Except(known, StringComparer.Ordinal).Where(id => Nearest.To(id, known) is not null).Order(StringComparer.Ordinal).Select(id => Messages.UnreadStock(_index.Find(id)!.At, id, known))];
    }

    /// <summary>Null where there is no such class.</summary>
    public StockClass? Find(string id) => _index.Find(id) is { } node ? Read(node) : null;

    /// <summary>Every class, by id in ordinal order.</summary>
    public IReadOnlyList<StockClass> All => [.. Ids.Select(id => Find(id)!)];

    /// <summary>Checks a file of classes as a whole.</summary>
    internal static IReadOnlyList<Diagnostic> ListFaults(Node root)
    {
        var faults = ShapeCheck.Check(root, StockShape.Shape);
        return faults.Count > 0 ? faults : [.. ((ListNode)root).Items.OfType<MapNode>().SelectMany(SizeFaults)];
    }

    private static StockClass Read(MapNode node)
    {
        var unit = UnitOf(node);
        return new(node.Must("id"), node.Text("force") == "hard" ? StockForce.Hard : StockForce.Prefer, unit,
            [.. Sizes(node).Select(size => new StockSize(size.Name, [.. size.Measures.Select(measure => Measure(measure, unit).Value.Number)]))],
            node.Must("meaning"), SourceShape.Read((MapNode)node["source"]!), node.Text("note"), node.At);
    }

    private static IEnumerable<Diagnostic> SizeFaults(MapNode node) =>
        Sizes(node).SelectMany(size => size.Measures).SelectMany(measure => Measure(measure, UnitOf(node)) is var read && read.IsGood && read.Value.Number < 0
            ? [Messages.NoSuchSize(measure.At, measure.Text)]
            : read.Faults);

    private static Unit UnitOf(MapNode node) => node.Text("unit") == "ratio" ? Unit.Ratio : Unit.Length;

    private static Outcome<Setting> Measure(ScalarNode node, Unit unit) => SettingReader.Read(node.Text, node.At, "sizes", unit, []);

    private static IEnumerable<WrittenSize> Sizes(MapNode node) => node["sizes"] switch
    {
        MapNode named => named.Entries.Select(entry => new WrittenSize(entry.Key, Scalars(entry.Value))),
        ListNode list => list.Items.Select(item => new WrittenSize(null, Scalars(item))),
        _ => [],
    };

    private static IReadOnlyList<ScalarNode> Scalars(Node node) => node is ListNode list ? [.. list.Items.OfType<ScalarNode>()] : [(ScalarNode)node];

    private sealed record WrittenSize(string? Name, IReadOnlyList<ScalarNode> Measures);
}
