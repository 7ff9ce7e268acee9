using System.Buffers.Binary;
using DetailGen.Drawing.Lettering;
using SkiaSharp;

namespace DetailGen.Drawing.Tests.Lettering;

public class FontSubsetTests
{
    private const string Used = "Parapet é Å λ²";

    private static readonly byte[] Whole = Typeface.Shipped.Regular.Bytes.ToArray();
    private static readonly byte[] Subset = Typeface.Shipped.Regular.Subset(Used);

    [Fact]
    public void Used_letters_keep_their_outlines_and_widths_accents_too() =>
        Assert.All(Used, letter => Assert.Equal(Look(Whole, letter), Look(Subset, letter)));

    [Fact]
    public void Other_letters_are_gone() => Assert.All("QZ9", letter => Assert.Equal("", Look(Subset, letter).Outline));

    [Fact]
    public void It_is_a_tenth_of_the_whole() => Assert.InRange(Subset.Length, 1000, Whole.Length / 10);

    // OpenType specification 1.9, table head: all 32-bit numbers of a font file add up to this (from memory).
    [Fact]
    public void The_checksum_of_the_file_is_right()
    {
        var sum = 0u;
        for (var i = 0; i < Subset.Length; i += 4)
        {
            sum = unchecked(sum + BinaryPrimitives.ReadUInt32BigEndian(Subset.AsSpan(i)));
        }

        Assert.Equal(0xB1B0AFBA, sum);
    }

    private static (string Outline, float Width) Look(byte[] file, char letter)
    {
        using var data = SKData.CreateCopy(file);
        using var face = SKTypeface.FromData(data);
        using var font = new SKFont(face, 2048) { Hinting = SKFontHinting.None, LinearMetrics = true };
        using var path = font.GetTextPath(letter.ToString());
        return (path.ToSvgPathData(), font.MeasureText(letter.ToString()));
    }
}
