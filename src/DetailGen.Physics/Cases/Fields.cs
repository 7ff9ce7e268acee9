namespace DetailGen.Physics.Cases;

/// <summary>Reads the keys of one object. What is wrong is told; what cannot be read comes back as null or not-a-number, and nothing is calculated from a file with faults.</summary>
internal sealed class Fields
{
    private readonly Written.Map _map;
    private readonly string _path;
    private readonly Faults _faults;

    /// <param name="path">Of the object inside its case, such as <c>regions.3</c>; empty for the case.</param>
    /// <param name="known">Every key that may stand here; empty where names are free.</param>
    internal Fields(Written.Map map, string path, Faults faults, params string[] known)
    {
        (_map, _path, _faults) = (map, path, faults);
        foreach (var entry in map.Entries.Where(entry => known.Length > 0 && !known.Contains(entry.Key, StringComparer.Ordinal)))
        {
            faults.Add(entry.Line, entry.Column, Path(entry.Key), entry.Value.Shown, Messages.UnknownKey(entry.Key, path, Nearest.Of(entry.Key, known)!));
        }
    }

    internal IReadOnlyList<Written.Entry> Entries => _map.Entries;

    internal Written.Map At => _map;

    /// <summary>Path of the object inside its case.</summary>
    internal string Here => _path;

    internal bool Has(string key) => _map.Get(key) is not null;

    internal string Path(string key) => _path.Length == 0 ? key : $"{_path}.{key}";

    internal void Fault(string key, Complaint complaint) => _faults.Add(_map.Get(key) ?? _map, Path(key), complaint);

    internal void Fault(Complaint complaint) => _faults.Add(_map, _path.Length == 0 ? null : _path, complaint);

    /// <summary>A finite number; null where the key is missing.</summary>
    internal double? Number(string key, Bound? bound = null) => _map.Get(key) is { } written ? NumberOf(written, Path(key), bound) : null;

    /// <summary>A finite number; not-a-number and a fault where the key is missing.</summary>
    internal double Needed(string key, Bound? bound = null) => Number(key, bound) ?? Missing(key, double.NaN);

    /// <summary>A number that stands somewhere, in a list too.</summary>
    internal double NumberOf(Written written, string path, Bound? bound = null)
    {
        if (written is not Written.Number number)
        {
            _faults.Add(written, path, Messages.NotA("number", path, written.Shown));
            return double.NaN;
        }

        if (!double.IsFinite(number.Value))
        {
            _faults.Add(written, path, Messages.NotFinite(path, number.Text));
            return double.NaN;
        }

        if (bound is { } limit && !limit.Holds(number.Value))
        {
            _faults.Add(written, path, Messages.OutOfBounds(path, number.Text, limit.Wording));
            return double.NaN;
        }

        return number.Value;
    }

    internal string? Words(string key) => Of<Written.Words>(key, "text")?.Value;

    internal string? NeededWords(string key) => Has(key) ? Words(key) : Missing<string?>(key, null);

    /// <summary>One of some words; null where the key is missing or the word is another.</summary>
    internal string? Choice(string key, params string[] words)
    {
        var word = Words(key);
        if (word is null || words.Contains(word, StringComparer.Ordinal))
        {
            return word;
        }

        Fault(key, Messages.UnknownName(Path(key), word, words));
        return null;
    }

    internal bool? Flag(string key) => Of<Written.Flag>(key, "true or false")?.Value;

    private T? Of<T>(string key, string what)
        where T : Written
    {
        var written = _map.Get(key);
        if (written is not (null or T))
        {
            Fault(key, Messages.NotA(what, Path(key), written.Shown));
        }

        return written as T;
    }

    /// <summary>An object under a key; null where it is missing or something else.</summary>
    internal Fields? Map(string key, params string[] known) => _map.Get(key) is { } written ? MapOf(written, Path(key), known) : null;

    internal Fields? MapOf(Written written, string path, params string[] known)
    {
        if (written is Written.Map map)
        {
            return new(map, path, _faults, known);
        }

        _faults.Add(written, path, Messages.NotA("object", path, written.Shown));
        return null;
    }

    /// <summary>A list under a key, each item with its path; empty where it is missing or something else.</summary>
    internal IReadOnlyList<(Written Item, string Path)> List(string key) => _map.Get(key) is { } written ? ListOf(written, Path(key)) : [];

    internal IReadOnlyList<(Written Item, string Path)> ListOf(Written written, string path)
    {
        if (written is Written.List list)
        {
            return [.. list.Items.Select((item, i) => (item, $"{path}.{i}"))];
        }

        _faults.Add(written, path, Messages.NotA("list", path, written.Shown));
        return [];
    }

    /// <summary>A list that must be there and hold something.</summary>
    internal IReadOnlyList<(Written Item, string Path)> NeededList(string key)
    {
        if (!Has(key))
        {
            return Missing<IReadOnlyList<(Written, string)>>(key, []);
        }

        var items = List(key);
        if (items.Count == 0 && _map.Get(key) is Written.List)
        {
            Fault(key, Messages.EmptyList(Path(key)));
        }

        return items;
    }

    internal void Fault(Written at, string path, Complaint complaint) => _faults.Add(at, path, complaint);

    internal T Missing<T>(string key, T instead)
    {
        _faults.Add(_map, Path(key), Messages.Missing(key, _path));
        return instead;
    }
}
