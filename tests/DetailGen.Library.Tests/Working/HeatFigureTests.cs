using DetailGen.Drawing.Auditing;
using DetailGen.Drawing.Lettering;
using DetailGen.Drawing.Scenes;
using DetailGen.Library.Reports;
using DetailGen.Library.Verbs;
using DetailGen.Library.Wording;
using DetailGen.Library.Working;
using DetailGen.Testing;

namespace DetailGen.Library.Tests.Working;

/// <summary>The small table of what a detail loses and whether it stays dry.</summary>
public class HeatFigureTests
{
    private const string Title = "Heat and moisture";

    [Theory]
    [InlineData("parapet-01", "A2", "1:5", "false", 1)]
    [InlineData("parapet-05", "A1", "1:5", "true", 1)]
    [InlineData("abutment-01", "A3", "1:10", "false", 3)] // no white but among the notes of the view: with the tables
    [InlineData("parapet-02", "A4", "1:20", "true", 3)]
    public void It_stands_in_the_white_beside_the_view_and_moves_nothing(string detail, string paper, string scale, string mirror, int page)
    {
        string[] settings = ["sheet.paper=" + paper, "sheet.scale=" + scale, "mirror=" + mirror];
        var (with, without) = (InsetTests.Whole(detail, settings), InsetTests.Whole(detail, [.. settings, "sheet.heat-figures=none"]));
        Assert.Empty(LayoutAudit.Of(with.Scene, with.Format, with.Parts));
        Assert.DoesNotContain(without.Scene.Pages.SelectMany(one => one.Items).OfType<Text>(), text => text.Words == Title);
        var title = Assert.Single(with.Scene.Pages[page - 1].Items.OfType<Text>(), text => text.Words == Title);
        Assert.All(with.Scene.Pages.Zip(without.Scene.Pages), pair =>
        {
            Assert.Equal(pair.Second.Placements, pair.First.Placements);
            Assert.True(pair.First.Number == page ? pair.First.Items.Count > pair.Second.Items.Count : pair.First.Items.Count == pair.Second.Items.Count);
        });

        // No note of the view reaches round it.
        var placed = with.Scene.Pages[0].Placements[0];
        Assert.False(page == 1 && with.Scene.Views.Single(view => view.Id == placed.ViewId).Bounds.Shift(placed.Origin).Meets(Typeface.Shipped.Box(title)));
    }

    [Fact]
    public void Its_figures_are_those_of_the_report_and_what_was_not_calculated_is_told()
    {
        Assert.Equal(
            ["U-value, wall: 0.15 W/m²K", "U-value, roof: 0.14 W/m²K", "Ψ, temperature factor: not calculated", "Condensation: not calculated"],
            Told("parapet-01", [], Simulation.Never).Lines);

        var (lines, report) = Told("parapet-01", ["site.climate=saxmundham"], Simulation.Always);
        var junction = Assert.IsType<JunctionReport>(report.Physics);
        Assert.Equal($"Ψ, inside dimensions: {Figures.Fixed(junction.PsiInternal, 3)} W/mK", lines[2]);
        Assert.Equal($"Ψ, outside dimensions: {Figures.Fixed(junction.PsiExternal, 3)} W/mK", lines[3]);
        Assert.Equal($"Temperature factor: {Figures.Fixed(junction.MouldFactor.Value, 3)}, estimated", lines[4]);
        Assert.StartsWith("Condensation, wall: ", lines[5], StringComparison.Ordinal);
        Assert.StartsWith("Condensation, roof: ", lines[6], StringComparison.Ordinal);
        Assert.Equal("in the climate: saxmundham", lines[^1]);
        Assert.All(junction.Moisture!.Elements, element => Assert.Equal(
            element.Text.Contains("no condensation", StringComparison.Ordinal), lines.Contains($"Condensation, {element.Id}: none")));
    }

    [Theory]
    [InlineData(-0.0331, "−0.033")]
    [InlineData(0.0331, "0.033")]
    public void A_minus_on_a_sheet_is_that_of_its_levels(double figure, string words) => Assert.Equal(words, Figures.OnSheet(figure, 3));

    [Fact]
    public void A_climate_that_is_invented_is_told_as_such() =>
        Assert.EndsWith(", invented", Told("parapet-01", ["site.climate=tern-court-inland"], Simulation.Never).Lines[^1], StringComparison.Ordinal);

    private static (IReadOnlyList<string> Lines, DetailReport Report) Told(string detail, string[] set, Simulation when)
    {
        var office = Office.Of(null).Value;
        var (worked, report) = DetailWork.Do(PresetFiles.Read(Repository.Path("presets", "details", $"tern-court-{detail}.yaml"), set, office).Value, office, when);
        var (told, moisture) = MoistureChecking.WithFigures(report, worked!, office);
        return ([.. HeatFigureWords.Of(worked!, moisture).Select(line => $"{line.What}: {line.Figure}")], told);
    }
}
