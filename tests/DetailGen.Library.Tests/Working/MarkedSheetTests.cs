using DetailGen.Drawing.Lettering;
using DetailGen.Drawing.Scenes;

namespace DetailGen.Library.Tests.Working;

/// <summary>What a reader with a red pencil would mark on the sheets of shipped details.</summary>
public class MarkedSheetTests
{
    /// <summary>From the tallest letters to the middle of a line, mm: more than the line's own width of white.</summary>
    private const double Clear = 0.25;

    [Theory]
    [InlineData("parapet-01", "false")]
    [InlineData("parapet-03", "true")]
    [InlineData("abutment-01", "false")]
    public void The_name_of_a_level_keeps_off_the_line_over_it(string detail, string mirror)
    {
        var levels = InsetTests.Composed(detail, ["sheet.paper=A2", "sheet.scale=1:10", "mirror=" + mirror]).Scene.Views[0].Items.OfType<Group>().Where(group => group.Row == "dim.level").ToList();
        Assert.True(levels.Count > 3);
        Assert.All(levels, level =>
        {
            // The value stands over its line, the name under it.
            Text[] texts = [.. level.Items.OfType<Text>().OrderByDescending(text => text.At.Y)];
            var line = level.Items.OfType<Stroke>().SelectMany(stroke => stroke.Points).Max(point => point.Y);
            Assert.True(texts[0].At.Y > line && line - Letters.Box(texts[1]).Top >= Clear, $"{texts[1].Words} stands {line - Letters.Box(texts[1]).Top} mm under its line.");
        });
    }

    [Theory]
    [InlineData("parapet-03", "false")]
    [InlineData("parapet-03", "true")]
    [InlineData("abutment-01", "false")]
    public void No_witness_line_of_the_roofs_layers_runs_along_a_roof_that_falls_away_under_it(string detail, string mirror)
    {
        var view = InsetTests.Composed(detail, ["sheet.paper=A2", "sheet.scale=1:10", "roof.fall-towards=away", "mirror=" + mirror]).Scene.Views[0];
        var sizes = view.Items.OfType<Dimension>().Where(size => size.MeasureId.StartsWith("roof.", StringComparison.Ordinal) && size.Vertical).ToList();
        Assert.True(sizes.Count > 3);
        Assert.Single(sizes.SelectMany(size => (double[])[size.From.X, size.To.X]).Select(x => Math.Round(x, 3)).Distinct());
    }

    [Fact]
    public void The_key_says_what_a_ring_means_where_there_is_one_and_only_there()
    {
        bool Told(params string[] set) => InsetTests.Composed("parapet-01", ["sheet.scale=1:10", "sheet.paper=A2", .. set]).Scene.Pages.SelectMany(page => page.Items).OfType<Text>()
            .Any(text => text.Words.StartsWith("ring:", StringComparison.Ordinal));
        Assert.True(Told());
        Assert.False(Told("sheet.inset=none"));
    }
}
