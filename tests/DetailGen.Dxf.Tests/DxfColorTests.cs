using CsCheck;
using DetailGen.Testing;

namespace DetailGen.Dxf.Tests;

public sealed class DxfColorTests
{
    [Theory]
    [InlineData(255, 0, 0, 1)]
    [InlineData(255, 255, 0, 2)]
    [InlineData(0, 0, 255, 5)]
    [InlineData(255, 255, 255, 255)] // not 7, which turns with the background
    [InlineData(180, 180, 180, 254)]
    [InlineData(90, 90, 90, 251)]
    [InlineData(255, 127, 0, 30)]
    [InlineData(0, 129, 0, 94)]
    public void A_true_colour_has_the_nearest_index_beside_it(byte red, byte green, byte blue, int index)
    {
        var color = DxfColor.FromRgb(red, green, blue);

        Assert.Equal(index, color.Index);
        Assert.Equal((red * 65536) + (green * 256) + blue, color.TrueColor);
    }

    [Fact]
    public void Pure_black_is_ink() => Assert.Equal(DxfColor.Ink, DxfColor.FromRgb(0, 0, 0));

    [Fact]
    public void A_colour_of_the_palette_stands_for_itself() =>
        Gen.Int[1, 255].Where(index => index != 7).Always(index =>
        {
            var color = Palette.ColorOf(index);
            return Palette.ColorOf(Palette.Nearest((byte)(color >> 16), (byte)((color >> 8) & 255), (byte)(color & 255))) == color;
        });

    [Fact]
    public void No_other_index_is_nearer() =>
        Gen.Select(Gen.Byte, Gen.Byte, Gen.Byte, Gen.Int[1, 255]).Where((_, _, _, other) => other != 7).Always((red, green, blue, other) =>
            Away(Palette.Nearest(red, green, blue), red, green, blue) <= Away(other, red, green, blue));

    private static int Away(int index, byte red, byte green, byte blue)
    {
        var color = Palette.ColorOf(index);
        return Square((color >> 16) - red) + Square(((color >> 8) & 255) - green) + Square((color & 255) - blue);
    }

    private static int Square(int value) => value * value;
}
