using System.Buffers.Binary;
using DetailGen.Drawing.Emitters;
using DetailGen.Drawing.Scenes;
using SkiaSharp;

namespace DetailGen.Drawing.Tests.Emitters;

public class PngEmitterTests
{
    [Fact]
    public void A3_at_300_dots_per_inch_has_4961_by_3508_pixels_and_says_so()
    {
        var png = Png(SampleScene.Scene, EmitOptions.Usual);
        Assert.Equal((4961, 3508), Size(png));
        var chunk = png.AsSpan(33);
        Assert.True(chunk.Slice(4, 4).SequenceEqual("pHYs"u8));
        Assert.Equal(11811u, BinaryPrimitives.ReadUInt32BigEndian(chunk[8..])); // 300 / 0.0254
        Assert.Equal(1, chunk[16]);
    }

    [Fact]
    public void A_width_in_pixels_sets_the_resolution()
    {
        var png = Png(SampleScene.Scene, new(PixelWidth: 840));
        Assert.Equal((840, 594), Size(png));
        Assert.Equal(2000u, BinaryPrimitives.ReadUInt32BigEndian(png.AsSpan(41))); // 2 pixels a millimetre
    }

    [Theory]
    [InlineData(5, null)]
    [InlineData(5000, null)]
    [InlineData(double.NaN, null)]
    [InlineData(300, 1)]
    [InlineData(300, 100_000)]
    public void A_size_out_of_range_is_refused(double dpi, int? width) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Png(SampleScene.Scene, new(dpi, width)));

    [Fact]
    public void Another_reader_opens_it_and_finds_ink_where_the_frame_is()
    {
        using var picture = SKBitmap.Decode(Png(SampleScene.Scene, new(PixelWidth: 4200)));
        Assert.Equal(new SKColor(0, 0, 0), picture.GetPixel(2000, 2970 - 100)); // lower frame line, y 10 mm
        Assert.Equal(SKColors.White, picture.GetPixel(100, 100));
    }

    [Fact]
    public void The_frame_is_0_7_wide_in_pixels()
    {
        using var picture = SKBitmap.Decode(Png(SampleScene.Scene, new(PixelWidth: 4200)));
        var ink = Enumerable.Range(2830, 80).Sum(y => 255 - picture.GetPixel(2000, y).Red) / 255.0;
        Assert.Equal(7, ink, 0.1);
    }

    [Fact]
    public void What_lies_outside_a_views_window_is_not_seen()
    {
        using var picture = SKBitmap.Decode(Png(SampleScene.Scene, new(PixelWidth: 4200)));
        Assert.NotEqual(SKColors.White, picture.GetPixel(1410, 1260)); // a grain at (21, 1) of the section, whose origin is (120, 170)
        Assert.Equal(SKColors.White, picture.GetPixel(3200, 1270)); // one at (200, 0), right of the window
    }

    [Fact]
    public void A_black_scene_needs_one_channel_only()
    {
        var black = SampleScene.Scene with { Layers = [.. SampleScene.Scene.Layers.Select(layer => layer with { Ink = Ink.Black })] };
        Assert.Equal(0, Png(black, new(PixelWidth: 400))[25]); // colour type of IHDR: 0 grey, 2 colour
        Assert.Equal(2, Png(SampleScene.Scene, new(PixelWidth: 400))[25]);
    }

    private static byte[] Png(Scene scene, EmitOptions options) => SceneFiles.Emit(scene, ["png"], options)[0].Bytes;

    private static (int, int) Size(ReadOnlySpan<byte> png) => (BinaryPrimitives.ReadInt32BigEndian(png[16..]), BinaryPrimitives.ReadInt32BigEndian(png[20..]));
}
