using System.Buffers.Binary;
using System.Buffers.Text;
using DetailGen.Dxf.Tags;

namespace DetailGen.Dxf.Reading;

/// <summary>The binary form: behind a sentinel each group code takes two bytes, and its value as many as its kind asks for. Values are kept as the
/// text form would write them, so that whoever reads the tags need not know which form they came in.</summary>
/// <remarks>The format's published reference, "Binary DXF files".</remarks>
internal static class BinaryTags
{
    /// <summary>How a binary file begins, as the format says.</summary>
    public static ReadOnlySpan<byte> Sentinel => "AutoCAD Binary DXF\r\n\u001a\0"u8;

    /// <exception cref="DxfReadException">Cut off, a string without end, a code that the format does not have, or a limit passed.</exception>
    public static TagList Read(byte[] content, ReadLimits limits)
    {
        var tags = new TagList(new byte[Math.Max(1024, content.Length)], 0, limits);
        var at = Sentinel.Length;
        Span<byte> text = stackalloc byte[512];
        while (at < content.Length)
        {
            var from = at;
            var code = BinaryPrimitives.ReadInt16LittleEndian(Take(content, ref at, 2, from));
            switch (GroupCodes.KindOf(code))
            {
                case ValueKind.Text or ValueKind.Handle:
                    var length = content.AsSpan(at).IndexOf((byte)0);
                    if (length < 0)
                    {
                        throw new DxfReadException(from, "A text has no end.");
                    }

                    tags.Add(code, content.AsSpan(at, length), from);
                    at += length + 1;
                    if (code == 0 && tags.Value(tags.Count - 1).SequenceEqual("EOF"u8))
                    {
                        return tags;
                    }

                    break;
                case ValueKind.Number:
                    var number = BinaryPrimitives.ReadDoubleLittleEndian(Take(content, ref at, 8, from));
                    tags.Add(code, Number(number, text), from);
                    break;
                case ValueKind.Short:
                    tags.Add(code, Integer(BinaryPrimitives.ReadInt16LittleEndian(Take(content, ref at, 2, from)), text), from);
                    break;
                case ValueKind.Integer:
                    tags.Add(code, Integer(BinaryPrimitives.ReadInt32LittleEndian(Take(content, ref at, 4, from)), text), from);
                    break;
                case ValueKind.Long:
                    tags.Add(code, Integer(BinaryPrimitives.ReadInt64LittleEndian(Take(content, ref at, 8, from)), text), from);
                    break;
                case ValueKind.Flag:
                    tags.Add(code, Integer(Take(content, ref at, 1, from)[0], text), from);
                    break;
                case ValueKind.Bytes:
                    var count = Take(content, ref at, 1, from)[0];
                    tags.Add(code, Hex(Take(content, ref at, count, from), text), from);
                    break;
                default:
                    throw new DxfReadException(from, $"The format has no group code {code}.");
            }
        }

        return tags;
    }

    private static ReadOnlySpan<byte> Take(byte[] content, ref int at, int count, int from)
    {
        if (content.Length - at < count)
        {
            throw new DxfReadException(from, "The file ends within a group.");
        }

        at += count;
        return content.AsSpan(at - count, count);
    }

    // As the text form writes them: "R" has an exponent for very large and small ones, which readers of text take too.
    private static ReadOnlySpan<byte> Number(double value, Span<byte> text) =>
        value.TryFormat(text, out var written, "R", System.Globalization.CultureInfo.InvariantCulture) ? text[..written] : throw new InvalidOperationException("A number is too long.");

    private static ReadOnlySpan<byte> Integer(long value, Span<byte> text) =>
        Utf8Formatter.TryFormat(value, text, out var written) ? text[..written] : throw new InvalidOperationException("A number is too long.");

    private static ReadOnlySpan<byte> Hex(ReadOnlySpan<byte> bytes, Span<byte> text) =>
        Convert.TryToHexString(bytes, text, out var written) ? text[..written] : throw new InvalidOperationException("A chunk is too long.");
}
