using DetailGen.Drawing.Scenes;

namespace DetailGen.Drawing.Lettering;

/// <summary>A TrueType font: how wide each letter is and how high they are, all in units of the font. Tables after the OpenType specification 1.9, from memory.</summary>
public sealed class FontFile
{
    // Latin, Greek and the punctuation and arrows that sheets use; anything above takes the slower way.
    private const int Common = 0x2300;

    private const string Latin = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789";

    // What letters of whatever face keep to, so that a sheet can be laid out with them (decisions of this project): a capital as a part of the em, the others as parts of a capital.
    private const double LeastCapital = 0.3, MostCapital = 1.2, MostDepth = 1.65, MostWidth = 3; // lines of a note stand 1.7 capitals apart

    private readonly byte[] _bytes;
    private readonly FontTables _tables;
    private readonly FontTable _characterMap;
    private readonly FontTable _advances;
    private readonly int _advanceCount;
    private readonly int[] _outlines;
    // Widths as far as they were asked for, 0 where not yet; two threads that fill the same place write the same.
    private readonly ushort[] _common = new ushort[Common];

    private FontFile(byte[] bytes, FontTables tables, FontTable characterMap, string family)
    {
        (_bytes, _tables, _characterMap, Family) = (bytes, tables, characterMap, family);
        UnitsPerEm = tables["head"].UInt16(18);
        _advanceCount = tables["hhea"].UInt16(34);
        _advances = tables["hmtx"];
        _outlines = tables.Outlines();
        PaperBox[] all = [.. Latin.Select(Outline).OfType<PaperBox>()];
        Capital = Outline('H')?.Top ?? 0;
        Ascender = all.Length == 0 ? 0 : all.Max(box => box.Top);
        Descender = all.Length == 0 ? 0 : -all.Min(box => box.Bottom);
    }

    public string Family { get; }

    internal int UnitsPerEm { get; }

    /// <summary>Height of a capital, from the outline of H.</summary>
    internal double Capital { get; }

    /// <summary>How far the highest letter or figure without an accent rises over the base line.</summary>
    internal double Ascender { get; }

    /// <summary>How far the deepest hangs under it.</summary>
    internal double Descender { get; }

    /// <summary>The whole file, to hand to a renderer.</summary>
    internal ReadOnlyMemory<byte> Bytes => _bytes;

    /// <param name="name">The resource's logical name.</param>
    internal static FontFile Embedded(string name)
    {
        using var stream = typeof(FontFile).Assembly.GetManifestResourceStream(name)
            ?? throw new InvalidOperationException($"The font {name} is not embedded.");
        var bytes = new byte[stream.Length];
        stream.ReadExactly(bytes);
        return Parsed(bytes, out var fault) ?? throw new InvalidOperationException($"The font {name}: {fault}.");
    }

    /// <summary>Whatever the bytes, there is a font or a fault.</summary>
    /// <returns>Null where there is a fault.</returns>
    public static FontFile? Read(byte[] bytes, out FontFault fault)
    {
        var font = Parsed(bytes, out fault);
        if (font is not null && !SkiaFaces.Takes(bytes))
        {
            fault = FontFault.Damaged;
        }

        return fault == FontFault.None ? font : null;
    }

    private static FontFile? Parsed(byte[] bytes, out FontFault fault)
    {
        if (FontTables.Read(bytes, out fault) is not { } tables)
        {
            return null;
        }

        var font = UnicodeMap(tables["cmap"]) is { } map ? new FontFile(bytes, tables, map, FontName.Family(tables["name"])) : null;
        fault = font is null ? FontFault.NoUnicode
            : !font.MayBeEmbedded ? FontFault.NotToBeEmbedded
            : font.Family.Length == 0 ? FontFault.NoName
            : font.UnitsPerEm is < 16 or > 16384 || !font.HasUsableProportions ? FontFault.Proportions
            : FontFault.None;
        return fault == FontFault.None ? font : null;
    }

    /// <summary>Sum of the letters' own widths in font units. No kerning: no emitter applies any.</summary>
    internal int Advance(ReadOnlySpan<char> words)
    {
        var sum = 0;
        for (var i = 0; i < words.Length; i++)
        {
            var letter = words[i];
            if (letter < Common)
            {
                var width = _common[letter];
                sum += width != 0 ? width : _common[letter] = (ushort)AdvanceOfGlyph(Glyph(letter));
            }
            else
            {
                // Letters beyond the basic plane are not looked for: a pair shows as one missing glyph.
                sum += AdvanceOfGlyph(char.IsSurrogate(letter) ? 0 : Glyph(letter));
                i += char.IsHighSurrogate(letter) && i + 1 < words.Length ? 1 : 0;
            }
        }

        return sum;
    }

    /// <summary>The box of a letter's ink from its origin; null where it has none.</summary>
    internal PaperBox? Outline(char letter) =>
        Glyph(letter) is > 0 and var glyph && _outlines[glyph + 1] - _outlines[glyph] >= 10 && _tables["glyf"].Piece(_outlines[glyph], 10) is { } head
            ? new(head.Int16(2), head.Int16(4), head.Int16(6), head.Int16(8)) : null;

    /// <summary>Whether the font has a picture of the letter.</summary>
    internal bool Has(char letter) => Glyph(letter) != 0;

    /// <summary>A copy with the outlines and widths of these letters only; every glyph keeps its number, so the other tables stay true. The whole where the font's own flags forbid a part of it.</summary>
    internal byte[] Subset(IEnumerable<char> letters)
    {
        const int NoSubset = 0x100;
        return (LicenceFlags & NoSubset) != 0 ? _bytes : FontSubset.Of(_tables, letters.Select(letter => Glyph(letter)));
    }

    private int LicenceFlags => _tables["OS/2"].UInt16(8);

    // fsType: the lowest bits say restricted, for preview and print, or editable, and of several the most lenient holds; a further one allows pictures of the letters only.
    private bool MayBeEmbedded => (LicenceFlags & 0x000E) != 0x0002 && (LicenceFlags & 0x0200) == 0;

    private bool HasUsableProportions => Capital >= LeastCapital * UnitsPerEm && Capital <= MostCapital * UnitsPerEm && Ascender + Descender <= MostDepth * Capital
        && $"{Latin} ".All(letter => !Has(letter) || (Advance([letter]) is var width && width > 0 && width <= MostWidth * Capital));

    private int AdvanceOfGlyph(int glyph) => _advances.UInt16(4 * Math.Min(glyph, _advanceCount - 1));

    private int Glyph(int letter)
    {
        var (ends, twice) = (14, _characterMap.UInt16(6));
        var (low, high) = (0, twice / 2 - 1);
        while (low < high)
        {
            var middle = (low + high) / 2;
            (low, high) = _characterMap.UInt16(ends + 2 * middle) < letter ? (middle + 1, high) : (low, middle);
        }

        var starts = ends + twice + 2;
        var start = _characterMap.UInt16(starts + 2 * low);
        if (letter < start || letter > _characterMap.UInt16(ends + 2 * low))
        {
            return 0;
        }

        var delta = _characterMap.UInt16(starts + twice + 2 * low);
        var place = starts + 2 * twice + 2 * low;
        var range = _characterMap.UInt16(place);
        var glyph = range == 0 ? letter : _characterMap.UInt16(place + range + 2 * (letter - start));
        glyph = glyph == 0 ? 0 : (glyph + delta) & 0xFFFF;
        return glyph < _tables.Glyphs ? glyph : 0;
    }

    // The map of the basic plane, format 4; of Windows before that of Unicode, which are the same where there are both.
    private static FontTable? UnicodeMap(FontTable table)
    {
        FontTable? found = null;
        for (var row = 4; row < 4 + 8 * table.UInt16(2); row += 8)
        {
            var (platform, encoding, at) = (table.UInt16(row), table.UInt16(row + 2), table.UInt32(row + 4));
            if (table.Piece(at, table.Length - at) is { } map && map.UInt16(0) == 4 && map.UInt16(6) is >= 2 and var twice && twice % 2 == 0 && map.Length >= 16 + 4 * twice
                && ((platform, encoding) == (3, 1) || (platform == 0 && found is null)))
            {
                found = map;
            }
        }

        return found;
    }
}
