namespace DetailGen.Drawing.Lettering;

/// <summary>Breaks a text into lines that fit a width.</summary>
public static class Wrapping
{
    /// <summary>
    /// Lines of at most <paramref name="width"/> mm, in order, blanks between words single; an empty text gives none. A line break in the text is kept.
    /// A size stays with its unit. A last line of one word under five letters is avoided where the word before can come down with it.
    /// A word wider than the width is broken after a hyphen or slash, else between letters.
    /// </summary>
    /// <param name="height">Height of capitals, mm.</param>
    public static IReadOnlyList<string> Wrap(this Typeface typeface, string words, double height, double width, bool bold = false)
    {
        if (IsSingleSpaced(words) && typeface.Width(words, height, bold) <= width)
        {
            return words.Length > 0 ? [words] : [];
        }

        var lines = new List<string>();
        foreach (var part in words.Split('\n'))
        {
            Break(typeface, part, height, width, bold, lines);
        }

        return lines;
    }

    // Only then is a text that fits a line of its own, as it stands.
    private static bool IsSingleSpaced(string words) =>
        words.AsSpan().IndexOfAny('\n', '\t', '\r') < 0 && !words.Contains("  ", StringComparison.Ordinal) && !words.StartsWith(' ') && !words.EndsWith(' ');

    private static void Break(Typeface typeface, string text, double height, double width, bool bold, List<string> lines)
    {
        var words = new MeasuredWords(typeface, [.. Words(text)], height, bold);
        if (words.Longest > width)
        {
            words = new(typeface, [.. Torn(typeface, Words(text), height, width, bold)], height, bold);
        }

        lines.AddRange(words.Lines(words.Starts(width, width)));
    }

    private static List<string> Torn(Typeface typeface, List<string> whole, double height, double width, bool bold)
    {
        var words = new List<string>();
        foreach (var word in whole)
        {
            // A size that does not fit with its unit gives it up before it is cut.
            foreach (var piece in typeface.Width(word, height, bold) > width ? word.Split(' ') : [word])
            {
                var rest = piece;
                while (rest.Length > 1 && typeface.Width(rest, height, bold) > width)
                {
                    var cut = Cut(typeface, rest, height, width, bold);
                    words.Add(rest[..cut]);
                    rest = rest[cut..];
                }

                words.Add(rest);
            }
        }

        return words;
    }

    /// <summary>The words of a text, a size and its unit being one.</summary>
    internal static List<string> Words(string text)
    {
        var words = new List<string>();
        foreach (var word in text.Split((char[]?)[' ', '\t', '\r', '\n'], StringSplitOptions.RemoveEmptyEntries))
        {
            if (words.Count > 0 && IsUnit(word) && char.IsAsciiDigit(words[^1][^1]))
            {
                words[^1] = $"{words[^1]} {word}";
            }
            else
            {
                words.Add(word);
            }
        }

        return words;
    }

    private static bool IsUnit(string word)
    {
        var bare = word.AsSpan().TrimEnd(".,;:)");
        return bare is "mm" or "m" or "mm²" or "m²" or "kg/m²" or "kg/m³" or "W/m²K" or "W/mK" or "W/(m²K)" or "W/(m·K)" or "m²K/W" or "%" or "°C" or "K";
    }

    /// <summary>How many letters fit, at least one.</summary>
    private static int Cut(Typeface typeface, string word, double height, double width, bool bold)
    {
        var fits = 1;
        while (fits + 1 < word.Length && typeface.Width(word.AsSpan(0, fits + 1), height, bold) <= width)
        {
            fits++;
        }

        var mark = word.AsSpan(0, fits).LastIndexOfAny('-', '/', '_');
        if (mark > 0)
        {
            return mark + 1;
        }

        return fits > 1 && char.IsHighSurrogate(word[fits - 1]) ? fits - 1 : fits;
    }
}
