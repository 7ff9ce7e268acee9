namespace DetailGen.Drawing.Views;

/// <summary>Gives neighbours of one fill different variants: a greedy colouring in order of id.</summary>
internal static class Variants
{
    /// <summary>As defined, mirrored, moved by half a spacing, both.</summary>
    public const int Count = 4;

    /// <summary>Parts that share less edge than this do not count as neighbours, mm.</summary>
    public const double LeastEdge = 1.0;

    /// <param name="fills">Fill by part id.</param>
    /// <param name="touching">Length of shared edge by pairs of ids.</param>
    public static (Dictionary<string, int> Of, List<(string, string)> Same) Colour(
        IReadOnlyDictionary<string, string> fills, IReadOnlyDictionary<(string A, string B), double> touching)
    {
        var neighbours = new Dictionary<string, List<string>>(StringComparer.Ordinal);
        foreach (var ((a, b), length) in touching)
        {
            if (length > LeastEdge && fills.TryGetValue(a, out var fill) && fills.TryGetValue(b, out var other) && fill == other)
            {
                (neighbours.TryGetValue(a, out var ofA) ? ofA : neighbours[a] = []).Add(b);
                (neighbours.TryGetValue(b, out var ofB) ? ofB : neighbours[b] = []).Add(a);
            }
        }

        var variants = new Dictionary<string, int>(StringComparer.Ordinal);
        var same = new List<(string, string)>();
        foreach (var id in fills.Keys.Order(StringComparer.Ordinal))
        {
            var beside = neighbours.GetValueOrDefault(id) ?? [];
            var taken = beside.Where(variants.ContainsKey).Select(other => variants[other]).ToHashSet();
            variants[id] = Enumerable.Range(0, Count).FirstOrDefault(variant => !taken.Contains(variant), 0);
            if (taken.Count == Count)
            {
                same.AddRange(beside.Where(other => variants.TryGetValue(other, out var its) && its == 0 && other != id).Select(other => (other, id)));
            }
        }

        return (variants, same);
    }
}
