namespace DetailGen.Dxf.Reading;

/// <summary>Which block inserts which. Whoever unfolds inserts of a file in which a block holds itself never ends, so such a file is refused before anything is unfolded.</summary>
internal static class BlockGraph
{
    /// <exception cref="DxfReadException">A block inserts itself, directly or by way of others.</exception>
    internal static void Check(DxfFile file)
    {
        var (held, lines) = Read(file);

        // Blocks that hold nothing open are taken away until none is left, without recursion: a chain of blocks may be as long as the file.
        var open = held.ToDictionary(block => block.Key, block => block.Value.Count(held.ContainsKey), StringComparer.OrdinalIgnoreCase);
        var holders = held.SelectMany(block => block.Value.Where(held.ContainsKey).Select(inner => (Inner: inner, block.Key))).ToLookup(pair => pair.Inner, pair => pair.Key, StringComparer.OrdinalIgnoreCase);
        var done = new Stack<string>(open.Where(block => block.Value == 0).Select(block => block.Key));
        var left = open.Count;
        while (done.TryPop(out var block))
        {
            left--;
            foreach (var holder in holders[block])
            {
                if (--open[holder] == 0)
                {
                    done.Push(holder);
                }
            }
        }

        if (left > 0)
        {
            var ring = Ring(held, open);
            throw new DxfReadException(lines[ring[0]], ring.Count == 1 ? $"The block {ring[0]} inserts itself." : $"The block {ring[0]} inserts itself by way of {string.Join(", ", ring.Skip(1))}.");
        }
    }

    // Pictures of dimensions are held as inserts are.
    private static (Dictionary<string, HashSet<string>> Held, Dictionary<string, int> Lines) Read(DxfFile file)
    {
        var held = new Dictionary<string, HashSet<string>>(StringComparer.OrdinalIgnoreCase);
        var lines = new Dictionary<string, int>(StringComparer.OrdinalIgnoreCase);
        HashSet<string>? inner = null;
        foreach (var record in file.Records("BLOCKS"))
        {
            var reader = new RecordReader(file, record);
            switch (record.Kind)
            {
                case "BLOCK":
                    var name = reader.Text(2);
                    inner = held.TryGetValue(name, out var same) ? same : held[name] = new(StringComparer.OrdinalIgnoreCase);
                    lines.TryAdd(name, reader.Line);
                    break;
                case "ENDBLK":
                    inner = null;
                    break;
                case "INSERT" or "DIMENSION" when inner is not null && reader.TextOrNull(2) is { } inserted:
                    inner.Add(inserted);
                    break;
                default:
                    break;
            }
        }

        return (held, lines);
    }

    /// <summary>The blocks of one ring, from the first in the file that is in one.</summary>
    private static List<string> Ring(Dictionary<string, HashSet<string>> held, Dictionary<string, int> open)
    {
        // From any block that is left a way leads on through blocks that are left, so it comes back to one of its own.
        var way = new List<string> { open.First(block => block.Value > 0).Key };
        while (true)
        {
            var next = held[way[^1]].First(inner => open.GetValueOrDefault(inner) > 0);
            if (way.FindIndex(block => block.Equals(next, StringComparison.OrdinalIgnoreCase)) is >= 0 and var start)
            {
                return way[start..];
            }

            way.Add(next);
        }
    }
}
