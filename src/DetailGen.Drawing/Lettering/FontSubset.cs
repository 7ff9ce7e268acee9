using System.Buffers.Binary;
using System.Text;

namespace DetailGen.Drawing.Lettering;

/// <summary>
/// Cuts a TrueType font down to some glyphs. Outlines and widths of the others become empty, glyph numbers stay; tables that only layout
/// engines read are left out. Table layouts: OpenType specification 1.9, from memory (font file, glyf, loca, hmtx, post).
/// </summary>
internal static class FontSubset
{
    // In the order of their tags, as the directory wants them. The hinting programs stay, since outlines call them.
    private static readonly string[] Kept = ["OS/2", "cmap", "cvt ", "fpgm", "glyf", "head", "hhea", "hmtx", "loca", "maxp", "name", "post", "prep"];

    /// <summary>Bytes of a font file; the glyph for missing letters is always in it.</summary>
    public static byte[] Of(ReadOnlySpan<byte> font, IEnumerable<int> glyphs)
    {
        var tables = Tables(font);
        var places = Places(tables);
        var kept = WithComponents(tables["glyf"], places, glyphs);
        var (outlines, newPlaces) = Outlines(tables["glyf"], places, kept);
        tables["glyf"] = outlines;
        tables["loca"] = newPlaces;
        tables["hmtx"] = Widths(tables, kept);
        tables["post"] = WithoutNames(tables["post"]);
        BinaryPrimitives.WriteInt16BigEndian(tables["head"].AsSpan(50), 1); // loca in 32-bit numbers
        return File(tables);
    }

    private static Dictionary<string, byte[]> Tables(ReadOnlySpan<byte> font)
    {
        var tables = new Dictionary<string, byte[]>(StringComparer.Ordinal);
        for (var i = 0; i < UInt16(font, 4); i++)
        {
            var row = font.Slice(12 + 16 * i, 16);
            var tag = Encoding.ASCII.GetString(row[..4]);
            if (Kept.Contains(tag, StringComparer.Ordinal))
            {
                tables.Add(tag, font.Slice(Int32(row, 8), Int32(row, 12)).ToArray());
            }
        }

        return tables;
    }

    /// <summary>Where each outline begins in glyf, and where the last one ends.</summary>
    private static int[] Places(Dictionary<string, byte[]> tables)
    {
        var places = new int[UInt16(tables["maxp"], 4) + 1];
        var isLong = UInt16(tables["head"], 50) == 1;
        for (var i = 0; i < places.Length; i++)
        {
            places[i] = isLong ? Int32(tables["loca"], 4 * i) : 2 * UInt16(tables["loca"], 2 * i);
        }

        return places;
    }

    // Letters with accents are put together from others, which must come along.
    private static SortedSet<int> WithComponents(byte[] outlines, int[] places, IEnumerable<int> glyphs)
    {
        const int WordArguments = 0x1, OneScale = 0x8, More = 0x20, TwoScales = 0x40, FourScales = 0x80;
        var kept = new SortedSet<int>();
        var open = new Stack<int>(glyphs.Append(0));
        while (open.TryPop(out var glyph))
        {
            if (!kept.Add(glyph) || places[glyph + 1] == places[glyph] || BinaryPrimitives.ReadInt16BigEndian(outlines.AsSpan(places[glyph])) >= 0)
            {
                continue;
            }

            int flags;
            var at = places[glyph] + 10;
            do
            {
                flags = UInt16(outlines, at);
                open.Push(UInt16(outlines, at + 2));
                at += 4 + ((flags & WordArguments) != 0 ? 4 : 2)
                    + ((flags & OneScale) != 0 ? 2 : (flags & TwoScales) != 0 ? 4 : (flags & FourScales) != 0 ? 8 : 0);
            }
            while ((flags & More) != 0);
        }

        return kept;
    }

    private static (byte[] Outlines, byte[] Places) Outlines(byte[] outlines, int[] places, SortedSet<int> kept)
    {
        var (copy, newPlaces) = (new MemoryStream(), new byte[4 * places.Length]);
        for (var glyph = 0; glyph < places.Length; glyph++)
        {
            BinaryPrimitives.WriteInt32BigEndian(newPlaces.AsSpan(4 * glyph), (int)copy.Length);
            if (glyph + 1 < places.Length && kept.Contains(glyph))
            {
                copy.Write(outlines, places[glyph], places[glyph + 1] - places[glyph]);
                copy.Write(new byte[(4 - copy.Length % 4) % 4]);
            }
        }

        return (copy.ToArray(), newPlaces);
    }

    private static byte[] Widths(Dictionary<string, byte[]> tables, SortedSet<int> kept)
    {
        var (widths, full) = (tables["hmtx"], UInt16(tables["hhea"], 34));
        for (var glyph = 0; glyph < full - 1; glyph++) // the last one stands for all that follow
        {
            if (!kept.Contains(glyph))
            {
                widths.AsSpan(4 * glyph, 4).Clear();
            }
        }

        return widths;
    }

    /// <summary>Version 3 of the table: no names of glyphs, which nobody needs and which are 27 kB.</summary>
    private static byte[] WithoutNames(byte[] post)
    {
        var head = post[..32];
        BinaryPrimitives.WriteInt32BigEndian(head, 0x00030000);
        return head;
    }

    private static byte[] File(Dictionary<string, byte[]> tables)
    {
        var directory = 12 + 16 * Kept.Length;
        var file = new byte[directory + Kept.Sum(tag => Padded(tables[tag].Length))];
        var power = 1 << (int)Math.Log2(Kept.Length);
        BinaryPrimitives.WriteInt32BigEndian(file, 0x00010000);
        Write16(file, 4, Kept.Length);
        Write16(file, 6, 16 * power);
        Write16(file, 8, (int)Math.Log2(power));
        Write16(file, 10, 16 * (Kept.Length - power));

        tables["head"].AsSpan(8, 4).Clear(); // the whole file's checksum is taken with its own place empty
        var (at, head) = (directory, 0);
        for (var i = 0; i < Kept.Length; i++)
        {
            var table = tables[Kept[i]];
            var row = file.AsSpan(12 + 16 * i, 16);
            Encoding.ASCII.GetBytes(Kept[i], row);
            table.CopyTo(file, at);
            BinaryPrimitives.WriteUInt32BigEndian(row[4..], Checksum(file.AsSpan(at, Padded(table.Length))));
            BinaryPrimitives.WriteInt32BigEndian(row[8..], at);
            BinaryPrimitives.WriteInt32BigEndian(row[12..], table.Length);
            head = Kept[i] == "head" ? at : head;
            at += Padded(table.Length);
        }

        BinaryPrimitives.WriteUInt32BigEndian(file.AsSpan(head + 8), unchecked(0xB1B0AFBA - Checksum(file)));
        return file;
    }

    private static uint Checksum(ReadOnlySpan<byte> bytes)
    {
        var sum = 0u;
        for (var i = 0; i < bytes.Length; i += 4)
        {
            sum = unchecked(sum + BinaryPrimitives.ReadUInt32BigEndian(bytes[i..]));
        }

        return sum;
    }

    private static int Padded(int length) => (length + 3) / 4 * 4;

    private static int UInt16(ReadOnlySpan<byte> bytes, int at) => BinaryPrimitives.ReadUInt16BigEndian(bytes[at..]);

    private static int Int32(ReadOnlySpan<byte> bytes, int at) => BinaryPrimitives.ReadInt32BigEndian(bytes[at..]);

    private static void Write16(Span<byte> bytes, int at, int value) => BinaryPrimitives.WriteUInt16BigEndian(bytes[at..], (ushort)value);
}
