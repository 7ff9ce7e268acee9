using System.Text;

namespace DetailGen.Drawing.Lettering;

/// <summary>The tables of a TrueType font by their tags, each known to lie within the file; layouts after the OpenType specification 1.9, from memory.</summary>
internal sealed class FontTables
{
    // What every font has that can be drawn with, and how many bytes each is at least.
    private static readonly (string Tag, int Least)[] Needed =
        [("OS/2", 68), ("cmap", 4), ("glyf", 0), ("head", 54), ("hhea", 36), ("hmtx", 4), ("loca", 4), ("maxp", 6), ("name", 6), ("post", 32)];

    private readonly Dictionary<string, FontTable> _tables;

    private FontTables(Dictionary<string, FontTable> tables) => _tables = tables;

    public FontTable this[string tag] => _tables[tag];

    public FontTable? Find(string tag) => _tables.TryGetValue(tag, out var table) ? table : null;

    /// <summary>How many glyphs there are.</summary>
    public int Glyphs => this["maxp"].UInt16(4);

    /// <summary>Null where there is a fault.</summary>
    public static FontTables? Read(byte[] file, out FontFault fault)
    {
        var whole = new FontTable(file);
        fault = whole.UInt32(0) switch
        {
            0x00010000 or 0x74727565 => FontFault.None, // the second spells "true"
            0x4F54544F => FontFault.OtherOutlines, // "OTTO"
            0x74746366 => FontFault.Collection, // "ttcf"
            _ => FontFault.NotTrueType,
        };
        if (fault != FontFault.None)
        {
            return null;
        }

        var tables = new Dictionary<string, FontTable>(StringComparer.Ordinal);
        for (var row = 12; row < 12 + 16 * whole.UInt16(4); row += 16)
        {
            if (whole.Piece(row, 4) is not { } tag || whole.Piece(whole.UInt32(row + 8), whole.UInt32(row + 12)) is not { } table || !tables.TryAdd(Encoding.Latin1.GetString(tag.Bytes.Span), table))
            {
                fault = FontFault.Damaged;
                return null;
            }
        }

        var read = new FontTables(tables);
        if (!Array.TrueForAll(Needed, one => read.Find(one.Tag) is { } table && table.Length >= one.Least))
        {
            fault = tables.ContainsKey("CFF ") || tables.ContainsKey("CFF2") ? FontFault.OtherOutlines : FontFault.Damaged;
            return null;
        }

        fault = read.HoldTogether() ? FontFault.None : FontFault.Damaged;
        return fault == FontFault.None ? read : null;
    }

    /// <summary>Where the outline of each glyph begins in glyf, and where the last one ends.</summary>
    public int[] Outlines()
    {
        var places = new int[Glyphs + 1];
        var (table, isLong) = (this["loca"], IsLong);
        for (var i = 0; i < places.Length; i++)
        {
            places[i] = isLong ? (int)Math.Min(table.UInt32(4 * i), int.MaxValue) : 2 * table.UInt16(2 * i);
        }

        return places;
    }

    private bool IsLong => this["head"].UInt16(50) == 1;

    // Each glyph has its outline within the table of outlines, and there are widths.
    private bool HoldTogether()
    {
        var widths = this["hhea"].UInt16(34);
        if (widths == 0 || widths > Glyphs || this["hmtx"].Length < 4 * widths || this["loca"].Length < (Glyphs + 1) * (IsLong ? 4 : 2))
        {
            return false;
        }

        var places = Outlines();
        for (var i = 1; i < places.Length; i++)
        {
            if (places[i] < places[i - 1])
            {
                return false;
            }
        }

        return places[^1] <= this["glyf"].Length;
    }
}
