using CsCheck;
using DetailGen.Drawing.Lettering;
using DetailGen.Drawing.Scenes;
using DetailGen.Testing;
using SkiaSharp;

namespace DetailGen.Drawing.Tests.Lettering;

public class TypefaceTests
{
    private static readonly Gen<string> Words = Gen.String["abcdefghijklmnopqrstuvwxyzABCDEFGHIJ 0123456789-.,;()/²°±×λψØ−éÅ"];

    // Measured in the font file: digits are 1139 of 2048 units wide, capitals 1409 high.
    [Fact]
    public void A_digit_is_2_02_wide_in_letters_of_2_5() => Assert.Equal(1139 * 2.5 / 1409, Typeface.Shipped.Width("7", 2.5), 12);

    [Fact]
    public void Font_size_is_such_that_capitals_have_the_height() => Assert.Equal(3.634, Typeface.Shipped.FontSize(2.5), 3);

    [Fact]
    public void Bold_is_wider_than_regular() => Assert.True(Typeface.Shipped.Width("Flashing", 2.5, bold: true) > Typeface.Shipped.Width("Flashing", 2.5));

    [Fact]
    public void Every_letter_that_sheets_use_is_in_the_font() => Assert.True(Typeface.Shipped.CanShow("λψ²³°±×−≥≤Ø–·µéÅ→"));

    [Fact]
    public void A_letter_the_font_lacks_is_told() => Assert.False(Typeface.Shipped.CanShow("日"));

    [Fact]
    public void Widths_agree_with_those_of_another_reader_of_the_font() => Words.Always(words =>
    {
        using var data = SKData.CreateCopy(Typeface.Shipped.Regular.Bytes.Span);
        using var face = SKTypeface.FromData(data);
        using var font = new SKFont(face, 2048) { Hinting = SKFontHinting.None, LinearMetrics = true, Subpixel = true };
        Assert.Equal(font.MeasureText(words), Typeface.Shipped.Width(words, 1409), 0.5);
    });

    [Fact]
    public void Width_grows_with_height_and_adds_up_over_letters() => Gen.Select(Words, Words, Gen.Double[1, 10]).Always((a, b, height) =>
        Math.Abs(Typeface.Shipped.Width(a + b, height) - Typeface.Shipped.Width(a, 2 * height) / 2 - Typeface.Shipped.Width(b, height)) < 1e-9);

    [Fact]
    public void A_text_stands_over_its_base_line_and_hangs_under_it()
    {
        var box = Typeface.Shipped.Box(new Text("note.text", "Upstand", new(10, 20), 2.5));
        Assert.Equal(10, box.Left);
        Assert.Equal(10 + Typeface.Shipped.Width("Upstand", 2.5), box.Right);
        Assert.Equal(20 - 2.5 * 434 / 1409, box.Bottom, 9);
        Assert.Equal(20 + 2.5 * 1484 / 1409, box.Top, 9);
    }

    [Theory]
    [InlineData(Align.Left, 0, 1)]
    [InlineData(Align.Centre, -0.5, 0.5)]
    [InlineData(Align.Right, -1, 0)]
    public void Alignment_shifts_the_box(Align align, double left, double right)
    {
        var width = Typeface.Shipped.Width("150", 2.5);
        var box = Typeface.Shipped.Box(new Text("dim.chain", "150", new(0, 0), 2.5, align));
        Assert.Equal((left * width, right * width), (box.Left, box.Right));
    }

    [Fact]
    public void An_upright_text_reads_from_the_right()
    {
        var box = Typeface.Shipped.Box(new Text("dim.chain", "150", new(5, 7), 2.5, Rotation: 90));
        Assert.Equal((5 - Typeface.Shipped.Rise(2.5), 7.0), (box.Left, box.Bottom));
        Assert.Equal((5 + Typeface.Shipped.Hang(2.5), 7 + Typeface.Shipped.Width("150", 2.5)), (box.Right, box.Top));
    }

    [Fact]
    public void A_turn_that_is_not_square_gives_the_box_around_it()
    {
        var almost = Typeface.Shipped.Box(new Text("dim.fall", "1:40", new(5, 7), 2.5, Rotation: 89.9999999));
        var square = Typeface.Shipped.Box(new Text("dim.fall", "1:40", new(5, 7), 2.5, Rotation: 90));
        Assert.Equal(square.Left, almost.Left, 6);
        Assert.Equal(square.Top, almost.Top, 6);
    }

    [Fact]
    public void A_paragraph_is_as_wide_as_its_widest_line_and_grows_downwards()
    {
        var box = Typeface.Shipped.Box(new Paragraph("note.text", ["a", "wide line", "b"], new(0, 100), 2.5, 4.25));
        Assert.Equal(Typeface.Shipped.Width("wide line", 2.5), box.Right);
        Assert.Equal(100 - 8.5 - Typeface.Shipped.Hang(2.5), box.Bottom);
        Assert.Equal(100 + Typeface.Shipped.Rise(2.5), box.Top);
    }
}
