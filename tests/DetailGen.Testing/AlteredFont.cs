using System.Buffers.Binary;
using System.Text;

namespace DetailGen.Testing;

/// <summary>Another font for tests, made of one that ships by altering its tables; each change gives a new one. Tables after the OpenType specification 1.9, from memory.</summary>
public sealed class AlteredFont
{
    private readonly SortedDictionary<string, byte[]> _tables;

    private AlteredFont(SortedDictionary<string, byte[]> tables) => _tables = tables;

    public static AlteredFont Of(string weight)
    {
        var file = File.ReadAllBytes(Repository.Path("src", "DetailGen.Drawing", "Lettering", "Fonts", $"LiberationSans-{weight}.ttf"));
        var tables = new SortedDictionary<string, byte[]>(StringComparer.Ordinal);
        for (var row = 12; row < 12 + 16 * U16(file, 4); row += 16)
        {
            tables.Add(Encoding.ASCII.GetString(file, row, 4), file[I32(file, row + 8)..(I32(file, row + 8) + I32(file, row + 12))]);
        }

        return new(tables);
    }

    /// <summary>Under another name: letters of Windows, in English.</summary>
    public AlteredFont Named(string family)
    {
        var text = Encoding.BigEndianUnicode.GetBytes(family);
        return With("name", [.. Words(0, 1, 18, 3, 1, 0x409, 1, text.Length, 0), .. text]);
    }

    public AlteredFont With(string tag, byte[] table) => new(new(_tables, StringComparer.Ordinal) { [tag] = table });

    public AlteredFont Without(string tag) => new(new(_tables.Where(table => table.Key != tag).ToDictionary(), StringComparer.Ordinal));

    /// <summary>With another 16-bit number in a table.</summary>
    public AlteredFont With(string tag, int at, int value)
    {
        var table = _tables[tag].ToArray();
        Put16(table, at, value);
        return With(tag, table);
    }

    /// <summary>Only these letters are found in it.</summary>
    public AlteredFont Only(IEnumerable<char> letters)
    {
        var found = letters.Distinct().Order().Select(letter => (Letter: (int)letter, Glyph: GlyphOf(letter))).Where(one => one.Glyph > 0).ToArray();
        int[] Column(Func<(int Letter, int Glyph), int> of, int last) => [.. found.Select(of), last];
        var twice = 2 * (found.Length + 1);
        int[] map =
        [
            4, 16 + 4 * twice, 0, twice, 0, 0, 0, .. Column(one => one.Letter, 0xFFFF), 0, .. Column(one => one.Letter, 0xFFFF), .. Column(one => one.Glyph - one.Letter, 1), .. Column(_ => 0, 0),
        ];
        return With("cmap", Words([0, 1, 3, 1, 0, 12, .. map]));
    }

    /// <summary>Outlines and widths so many times as wide and as high, to another em.</summary>
    public AlteredFont Stretched(double across, double up, int unitsPerEm)
    {
        var (loca, glyf, outlines) = (_tables["loca"], _tables["glyf"], new MemoryStream());
        var places = new byte[loca.Length];
        for (var at = 0; at < loca.Length; at += 4)
        {
            BinaryPrimitives.WriteInt32BigEndian(places.AsSpan(at), (int)outlines.Length);
            if (at + 4 < loca.Length && I32(loca, at + 4) > I32(loca, at))
            {
                var glyph = glyf.AsSpan(I32(loca, at)..I32(loca, at + 4));
                int S(int place, double by) => (int)Math.Round(I16(glyf, place) * by);
                var head = I32(loca, at);
                outlines.Write(Words(I16(glyf, head), S(head + 2, across), S(head + 4, up), S(head + 6, across), S(head + 8, up)));
                outlines.Write(I16(glyf, head) < 0 ? Parts(glyph[10..], across, up) : Contours(glyph[10..], I16(glyf, head), across, up));
                outlines.Write(new byte[(4 - outlines.Length % 4) % 4]);
            }
        }

        var widths = _tables["hmtx"].ToArray();
        for (var at = 0; at < widths.Length; at += 2)
        {
            Put16(widths, at, (int)Math.Round(at < 4 * U16(_tables["hhea"], 34) && at % 4 == 0 ? U16(widths, at) * across : I16(widths, at) * across));
        }

        return With("glyf", outlines.ToArray()).With("loca", places).With("hmtx", widths).With("head", 18, unitsPerEm);
    }

    public byte[] Bytes()
    {
        var file = new MemoryStream();
        file.Write([0, 1, 0, 0, .. Words(_tables.Count, 0, 0, 0)]);
        var at = 12 + 16 * _tables.Count;
        foreach (var (tag, table) in _tables)
        {
            file.Write([.. Encoding.ASCII.GetBytes(tag), 0, 0, 0, 0, .. Words(at >> 16, at & 0xFFFF, table.Length >> 16, table.Length & 0xFFFF)]);
            at += (table.Length + 3) / 4 * 4;
        }

        foreach (var table in _tables.Values)
        {
            file.Write(table);
            file.Write(new byte[(4 - table.Length % 4) % 4]);
        }

        return file.ToArray();
    }

    // An outline of its own: points one by one, all in 16 bits, without the program that fits it to pixels.
    private static byte[] Contours(ReadOnlySpan<byte> glyph, int contours, double across, double up)
    {
        const int On = 1, ShortX = 2, ShortY = 4, Again = 8, SameX = 16, SameY = 32;
        var points = contours == 0 ? 0 : U16(glyph, 2 * contours - 2) + 1;
        var at = 2 * contours + 2 + U16(glyph, 2 * contours);
        var flags = new List<int>();
        while (flags.Count < points)
        {
            int flag = glyph[at++];
            var times = (flag & Again) != 0 ? glyph[at++] + 1 : 1;
            flags.AddRange(Enumerable.Repeat(flag, times));
        }

        var written = new MemoryStream();
        written.Write(glyph[..(2 * contours)]);
        written.Write(Words(0));
        written.Write([.. flags.Select(flag => (byte)(flag & On))]);
        foreach (var (isShort, same, by) in new[] { (ShortX, SameX, across), (ShortY, SameY, up) })
        {
            var (place, last) = (0, 0);
            foreach (var flag in flags)
            {
                if ((flag & isShort) != 0)
                {
                    place += (flag & same) != 0 ? glyph[at] : -glyph[at];
                    at++;
                }
                else if ((flag & same) == 0)
                {
                    place += I16(glyph, at);
                    at += 2;
                }

                var now = (int)Math.Round(place * by);
                written.Write(Words(now - last));
                last = now;
            }
        }

        return written.ToArray();
    }

    // An outline put together from others, by where they stand.
    private static byte[] Parts(ReadOnlySpan<byte> glyph, double across, double up)
    {
        const int WordArguments = 0x1, OneScale = 0x8, More = 0x20, TwoScales = 0x40, FourScales = 0x80, Program = 0x100;
        var written = new MemoryStream();
        int flags, at = 0;
        do
        {
            flags = U16(glyph, at);
            var isLong = (flags & WordArguments) != 0;
            var (x, y) = isLong ? (I16(glyph, at + 4), I16(glyph, at + 6)) : unchecked(((sbyte)glyph[at + 4], (sbyte)glyph[at + 5]));
            written.Write(Words((flags | WordArguments) & ~Program, U16(glyph, at + 2), (int)Math.Round(x * across), (int)Math.Round(y * up)));
            at += isLong ? 8 : 6;
            var scales = (flags & OneScale) != 0 ? 2 : (flags & TwoScales) != 0 ? 4 : (flags & FourScales) != 0 ? 8 : 0;
            written.Write(glyph.Slice(at, scales));
            at += scales;
        }
        while ((flags & More) != 0);
        return written.ToArray();
    }

    private int GlyphOf(int letter)
    {
        var cmap = _tables["cmap"];
        for (var row = 4; row < 4 + 8 * U16(cmap, 2); row += 8)
        {
            var (map, twice) = (I32(cmap, row + 4), U16(cmap, I32(cmap, row + 4) + 6));
            for (var i = 0; U16(cmap, map) == 4 && i < twice; i += 2)
            {
                var (end, start, delta, range) = (U16(cmap, map + 14 + i), U16(cmap, map + 16 + twice + i), U16(cmap, map + 16 + 2 * twice + i), U16(cmap, map + 16 + 3 * twice + i));
                if (letter >= start && letter <= end)
                {
                    return (range == 0 ? letter + delta : U16(cmap, map + 16 + 3 * twice + i + range + 2 * (letter - start)) + delta) & 0xFFFF;
                }
            }
        }

        return 0;
    }

    private static int U16(ReadOnlySpan<byte> bytes, int at) => BinaryPrimitives.ReadUInt16BigEndian(bytes[at..]);

    private static int I16(ReadOnlySpan<byte> bytes, int at) => BinaryPrimitives.ReadInt16BigEndian(bytes[at..]);

    private static int I32(ReadOnlySpan<byte> bytes, int at) => BinaryPrimitives.ReadInt32BigEndian(bytes[at..]);

    private static void Put16(Span<byte> bytes, int at, int value) => BinaryPrimitives.WriteUInt16BigEndian(bytes[at..], (ushort)(value & 0xFFFF));

    private static byte[] Words(params IReadOnlyList<int> numbers) => [.. numbers.SelectMany(number => new[] { (byte)((number >> 8) & 0xFF), (byte)(number & 0xFF) })];
}
