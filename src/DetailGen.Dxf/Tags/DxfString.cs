using System.Globalization;
using System.Text;

namespace DetailGen.Dxf.Tags;

/// <summary>Strings as values of a tag: what must be rewritten in them, and how long ones are cut.</summary>
internal static class DxfString
{
    /// <summary>The most bytes of UTF-8 in one value: some readers cut at 256 without a word.</summary>
    public const int MostBytes = 255;

    /// <summary>The most letters in one chunk of a multi-line text.</summary>
    public const int MostLetters = 250;

    /// <summary>The text for a single-line text or an attribute: a caret gets a blank behind it, because with a letter it would name a
    /// control letter; two percent signs are parted by a blank, because together they begin a code. Outer blanks go, because some
    /// readers trim them and so would see another text than others.</summary>
    public static string ForText(string text) => WithoutCodes(text.Trim());

    private static string WithoutCodes(string text)
    {
        var escaped = text.Contains('^') ? text.Replace("^", "^ ", StringComparison.Ordinal) : text;
        while (escaped.Contains("%%", StringComparison.Ordinal))
        {
            escaped = escaped.Replace("%%", "% %", StringComparison.Ordinal);
        }

        return escaped;
    }

    /// <summary>The lines of a multi-line text as one string, with the format's own line breaks, fixed blanks and escapes;
    /// blanks at the ends of lines go.</summary>
    /// <exception cref="ArgumentException">A line holds a line break or another control letter.</exception>
    public static string ForLines(IEnumerable<string> lines)
    {
        var joined = new StringBuilder();
        var isFirst = true;
        foreach (var line in lines)
        {
            RefuseControlLetters(line);
            joined.Append(isFirst ? "" : "\\P");
            isFirst = false;

            foreach (var letter in WithoutCodes(line.TrimEnd()))
            {
                _ = letter switch
                {
                    '\\' or '{' or '}' => joined.Append('\\').Append(letter),
                    '\u00A0' => joined.Append("\\~"),
                    _ => joined.Append(letter),
                };
            }
        }

        return joined.ToString();
    }

    /// <exception cref="ArgumentException">The text holds a control letter: it would shift every pair behind it.</exception>
    public static void RefuseControlLetters(ReadOnlySpan<char> text)
    {
        foreach (var letter in text)
        {
            if (char.IsControl(letter) || letter is '\u2028' or '\u2029')
            {
                throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"The text holds the control letter U+{(int)letter:X4}."));
            }
        }
    }

    /// <summary>Cuts an escaped text into pieces that each fit a tag: never inside an escape, a surrogate pair or a combining sequence,
    /// and beside a blank only where there is no other place, since readers may trim. The pieces joined are the text.</summary>
    public static IEnumerable<string> Chunks(string text, int mostLetters = MostLetters, int mostBytes = MostBytes)
    {
        var start = 0;
        while (!Fits(text.AsSpan(start), mostLetters, mostBytes))
        {
            var end = start + Cut(text.AsSpan(start), mostLetters, mostBytes);
            yield return text[start..end];
            start = end;
        }

        yield return text[start..];
    }

    private static bool Fits(ReadOnlySpan<char> text, int mostLetters, int mostBytes) =>
        text.Length <= mostLetters && (text.Length * 3 <= mostBytes || Encoding.UTF8.GetByteCount(text) <= mostBytes);

    private static int Cut(ReadOnlySpan<char> text, int mostLetters, int mostBytes)
    {
        var (at, bytes, clear) = (0, 0, 0);
        while (at < text.Length)
        {
            var unit = UnitAt(text[at..], mostLetters, mostBytes);
            bytes += Encoding.UTF8.GetByteCount(text.Slice(at, unit));
            if (at + unit > mostLetters || bytes > mostBytes)
            {
                break;
            }

            at += unit;
            clear = at < text.Length && text[at - 1] != ' ' && text[at] != ' ' ? at : clear;
        }

        return clear > 0 ? clear : at;
    }

    private static int UnitAt(ReadOnlySpan<char> text, int mostLetters, int mostBytes)
    {
        if (text[0] is '\\' or '^')
        {
            return Math.Min(2, text.Length);
        }

        var unit = StringInfo.GetNextTextElementLength(text);
        if (unit > mostLetters / 2 || unit * 3 > mostBytes / 2)
        {
            // A letter under a tower of marks, longer than a chunk: only whole runes can be kept.
            Rune.DecodeFromUtf16(text, out _, out unit);
        }

        return unit;
    }
}
