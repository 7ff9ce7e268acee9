using DetailGen.Details.Sheets;

namespace DetailGen.Details.Tests.Sheets;

public class SheetDataTests
{
    private static readonly SheetData Data = SheetDataReader.Load().Value;

    // ISO 216 and ISO 5457 trimmed sizes (table read in a secondary text)
    [Theory]
    [InlineData("A4", 210, 297)]
    [InlineData("A3", 420, 297)]
    [InlineData("A2", 594, 420)]
    [InlineData("A1", 841, 594)]
    public void Formats_have_their_standard_sizes(string paper, double width, double height)
    {
        var format = Data.Formats.Single(row => row.Paper == paper);
        Assert.Equal((width, height), (format.Width, format.Height));
    }

    [Fact]
    public void Every_zone_lies_in_the_drawing_space() => Assert.All(Data.Formats, format => Assert.All(format.Zones, zone =>
    {
        Assert.InRange(zone.Left, 0, zone.Right);
        Assert.InRange(zone.Right, zone.Left, format.Width - format.BorderLeft - format.BorderOthers);
        Assert.InRange(zone.Top, zone.Bottom, format.Height - (2 * format.BorderOthers));
    }));

    [Fact]
    public void The_title_block_stands_in_the_corner_of_the_frame() => Assert.All(Data.Formats, format =>
    {
        var block = format.Zones.Single(zone => zone.Name == "title-block");
        Assert.Equal((format.Width - format.BorderLeft - format.BorderOthers, 0), (block.Right, block.Bottom), (a, b) => Math.Abs(a.Item1 - b.Item1) < 1e-6 && a.Item2 == b.Item2);
        Assert.InRange(block.Right - block.Left, 180 - 1e-6, 200); // what its fields need
    });

    [Fact]
    public void Every_layer_has_a_name_of_its_own_and_a_known_ink()
    {
        Assert.Equal(Data.Layers.Count, Data.Layers.Select(layer => layer.Name).Distinct(StringComparer.Ordinal).Count());
        Assert.All(Data.Layers, layer => Assert.Contains(layer.Ink, Data.Inks.Select(ink => ink.Ink)));
    }

    [Fact]
    public void Element_layers_have_twenty_characters_and_annotation_layers_ten() =>
        Assert.All(Data.Layers.Where(layer => !layer.Row.StartsWith("beyond", StringComparison.Ordinal) && !layer.Row.StartsWith("hidden", StringComparison.Ordinal)),
            layer => Assert.Equal(layer.Row.EndsWith(".wall", StringComparison.Ordinal) || layer.Row.EndsWith(".roof", StringComparison.Ordinal) ? 20 : 10, layer.Name.Length));

    [Fact]
    public void Only_construction_lines_stay_off_the_print() => Assert.Equal(["construction"], Data.Layers.Where(layer => !layer.Plotted).Select(layer => layer.Row));
}
