using System.Globalization;
using System.Text;

namespace DetailGen.Drawing.Emitters.Pdf;

/// <summary>
/// Mends two things in a PDF that the renderer has written: it rounds page boxes to whole points, which is up to 0.18 mm off the sheet, and it puts
/// the zone of the machine behind the date. The objects are copied, the changed ones with their new text, and the table of places is written anew.
/// </summary>
/// <remarks>Syntax of objects, cross-reference table and trailer: ISO 32000-1:2008, 7.5, from memory.</remarks>
internal static class PdfFinish
{
    private const int RowLength = 20;

    /// <param name="pages">True sizes in points, in order.</param>
    /// <exception cref="InvalidOperationException">The file is not built as this renderer builds them.</exception>
    public static void Write(ReadOnlySpan<byte> pdf, IReadOnlyList<(double Width, double Height)> pages, DateOnly? date, Stream output)
    {
        var table = Found(pdf.LastIndexOf("\nxref\n"u8)) + 1;
        var trailer = Found(pdf.LastIndexOf("\ntrailer\n"u8)) + 1;
        var places = Places(pdf[table..trailer]);

        // Objects in the order of the file; whatever stands before the first is copied as it is.
        var order = Enumerable.Range(1, places.Length - 1).OrderBy(number => places[number]).ToArray();
        var copy = new MemoryStream(pdf.Length + 256);
        copy.Write(pdf[..places[order[0]]]);
        var newPlaces = new long[places.Length];
        var box = 0;
        for (var i = 0; i < order.Length; i++)
        {
            var end = i + 1 < order.Length ? places[order[i + 1]] : table;
            newPlaces[order[i]] = copy.Length;
            WriteObject(pdf[places[order[i]]..end], pages, ref box, date, copy);
        }

        if (box != pages.Count)
        {
            throw new InvalidOperationException($"The document has {box} pages of {pages.Count}.");
        }

        var start = copy.Length;
        copy.Write(Encoding.ASCII.GetBytes($"xref\n0 {newPlaces.Length}\n0000000000 65535 f \n"));
        foreach (var place in newPlaces.AsSpan(1))
        {
            copy.Write(Encoding.ASCII.GetBytes(string.Create(CultureInfo.InvariantCulture, $"{place:D10} 00000 n \n")));
        }

        var references = pdf[trailer..];
        copy.Write(references[..(Found(references.IndexOf("startxref\n"u8)) + "startxref\n".Length)]);
        copy.Write(Encoding.ASCII.GetBytes(string.Create(CultureInfo.InvariantCulture, $"{start}\n%%EOF\n")));
        copy.WriteTo(output);
    }

    private static int[] Places(ReadOnlySpan<byte> table)
    {
        var rows = table["xref\n0 ".Length..];
        var lineEnd = Found(rows.IndexOf((byte)'\n'));
        var places = new int[int.Parse(rows[..lineEnd], NumberStyles.None, CultureInfo.InvariantCulture)];
        for (var i = 0; i < places.Length; i++)
        {
            places[i] = int.Parse(rows.Slice(lineEnd + 1 + RowLength * i, 10), NumberStyles.None, CultureInfo.InvariantCulture);
        }

        return places;
    }

    private static void WriteObject(ReadOnlySpan<byte> text, IReadOnlyList<(double Width, double Height)> pages, ref int box, DateOnly? date, MemoryStream copy)
    {
        var stream = text.IndexOf("stream\n"u8);
        var head = stream < 0 ? text : text[..stream];
        if (head.IndexOf("/MediaBox ["u8) is >= 0 and var at && box < pages.Count)
        {
            var (width, height) = pages[box++];
            copy.Write(text[..at]);
            copy.Write(Encoding.ASCII.GetBytes(string.Create(CultureInfo.InvariantCulture, $"/MediaBox [0 0 {width:0.####} {height:0.####}]")));
            copy.Write(text[(at + Found(text[at..].IndexOf((byte)']')) + 1)..]);
        }
        else if (head.IndexOf("/CreationDate ("u8) is >= 0 and var stamp)
        {
            copy.Write(text[..stamp]);
            copy.Write(Encoding.ASCII.GetBytes(string.Create(CultureInfo.InvariantCulture, $"/CreationDate (D:{date:yyyyMMdd}000000Z)")));
            copy.Write(text[(stamp + Found(text[stamp..].IndexOf((byte)')')) + 1)..]);
        }
        else
        {
            copy.Write(text);
        }
    }

    private static int Found(int place) => place >= 0 ? place : throw new InvalidOperationException("The document is not built as expected.");
}
