using DetailGen.Drawing.Scenes;

namespace DetailGen.Library.Tests.Working;

public class SequenceRowsTests
{
    [Theory]
    [InlineData("parapet-01", "A2")]
    [InlineData("parapet-02", "A2")]
    [InlineData("parapet-04", "A2")]
    [InlineData("parapet-05", "A2")]
    [InlineData("abutment-01", "A2")]
    [InlineData("abutment-02", "A2")]
    [InlineData("parapet-04", "A1")]
    [InlineData("abutment-01", "A1")]
    public void The_last_row_of_a_build_sequence_is_at_least_half_full(string detail, string paper)
    {
        var page = InsetTests.Whole(detail, ["sheet.companions=[sequence]", "sheet.paper=" + paper]).Scene.Pages.Single(page => Stages(page).Any());
        var rows = Stages(page).GroupBy(stage => Math.Round(stage.Window.Bottom, 3)).OrderByDescending(row => row.Key).Select(row => row.Count()).ToArray();
        Assert.True(2 * rows[^1] >= rows[0], string.Join(", ", rows));
    }

    private static IEnumerable<Placement> Stages(Page page) => page.Placements.Where(placement => placement.ViewId.StartsWith("stage-", StringComparison.Ordinal));
}
