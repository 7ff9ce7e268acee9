using DetailGen.Details.Quantities;
using DetailGen.Sections;

namespace DetailGen.Details;

/// <summary>All that a builder may know of a solved detail: sizes, choices and materials by key. Keys that this detail lacks are absent.</summary>
/// <param name="lengths">Parameters and derived lengths.</param>
/// <param name="numbers">Ratios (the n of 1:n) and counts.</param>
/// <param name="choices">One word each.</param>
/// <param name="materials">By slot.</param>
public sealed class Sizes(
    IReadOnlyDictionary<string, Length> lengths, IReadOnlyDictionary<string, long> numbers, IReadOnlyDictionary<string, string> choices,
    IReadOnlyDictionary<string, Material> materials)
{
    /// <summary>mm.</summary>
    public double Length(string key) => Find(lengths, key, "length").ToMillimetres();

    /// <summary>mm; 0 where the detail has no such length.</summary>
    public double LengthOrZero(string key) => lengths.TryGetValue(key, out var length) ? length.ToMillimetres() : 0;

    public long Number(string key) => Find(numbers, key, "number");

    public string Choice(string key) => Find(choices, key, "choice");

    /// <summary>True where the choice exists and is that word.</summary>
    public bool Is(string key, string word) => choices.TryGetValue(key, out var chosen) && chosen == word;

    public bool HasLength(string key) => lengths.ContainsKey(key);

    public bool HasChoice(string key) => choices.ContainsKey(key);

    public bool HasMaterial(string slot) => materials.ContainsKey(slot);

    public bool Has(string key) => lengths.ContainsKey(key) || numbers.ContainsKey(key) || choices.ContainsKey(key);

    public Material Material(string slot) => Find(materials, slot, "material");

    private static T Find<T>(IReadOnlyDictionary<string, T> all, string key, string what) =>
        all.TryGetValue(key, out var found) ? found : throw new KeyNotFoundException($"The detail has no {what} {key}.");
}
