namespace DetailGen.Details.Reading;

/// <summary>A piece of a YAML text with its place; the tree that every reader walks.</summary>
/// <param name="At">First character of the piece.</param>
public abstract record Node(Mark At);

/// <summary>One word, number or sentence, always as text: readers say what it means.</summary>
/// <param name="Quoted">Written in quotation marks or as a block, so that an empty text is meant.</param>
public sealed record ScalarNode(Mark At, string Text, bool Quoted) : Node(At);

/// <summary>A list.</summary>
public sealed record ListNode(Mark At, IReadOnlyList<Node> Items) : Node(At);

/// <summary>A map.</summary>
/// <param name="Entries">In the order of the file, keys unique.</param>
public sealed record MapNode(Mark At, IReadOnlyList<Entry> Entries) : Node(At)
{
    /// <summary>The value at a key; null where the map lacks it.</summary>
    public Node? this[string key] => Find(key)?.Value;

    /// <summary>The entry of a key; null where the map lacks it.</summary>
    public Entry? Find(string key)
    {
        foreach (var entry in Entries)
        {
            if (string.Equals(entry.Key, key, StringComparison.Ordinal))
            {
                return entry;
            }
        }

        return null;
    }
}

/// <summary>A key with its value.</summary>
public sealed record Entry(string Key, Mark KeyAt, Node Value);

/// <summary>An expression kept as it was written, and where; rules and the solver read it.</summary>
/// <param name="At">First character of the expression itself, after any quotation mark.</param>
public sealed record Written(string Text, Mark At)
{
    public override string ToString() => Text;
}
