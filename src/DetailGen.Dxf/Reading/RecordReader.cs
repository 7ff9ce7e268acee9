using DetailGen.Dxf.Document;

namespace DetailGen.Dxf.Reading;

/// <summary>The values of one record, by group code. What a record says of an application (from group 1000 on) is none of its values.</summary>
internal sealed class RecordReader
{
    private readonly TagList _tags;
    private readonly Letters _letters;

    public RecordReader(DxfFile file, DxfFile.Record record)
    {
        (_tags, _letters, Kind, First, Last) = (file.Tags, file.Letters, record.Kind, record.First, record.End);
        End = First;
        while (End < Last && _tags.Code(End) < 1000)
        {
            End++;
        }
    }

    public string Kind { get; }

    /// <summary>The first tag of the values.</summary>
    public int First { get; }

    /// <summary>Behind the last of the values.</summary>
    public int End { get; }

    private int Last { get; }

    public int Line => _tags.Line(Math.Max(0, First - 1));

    public int Code(int tag) => _tags.Code(tag);

    public bool Has(int code) => Find(code) >= 0;

    /// <exception cref="UnreadableException">The value is no finite number.</exception>
    public double Number(int code, double otherwise = 0) => Find(code) is >= 0 and var tag ? NumberAt(tag) : otherwise;

    /// <exception cref="UnreadableException">The value is no whole number of 32 bits.</exception>
    public int Integer(int code, int otherwise = 0) => Find(code) is >= 0 and var tag ? IntegerAt(tag) : otherwise;

    public string Text(int code, string otherwise = "") => Find(code) is >= 0 and var tag ? TextAt(tag) : otherwise;

    public string? TextOrNull(int code) => Find(code) is >= 0 and var tag ? TextAt(tag) : null;

    public ulong Handle(int code) => Find(code) is >= 0 and var tag ? Values.Handle(_tags.Value(tag)) : 0;

    public DxfPoint Point(int code) => new(Number(code), Number(code + 10));

    public double NumberAt(int tag) =>
        Values.TryNumber(_tags.Value(tag), out var number) ? number : throw new UnreadableException(tag, $"group {_tags.Code(tag)} should be a number, but is '{TextAt(tag)}'");

    public int IntegerAt(int tag) =>
        Values.TryInteger(_tags.Value(tag), out var integer) && integer is >= int.MinValue and <= int.MaxValue
            ? (int)integer
            : throw new UnreadableException(tag, $"group {_tags.Code(tag)} should be a whole number, but is '{TextAt(tag)}'");

    public string TextAt(int tag) => _letters.Text(_tags.Value(tag));

    public ulong HandleAt(int tag) => Values.Handle(_tags.Value(tag));

    /// <summary>What this project's own note on the record says behind a prefix, such as part=; null where it has none.</summary>
    public string? Noted(string prefix)
    {
        var isOwn = false;
        for (var tag = End; tag < Last; tag++)
        {
            if (_tags.Code(tag) == 1001)
            {
                isOwn = TextAt(tag).Equals(Provenance.Application, StringComparison.OrdinalIgnoreCase);
            }
            else if (isOwn && _tags.Code(tag) == 1000 && TextAt(tag) is var text && text.StartsWith(prefix, StringComparison.Ordinal))
            {
                return text[prefix.Length..];
            }
        }

        return null;
    }

    private int Find(int code)
    {
        for (var tag = First; tag < End; tag++)
        {
            if (_tags.Code(tag) == code)
            {
                return tag;
            }
        }

        return -1;
    }
}

/// <summary>A record cannot be taken for what its kind says; the rest of the file can.</summary>
internal sealed class UnreadableException(int tag, string reason) : Exception(reason)
{
    public int Tag { get; } = tag;
}
