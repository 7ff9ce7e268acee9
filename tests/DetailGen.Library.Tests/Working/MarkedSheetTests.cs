using System.Text.RegularExpressions;
using DetailGen.Drawing.Scenes;
using DetailGen.Library.Tests.Laws;

namespace DetailGen.Library.Tests.Working;

/// <summary>What a reader with a red pencil would mark on the sheets of shipped details.</summary>
public class MarkedSheetTests
{
    [Theory]
    [InlineData("parapet-03", "false")]
    [InlineData("parapet-03", "true")]
    [InlineData("abutment-01", "false")]
    public void No_witness_line_of_the_roofs_layers_runs_along_a_roof_that_falls_away_under_it(string detail, string mirror)
    {
        var view = InsetTests.Whole(detail, ["sheet.paper=A2", "sheet.scale=1:10", "roof.fall-towards=away", "mirror=" + mirror]).Scene.Views[0];
        var sizes = view.Items.OfType<Dimension>().Where(size => size.MeasureId.StartsWith("roof.", StringComparison.Ordinal) && size.Vertical).ToList();
        Assert.True(sizes.Count > 3);
        Assert.Single(sizes.SelectMany(size => (double[])[size.From.X, size.To.X]).Select(x => Math.Round(x, 3)).Distinct());
    }

    [Fact]
    public void The_key_says_what_a_ring_means_where_there_is_one_and_only_there()
    {
        bool Told(params string[] set) => InsetTests.Whole("parapet-01", ["sheet.scale=1:10", "sheet.paper=A2", .. set]).Scene.Pages.SelectMany(page => page.Items).OfType<Text>()
            .Any(text => text.Words.StartsWith("ring:", StringComparison.Ordinal));
        Assert.True(Told());
        Assert.False(Told("sheet.inset=none"));
    }

    // However short the lines of a stack must be, a carpenter reads the size of the joists beside the view.
    [Theory]
    [InlineData("parapet", "cavity-masonry")]
    [InlineData("abutment", "cavity-masonry")]
    [InlineData("parapet", "solid-masonry-insulated")]
    [InlineData("abutment", "solid-masonry-insulated")]
    public void The_view_tells_the_size_of_joists_that_run_across(string junction, string wall)
    {
        Scratch.Folder(folder =>
        {
            var path = Path.Combine(folder, "joists.yaml");
            File.WriteAllText(path, $"detail: joists\njunction: {junction}\nwall: {wall}\nroof: warm-timber-deck\nset: {{ roof.joists: across }}\nsheet: {{ paper: A3, scale: \"1:10\" }}\n");
            foreach (var mirror in (bool[])[false, true])
            {
                var words = InsetTests.WholeFile(path, ["mirror=" + (mirror ? "true" : "false")]).Scene.Views[0].Items.OfType<Drawing.Scenes.Group>().SelectMany(group => group.Items).OfType<Text>();
                Assert.Contains(words, text => Regex.IsMatch(text.Words, @"^(C24 j|J)oists \d+( mm)? × \d+( mm)? at \d+"));
            }
        });
    }
}
