using System.Text;
using System.Text.Unicode;

namespace DetailGen.Details.Reading;

/// <summary>Looks over the bytes of a file before anything is made of them.</summary>
internal static class RawText
{
    /// <summary>The first byte that no text file has; null where there is none.</summary>
    public static Diagnostic? FirstFault(ReadOnlySpan<byte> bytes, string name)
    {
        if (bytes.StartsWith((ReadOnlySpan<byte>)[0xFF, 0xFE]) || bytes.StartsWith((ReadOnlySpan<byte>)[0xFE, 0xFF]))
        {
            return Messages.NotUtf8(new(name, 1, 1));
        }

        var control = IndexOfControl(bytes);
        if (control < 0 && Utf8.IsValid(bytes))
        {
            return null;
        }

        var line = 1;
        var column = 1;
        for (var i = 0; i < bytes.Length;)
        {
            if (IsControl(bytes[i]))
            {
                return Messages.Binary(new(name, line, column));
            }

            if (Rune.DecodeFromUtf8(bytes[i..], out var rune, out var taken) != System.Buffers.OperationStatus.Done)
            {
                return Messages.NotUtf8(new(name, line, column));
            }

            (line, column) = bytes[i] == '\n' ? (line + 1, 1) : (line, column + rune.Utf16SequenceLength);
            i += taken;
        }

        return null;
    }

    /// <summary>The first tab that stands before the first sign of its line; null where there is none.</summary>
    public static Diagnostic? FirstTab(string text, string name, int linesBefore)
    {
        if (!text.Contains('\t', StringComparison.Ordinal))
        {
            return null;
        }

        var line = 1 + linesBefore;
        foreach (var row in text.AsSpan().EnumerateLines())
        {
            var first = row.IndexOfAnyExcept(' ');
            if (first >= 0 && row[first] == '\t' && !row.IsWhiteSpace())
            {
                return Messages.Tab(new(name, line, first + 1));
            }

            line++;
        }

        return null;
    }

    private static int IndexOfControl(ReadOnlySpan<byte> bytes)
    {
        for (var i = 0; i < bytes.Length; i++)
        {
            if (IsControl(bytes[i]))
            {
                return i;
            }
        }

        return -1;
    }

    private static bool IsControl(byte value) => value is < 0x20 and not (0x09 or 0x0A or 0x0D) or 0x7F;
}
