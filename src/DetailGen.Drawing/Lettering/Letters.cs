using DetailGen.Drawing.Scenes;

namespace DetailGen.Drawing.Lettering;

/// <summary>
/// Sizes of text on paper, in mm. Height always means the height of capitals (ISO 3098-1), never a font size.
/// One font everywhere: Liberation Sans 2.1.5, Regular and Bold, without kerning.
/// </summary>
public static class Letters
{
    public const string Family = "Liberation Sans";

    // Measured in both font files, in units of 2048 to the em: table OS/2 (capitals), outlines of d and of g (the lower of the two weights).
    private const double Capital = 1409;
    private const double Ascender = 1484;
    private const double Descender = 434;

    internal static FontFile Regular { get; } = FontFile.Embedded("LiberationSans-Regular.ttf");

    internal static FontFile Bold { get; } = FontFile.Embedded("LiberationSans-Bold.ttf");

    /// <summary>Font size in mm whose capitals are so high.</summary>
    public static double FontSize(double height) => height * Regular.UnitsPerEm / Capital;

    /// <summary>Width of a line of text in mm, from origin to origin; 0 for none.</summary>
    public static double Width(ReadOnlySpan<char> words, double height, bool bold = false) =>
        (bold ? Bold : Regular).Advance(words) * height / Capital;

    /// <summary>How far letters such as d rise over the base line.</summary>
    public static double Rise(double height) => height * Ascender / Capital;

    /// <summary>How far letters such as p hang under the base line.</summary>
    public static double Hang(double height) => height * Descender / Capital;

    /// <summary>The box of a line of text as placed: its width, from under the descenders to over the ascenders. Turned by 0 or 90 degrees; others give the box around the turned one.</summary>
    public static PaperBox Box(Text text)
    {
        var width = Width(text.Words, text.Height, text.Bold);
        var left = text.Align switch { Align.Left => 0, Align.Centre => -width / 2, _ => -width };
        var flat = new PaperBox(left, -Hang(text.Height), left + width, Rise(text.Height));
        return text.Rotation switch
        {
            0 => flat.Shift(text.At),
            90 => new PaperBox(-flat.Top, flat.Left, -flat.Bottom, flat.Right).Shift(text.At),
            _ => Turned(flat, text.Rotation).Shift(text.At),
        };
    }

    /// <summary>The box of all lines; without lines a point.</summary>
    public static PaperBox Box(Paragraph paragraph)
    {
        if (paragraph.Lines.Count == 0)
        {
            return new(paragraph.At.X, paragraph.At.Y, paragraph.At.X, paragraph.At.Y);
        }

        var width = 0.0;
        foreach (var line in paragraph.Lines)
        {
            width = Math.Max(width, Width(line, paragraph.Height));
        }

        var last = -(paragraph.Lines.Count - 1) * paragraph.Pitch;
        return new PaperBox(0, last - Hang(paragraph.Height), width, Rise(paragraph.Height)).Shift(paragraph.At);
    }

    /// <summary>Whether the font can show every letter.</summary>
    public static bool CanShow(string words)
    {
        foreach (var letter in words)
        {
            if (!Regular.Has(letter))
            {
                return false;
            }
        }

        return true;
    }

    private static PaperBox Turned(PaperBox box, double degrees)
    {
        var (sin, cos) = Math.SinCos(degrees * Math.PI / 180);
        var (x, y) = ((box.Left + box.Right) / 2, (box.Bottom + box.Top) / 2);
        var halfWidth = (Math.Abs(cos) * box.Width + Math.Abs(sin) * box.Height) / 2;
        var halfHeight = (Math.Abs(sin) * box.Width + Math.Abs(cos) * box.Height) / 2;
        var (middleX, middleY) = (x * cos - y * sin, x * sin + y * cos);
        return new(middleX - halfWidth, middleY - halfHeight, middleX + halfWidth, middleY + halfHeight);
    }
}
