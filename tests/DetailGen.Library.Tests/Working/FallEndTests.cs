namespace DetailGen.Library.Tests.Working;

/// <summary>A roof whose fall ends within the drawing.</summary>
public class FallEndTests
{
    [Theory]
    [InlineData("parapet-01", "500mm", "false", true)]
    [InlineData("parapet-03", "500mm", "false", true)]
    [InlineData("abutment-02", "500mm", "true", true)]
    [InlineData("parapet-01", "3000mm", "false", false)]
    [InlineData("abutment-01", "3000mm", "true", false)]
    public void Where_a_roof_is_drawn_level_beyond_its_fall_the_drawing_says_so(string detail, string run, string mirror, bool told)
    {
        var sheet = InsetTests.Whole(detail, ["roof.fall-run=" + run, "sheet.paper=A2", "sheet.scale=1:10", "mirror=" + mirror]);
        Assert.Equal(told, sheet.Warnings.Any(warning => warning.StartsWith("Sheet: The fall of the roof ends", StringComparison.Ordinal)));
    }
}
