using DetailGen.Drawing.Lettering;
using DetailGen.Drawing.Scenes;
using SkiaSharp;

namespace DetailGen.Drawing.Auditing;

/// <summary>The box of a text's ink as the renderer will paint it: not the advance widths and ascenders with which a layout reckons.</summary>
internal static class InkBoxes
{
    /// <summary>Letters are measured so many times larger, so that no rounding of the renderer tells.</summary>
    private const float Magnified = 64;

    /// <returns>Null for a text without ink.</returns>
    internal static PaperBox? Of(Text text, Typeface typeface)
    {
        // From the outlines themselves: the bounds that the renderer reckons with are rounded out to whole pixels, by 0.08 mm at letters of 3.5 mm.
        using var font = new SKFont(text.Bold ? typeface.Faces.Bold : typeface.Faces.Regular, (float)typeface.FontSize(text.Height, text.Bold) * Magnified)
        {
            Hinting = SKFontHinting.None,
            Subpixel = true,
            LinearMetrics = true,
        };
        using var outlines = font.GetTextPath(text.Words, new SKPoint(0, 0));
        var ink = outlines.TightBounds;
        if (ink.Width <= 0 || ink.Height <= 0)
        {
            return null;
        }

        var advance = font.MeasureText(text.Words) / Magnified;
        var start = text.Align switch { Align.Left => 0, Align.Centre => -advance / 2, _ => -advance };
        PaperBox flat = new(start + ink.Left / Magnified, -ink.Bottom / Magnified, start + ink.Right / Magnified, -ink.Top / Magnified);
        return (text.Rotation == 90 ? new PaperBox(-flat.Top, flat.Left, -flat.Bottom, flat.Right) : flat).Shift(text.At);
    }
}
