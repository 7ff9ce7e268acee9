using System.Globalization;
using System.Text;

namespace DetailGen.Dxf.Reading;

/// <summary>How the letters of a file are kept: UTF-8 since AC1021, a code page before.</summary>
internal sealed class Letters
{
    private const int WesternEurope = 1252;
    private const string FirstInUtf8 = "AC1021";
    private readonly Encoding _encoding;

    private Letters(Encoding encoding) => _encoding = encoding;

    public static Letters Of(string version, string page, Action<string> found)
    {
        if (version.Length == 0 || string.CompareOrdinal(version, FirstInUtf8) >= 0)
        {
            return new(Encoding.UTF8);
        }

        Encoding.RegisterProvider(CodePagesEncodingProvider.Instance);
        var digits = page.Contains('_', StringComparison.Ordinal) ? page[(page.IndexOf('_', StringComparison.Ordinal) + 1)..] : page;
        try
        {
            return new(Encoding.GetEncoding(int.Parse(digits, NumberStyles.None, CultureInfo.InvariantCulture)));
        }
        catch (Exception fault) when (fault is FormatException or OverflowException or ArgumentException or NotSupportedException)
        {
            found($"The code page '{page}' is not known; letters are read as those of Western Europe.");
            return new(Encoding.GetEncoding(WesternEurope));
        }
    }

    /// <summary>Letters of a kind or a version, before the code page is known.</summary>
    public static string Plain(ReadOnlySpan<byte> value) => Encoding.Latin1.GetString(value);

    /// <summary>The text with <c>\U+xxxx</c> as the letter that it names.</summary>
    public string Text(ReadOnlySpan<byte> value)
    {
        var text = _encoding.GetString(value);
        return text.Contains("\\U+", StringComparison.OrdinalIgnoreCase) ? Unescaped(text) : text;
    }

    private static string Unescaped(string text)
    {
        var letters = new StringBuilder(text.Length);
        for (var at = 0; at < text.Length; at++)
        {
            if (text[at] == '\\' && at + 7 <= text.Length && text[at + 1] is 'U' or 'u' && text[at + 2] == '+'
                && ushort.TryParse(text.AsSpan(at + 3, 4), NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture, out var unit))
            {
                letters.Append((char)unit);
                at += 6;
            }
            else
            {
                letters.Append(text[at]);
            }
        }

        return letters.ToString();
    }
}
