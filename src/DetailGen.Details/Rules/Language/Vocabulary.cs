namespace DetailGen.Details.Rules.Language;

/// <summary>A key that expressions may name.</summary>
/// <param name="Options">For a choice: its words; empty where any word may stand.</param>
public sealed record KnownKey(string Name, Kind Kind, IReadOnlyList<string> Options);

/// <summary>All that expressions may name: keys with their kinds, slots, material ids and kinds.</summary>
/// <param name="keys">Of several of one name the first counts; the options of choices are joined.</param>
/// <param name="slots">Names that <c>has</c> and <c>material</c> take; keys are taken too.</param>
/// <param name="materials">Material ids; empty where any may stand.</param>
public sealed class Vocabulary(IEnumerable<KnownKey> keys, IEnumerable<string> slots, IEnumerable<string> materials)
{
    /// <summary>Kinds of material.</summary>
    public static readonly IReadOnlyList<string> MaterialKinds =
        ["masonry", "insulation", "board", "timber", "metal", "polymer", "membrane", "sealant", "finish", "fill", "air"];

    /// <summary>What every detail knows: its junction and its circumstances. The first option is the default.</summary>
    public static readonly IReadOnlyList<KnownKey> Circumstances =
    [
        new("junction", Kind.Text, ["parapet", "abutment", "roof-edge", "kerb", "threshold", "outlet", "penetration", "movement-joint"]),
        new("site.nation", Kind.Text, ["england", "scotland", "wales", "northern-ireland", "ireland"]),
        new("site.exposure", Kind.Text, ["moderate", "sheltered", "severe", "very-severe"]),
        new("building.use", Kind.Text, ["dwelling", "school", "office", "retail", "sports", "pool", "other"]),
        new("building.work", Kind.Text, ["new", "extension", "recovering", "alteration"]),
        new("building.roof-access", Kind.Text, ["maintenance", "accessible"]),
    ];

    /// <summary>What the layers of wall and roof make.</summary>
    public static readonly IReadOnlyList<KnownKey> Results =
    [
        new("roof.u-value", Kind.UValue, []), new("wall.u-value", Kind.UValue, []),
        new("roof.r-value", Kind.RValue, []), new("wall.r-value", Kind.RValue, []),
        new("roof.rsi", Kind.RValue, []), new("roof.rse", Kind.RValue, []), new("wall.rsi", Kind.RValue, []), new("wall.rse", Kind.RValue, []),
    ];

    private readonly SortedDictionary<string, KnownKey> _known = Join(keys);
    private readonly SortedSet<string> _places = new(slots, StringComparer.Ordinal);
    private readonly SortedSet<string> _ids = new(materials, StringComparer.Ordinal);

    public IEnumerable<string> Keys => _known.Keys;

    public IEnumerable<string> Slots => _places.Concat(_known.Keys).Distinct(StringComparer.Ordinal);

    public IEnumerable<string> Materials => _ids;

    public KnownKey? Find(string key) => _known.GetValueOrDefault(key);

    public bool HasSlot(string slot) => _places.Contains(slot) || _known.ContainsKey(slot);

    public bool HasMaterial(string id) => _ids.Count == 0 || _ids.Contains(id);

    private static SortedDictionary<string, KnownKey> Join(IEnumerable<KnownKey> keys)
    {
        var all = new SortedDictionary<string, KnownKey>(StringComparer.Ordinal);
        foreach (var key in keys)
        {
            all[key.Name] = all.TryGetValue(key.Name, out var before)
                ? before with { Options = [.. before.Options, .. key.Options.Except(before.Options, StringComparer.Ordinal)] }
                : key;
        }

        return all;
    }
}
