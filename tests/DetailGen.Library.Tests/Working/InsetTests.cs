using DetailGen.Drawing.Auditing;
using DetailGen.Drawing.Scenes;
using DetailGen.Drawing.Sheets;
using DetailGen.Library.Wording;
using DetailGen.Library.Working;
using DetailGen.Testing;

namespace DetailGen.Library.Tests.Working;

/// <summary>Sheets of shipped details with insets, and on papers that those do not use.</summary>
public class InsetTests
{
    /// <summary>A stroke of a fill may end this far outside of a round clip, mm; half of it lies under the line of the ring.</summary>
    private const double Rounding = 0.25;

    private static readonly string[] OnA2 = ["sheet.paper=A2", "sheet.scale=1:10", "sheet.inset=auto"];

    [Theory]
    [InlineData("false", "A2")]
    [InlineData("true", "A1")]
    public void What_is_too_fine_is_ringed_on_the_view_and_drawn_again_at_1_to_2(string mirror, string paper)
    {
        var sheet = Composed("parapet-01", ["sheet.scale=1:10", "sheet.inset=auto", "mirror=" + mirror, "sheet.paper=" + paper]);
        var inset = sheet.Scene.Views.Single(view => view.Id == "inset-a");
        Assert.Equal(2, inset.Scale);
        var mark = Assert.Single(sheet.Scene.Views[0].Items.OfType<Group>(), group => group.Name == "inset A");
        var ring = Assert.Single(mark.Items.OfType<Ring>());
        Assert.Equal("A", Assert.Single(mark.Items.OfType<Text>()).Words);
        Assert.Equal("dashed", sheet.Scene.Layers.Single(layer => layer.Row == ring.Row).LineType);

        // The ring on the view and the one round the inset go round the same place of the building.
        var middle = new PaperPoint((inset.Bounds.Left + inset.Bounds.Right) / 2, (inset.Bounds.Bottom + inset.Bounds.Top) / 2);
        Assert.Equal(sheet.Scale * ring.Centre.X, 2 * middle.X, 6);
        Assert.Equal(sheet.Scale * ring.Centre.Y, 2 * middle.Y, 6);
        Assert.Equal(sheet.Scale * ring.Diameter, 2 * inset.Bounds.Width, 6);
        Assert.Empty(LayoutAudit.Of(sheet.Scene, sheet.Format, sheet.Parts));
    }

    [Fact]
    public void Nothing_in_an_inset_reaches_out_of_its_ring()
    {
        var inset = Composed("parapet-01", OnA2).Scene.Views.Single(view => view.Id == "inset-a");
        var (middle, radius) = (new PaperPoint((inset.Bounds.Left + inset.Bounds.Right) / 2, (inset.Bounds.Bottom + inset.Bounds.Top) / 2), inset.Bounds.Width / 2);
        var points = inset.Items.SelectMany(item => item switch
        {
            Stroke stroke => stroke.Points,
            Solid solid => solid.Outline,
            Hatch hatch => hatch.Outline,
            Grains grains => grains.Centres,
            Dot dot => [dot.Centre],
            _ => [],
        }).ToList();
        Assert.True(points.Count > 100);
        Assert.All(points, point => Assert.InRange((point - middle).Length, 0, radius + Rounding));
    }

    [Fact]
    public void A_board_keeps_its_fill_straight_up_to_the_ring_of_an_inset()
    {
        const double Tick = 6; // the slanting ticks between its lines are shorter, mm
        var inset = Composed("parapet-01", OnA2).Scene.Views.Single(view => view.Id == "inset-a");
        var lines = inset.Items.OfType<Stroke>().Where(stroke => stroke.PartId == "upstand.backing" && stroke.Row.StartsWith("fill.", StringComparison.Ordinal))
            .Where(stroke => stroke.Points.Max(point => point.Y) - stroke.Points.Min(point => point.Y) > Tick).ToList();
        Assert.NotEmpty(lines);
        Assert.All(lines, line => Assert.InRange(line.Points.Max(point => point.X) - line.Points.Min(point => point.X), 0, 0.05));
    }

    [Fact]
    public void A_sheet_that_asks_for_none_has_none() => Assert.Single(Composed("parapet-01", ["sheet.paper=A2", "sheet.scale=1:10"]).Scene.Views);

    [Fact]
    public void The_same_preset_gives_the_same_insets() => Assert.Equal(Composed("parapet-01", OnA2).Scene.Pages[0].Placements, Composed("parapet-01", OnA2).Scene.Pages[0].Placements);

    // ASME Y14.1, from memory: 8.5 × 11, 11 × 17, 17 × 22 and 22 × 34 inches
    [Theory]
    [InlineData("ANSI-A", 8.5, 11, "1:20")]
    [InlineData("ANSI-B", 17, 11, "1:20")]
    [InlineData("ANSI-C", 22, 17, "1:10")]
    [InlineData("ANSI-D", 34, 22, "1:5")]
    public void A_detail_is_drawn_on_papers_of_the_other_series(string paper, double across, double up, string scale)
    {
        var sheet = Composed("abutment-01", ["sheet.paper=" + paper, "sheet.scale=" + scale]);
        var page = sheet.Scene.Pages[0];
        Assert.Equal((paper, Math.Round(across * 25.4, 1), Math.Round(up * 25.4, 1)), (sheet.Paper, page.Width, page.Height));
        Assert.DoesNotContain(LayoutAudit.Of(sheet.Scene, sheet.Format, sheet.Parts), fault => fault.Kind != AuditKinds.Crowded);
    }

    private static ComposedSheet Composed(string name, string[] set)
    {
        var office = Office.Of(null).Value;
        var worked = DetailWork.Do(PresetFiles.Read(Repository.Path("presets", "details", $"tern-court-{name}.yaml"), set, office).Value, office).Worked!;
        return SheetComposer.Compose(
            worked.Section, SheetWords.Of(worked.Solved, worked.Buildups, worked.Checks), SheetSetup.Asked(worked.Preset, viewOnly: false),
            SheetSetup.Formats(office.Sheets, reducedPrint: false), SheetSetup.Layers(office.Sheets), new("", "", "", "", "", null, ""));
    }
}
