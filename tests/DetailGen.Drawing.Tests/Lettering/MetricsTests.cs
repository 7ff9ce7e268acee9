using DetailGen.Drawing.Lettering;
using DetailGen.Dxf.Tables;

namespace DetailGen.Drawing.Tests.Lettering;

/// <summary>
/// A drawing names a common sans-serif font and not ours, so that every reader has it; what was measured with ours holds there only if letters are equally wide.
/// That font is not at hand. Its widths were made equal to the published advance widths of the sans-serif among the 14 standard fonts of page description
/// (core font metrics, in thousandths of the em), which are written down here from memory for the letters 32 to 126.
/// </summary>
public class MetricsTests
{
    private const string Letters = " !\"#$%&'()*+,-./0123456789:;<=>?@ABCDEFGHIJKLMNOPQRSTUVWXYZ[\\]^_`abcdefghijklmnopqrstuvwxyz{|}~";

    private static readonly int[] Regular =
    [
        278, 278, 355, 556, 556, 889, 667, 191, 333, 333, 389, 584, 278, 333, 278, 278, 556, 556, 556, 556, 556, 556, 556, 556, 556, 556, 278, 278, 584, 584, 584, 556,
        1015, 667, 667, 722, 722, 667, 611, 778, 722, 278, 500, 667, 556, 833, 722, 778, 667, 778, 722, 667, 611, 722, 667, 944, 667, 667, 611, 278, 278, 278, 469, 556,
        333, 556, 556, 500, 556, 556, 278, 556, 556, 222, 222, 500, 222, 833, 556, 556, 556, 556, 333, 500, 278, 556, 500, 722, 500, 500, 500, 334, 260, 334, 584,
    ];

    private static readonly int[] Bold =
    [
        278, 333, 474, 556, 556, 889, 722, 238, 333, 333, 389, 584, 278, 333, 278, 278, 556, 556, 556, 556, 556, 556, 556, 556, 556, 556, 333, 333, 584, 584, 584, 611,
        975, 722, 722, 722, 722, 667, 611, 778, 722, 278, 556, 722, 611, 833, 722, 778, 667, 778, 722, 667, 611, 722, 667, 944, 667, 667, 611, 333, 278, 333, 584, 556,
        333, 556, 611, 556, 611, 556, 333, 611, 611, 278, 278, 556, 278, 889, 611, 611, 611, 611, 389, 556, 333, 611, 556, 778, 556, 556, 500, 389, 280, 389, 584,
    ];

    [Fact]
    public void The_font_that_a_drawing_names_is_the_sans_serif_of_these_widths() => Assert.Equal("arial.ttf", TextStyle.Sans.FontFile);

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void The_embedded_font_is_as_wide_letter_by_letter(bool bold)
    {
        var published = bold ? Bold : Regular;
        Assert.Equal(Letters.Length, published.Length);
        var font = bold ? Typeface.Shipped.Bold : Typeface.Shipped.Regular;

        // Both are whole numbers of their own units, 2048 and 1000 to the em: half of each is rounding.
        var different = Letters.Select((letter, i) => (letter, Ours: font.Advance([letter]) * 1000.0 / font.UnitsPerEm, Theirs: published[i])).Where(one => Math.Abs(one.Ours - one.Theirs) > 0.75);
        Assert.Empty(different);
    }
}
