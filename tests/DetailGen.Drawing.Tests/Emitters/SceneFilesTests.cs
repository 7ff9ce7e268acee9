using System.Globalization;
using DetailGen.Drawing.Emitters;

namespace DetailGen.Drawing.Tests.Emitters;

public class SceneFilesTests
{
    [Fact]
    public void Pictures_come_one_a_page_and_documents_hold_all_pages() => Assert.Equal(
        [("", "dxf"), ("", "svg"), ("-2", "svg"), ("", "pdf"), ("", "png"), ("-2", "png")],
        SceneFiles.Emit(SampleScene.Scene, SceneFiles.Formats, new(Dpi: 20)).Select(file => (file.Suffix, file.Format)));

    [Theory]
    [InlineData("dxf")]
    [InlineData("svg")]
    [InlineData("pdf")]
    [InlineData("png")]
    public void A_scene_gives_the_same_bytes_twice_and_in_every_culture(string format)
    {
        var before = CultureInfo.CurrentCulture;
        var first = Bytes();
        try
        {
            foreach (var culture in new[] { "tr-TR", "de-DE", "ar-SA", "" })
            {
                CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo(culture);
                Assert.Equal(first, Bytes());
            }
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }

        byte[] Bytes() => [.. SceneFiles.Emit(SampleScene.Scene, [format], new(Dpi: 60)).SelectMany(file => file.Bytes)];
    }

    [Fact]
    public void An_unknown_format_is_refused_with_those_that_work() =>
        Assert.Contains("dxf, svg, pdf, png", Assert.Throws<ArgumentException>(() => SceneFiles.Emit(SampleScene.Scene, ["gif"])).Message, StringComparison.Ordinal);

    [Theory]
    [InlineData("svg")]
    [InlineData("dxf")]
    public void A_row_that_the_layer_map_lacks_is_named(string format)
    {
        var scene = SampleScene.Scene with { Layers = [.. SampleScene.Scene.Layers.Where(layer => layer.Row != "dim.stroke")] };
        Assert.Contains("dim.stroke", Assert.Throws<KeyNotFoundException>(() => SceneFiles.Emit(scene, [format])).Message, StringComparison.Ordinal);
    }
}
