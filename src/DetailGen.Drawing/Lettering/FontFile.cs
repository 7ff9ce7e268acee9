using System.Buffers.Binary;
using System.Text;

namespace DetailGen.Drawing.Lettering;

/// <summary>What we ask of a TrueType font: how wide each letter is. Read once, from the tables head, hhea, hmtx and cmap (format 4) of the OpenType specification 1.9.</summary>
internal sealed class FontFile
{
    // Latin, Greek and the punctuation and arrows that sheets use; anything above takes the slower way.
    private const int Common = 0x2300;

    private readonly byte[] _bytes;
    private readonly int _characterMap;
    private readonly int _advances;
    private readonly int _advanceCount;
    // Widths as far as they were asked for, 0 where not yet; two threads that fill the same place write the same.
    private readonly ushort[] _common = new ushort[Common];

    private FontFile(byte[] bytes)
    {
        _bytes = bytes;
        UnitsPerEm = UInt16(Table("head") + 18);
        _advanceCount = UInt16(Table("hhea") + 34);
        _advances = Table("hmtx");
        _characterMap = UnicodeMap(Table("cmap"));
    }

    public int UnitsPerEm { get; }

    /// <summary>The whole file, to hand to a renderer.</summary>
    public ReadOnlyMemory<byte> Bytes => _bytes;

    /// <param name="name">The resource's logical name.</param>
    public static FontFile Embedded(string name)
    {
        using var stream = typeof(FontFile).Assembly.GetManifestResourceStream(name)
            ?? throw new InvalidOperationException($"The font {name} is not embedded.");
        var bytes = new byte[stream.Length];
        stream.ReadExactly(bytes);
        return new(bytes);
    }

    /// <summary>Sum of the letters' own widths in font units. No kerning: no emitter applies any.</summary>
    public int Advance(ReadOnlySpan<char> words)
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
                // The font has no letters beyond the basic plane: a pair shows as one missing glyph.
                sum += AdvanceOfGlyph(char.IsSurrogate(letter) ? 0 : Glyph(letter));
                i += char.IsHighSurrogate(letter) && i + 1 < words.Length ? 1 : 0;
            }
        }

        return sum;
    }

    /// <summary>Whether the font has a picture of the letter.</summary>
    public bool Has(char letter) => Glyph(letter) != 0;

    /// <summary>A copy with the outlines and widths of these letters only; every glyph keeps its number, so the other tables stay true.</summary>
    public byte[] Subset(IEnumerable<char> letters) => FontSubset.Of(_bytes, letters.Select(letter => Glyph(letter)));

    private int AdvanceOfGlyph(int glyph) => UInt16(_advances + 4 * Math.Min(glyph, _advanceCount - 1));

    private int Glyph(int letter)
    {
        var (ends, twice) = (_characterMap + 14, UInt16(_characterMap + 6));
        var (low, high) = (0, twice / 2 - 1);
        while (low < high)
        {
            var middle = (low + high) / 2;
            (low, high) = UInt16(ends + 2 * middle) < letter ? (middle + 1, high) : (low, middle);
        }

        var starts = ends + twice + 2;
        var start = UInt16(starts + 2 * low);
        if (letter < start || letter > UInt16(ends + 2 * low))
        {
            return 0;
        }

        var delta = UInt16(starts + twice + 2 * low);
        var place = starts + 2 * twice + 2 * low;
        var range = UInt16(place);
        var glyph = range == 0 ? letter : UInt16(place + range + 2 * (letter - start));
        return glyph == 0 ? 0 : (glyph + delta) & 0xFFFF;
    }

    private int UnicodeMap(int table)
    {
        for (var i = 0; i < UInt16(table + 2); i++)
        {
            var row = table + 4 + 8 * i;
            var map = table + (int)BinaryPrimitives.ReadUInt32BigEndian(_bytes.AsSpan(row + 4));
            if ((UInt16(row), UInt16(row + 2), UInt16(map)) == (3, 1, 4))
            {
                return map;
            }
        }

        throw new InvalidOperationException("The font has no Unicode character map of format 4.");
    }

    private int Table(string tag)
    {
        for (var i = 0; i < UInt16(4); i++)
        {
            var row = 12 + 16 * i;
            if (Encoding.ASCII.GetString(_bytes, row, 4) == tag)
            {
                return (int)BinaryPrimitives.ReadUInt32BigEndian(_bytes.AsSpan(row + 8));
            }
        }

        throw new InvalidOperationException($"The font has no table {tag}.");
    }

    private int UInt16(int at) => BinaryPrimitives.ReadUInt16BigEndian(_bytes.AsSpan(at));
}
