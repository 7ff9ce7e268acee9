using DetailGen.Details.Reading;

namespace DetailGen.Details.Parameters;

/// <summary>All walls, roofs and junctions. A file is read when somebody asks for its component; before that only its id and kind are known.</summary>
public sealed class Components
{
    private readonly Dictionary<string, Entry> _entries = new(StringComparer.Ordinal);
    private readonly Dictionary<string, Mark> _ofPractice = new(StringComparer.Ordinal);

    private Components()
    {
    }

    /// <summary>Everything on the shelf: <c>presets/constructions/</c> and the junctions beside their builders.</summary>
    public static Components Load(Shelf shelf)
    {
        var components = new Components();
        foreach (var file in Shelf.ShippedFirst(shelf.Under("junctions/").Concat(shelf.Under("presets/constructions/"))))
        {
            components.Add(file);
        }

        return components;
    }

    /// <summary>What ships.</summary>
    public static Components Load() => Load(Shelf.Shipped);

    /// <summary>Made by hand, for trials.</summary>
    public static Components Of(params IReadOnlyList<Component> all)
    {
        var components = new Components();
        foreach (var component in all)
        {
            components._entries[component.Id] = new(component.Kind, new(() => Outcome.Good(component)));
        }

        return components;
    }

    /// <summary>Ids of one kind, in ordinal order.</summary>
    public IReadOnlyList<string> Ids(ComponentKind kind) => [.. _entries.Keys.Where(id => _entries[id].Kind == kind).Order(StringComparer.Ordinal)];

    /// <summary>Null where there is no such component of that kind; the faults of its file where it cannot be read.</summary>
    public Outcome<Component>? Find(ComponentKind kind, string id) =>
        _entries.TryGetValue(id, out var entry) && (entry.Kind == kind) ? entry.Component.Value : null;

    /// <summary>Every component that can be read, by id in ordinal order. Reads all files.</summary>
    public IReadOnlyList<Component> All => [.. Reads.Where(read => read.IsGood).Select(read => read.Value)];

    /// <summary>Faults of all files. Reads them all.</summary>
    public IReadOnlyList<Diagnostic> Faults => [.. Reads.SelectMany(read => read.Faults)];

    /// <summary>Faults of a practice's files that could not be read at all; a name that is missing may stand in one of them.</summary>
    public IReadOnlyList<Diagnostic> Unreadable => [.. _entries.Values.Where(entry => entry.Kind is null).SelectMany(entry => entry.Component.Value.Faults)];

    private IEnumerable<Outcome<Component>> Reads => _entries.Keys.Order(StringComparer.Ordinal).Select(id => _entries[id].Component.Value);

    private void Add(ShelfFile file)
    {
        if (file.Text() is { } text && Head(text, "id") is { } head && ComponentReader.KindOf(Head(text, "kind")) is { } kind)
        {
            _entries[head] = new(kind, new(() => ConstructionCheck.Of(ComponentReader.Read(file.Read()))));
            return;
        }

        // a practice's own file: read at once, so that what is wrong with it is told
        var tree = file.Read();
        var read = ConstructionCheck.Of(ComponentReader.Read(tree));
        if (read.IsGood && tree.Root is { At: var at } && !_ofPractice.TryAdd(read.Value.Id, at))
        {
            read = Outcome.Bad<Component>(Messages.EntryTwice(at, read.Value.Id, _ofPractice[read.Value.Id]));
        }
        else if (read.IsGood && read.Value is { Kind: ComponentKind.Junction, Id: var id, At: var place } && !_entries.ContainsKey(id))
        {
            read = Outcome.Bad<Component>(Messages.NoBuilder(place, id, Ids(ComponentKind.Junction)));
        }

        _entries[read.IsGood ? read.Value.Id : file.Name] = new(read.IsGood ? read.Value.Kind : null, new(() => read));
    }

    // "id: cavity-masonry" at the margin
    private static string? Head(string text, string key)
    {
        foreach (var line in text.AsSpan().EnumerateLines())
        {
            if (line.StartsWith(key, StringComparison.Ordinal) && line.Length > key.Length && line[key.Length] == ':')
            {
                var value = line[(key.Length + 1)..];
                var comment = value.IndexOf(" #", StringComparison.Ordinal);
                return (comment < 0 ? value : value[..comment]).Trim().ToString();
            }
        }

        return null;
    }

    private sealed record Entry(ComponentKind? Kind, Lazy<Outcome<Component>> Component);
}
