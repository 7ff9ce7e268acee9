using System.Text.RegularExpressions;
using DetailGen.Drawing.Auditing;
using DetailGen.Drawing.Scenes;
using DetailGen.Drawing.Sheets;
using DetailGen.Library.Tests.Laws;
using DetailGen.Sections;
using Group = DetailGen.Drawing.Scenes.Group;

namespace DetailGen.Library.Tests.Working;

/// <summary>Sheets at small scales, where parts lie closer than their marks can.</summary>
public partial class CrowdedSheetTests
{
    // Each of them was given a larger paper, some of them two sizes larger, for the want of one mark.
    [Theory]
    [InlineData("A3", true, "cavity-masonry", "warm-timber-deck", "wall.fill: partial")]
    [InlineData("A3", true, "cavity-masonry", "warm-timber-deck", "roof.finish: paving")]
    [InlineData("A3", false, "cavity-masonry", "warm-timber-deck", "roof.finish: ballast")]
    [InlineData("A3", true, "cavity-masonry", "warm-concrete-deck", "roof.finish: ballast")]
    [InlineData("A3", false, "solid-masonry-insulated", "warm-timber-deck", "roof.finish: ballast")]
    [InlineData("A4", true, "solid-masonry-insulated", "warm-timber-deck", "roof.joists: across")]
    [InlineData("A4", false, "solid-masonry-insulated", "warm-concrete-deck", "roof.finish: ballast")]
    public void Where_marks_have_no_room_parts_that_lie_close_share_one_and_the_paper_stays(string paper, bool mirror, string wall, string roof, string choice)
    {
        var sheet = Composed(paper, mirror, wall, roof, choice);
        Assert.Equal(paper, sheet.Paper);
        Assert.DoesNotContain(sheet.Warnings, warning => warning.Contains("found no place", StringComparison.Ordinal));
        Assert.DoesNotContain(LayoutAudit.Of(sheet.Scene, sheet.Format, sheet.Parts), fault => fault.Kind != AuditKinds.Crowded);

        // Each number on the view has its words on a list, those that share a mark as well.
        var listed = sheet.Scene.Pages.SelectMany(page => page.Items).OfType<Text>().Where(text => text.Bold).Select(text => text.Words).ToHashSet(StringComparer.Ordinal);
        Assert.All(Marks(sheet).SelectMany(NumbersOf), number => Assert.Contains(number, listed));
    }

    [Fact]
    public void A_shared_mark_leads_near_each_part_that_it_tells_of()
    {
        const double Near = 8;
        var sheets = new[] { "A3", "A4" }.SelectMany(_ => new[] { false, true }, (paper, mirror) => Composed(paper, mirror, "cavity-masonry", "warm-timber-deck", "wall.fill: partial, roof.joists: across, roof.finish: ballast"));
        var shared = sheets.SelectMany(sheet => Marks(sheet).Where(mark => NumbersOf(mark).Length > 1), (sheet, mark) => (Sheet: sheet, Mark: mark)).ToArray();
        Assert.NotEmpty(shared);
        Assert.All(shared, one =>
        {
            var (sheet, mark) = one;
            Assert.True(NumbersOf(mark).Length <= 3);
            var tip = mark.Items.OfType<Stroke>().Single().Points[^1];
            Assert.All(NumbersOf(mark), number =>
            {
                var parts = sheet.Parts["section"].Where(part => part.Part.Words.Note.Length > 0 && Listed(sheet, number).StartsWith(part.Part.Words.Note, StringComparison.Ordinal)).ToArray();
                Assert.NotEmpty(parts);
                Assert.True(parts.Min(part => part.Visible.Distance(new Point(tip.X, tip.Y))) < Near, $"{number} is far from {tip}.");
            });
        });
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void A_stack_without_room_for_its_words_stands_by_its_references_and_its_words_are_listed(bool mirror)
    {
        var sheet = Composed("A4", mirror, "cavity-masonry", "warm-concrete-deck", "roof.finish: bare");
        var stack = sheet.Scene.Views[0].Items.OfType<Group>().Single(group => group.Name == "stack wall");
        Assert.Equal(["W1", "W2", "W3", "W4", "W5", "W6"], stack.Items.OfType<Text>().OrderByDescending(text => text.At.Y).Select(text => text.Words));
        var further = sheet.Scene.Pages.Skip(1).SelectMany(page => page.Items).ToArray();
        Assert.Contains(further.OfType<Text>(), text => text.Words.StartsWith("102.5 mm clay brickwork", StringComparison.Ordinal));
        Assert.Empty(LayoutAudit.Of(sheet.Scene, sheet.Format, sheet.Parts));
    }

    // Below a deep ceiling the lining shows as a strip between its ribbon of adhesive and the break, and no level crosses all layers: a larger paper was taken.
    [Theory]
    [InlineData("along", "full", false)]
    [InlineData("across", "partial", true)]
    public void Where_no_place_shows_all_layers_of_a_wall_each_has_its_note_and_the_paper_stays(string joists, string fill, bool mirror)
    {
        var sheet = Composed($"junction: parapet\nwall: cavity-masonry\nroof: warm-timber-deck\nmirror: {(mirror ? "true" : "false")}\nset: {{ roof.finish: ballast, roof.joists: {joists}, wall.fill: {fill} }}\nsheet: {{ paper: A3 }}\n");
        Assert.Equal(("A3", 10), (sheet.Paper, sheet.Scale));
        Assert.Empty(LayoutAudit.Of(sheet.Scene, sheet.Format, sheet.Parts));
        var notes = sheet.Scene.Views[0].Items.OfType<Group>().SelectMany(group => group.Items.OfType<Text>()).Where(text => text.Bold).Select(text => text.Words).ToArray();
        Assert.Equal(notes.Length, notes.Distinct(StringComparer.Ordinal).Count());
        Assert.All(Enumerable.Range(1, 6), number => Assert.Contains($"W{number}", notes));
    }

    // It named A3, which nobody had asked for.
    [Fact]
    public void Where_no_paper_was_asked_for_none_is_said_to_be_too_small()
    {
        var sheet = Composed("junction: parapet\nwall: solid-masonry-insulated\nroof: warm-concrete-deck\nsheet: { scale: \"1:2\" }\n");
        Assert.Contains($"No sheet at 1:2 holds the view with all that is said of it; it is drawn on {sheet.Paper} at 1:{sheet.Scale}.", sheet.Warnings);
    }

    // The lines beside the number on its list, down to the next.
    private static string Listed(ComposedSheet sheet, string number)
    {
        var page = sheet.Scene.Pages.First(page => page.Items.OfType<Text>().Any(text => text.Bold && text.Words == number));
        var own = page.Items.OfType<Text>().Single(text => text.Bold && text.Words == number);
        var next = page.Items.OfType<Text>().Where(text => text.Bold && text.At.X == own.At.X && text.At.Y < own.At.Y).Select(text => text.At.Y).DefaultIfEmpty(double.MinValue).Max();
        return string.Join(' ', page.Items.OfType<Text>().Where(text => !text.Bold && text.Row == own.Row && text.At.X > own.At.X && text.At.X < own.At.X + 15 && text.At.Y <= own.At.Y && text.At.Y > next).Select(text => text.Words));
    }

    // Notes without words.
    private static IEnumerable<Group> Marks(ComposedSheet sheet) =>
        sheet.Scene.Views[0].Items.OfType<Group>().Where(group => group.Items.OfType<Text>().ToArray() is [{ Bold: true, Words: var words }] && Numbers().IsMatch(words));

    private static string[] NumbersOf(Group mark) => mark.Items.OfType<Text>().Single().Words.Split(", ");

    [GeneratedRegex("^[PN][0-9]+(, [PN][0-9]+)*$")]
    private static partial Regex Numbers();

    private static ComposedSheet Composed(string paper, bool mirror, string wall, string roof, string choice) =>
        Composed($"junction: parapet\nwall: {wall}\nroof: {roof}\nmirror: {(mirror ? "true" : "false")}\nset: {{ {choice} }}\nsheet: {{ paper: {paper}, scale: \"1:20\" }}\n");

    private static ComposedSheet Composed(string preset)
    {
        ComposedSheet? sheet = null;
        Scratch.Folder(folder =>
        {
            var path = Path.Combine(folder, "crowded.yaml");
            File.WriteAllText(path, "detail: crowded\n" + preset);
            sheet = InsetTests.WholeFile(path, []);
        });
        return sheet!;
    }
}
