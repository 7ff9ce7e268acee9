using System.Text;

namespace DetailGen.Drawing.Lettering;

/// <summary>What a font is called by the programs that draw with it: name 1 of its table, the family of four styles (OpenType specification 1.9, from memory).</summary>
internal static class FontName
{
    // The most that the operating system of most readers of drawings takes (from memory).
    private const int Longest = 31;

    /// <summary>Empty where there is none, or none that can stand in any file. In English where the font has several.</summary>
    public static string Family(FontTable table)
    {
        const int FamilyName = 1, Windows = 3, English = 0x409;
        var (best, rank) = ("", 0);
        for (var i = 0; i < table.UInt16(2); i++)
        {
            var row = 6 + 12 * i;
            var (platform, language) = (table.UInt16(row), table.UInt16(row + 4));
            if (table.UInt16(row + 6) != FamilyName || table.Piece(table.UInt16(4) + table.UInt16(row + 10), table.UInt16(row + 8)) is not { } bytes)
            {
                continue;
            }

            var name = (platform is 0 or Windows ? Encoding.BigEndianUnicode : Encoding.Latin1).GetString(bytes.Bytes.Span);
            var worth = platform == Windows && language == English ? 3 : platform == Windows ? 2 : 1;
            if (worth > rank && IsUsable(name))
            {
                (best, rank) = (name, worth);
            }
        }

        return best;
    }

    /// <summary>Whether it can stand in quotes in a page and on a line of a drawing.</summary>
    private static bool IsUsable(string name) =>
        name.Length is > 0 and <= Longest && name == name.Trim() && name.All(letter => char.IsLetterOrDigit(letter) || letter is ' ' or '-' or '_' or '.' or '+');
}
