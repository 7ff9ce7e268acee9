using DetailGen.Drawing.Emitters.Dxf;
using DetailGen.Drawing.Scenes;
using DetailGen.Dxf;
using DetailGen.Dxf.Document;
using DetailGen.Dxf.Entities;
using Entities = DetailGen.Dxf.Entities;

namespace DetailGen.Drawing.Tests.Emitters;

public class DxfEmitterTests
{
    private static readonly DxfDocument Document = DxfEmitter.Document(SampleScene.Scene);

    [Fact]
    public void The_main_view_stands_at_full_size_around_the_models_origin()
    {
        var leaf = Document.Model.OfType<Polyline>().First(line => line.Part?.Id == "wall.outer-leaf");
        Assert.True(leaf.IsClosed);
        Assert.Equal([new(0, -200), new(102.5, -200), new(102.5, 200), new(0, 200)], leaf.Vertices);
        Assert.Equal(10, Document.PlotScale);
    }

    [Fact]
    public void Letters_are_as_much_larger_as_the_view()
    {
        Assert.Equal(35, Texts().Single(text => text.Content == "Inside").Height);
        Assert.Equal(5, Document.Blocks[0].Fields.Single(field => field.Tag == "NUMBER").Height);
    }

    [Fact]
    public void A_second_view_stands_right_of_the_main_one_at_full_size_and_its_dashes_keep_their_paper_size()
    {
        var inset = Document.Model.OfType<Polyline>().Single(line => line.Part?.Id == "coping");
        Assert.True(inset.Vertices.Min(vertex => vertex.X) > 10 * SampleScene.Section.Bounds.Right);
        Assert.Equal(2 * 25, inset.Vertices[1].X - inset.Vertices[0].X, 9);
        Assert.Equal(0.2, inset.LinetypeScale); // 1:2 in a drawing whose dashes are for 1:10
    }

    [Fact]
    public void A_viewport_shows_at_its_middle_what_the_page_shows_there()
    {
        var viewport = Document.Sheets[0].Viewports[0];
        // Window 60 to 300 by 100 to 240; the view's origin at (120, 170).
        Assert.Equal((new DxfPoint(180, 170), 240.0, 140.0, 10.0), (viewport.Centre, viewport.Width, viewport.Height, viewport.Scale));
        Assert.Equal(new DxfPoint(600, 0), viewport.Looks);
        Assert.False(Document.Layers.Single(layer => layer.Name == viewport.Layer).IsPlotted);
    }

    [Fact]
    public void Pages_are_layouts_by_number() => Assert.Equal([("Sheet 1", "ISO A3", 420, 297), ("Sheet 2", "ISO A4", 210, 297)],
        Document.Sheets.Select(sheet => (sheet.Name, sheet.Paper, sheet.Width, sheet.Height)));

    [Fact]
    public void A_dimension_that_measures_its_figure_stays_live_also_with_words_behind() =>
        Assert.Equal([null, "<> min.", null, "27"], Document.Model.OfType<Entities.Dimension>().Select(dimension => dimension.Override));

    [Fact]
    public void A_dimension_lies_between_the_true_points()
    {
        var upstand = Document.Model.OfType<Entities.Dimension>().ElementAt(1);
        Assert.Equal((new DxfPoint(800, -200), new DxfPoint(800, -50), 90.0, 150.0), (upstand.First, upstand.Second, upstand.Angle, upstand.Measured));
        Assert.Equal(920, upstand.Picture.DimensionLine.From.X);
    }

    [Fact]
    public void Strokes_of_dimensions_lie_on_the_layer_of_their_own_row() =>
        Assert.All(Document.Model.OfType<Entities.Dimension>().SelectMany(dimension => dimension.Picture.Marks.OfType<Line>().TakeLast(1)),
            stroke => Assert.Equal("A-------D5", stroke.Layer));

    [Fact]
    public void A_fill_is_named_by_its_material_and_a_name_has_one_definition()
    {
        var patterns = Document.Model.OfType<Entities.Hatch>().Where(hatch => hatch.Pattern is not null).Select(hatch => hatch.Pattern!).ToArray();
        Assert.Equal(["brick", "natural-stone", "lightweight-block", "natural-stone-2"], patterns.Select(pattern => pattern.Name)); // the inset's lines are five times denser
        Assert.Equal(30, patterns[0].Lines[0].Spacing, 9);
        Assert.Equal(8, patterns[3].Lines[0].Spacing, 9);
    }

    [Fact]
    public void Holes_of_a_fill_stay_open() => Assert.Single(Document.Model.OfType<Entities.Hatch>().First().Holes);

    [Fact]
    public void An_arrow_head_is_a_triangle_and_a_band_a_solid_fill()
    {
        Assert.Single(Document.Model.OfType<Entities.Solid>());
        Assert.Single(Document.Model.OfType<Entities.Hatch>(), hatch => hatch.Pattern is null && hatch.Part?.Id == "roof.membrane");
    }

    [Fact]
    public void Grains_are_circles() => Assert.Equal(4, Document.Model.OfType<Circle>().Count(circle => circle.Part?.Id == "mortar" && Math.Abs(circle.Radius - 1.5) < 1e-9));

    [Fact]
    public void A_leader_and_its_note_are_one_group()
    {
        var members = Document.Model.Where(entity => entity.Group == "note-W3").ToArray();
        Assert.Equal(["Line", "Hatch", "Mtext"], members.Select(member => member.GetType().Name));
    }

    [Fact]
    public void A_note_keeps_its_lines_and_their_pitch()
    {
        var note = Document.Model.OfType<Mtext>().Single();
        Assert.Equal(3, note.Lines.Length);
        Assert.Equal(42.5, note.LineSpacing * note.Height * 5 / 3, 9);
        Assert.Equal(new DxfPoint(410, 425), note.Anchor); // top of capitals
    }

    [Fact]
    public void Every_word_of_the_scene_is_in_the_drawing()
    {
        var everything = Document.Model.Concat(Document.Sheets.SelectMany(sheet => sheet.Content)).Concat(Document.Blocks.SelectMany(block => block.Content));
        var words = everything.SelectMany(entity => entity switch
        {
            Entities.Text text => [text.Content],
            Mtext note => note.Lines,
            Entities.Dimension dimension => [dimension.Picture.Text.Content],
            Insert insert => insert.Values.Select(value => value.Value),
            _ => (IEnumerable<string>)[],
        });
        var scene = SampleScene.Scene.Pages.SelectMany(SampleScene.Words).Select(text => text.Replace('\u2212', '-'));
        Assert.Equal(scene.Order(StringComparer.Ordinal), words.Order(StringComparer.Ordinal));
    }

    [Fact]
    public void The_minus_sign_becomes_a_hyphen() => Assert.Contains(Texts(), text => text.Content == "-0.150");

    [Fact]
    public void A_form_is_a_block_with_its_values_as_attributes()
    {
        var insert = Document.Sheets[0].Content.OfType<Insert>().Single();
        Assert.Equal("title-block", insert.Block);
        Assert.Equal([new("NUMBER", "TC-DET-0101"), new("TITLE", "Parapet <A> & Co")], insert.Values);
        Assert.Equal("title-block-2", Document.Sheets[1].Content.OfType<Insert>().Single().Block);
    }

    [Fact]
    public void A_centred_value_begins_where_it_begins_on_paper()
    {
        var width = DetailGen.Drawing.Lettering.Typeface.Shipped.Width("TC-DET-0101", 5);
        Assert.Equal(270 - width / 2, Document.Blocks[0].Fields.Single(field => field.Tag == "NUMBER").Position.X, 9);
    }

    [Fact]
    public void Layers_carry_the_rows_look()
    {
        var vapour = Document.Layers.Single(layer => layer.Name == "A-EF3010E5N-----2-VC");
        Assert.Equal((35, "dashed-35", 0xD00BA4), (vapour.Weight, vapour.Linetype, vapour.Color.TrueColor));
        Assert.Equal([4.2, -1.05], Document.Linetypes.Single(linetype => linetype.Name == "dashed-35").Dashes.Select(dash => Math.Round(dash, 9)));
        Assert.Equal(DxfColor.Ink, Document.Layers.Single(layer => layer.Name == "A-EF2510E1N-----2-BK").Color);
    }

    [Fact]
    public void A_layer_that_nothing_uses_is_left_out()
    {
        var spare = new LayerRow("revision.cloud", "A-------K1", 0.35, "continuous", Ink.Black);
        Assert.DoesNotContain(DxfEmitter.Document(SampleScene.Scene with { Layers = [.. SampleScene.Scene.Layers, spare] }).Layers, layer => layer.Name == spare.Name);
    }

    [Fact]
    public void Two_looks_of_one_layer_are_refused()
    {
        var scene = SampleScene.Scene with { Layers = [.. SampleScene.Scene.Layers.Select(layer => layer.Row == "note.leader" ? layer with { Name = "A-------T1", Width = 0.5 } : layer)] };
        Assert.Contains("A-------T1", Assert.Throws<ArgumentException>(() => DxfEmitter.Document(scene)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Without_parameters_there_is_no_record_of_them()
    {
        Assert.Equal("{\"detail\":\"tern-court-parapet-01\"}", Document.Provenance!.Parameters);
        Assert.Null(DxfEmitter.Document(SampleScene.Scene with { Identity = SampleScene.Scene.Identity with { Parameters = "" } }).Provenance);
    }

    private static IEnumerable<Entities.Text> Texts() => Document.Model.OfType<Entities.Text>();
}
