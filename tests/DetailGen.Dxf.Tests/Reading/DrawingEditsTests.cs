using DetailGen.Dxf.Reading;

namespace DetailGen.Dxf.Tests.Reading;

public class DrawingEditsTests
{
    private const double Way = 1 / 3.0; // off the grid on which the file's numbers lie

    [Fact]
    public void An_untouched_drawing_has_no_edits() => Assert.Empty(DrawingEdits.Of(new Edited().Drawing));

    [Fact]
    public void A_changed_radius_is_told_with_the_layer_that_it_lies_on()
    {
        var edited = new Edited();
        edited.Set(edited.Find("CIRCLE", SampleDrawing.Cut)[0], 40, _ => "50.01");
        var edit = Assert.Single(DrawingEdits.Of(edited.Drawing));
        Assert.Equal((EditKind.Changed, "layer:" + SampleDrawing.Cut, 1), (edit.Kind, edit.Part, edit.Count));
        Assert.Equal("CIRCLE", Assert.Single(edit.Entities).Kind);
    }

    [Fact]
    public void A_changed_word_of_a_note_is_told()
    {
        var edited = new Edited();
        edited.Set(edited.Find("MTEXT", "NOTE-1").Concat(edited.Find("MTEXT", SampleDrawing.Notes)).First(), 1, text => text.Replace("150", "100", StringComparison.Ordinal));
        var edit = Assert.Single(DrawingEdits.Of(edited.Drawing));
        Assert.Equal((EditKind.Changed, "layer:" + SampleDrawing.Notes), (edit.Kind, edit.Part));
    }

    [Fact]
    public void A_changed_value_of_the_title_block_is_told()
    {
        var edited = new Edited();
        edited.Set(edited.Find("ATTRIB", "Parapet, cavity wall")[0], 1, _ => "Another title");
        var edit = Assert.Single(DrawingEdits.Of(edited.Drawing));
        Assert.Equal((EditKind.Changed, "INSERT"), (edit.Kind, Assert.Single(edit.Entities).Kind));
    }

    [Fact]
    public void A_part_that_was_moved_as_a_whole_is_told_with_the_way()
    {
        var edited = new Edited();
        var (fill, outline) = (edited.Find("HATCH", "part=roof.deck")[0], edited.Find("LWPOLYLINE", "part=roof.deck")[0]);
        edited.Set(fill, 10, Shifted).Set(fill, 43, Shifted).Set(outline, 10, Shifted); // 43 is the base of pattern lines in one, the width in the other
        var edit = Assert.Single(DrawingEdits.Of(edited.Drawing));
        Assert.Equal((EditKind.Moved, "roof.deck", 2), (edit.Kind, edit.Part, edit.Count));
        Assert.Equal((Way, 0), (edit.By.X, edit.By.Y));
    }

    [Theory]
    [InlineData(10)] // where it stands on the sheet
    [InlineData(40)] // how wide it is
    [InlineData(12)] // what of the model stands in its middle
    [InlineData(45)] // its scale
    public void A_window_of_a_sheet_that_was_edited_is_told(int code)
    {
        var edited = new Edited();
        edited.Set(edited.Find("VIEWPORT", SampleDrawing.Port)[0], code, Shifted);
        var edit = Assert.Single(DrawingEdits.Of(edited.Drawing));
        Assert.Equal((EditKind.Changed, "layer:" + SampleDrawing.Port, "VIEWPORT"), (edit.Kind, edit.Part, Assert.Single(edit.Entities).Kind));
    }

    [Fact]
    public void A_window_that_shows_other_layers_is_told()
    {
        var edited = new Edited();
        edited.Set(edited.Find("VIEWPORT", SampleDrawing.Port)[0], 331, _ => "FFF0");
        Assert.Equal((EditKind.Changed, "layer:" + SampleDrawing.Port), (Assert.Single(DrawingEdits.Of(edited.Drawing)).Kind, Assert.Single(DrawingEdits.Of(edited.Drawing)).Part));
    }

    [Theory]
    [InlineData(62)] // switched off: a negative colour
    [InlineData(70)] // frozen
    public void What_is_hidden_with_its_layer_is_told(int code)
    {
        var edited = new Edited();
        edited.Set(edited.Find("LAYER", SampleDrawing.Notes)[0], code, value => code == 62 ? "-" + value.Trim() : "1");
        var edit = Assert.Single(DrawingEdits.Of(edited.Drawing));
        Assert.Equal((EditKind.Hidden, "layer:" + SampleDrawing.Notes), (edit.Kind, edit.Part));
        Assert.All(edit.Entities, entity => Assert.Equal(SampleDrawing.Notes, entity.Layer));
        Assert.Equal(edit.Entities.Count, edit.Count);
    }

    [Fact]
    public void A_hidden_layer_on_which_nothing_was_issued_is_no_edit()
    {
        var edited = new Edited();
        edited.Insert(edited.Find("LAYER", SampleDrawing.Notes)[0], (0, "LAYER"), (5, "FFF1"), (100, "AcDbSymbolTableRecord"), (100, "AcDbLayerTableRecord"), (2, "REMARKS"), (70, "1"), (62, "-7"), (6, "Continuous"));
        Assert.Empty(DrawingEdits.Of(edited.Drawing));
    }

    [Fact]
    public void A_window_that_is_gone_or_that_others_made_is_told_and_what_stands_for_the_sheet_is_not()
    {
        var gone = new Edited();
        gone.Remove(gone.Find("VIEWPORT", SampleDrawing.Port)[0]);
        Assert.Equal((EditKind.Missing, "layer:" + SampleDrawing.Port), (Assert.Single(DrawingEdits.Of(gone.Drawing)).Kind, Assert.Single(DrawingEdits.Of(gone.Drawing)).Part));

        var more = new Edited();
        more.Insert(more.Find("VIEWPORT", SampleDrawing.Port)[0], (0, "VIEWPORT"), (5, "FFF1"), (100, "AcDbEntity"), (67, "1"), (8, "REMARKS"), (100, "AcDbViewport"), (10, "9"), (20, "9"), (40, "5"), (41, "5"), (69, "7"), (45, "50"));
        Assert.Equal((EditKind.Added, "layer:REMARKS"), (Assert.Single(DrawingEdits.Of(more.Drawing)).Kind, Assert.Single(DrawingEdits.Of(more.Drawing)).Part));

        var whole = new Edited();
        whole.Set(whole.Find("VIEWPORT", "0").First(record => !whole.Find("VIEWPORT", SampleDrawing.Port).Contains(record)), 40, Shifted);
        Assert.Empty(DrawingEdits.Of(whole.Drawing));
    }

    [Fact]
    public void What_is_gone_and_what_stands_twice_is_told()
    {
        var edited = new Edited();
        edited.Remove(edited.Find("LWPOLYLINE", "part=roof.membrane")[0]).Copy(edited.Find("SOLID", SampleDrawing.Notes)[0], "FFF1");
        Assert.Equal(
            [(EditKind.Doubled, "layer:" + SampleDrawing.Notes, 1), (EditKind.Missing, "roof.membrane", 1)],
            DrawingEdits.Of(edited.Drawing).Select(edit => (edit.Kind, edit.Part, edit.Count)));
    }

    [Fact]
    public void What_others_drew_is_told()
    {
        var edited = new Edited();
        edited.Insert(edited.Find("LINE", SampleDrawing.Hidden)[0], (0, "LINE"), (5, "FFF1"), (100, "AcDbEntity"), (8, "REMARKS"), (100, "AcDbLine"), (10, "0"), (20, "0"), (11, "9"), (21, "9"));
        var edit = Assert.Single(DrawingEdits.Of(edited.Drawing));
        Assert.Equal((EditKind.Added, "layer:REMARKS", 1), (edit.Kind, edit.Part, edit.Count));
    }

    [Fact]
    public void A_renamed_layer_changes_what_lies_on_it()
    {
        var edited = new Edited();
        foreach (var kind in (string[])["LAYER", "HATCH"])
        {
            foreach (var record in edited.Find(kind, SampleDrawing.Fill))
            {
                edited.Set(record, kind == "LAYER" ? 2 : 8, name => name == SampleDrawing.Fill ? "MY-FILLS" : name);
            }
        }

        var edits = DrawingEdits.Of(edited.Drawing);
        Assert.Contains(edits, edit => edit is { Kind: EditKind.Changed, Part: "roof.insulation.1" });
        Assert.Contains(edits, edit => edit is { Kind: EditKind.Changed, Part: "layer:MY-FILLS" });
        Assert.Contains(edits, edit => edit is { Kind: EditKind.Missing, Part: "layer:" + SampleDrawing.Fill });
    }

    [Fact]
    public void Defaults_that_another_program_leaves_out_or_adds_are_no_edits()
    {
        var edited = new Edited();
        foreach (var record in edited.Find("LWPOLYLINE", "0.0").ToList())
        {
            edited.Set(record, 43, width => width == "0.0" ? "0" : width);
        }

        Assert.Empty(DrawingEdits.Of(edited.Drawing));
    }

    [Fact]
    public void A_drawing_without_a_record_of_issue_has_none()
    {
        var drawing = DxfDrawing.Read(new MemoryStream(SampleDrawing.Bytes(SampleDrawing.Document() with { Provenance = null })));
        Assert.Null(drawing.Issued);
        Assert.Throws<InvalidOperationException>(() => DrawingEdits.Of(drawing));
    }

    private static string Shifted(string number) =>
        (double.Parse(number, System.Globalization.CultureInfo.InvariantCulture) + Way).ToString("R", System.Globalization.CultureInfo.InvariantCulture);
}
