using DetailGen.Details.Reading;

namespace DetailGen.Details.Presets;

/// <summary>What the command line sets, as a preset that goes before all files. Line is the how-manieth <c>--set</c>, column its place in it.</summary>
internal static class Overrides
{
    public const string File = "--set";

    private static IReadOnlyList<string> Groups { get; } =
        ["set", "prefer", "target", "materials", "levels", "sheet", "title-block", "site", "building"];

    private static IReadOnlyList<string> Alone { get; } = ["mirror", "title", "detail", PresetShape.FrsiFilm, "junction", "wall", "roof"];

    public static ReadText Read(IReadOnlyList<string> overrides)
    {
        var faults = new List<Diagnostic>();
        var groups = new List<Group>();
        var alone = new List<Entry>();
        for (var i = 0; i < overrides.Count; i++)
        {
            var text = overrides[i];
            var at = new Mark(File, i + 1, 1);
            var equals = text.IndexOf('=', StringComparison.Ordinal);
            if (equals <= 0)
            {
                faults.Add(Messages.BadOverride(at, text));
                continue;
            }

            var key = text[..equals].Trim();
            var value = text[(equals + 1)..];
            var node = Value(value, at with { Column = equals + 2 });
            var (group, inner) = Place(key);
            var entries = group is null ? alone : groups.FirstOrDefault(item => item.Name == group)?.Entries;
            if (entries is null)
            {
                groups.Add(new(group!, entries = []));
            }

            if (entries.FirstOrDefault(entry => entry.Key == inner) is { } first)
            {
                faults.Add(Messages.DuplicateKey(at, key, first.KeyAt));
            }
            else
            {
                entries.Add(new(inner, at, node));
            }
        }

        var start = new Mark(File, 1, 1);
        return new(new MapNode(start, [.. alone, .. groups.Select(item => new Entry(item.Name, start, new MapNode(start, item.Entries)))]), faults);
    }

    /// <summary>One value, or a list of them in square brackets.</summary>
    private static Node Value(string text, Mark at)
    {
        var start = at with { Column = at.Column + (text.Length - text.TrimStart().Length) };
        var bare = text.Trim();
        if (bare is not ['[', .. var inner, ']'])
        {
            return new ScalarNode(start, bare, false);
        }

        var items = new List<Node>();
        var column = start.Column + 1;
        foreach (var item in inner.Split(',').Where(_ => inner.Trim().Length > 0))
        {
            items.Add(Value(item, start with { Column = column }));
            column += item.Length + 1;
        }

        return new ListNode(start, items);
    }

    private sealed record Group(string Name, List<Entry> Entries);

    private static (string? Group, string Key) Place(string key)
    {
        if (Alone.Contains(key, StringComparer.Ordinal))
        {
            return (null, key);
        }

        var dot = key.IndexOf('.', StringComparison.Ordinal);
        return dot > 0 && Groups.Contains(key[..dot], StringComparer.Ordinal) ? (key[..dot], key[(dot + 1)..])
            : PresetShape.Targets.Any(target => target.Key == key) ? ("target", key)
            : ("set", key);
    }
}
