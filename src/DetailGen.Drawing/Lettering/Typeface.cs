using DetailGen.Drawing.Scenes;
using DetailGen.Dxf.Tables;

namespace DetailGen.Drawing.Lettering;

/// <summary>
/// The letters of a drawing: a regular and a bold font, without kerning, and their sizes on paper in mm. Height always means the height of capitals (ISO 3098-1), never a font size.
/// </summary>
public sealed class Typeface
{
    // The weight whose letters rise farthest, and the one whose hang lowest, of equal capitals.
    private readonly FontFile _highest;
    private readonly FontFile _deepest;
    private readonly Lazy<SkiaFaces> _faces;

    /// <param name="styleFile">Font file that a DXF names. Its letters must be as wide as those of <paramref name="regular"/>, else texts run over in the drawing program.</param>
    /// <param name="styleFamily">Family of that file.</param>
    public Typeface(FontFile regular, FontFile bold, string styleFile, string styleFamily)
    {
        (Regular, Bold, Style) = (regular, bold, new(styleFile, styleFamily));
        _highest = bold.Ascender / bold.Capital > regular.Ascender / regular.Capital ? bold : regular;
        _deepest = bold.Descender / bold.Capital > regular.Descender / regular.Capital ? bold : regular;
        _faces = new(() => SkiaFaces.Of(Regular.Bytes.Span, Bold.Bytes.Span));
    }

    /// <summary>The one that ships, Liberation Sans 2.1.5; drawing programs have another of the same widths.</summary>
    public static Typeface Shipped { get; } = new(FontFile.Embedded("LiberationSans-Regular.ttf"), FontFile.Embedded("LiberationSans-Bold.ttf"), TextStyle.Sans.FontFile, TextStyle.Sans.Family);

    public string Family => Regular.Family;

    internal FontFile Regular { get; }

    internal FontFile Bold { get; }

    /// <summary>What a DXF says of it.</summary>
    internal TextStyle Style { get; }

    /// <summary>With every letter, opened at first use and never disposed.</summary>
    internal SkiaFaces Faces => _faces.Value;

    /// <summary>With the letters that are used and no more.</summary>
    internal SkiaFaces FacesOf(IEnumerable<char> regular, IEnumerable<char> bold) => SkiaFaces.Of(Regular.Subset(regular), Bold.Subset(bold));

    /// <summary>Font size in mm whose capitals are so high.</summary>
    public double FontSize(double height, bool bold = false) => height * Of(bold).UnitsPerEm / Of(bold).Capital;

    /// <summary>Width of a line of text in mm, from origin to origin; 0 for none.</summary>
    public double Width(ReadOnlySpan<char> words, double height, bool bold = false) => Of(bold).Advance(words) * height / Of(bold).Capital;

    /// <summary>Width of one regular letter's ink in mm.</summary>
    internal double InkWidth(char letter, double height) => (Regular.Outline(letter)?.Width ?? 0) * height / Regular.Capital;

    /// <summary>How far letters such as d rise over the base line.</summary>
    public double Rise(double height) => height * _highest.Ascender / _highest.Capital;

    /// <summary>How far letters such as p hang under the base line.</summary>
    public double Hang(double height) => height * _deepest.Descender / _deepest.Capital;

    /// <summary>The box of a line of text as placed: its width, from under the descenders to over the ascenders. Turned by 0 or 90 degrees; others give the box around the turned one.</summary>
    public PaperBox Box(Text text)
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
    public PaperBox Box(Paragraph paragraph)
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

    /// <summary>Whether it has a picture of every letter.</summary>
    public bool CanShow(string words, bool bold = false)
    {
        foreach (var letter in words)
        {
            if (!Of(bold).Has(letter))
            {
                return false;
            }
        }

        return true;
    }

    private FontFile Of(bool bold) => bold ? Bold : Regular;

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
