namespace DetailGen.Details.Reading;

/// <summary>
/// Entries of list files (<c>- id: …</c> at the margin), each made a tree only when somebody asks for it: a start needs fifteen materials of eighty-eight.
/// </summary>
internal sealed class EntryIndex
{
    private const string Begins = "- id: ";

    private readonly Dictionary<string, Func<ReadText>> _entries = new(StringComparer.Ordinal);
    private readonly Dictionary<string, Mark> _ofPractice = new(StringComparer.Ordinal);
    private readonly List<Diagnostic> _faults = [];

    /// <param name="check">Looks over a file of a practice at once, so that all its faults are told.</param>
    public EntryIndex(IEnumerable<ShelfFile> files, Func<Node, IReadOnlyList<Diagnostic>> check)
    {
        foreach (var file in Shelf.ShippedFirst(files))
        {
            if (file.Shipped && file.Text() is { } text && Slice(text, file.Name))
            {
                continue;
            }

            Whole(file, check);
        }
    }

    /// <summary>In ordinal order.</summary>
    public IReadOnlyList<string> Ids => [.. _entries.Keys.Order(StringComparer.Ordinal)];

    public IReadOnlyList<Diagnostic> Faults => _faults;

    /// <summary>Ids of the entries that a practice's folder brings.</summary>
    public IReadOnlyCollection<string> OfPractice => _ofPractice.Keys;

    /// <summary>The entry of that id; null where there is none.</summary>
    public MapNode? Find(string id) => _entries.TryGetValue(id, out var read) && read() is { Faults.Count: 0, Root: MapNode map } ? map : null;

    private bool Slice(string text, string name)
    {
        var starts = new List<Start>();
        var line = 0;
        var offset = 0;
        while (offset < text.Length)
        {
            var end = text.IndexOf('\n', offset);
            end = end < 0 ? text.Length : end;
            var row = text.AsSpan(offset, end - offset).TrimEnd();
            if (row.StartsWith(Begins, StringComparison.Ordinal))
            {
                starts.Add(new(offset, line, row[Begins.Length..].ToString()));
            }
            else if (row.Length > 0 && row[0] is not (' ' or '#'))
            {
                return false; // written in another way: read as a whole
            }

            line++;
            offset = end + 1;
        }

        for (var i = 0; i < starts.Count; i++)
        {
            var (from, before, id) = starts[i];
            var to = i + 1 < starts.Count ? starts[i + 1].Offset : text.Length;
            _entries[id] = () => First(NodeReader.Text(text[from..to], name, ReadingLimits.Usual, before));
        }

        return true;
    }

    private void Whole(ShelfFile file, Func<Node, IReadOnlyList<Diagnostic>> check)
    {
        var read = file.Read();
        var faults = read.Root is { } root ? [.. read.Faults, .. check(root)] : read.Faults;
        _faults.AddRange(faults);
        if (faults.Count > 0)
        {
            return;
        }

        foreach (var item in ((ListNode)read.Root!).Items.OfType<MapNode>())
        {
            var id = ((ScalarNode)item["id"]!).Text;
            _entries[id] = () => new(item, []);
            if (!file.Shipped && !_ofPractice.TryAdd(id, item.At))
            {
                // one of a shipped id takes its place; of two of the practice nobody knows which is meant
                _faults.Add(Messages.EntryTwice(item.At, id, _ofPractice[id]));
            }
        }
    }

    private static ReadText First(ReadText read) => read with { Root = (read.Root as ListNode)?.Items[0] };

    private sealed record Start(int Offset, int Line, string Id);
}
