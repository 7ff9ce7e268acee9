using System.Globalization;
using System.Text;
using System.Xml.Linq;
using CsCheck;
using DetailGen.Drawing.Emitters;
using DetailGen.Drawing.Emitters.Svg;
using DetailGen.Drawing.Lettering;
using DetailGen.Drawing.Scenes;
using DetailGen.Testing;

namespace DetailGen.Drawing.Tests.Emitters;

public class SvgEmitterTests
{
    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    private static XElement First { get; } = Parse(SampleScene.Scene, 0);

    [Fact]
    public void The_page_is_in_millimetres() =>
        Assert.Equal(("420mm", "297mm", "0 0 420 297"), (First.Attribute("width")!.Value, First.Attribute("height")!.Value, First.Attribute("viewBox")!.Value));

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    public void Its_texts_are_those_of_the_scene(int page) => Assert.Equal(
        SampleScene.Words(SampleScene.Scene.Pages[page]).Order(StringComparer.Ordinal),
        Parse(SampleScene.Scene, page).Descendants(Svg + "text").Select(text => text.Value).Order(StringComparer.Ordinal));

    [Fact]
    public void Any_text_survives() => Gen.String[Gen.Char[' ', '\uD7FF'], 1, 40].Where(words => !string.IsNullOrWhiteSpace(words) && !words.Any(char.IsControl)).Always(words =>
    {
        var scene = SampleScene.Scene with { Pages = [SampleScene.Scene.Pages[0] with { Placements = [], Items = [new Text("note.text", words, new(50, 50), 2.5)] }] };
        return Parse(scene, 0).Descendants(Svg + "text").Single().Value == words;
    });

    [Fact]
    public void Letters_that_xml_forbids_do_not_break_the_file()
    {
        var writer = new SvgWriter().Escaped("a\u0001b\uFFFEc\uD800d");
        Assert.Equal("a\uFFFDb\uFFFDc\uFFFDd", Encoding.UTF8.GetString(writer.Written));
    }

    [Fact]
    public void A_part_id_with_awkward_letters_survives_as_an_attribute()
    {
        var item = new Stroke("frame", [new(0, 0), new(1, 1)]) { PartId = "a\"<&>'b" };
        var scene = SampleScene.Scene with { Pages = [SampleScene.Scene.Pages[0] with { Placements = [], Items = [item] }] };
        Assert.Equal("a\"<&>'b", Parse(scene, 0).Descendants(Svg + "path").Single().Attribute("data-part")!.Value);
    }

    [Fact]
    public void A_text_stands_where_it_was_placed_with_its_measured_length()
    {
        var text = First.Descendants(Svg + "text").Single(text => text.Value == "Layer schedule");
        Assert.Equal(("30", "247", "700"), (text.Attribute("x")!.Value, text.Attribute("y")!.Value, text.Attribute("font-weight")!.Value));
        Assert.Equal(Typeface.Shipped.Width("Layer schedule", 3.5, bold: true), Number(text, "textLength"), 3);
        Assert.Equal(Typeface.Shipped.FontSize(3.5), Number(text, "font-size"), 3);
    }

    [Fact]
    public void An_upright_text_is_turned_about_its_place()
    {
        var text = First.Descendants(Svg + "text").Single(text => text.Value == "Outside");
        Assert.Equal("rotate(-90 112 145)", text.Attribute("transform")!.Value); // view origin (120, 170), text at (-8, -18), page 297 high
        Assert.Equal("end", text.Attribute("text-anchor")!.Value);
    }

    [Fact]
    public void Marks_stand_in_groups_of_their_row_with_layer_and_look()
    {
        var cut = First.Descendants(Svg + "path").First(path => path.Attribute("data-part")?.Value == "wall.outer-leaf" && path.Attribute("data-fill") is null);
        Assert.Equal(("cut-BK-wall", "A-EF2510E1N-----2-BK", "#000000", "0.5"),
            (cut.Parent!.Attribute("class")!.Value, cut.Parent.Attribute("data-layer")!.Value, cut.Parent.Attribute("stroke")!.Value, cut.Parent.Attribute("stroke-width")!.Value));
        Assert.Equal("M120 147L130.25 147L130.25 107L120 107Z", cut.Attribute("d")!.Value);
    }

    [Fact]
    public void A_view_is_cut_to_its_window()
    {
        var rect = First.Descendants(Svg + "clipPath").First().Element(Svg + "rect")!;
        Assert.Equal("60 57 240 140", string.Join(' ', new[] { "x", "y", "width", "height" }.Select(name => rect.Attribute(name)!.Value)));
        Assert.All(First.Descendants(Svg + "g").Where(group => group.Attribute("class")?.Value == "view"), view => Assert.StartsWith("url(#window-", view.Attribute("clip-path")!.Value, StringComparison.Ordinal));
    }

    [Fact]
    public void What_is_not_plotted_is_not_drawn() => Assert.DoesNotContain(First.Descendants(Svg + "g"), group => group.Attribute("class")?.Value == "construction");

    [Fact]
    public void Numbers_are_rounded_to_thousandths_and_never_written_as_minus_nought() => Gen.Double[-1e6, 1e6].Always(value =>
    {
        var text = Encoding.ASCII.GetString(new SvgWriter().Number(value).Written);
        Assert.Equal(value, double.Parse(text, CultureInfo.InvariantCulture), 0.000501);
        Assert.DoesNotContain('E', text);
        Assert.Equal("0", Encoding.ASCII.GetString(new SvgWriter().Number(-0.0004).Written));
    });

    [Fact]
    public void A_place_that_is_no_number_is_refused() => Assert.Throws<ArgumentException>(() => new SvgWriter().Number(double.NaN));

    private static XElement Parse(Scene scene, int page) => XDocument.Parse(Encoding.UTF8.GetString(SceneFiles.Emit(scene, ["svg"])[page].Bytes)).Root!;

    private static double Number(XElement element, string name) => double.Parse(element.Attribute(name)!.Value, CultureInfo.InvariantCulture);
}
