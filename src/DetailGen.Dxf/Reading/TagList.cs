using System.Runtime.InteropServices;

namespace DetailGen.Dxf.Reading;

/// <summary>The tags of a file in order: group codes, and where each value stands in the bytes. Nothing is copied from a text file.</summary>
internal sealed class TagList(byte[] content, int used, ReadLimits limits)
{
    private readonly List<Place> _places = [];
    private byte[] _content = content;
    private int _used = used;

    public int Count => _places.Count;

    public int Code(int tag) => _places[tag].Code;

    public ReadOnlySpan<byte> Value(int tag)
    {
        var place = _places[tag];
        return _content.AsSpan(place.Start, place.Length);
    }

    /// <summary>Line of the group code from 1; in a binary file the byte of the group code.</summary>
    public int Line(int tag) => _places[tag].Line;

    /// <exception cref="DxfReadException">Too many tags, or a value too long.</exception>
    public void Add(int code, int start, int length, int line)
    {
        if (length > limits.LineBytes)
        {
            throw new DxfReadException(line, $"A value of {length} bytes is longer than {limits.LineBytes}.");
        }

        if (_places.Count == limits.Tags)
        {
            throw new DxfReadException(line, $"There are more than {limits.Tags} groups.");
        }

        _places.Add(new(code, start, length, line));
    }

    /// <summary>Adds a tag whose value does not stand in the file as text.</summary>
    public void Add(int code, ReadOnlySpan<byte> value, int line)
    {
        if (_used + value.Length > _content.Length)
        {
            Array.Resize(ref _content, Math.Max(_used + value.Length, 2 * _content.Length));
        }

        value.CopyTo(_content.AsSpan(_used));
        Add(code, _used, value.Length, line);
        _used += value.Length;
    }

    [StructLayout(LayoutKind.Auto)]
    private readonly record struct Place(int Code, int Start, int Length, int Line);
}
