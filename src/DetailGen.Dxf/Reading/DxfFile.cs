namespace DetailGen.Dxf.Reading;

/// <summary>The records of a file as they stand: every tag of every section is kept, whether this project knows its kind or not, and written back unchanged.</summary>
/// <remarks>The file is untrusted: counts in it are claims that nothing is sized by, no path in it is followed, and every limit ends in a message.</remarks>
public sealed class DxfFile
{
    private readonly List<Finding> _findings = [];

    private DxfFile(TagList tags, bool isBinary)
    {
        Tags = tags;
        IsBinary = isBinary;
        Letters = LettersOf(tags, _findings);
    }

    public bool IsBinary { get; }

    /// <summary>Version of the format as the header names it, such as AC1024; empty where it does not.</summary>
    public string Version => HeaderText("$ACADVER", 1) ?? "";

    /// <summary>Departures from the format, in the order of the file.</summary>
    public IReadOnlyList<Finding> Findings => _findings;

    internal TagList Tags { get; }

    /// <summary>How letters are kept in the file.</summary>
    internal Letters Letters { get; }

    internal IReadOnlyList<Section> Sections { get; private set; } = [];

    /// <summary>Reads text or binary.</summary>
    /// <exception cref="DxfReadException">No drawing, or one beyond the limits.</exception>
    public static DxfFile Read(Stream input, ReadLimits? limits = null)
    {
        ArgumentNullException.ThrowIfNull(input);
        limits ??= ReadLimits.Usual;
        var content = Whole(input, limits);
        var isBinary = content.AsSpan().StartsWith(BinaryTags.Sentinel);
        var file = new DxfFile(isBinary ? BinaryTags.Read(content, limits) : TextTags.Read(content, limits), isBinary);
        file.Sections = file.Divided(limits);
        return file;
    }

    /// <summary>Writes all tags as text; what this project wrote comes back byte for byte.</summary>
    public void WriteText(Stream output) => TagCopier.Text(Tags, output);

    /// <summary>Writes all tags in the binary form.</summary>
    public void WriteBinary(Stream output) => TagCopier.Binary(Tags, output);

    /// <summary>A header variable's first value of that code; null where there is none.</summary>
    internal string? HeaderText(string name, int code)
    {
        foreach (var record in Records("HEADER"))
        {
            for (var tag = record.First; tag < record.End; tag++)
            {
                if (Tags.Code(tag) == 9 && Letters.Text(Tags.Value(tag)).Equals(name, StringComparison.OrdinalIgnoreCase))
                {
                    for (var next = tag + 1; next < record.End && Tags.Code(next) != 9; next++)
                    {
                        if (Tags.Code(next) == code)
                        {
                            return Letters.Text(Tags.Value(next)).Trim();
                        }
                    }
                }
            }
        }

        return null;
    }

    /// <summary>The records of a section; none where the file has no such section.</summary>
    internal IEnumerable<Record> Records(string section) =>
        Sections.Where(one => one.Name.Equals(section, StringComparison.OrdinalIgnoreCase)).SelectMany(one => one.Records);

    internal void Found(int tag, string text) => _findings.Add(new(Tags.Line(tag), text));

    private static byte[] Whole(Stream input, ReadLimits limits)
    {
        using var memory = new MemoryStream(input.CanSeek ? (int)Math.Min(limits.Bytes, input.Length - input.Position) : 0);
        var buffer = new byte[1 << 16];
        for (var read = input.Read(buffer); read > 0; read = input.Read(buffer))
        {
            if (memory.Length + read > limits.Bytes)
            {
                throw new DxfReadException(1, $"The file is larger than {limits.Bytes / (1 << 20)} MiB.");
            }

            memory.Write(buffer, 0, read);
        }

        return memory.Length == memory.Capacity ? memory.GetBuffer() : memory.ToArray();
    }

    // Before AC1021 letters lie in the code page that the header names; since then in UTF-8.
    private static Letters LettersOf(TagList tags, List<Finding> findings)
    {
        var (version, page) = ("", "");
        for (var tag = 0; tag + 1 < tags.Count && !(tags.Code(tag) == 0 && tags.Value(tag).SequenceEqual("ENDSEC"u8)); tag++)
        {
            if (tags.Code(tag) == 9 && tags.Value(tag).SequenceEqual("$ACADVER"u8))
            {
                version = Letters.Plain(tags.Value(tag + 1));
            }
            else if (tags.Code(tag) == 9 && tags.Value(tag).SequenceEqual("$DWGCODEPAGE"u8))
            {
                page = Letters.Plain(tags.Value(tag + 1));
            }
        }

        return Letters.Of(version, page, text => findings.Add(new(1, text)));
    }

    private List<Section> Divided(ReadLimits limits)
    {
        if (Tags.Count == 0)
        {
            throw new DxfReadException(1, "The file holds no groups: it is no drawing.");
        }

        var sections = new List<Section>();
        var records = 0;
        var tag = 0;
        while (true)
        {
            if (tag >= Tags.Count)
            {
                throw new DxfReadException(Tags.Line(Tags.Count - 1), $"The file ends without EOF{(sections.Count > 0 ? $", behind the section {sections[^1].Name}" : "")}.");
            }

            if (Is(tag, "EOF"u8))
            {
                return sections;
            }

            if (Tags.Code(tag) == 999)
            {
                tag++; // a comment
                continue;
            }

            if (!Is(tag, "SECTION"u8) || tag + 1 >= Tags.Count || Tags.Code(tag + 1) != 2)
            {
                throw new DxfReadException(Tags.Line(tag), "Here a section with its name should begin, or the file end with EOF.");
            }

            var name = Letters.Text(Tags.Value(tag + 1));
            var section = new Section(name, []);
            if (sections.Exists(other => other.Name.Equals(name, StringComparison.OrdinalIgnoreCase)))
            {
                Found(tag, $"The section {name} stands twice.");
            }

            sections.Add(section);
            tag += 2;
            if (tag < Tags.Count && Tags.Code(tag) != 0)
            {
                var head = tag; // the header's variables stand in no record
                while (tag < Tags.Count && Tags.Code(tag) != 0)
                {
                    tag++;
                }

                section.Records.Add(new("", head, tag));
            }

            while (tag < Tags.Count && !Is(tag, "ENDSEC"u8))
            {
                if (Is(tag, "SECTION"u8) || Is(tag, "EOF"u8))
                {
                    throw new DxfReadException(Tags.Line(tag), $"The section {name} has no end.");
                }

                var first = tag++;
                while (tag < Tags.Count && Tags.Code(tag) != 0)
                {
                    tag++;
                }

                if (++records > limits.Records)
                {
                    throw new DxfReadException(Tags.Line(first), $"There are more than {limits.Records} records.");
                }

                section.Records.Add(new(Letters.Plain(Tags.Value(first)).Trim(), first + 1, tag));
            }

            if (tag >= Tags.Count)
            {
                throw new DxfReadException(Tags.Line(Tags.Count - 1), $"The file ends within the section {name}.");
            }

            tag++; // ENDSEC
        }
    }

    private bool Is(int tag, ReadOnlySpan<byte> kind) => Tags.Code(tag) == 0 && Tags.Value(tag).Trim((byte)' ').SequenceEqual(kind);

    /// <summary>Records between SECTION and ENDSEC.</summary>
    internal sealed record Section(string Name, List<Record> Records);

    /// <summary>The tags of a record behind its kind; in the header, of all variables, with an empty kind.</summary>
    internal readonly record struct Record(string Kind, int First, int End);
}
