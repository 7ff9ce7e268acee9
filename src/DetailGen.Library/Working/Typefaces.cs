using DetailGen.Details;
using DetailGen.Details.Reading;
using DetailGen.Details.Sheets;
using DetailGen.Drawing.Lettering;

namespace DetailGen.Library.Working;

/// <summary>The font files of a practice in the drawing's own terms.</summary>
internal static class Typefaces
{
    /// <returns>Null where the practice has none; the faults of both files where there are any.</returns>
    internal static Outcome<Typeface?> Of(TypefaceRow? row)
    {
        if (row is null)
        {
            return Outcome.Good<Typeface?>(null);
        }

        var faults = new List<Diagnostic>();
        var (regular, bold) = (Font(row.Regular, faults), Font(row.Bold, faults));
        return regular is null || bold is null
            ? Outcome.Bad<Typeface?>(faults)
            : Outcome.Good<Typeface?>(new(regular, bold, row.StyleFile ?? Path.GetFileName(row.Regular.Path), row.StyleFamily ?? regular.Family));
    }

    private static FontFile? Font(TypefaceFile file, List<Diagnostic> faults)
    {
        var font = FontFile.Read(file.Bytes, out var fault);
        if (font is null)
        {
            var (reason, hint) = Messages.FontFaults(fault);
            faults.Add(new("typeface", file.At, $"{file.Key} names {file.Path}. {reason}", hint, file.Key, file.Path));
        }

        return font;
    }
}
