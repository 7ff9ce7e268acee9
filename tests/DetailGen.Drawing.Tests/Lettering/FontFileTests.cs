using DetailGen.Drawing.Lettering;
using DetailGen.Testing;
using SkiaSharp;

namespace DetailGen.Drawing.Tests.Lettering;

public class FontFileTests
{
    private const string Words = "Parapet coping, λ 0.035 W/mK: 150 mm ± 5";

    private static FontFile Read(AlteredFont font) => FontFile.Read(font.Bytes(), out var fault) ?? throw new InvalidOperationException($"{fault}");

    private static Typeface Face(double across, double up = 1, int unitsPerEm = 2048) =>
        new(Read(AlteredFont.Of("Regular").Stretched(across, up, unitsPerEm)), Read(AlteredFont.Of("Bold").Stretched(across, up, unitsPerEm)), "own.ttf", "Own");

    [Fact]
    public void The_units_of_a_font_do_not_show()
    {
        var half = Face(0.5, 0.5, 1024);
        Assert.Equal(Typeface.Shipped.FontSize(2.5), half.FontSize(2.5), 0.01);
        Assert.Equal(Typeface.Shipped.Width(Words, 2.5), half.Width(Words, 2.5), 0.1);
        Assert.Equal(Typeface.Shipped.Rise(2.5), half.Rise(2.5), 0.01);
        Assert.Equal(Typeface.Shipped.Hang(2.5), half.Hang(2.5), 0.01);
    }

    [Fact]
    public void Lower_capitals_take_a_larger_font_for_the_same_height()
    {
        var low = Face(across: 1, up: 0.8);
        Assert.Equal(Typeface.Shipped.FontSize(2.5) / 0.8, low.FontSize(2.5), 0.01);
        Assert.Equal(Typeface.Shipped.Width(Words, 2.5) / 0.8, low.Width(Words, 2.5), 0.1);
    }

    [Fact]
    public void Each_weight_has_capitals_of_the_height_asked_for()
    {
        var uneven = new Typeface(Read(AlteredFont.Of("Regular")), Read(AlteredFont.Of("Bold").Stretched(1, 0.8, 2048)), "own.ttf", "Own");
        Assert.Equal(uneven.FontSize(2.5) / 0.8, uneven.FontSize(2.5, bold: true), 0.01);
        Assert.Equal(Typeface.Shipped.Rise(2.5), uneven.Rise(2.5), 0.01);
    }

    [Fact]
    public void A_wider_font_is_as_wide_as_the_renderer_draws_it_whole_and_cut_down()
    {
        var wide = Face(1.2);
        Assert.Equal(1.2 * Typeface.Shipped.Width(Words, 2.5), wide.Width(Words, 2.5), 0.1);
        using var cut = wide.FacesOf(Words, Words);
        foreach (var face in new[] { wide.Faces.Regular, cut.Regular })
        {
            using var font = new SKFont(face, (float)wide.FontSize(100)) { Hinting = SKFontHinting.None, LinearMetrics = true, Subpixel = true };
            Assert.Equal(wide.Width(Words, 100), font.MeasureText(Words), 0.5);
        }
    }

    [Fact]
    public void A_font_is_called_by_its_family_in_English() => Assert.Equal(("Liberation Sans", "Tern Sans"), (Typeface.Shipped.Family, Read(AlteredFont.Of("Bold").Named("Tern Sans")).Family));

    [Fact]
    public void Letters_that_a_font_lacks_are_known_for_each_weight()
    {
        var face = new Typeface(Read(AlteredFont.Of("Regular")), Read(AlteredFont.Of("Bold").Only("ABCHabcdg 0123")), "own.ttf", "Own");
        Assert.True(face.CanShow("ψ"));
        Assert.False(face.CanShow("ψ", bold: true));
        Assert.True(face.CanShow("Abd 0", bold: true));
    }

    public static TheoryData<string, FontFault> Unusable { get; } = new()
    {
        { "text", FontFault.NotTrueType }, { "empty", FontFault.NotTrueType }, { "web", FontFault.NotTrueType }, { "collection", FontFault.Collection },
        { "cff", FontFault.OtherOutlines }, { "cff table", FontFault.OtherOutlines }, { "no widths", FontFault.Damaged }, { "no outlines", FontFault.Damaged },
        { "cut", FontFault.Damaged }, { "places outside", FontFault.Damaged }, { "no widths told", FontFault.Damaged }, { "symbols", FontFault.NoUnicode }, { "no map", FontFault.NoUnicode },
        { "restricted", FontFault.NotToBeEmbedded }, { "pictures only", FontFault.NotToBeEmbedded }, { "quoted name", FontFault.NoName }, { "long name", FontFault.NoName },
        { "lines in name", FontFault.NoName }, { "no name", FontFault.NoName }, { "no H", FontFault.Proportions }, { "em of nothing", FontFault.Proportions },
        { "flat", FontFault.Proportions }, { "very wide", FontFault.Proportions },
    };

    [Theory]
    [MemberData(nameof(Unusable))]
    public void What_gives_no_letters_is_told_apart(string which, FontFault expected)
    {
        var regular = AlteredFont.Of("Regular");
        var bytes = which switch
        {
            "text" => "regular: fonts/own.ttf\n"u8.ToArray(),
            "empty" => [],
            "web" => [.. "wOF2"u8, .. new byte[100]],
            "collection" => [.. "ttcf"u8, .. new byte[100]],
            "cff" => [.. "OTTO"u8, .. new byte[100]],
            "cff table" => regular.Without("glyf").Without("loca").With("CFF ", new byte[100]).Bytes(),
            "no widths" => regular.Without("hmtx").Bytes(),
            "no outlines" => regular.Without("glyf").Bytes(),
            "cut" => regular.Bytes()[..200_000],
            "places outside" => regular.With("loca", 4, 0x7FFF).Bytes(),
            "no widths told" => regular.With("hhea", 34, 0).Bytes(),
            "symbols" => regular.Only("H").With("cmap", 6, 0).Bytes(),
            "no map" => regular.With("cmap", [0, 0, 0, 0]).Bytes(),
            "restricted" => regular.With("OS/2", 8, 0x0002).Bytes(),
            "pictures only" => regular.With("OS/2", 8, 0x0208).Bytes(),
            "quoted name" => regular.Named("Tern' Sans").Bytes(),
            "long name" => regular.Named(new('T', 32)).Bytes(),
            "lines in name" => regular.Named("Tern\nSans").Bytes(),
            "no name" => regular.With("name", new byte[6]).Bytes(),
            "no H" => regular.Only("abc").Bytes(),
            "em of nothing" => regular.With("head", 18, 0).Bytes(),
            "flat" => regular.Stretched(1, 0.3, 2048).Bytes(),
            _ => regular.Stretched(4, 1, 2048).Bytes(),
        };
        Assert.Null(FontFile.Read(bytes, out var fault));
        Assert.Equal(expected, fault);
    }

    // fsType of the OpenType specification 1.9, from memory: the most lenient of several bits holds, and preview and print is enough for a PDF.
    [Theory]
    [InlineData(0x0000)]
    [InlineData(0x0004)]
    [InlineData(0x0006)]
    [InlineData(0x0008)]
    public void A_font_that_documents_may_carry_is_taken(int flags) => Assert.NotNull(FontFile.Read(AlteredFont.Of("Regular").With("OS/2", 8, flags).Bytes(), out _));

    [Fact]
    public void A_font_that_must_not_be_cut_down_is_carried_whole()
    {
        var font = AlteredFont.Of("Regular").With("OS/2", 8, 0x0100);
        Assert.Equal(font.Bytes(), Read(font).Subset("abc"));
    }

    [Fact]
    public void A_font_without_programs_for_pixels_is_cut_down_too()
    {
        var font = Read(AlteredFont.Of("Regular").Without("cvt ").Without("fpgm").Without("prep"));
        Assert.True(SkiaFaces.Takes(font.Subset("é 1")));
    }

    [Fact]
    public void Whatever_is_wrong_with_the_bytes_nothing_stops_the_reader()
    {
        var whole = AlteredFont.Of("Regular").Only(Words).Bytes();
        var random = new Random(7);
        for (var run = 0; run < 300; run++)
        {
            var bytes = run % 3 == 0 ? whole[..random.Next(whole.Length)] : whole.ToArray();
            for (var change = 0; change < (run % 3) * 40; change++)
            {
                // Headers and directories lie in the first pages, outlines behind them.
                bytes[random.Next(change % 2 == 0 ? 6000 : bytes.Length)] = (byte)random.Next(256);
            }

            if (FontFile.Read(bytes, out var fault) is { } font)
            {
                Assert.Equal(FontFault.None, fault);
                Assert.True(font.Advance(Words) > 0);
                Assert.NotEmpty(font.Subset(Words));
            }
            else
            {
                Assert.NotEqual(FontFault.None, fault);
            }
        }
    }

    [Fact]
    public async Task Two_typefaces_in_one_process_do_not_disturb_each_other()
    {
        var wide = Face(1.2);
        double[] Alone(Typeface face) => [.. Enumerable.Range(0, 200).Select(i => face.Width(Words.AsSpan(i % 20), 2.5, i % 2 == 0))];
        var expected = (Alone(wide), Alone(Typeface.Shipped));
        var both = await Task.WhenAll(Task.Run(() => Alone(wide)), Task.Run(() => Alone(Typeface.Shipped)));
        Assert.Equal(expected.Item1, both[0]);
        Assert.Equal(expected.Item2, both[1]);
    }
}
