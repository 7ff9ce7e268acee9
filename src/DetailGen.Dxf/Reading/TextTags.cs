using System.Buffers.Text;

namespace DetailGen.Dxf.Reading;

/// <summary>Pairs of lines: a group code, then its value. Lines may end in LF, CR or both.</summary>
internal static class TextTags
{
    private static ReadOnlySpan<byte> ByteOrderMark => [0xEF, 0xBB, 0xBF];

    /// <exception cref="DxfReadException">A line that is no group code, a code without a value, or a limit passed.</exception>
    public static TagList Read(byte[] content, ReadLimits limits)
    {
        var tags = new TagList(content, content.Length, limits);
        ReadOnlySpan<byte> bytes = content;
        var at = bytes.StartsWith(ByteOrderMark) ? ByteOrderMark.Length : 0;
        for (var line = 1; at < bytes.Length; line += 2)
        {
            var code = Line(bytes, ref at);
            if (at >= bytes.Length && Trimmed(bytes, code).IsEmpty)
            {
                break; // blank lines at the end
            }

            var group = Code(Trimmed(bytes, code), line);
            if (at >= bytes.Length)
            {
                throw new DxfReadException(line, $"The file ends behind the group code {group}.");
            }

            var value = Line(bytes, ref at);
            tags.Add(group, value.Start, value.Length, line);
            if (group == 0 && bytes.Slice(value.Start, value.Length).SequenceEqual("EOF"u8))
            {
                break; // what stands behind the end is none of the drawing
            }
        }

        return tags;
    }

    private static (int Start, int Length) Line(ReadOnlySpan<byte> bytes, ref int at)
    {
        var start = at;
        var length = bytes[at..].IndexOfAny((byte)'\r', (byte)'\n');
        if (length < 0)
        {
            at = bytes.Length;
            return (start, bytes.Length - start);
        }

        at = start + length + 1;
        if (bytes[start + length] == '\r' && at < bytes.Length && bytes[at] == '\n')
        {
            at++;
        }

        return (start, length);
    }

    private static ReadOnlySpan<byte> Trimmed(ReadOnlySpan<byte> bytes, (int Start, int Length) line) => bytes.Slice(line.Start, line.Length).Trim((byte)' ');

    private static int Code(ReadOnlySpan<byte> text, int line) =>
        Utf8Parser.TryParse(text, out int code, out var read) && read == text.Length && code is >= -5 and <= 1071
            ? code
            : throw new DxfReadException(line, "Here a group code should stand, a whole number up to 1071.");
}
