using System.Buffers.Binary;
using System.Text;

namespace DetailGen.Drawing.Lettering;

/// <summary>
/// Cuts a TrueType font down to some glyphs. Outlines and widths of the others become empty, glyph numbers stay; tables that only layout
/// engines read are left out. Table layouts: OpenType specification 1.9, from memory (font file, glyf, loca, hmtx, post).
/// </summary>
internal static class FontSubset
{
    // The hinting programs stay, since outlines call them.
    private static readonly string[] Kept = ["OS/2", "cmap", "cvt ", "fpgm", "glyf", "head", "hhea", "hmtx", "loca", "maxp", "name", "post", "prep"];

    /// <summary>Bytes of a font file; the glyph for missing letters is always in it.</summary>
    public static byte[] Of(FontTables font, IEnumerable<int> glyphs)
    {
        var (outlines, places) = (font["glyf"], font.Outlines());
        var kept = WithComponents(outlines, places, glyphs);
        var tables = new SortedDictionary<string, byte[]>(StringComparer.Ordinal);
        foreach (var tag in Kept)
        {
            if (font.Find(tag) is { } table)
            {
                tables.Add(tag, table.Bytes.ToArray());
            }
        }

        (tables["glyf"], tables["loca"]) = Outlines(outlines.Bytes.Span, places, kept);
        ClearWidths(tables["hmtx"], font["hhea"].UInt16(34), kept);
        tables["post"] = WithoutNames(tables["post"]);
        BinaryPrimitives.WriteInt16BigEndian(tables["head"].AsSpan(50), 1); // loca in 32-bit numbers
        return File(tables);
    }

    // Letters with accents are put together from others, which must come along.
    private static SortedSet<int> WithComponents(FontTable outlines, int[] places, IEnumerable<int> glyphs)
    {
        const int WordArguments = 0x1, OneScale = 0x8, More = 0x20, TwoScales = 0x40, FourScales = 0x80;
        var kept = new SortedSet<int>();
        var open = new Stack<int>(glyphs.Append(0));
        while (open.TryPop(out var glyph))
        {
            if (glyph >= places.Length - 1 || !kept.Add(glyph) || places[glyph + 1] == places[glyph] || outlines.Int16(places[glyph]) >= 0)
            {
                continue;
            }

            int flags;
            var at = places[glyph] + 10;
            do
            {
                flags = outlines.UInt16(at);
                open.Push(outlines.UInt16(at + 2));
                at += 4 + ((flags & WordArguments) != 0 ? 4 : 2)
                    + ((flags & OneScale) != 0 ? 2 : (flags & TwoScales) != 0 ? 4 : (flags & FourScales) != 0 ? 8 : 0);
            }
            while ((flags & More) != 0);
        }

        return kept;
    }

    private static (byte[] Outlines, byte[] Places) Outlines(ReadOnlySpan<byte> outlines, int[] places, SortedSet<int> kept)
    {
        var (copy, newPlaces) = (new MemoryStream(), new byte[4 * places.Length]);
        for (var glyph = 0; glyph < places.Length; glyph++)
        {
            BinaryPrimitives.WriteInt32BigEndian(newPlaces.AsSpan(4 * glyph), (int)copy.Length);
            if (glyph + 1 < places.Length && kept.Contains(glyph))
            {
                copy.Write(outlines[places[glyph]..places[glyph + 1]]);
                copy.Write(new byte[(4 - copy.Length % 4) % 4]);
            }
        }

        return (copy.ToArray(), newPlaces);
    }

    private static void ClearWidths(byte[] widths, int full, SortedSet<int> kept)
    {
        for (var glyph = 0; glyph < full - 1; glyph++) // the last one stands for all that follow
        {
            if (!kept.Contains(glyph))
            {
                widths.AsSpan(4 * glyph, 4).Clear();
            }
        }
    }

    /// <summary>Version 3 of the table: no names of glyphs, which nobody needs and which are 27 kB.</summary>
    private static byte[] WithoutNames(byte[] post)
    {
        var head = post[..32];
        BinaryPrimitives.WriteInt32BigEndian(head, 0x00030000);
        return head;
    }

    // The directory wants the tables in the order of their tags.
    private static byte[] File(SortedDictionary<string, byte[]> tables)
    {
        var directory = 12 + 16 * tables.Count;
        var file = new byte[directory + tables.Values.Sum(table => Padded(table.Length))];
        var power = 1 << (int)Math.Log2(tables.Count);
        BinaryPrimitives.WriteInt32BigEndian(file, 0x00010000);
        Write16(file, 4, tables.Count);
        Write16(file, 6, 16 * power);
        Write16(file, 8, (int)Math.Log2(power));
        Write16(file, 10, 16 * (tables.Count - power));

        tables["head"].AsSpan(8, 4).Clear(); // the whole file's checksum is taken with its own place empty
        var (at, head, row) = (directory, 0, 12);
        foreach (var (tag, table) in tables)
        {
            Encoding.ASCII.GetBytes(tag, file.AsSpan(row, 4));
            table.CopyTo(file, at);
            BinaryPrimitives.WriteUInt32BigEndian(file.AsSpan(row + 4), Checksum(file.AsSpan(at, Padded(table.Length))));
            BinaryPrimitives.WriteInt32BigEndian(file.AsSpan(row + 8), at);
            BinaryPrimitives.WriteInt32BigEndian(file.AsSpan(row + 12), table.Length);
            head = tag == "head" ? at : head;
            (at, row) = (at + Padded(table.Length), row + 16);
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

    private static void Write16(Span<byte> bytes, int at, int value) => BinaryPrimitives.WriteUInt16BigEndian(bytes[at..], (ushort)value);
}
