using System.Globalization;
using DetailGen.Details.Quantities;

namespace DetailGen.Details.Reading.Shapes;

/// <summary>Takes values out of a tree that has passed its <see cref="ShapeCheck"/>.</summary>
public static class NodeReading
{
    /// <summary>Null where the map lacks the key.</summary>
    public static string? Text(this MapNode map, string key) => (map[key] as ScalarNode)?.Text;

    /// <exception cref="KeyNotFoundException">The map lacks it: it was never checked.</exception>
    public static string Must(this MapNode map, string key) => map.Text(key) ?? throw new KeyNotFoundException(key);

    public static bool Flag(this MapNode map, string key) => map.Text(key) == "true";

    /// <summary>The number of a bare number or a quantity, in the unit of its kind; null where the map lacks the key.</summary>
    public static decimal? Number(this MapNode map, string key) =>
        map.Text(key) is { } text && QuantityReader.Read(text, out _) is { } quantity ? quantity.Number : null;

    public static DateOnly Date(this MapNode map, string key) => DateOnly.ParseExact(map.Must(key), "yyyy-MM-dd", CultureInfo.InvariantCulture);

    /// <summary>Empty where the map lacks the key.</summary>
    public static IReadOnlyList<Node> List(this MapNode map, string key) => (map[key] as ListNode)?.Items ?? [];

    /// <summary>Empty where the map lacks the key.</summary>
    public static IEnumerable<MapNode> Maps(this MapNode map, string key) => map.List(key).OfType<MapNode>();

    /// <summary>Empty where the map lacks the key.</summary>
    public static IReadOnlyList<Entry> Entries(this MapNode map, string key) => (map[key] as MapNode)?.Entries ?? [];

    /// <summary>Empty where the map lacks the key.</summary>
    public static IReadOnlyList<string> Words(this MapNode map, string key) => [.. map.List(key).OfType<ScalarNode>().Select(node => node.Text)];

    /// <summary>The expression at a key, and where it begins; null where the map lacks the key.</summary>
    public static Written? Expression(this MapNode map, string key) => map[key] is ScalarNode node
        ? new(node.Text, node.Quoted ? node.At with { Column = node.At.Column + 1 } : node.At)
        : null;
}
