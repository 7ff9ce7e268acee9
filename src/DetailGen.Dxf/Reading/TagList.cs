using System.Runtime.InteropServices;

namespace DetailGen.Dxf.Reading;

/// <summary>The tags of a file in order: group codes, and where each value stands in the bytes. Nothing is copied from a text file.</summary>
internal sealed class TagList(byte[] content, int used, ReadLimits limits)
{
    private readonly List<Place> places = [];
    private byte[] content = content;
    private int used = used;

    public int Count => places.Count;

    public int Code(int tag) => places[tag].Code;

    public ReadOnlySpan<byte> Value(int tag)
    {
        var place = places[tag];
        return content.AsSpan(place.Start, place.Length);
    }

    /// <summary>Line of the group code from 1; in a binary file the byte of the group code.</summary>
    public int Line(int tag) => places[tag].Line;

    /// <exception cref="DxfReadException">Too many tags, or a value too long.</exception>
    public void Add(int code, int start, int length, int line)
    {
        if (length > limits.LineBytes)
        {
            throw new DxfReadException(line, $"A value of {length} bytes is longer than {limits.LineBytes}.");
        }

        if (places.Count == limits.Tags)
        {
            throw new DxfReadException(line, $"There are more than {limits.Tags} groups.");
        }

        places.Add(new(code, start, length, line));
    }

    /// <summary>Adds a tag whose value does not stand in the file as text.</summary>
    public void Add(int code, ReadOnlySpan<byte> value, int line)
    {
        if (used + value.Length > content.Length)
        {
            Array.Resize(ref content, Math.Max(used + value.Length, 2 * content.Length));
        }

        value.CopyTo(content.AsSpan(used));
        Add(code, used, value.Length, line);
        used += value.Length;
    }

    [StructLayout(LayoutKind.Auto)]
    private readonly record struct Place(int Code, int Start, int Length, int Line);
}
