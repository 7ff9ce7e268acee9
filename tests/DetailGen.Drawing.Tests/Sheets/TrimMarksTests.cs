using DetailGen.Drawing.Scenes;
using DetailGen.Drawing.Sheets;

namespace DetailGen.Drawing.Tests.Sheets;

public class TrimMarksTests
{
    // Trimmed and untrimmed A3 by ISO 5457:1999 (read in secondary texts): 420 x 297 and 450 x 330.
    private static readonly SheetFormat Format = SampleSheets.A3 with { Untrimmed = (450, 330) };

    [Fact]
    public void The_sheet_lies_in_the_middle_of_the_untrimmed_paper_with_a_mark_at_each_corner()
    {
        var page = new Page(1, "A3", 420, 297, [new("section", new(100, 50), new(0, 0, 420, 297))], [new Stroke("frame", [new(0, 0), new(420, 297)])]);
        var trimmed = TrimMarks.On(page, Format);
        Assert.Equal((450, 330), (trimmed.Width, trimmed.Height));
        Assert.Equal(new(115, 66.5), trimmed.Placements[0].Origin);
        Assert.Equal([new(15, 16.5), new(435, 313.5)], trimmed.Items.OfType<Stroke>().Single().Points);
        var marks = trimmed.Items.OfType<Solid>().ToList();
        Assert.Equal(4, marks.Count);
        Assert.All(marks, mark => Assert.All(mark.Outline, point => Assert.True(point.X is <= 15 or >= 435 || point.Y is <= 16.5 or >= 313.5, "A mark lies on the sheet.")));
        Assert.All(marks, mark => Assert.Equal(10, mark.Outline.Max(point => point.X) - mark.Outline.Min(point => point.X), 9));
    }

    [Fact]
    public void For_copies_every_line_of_the_drawing_is_one_step_wider_and_none_of_the_sheets_own_rules()
    {
        var map = new LayerMap(
        [
            new("fill", "A-------H1", 0.13, 0.18, "continuous", Ink.Black, true), new("break", "A-------J1", 0.5, 0.7, "continuous", Ink.Black, true),
            new("frame", "A-------B1", 0.7, 0.7, "continuous", Ink.Black, true), new("frame.grid", "A-------B2", 0.35, 0.5, "continuous", Ink.Black, true),
        ]);
        Item[] items = [new Stroke("fill", []), new Stroke("break", []), new Stroke("frame", []), new Stroke("frame.grid", [])];
        Assert.Equal([0.18, 0.7, 0.7, 0.35], map.Used(items, "A3", forCopies: true).Select(row => row.Width));
        Assert.Equal([0.25, 1.0, 0.7, 0.5], map.Used(items, "A1", forCopies: true).Select(row => row.Width));
    }
}
