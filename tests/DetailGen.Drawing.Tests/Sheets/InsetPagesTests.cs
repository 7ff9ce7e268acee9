using DetailGen.Drawing.Scenes;
using DetailGen.Drawing.Sheets;

namespace DetailGen.Drawing.Tests.Sheets;

/// <summary>Which further sheets an inset may stand on.</summary>
public class InsetPagesTests
{
    [Fact]
    public void A_companion_that_goes_on_without_a_view_takes_no_inset()
    {
        var scene = SampleSheets.Scene(SampleSheets.A4) with { Pages = [Page("section"), Page(), Page("inset-a"), Page("thermal"), Page()] };
        Assert.Equal([1, 2], Insets.WithTables(scene));
    }

    private static Page Page(params IEnumerable<string> views) => new(1, "A4", 210, 297, [.. views.Select(view => new Placement(view, default, default))], []);
}
