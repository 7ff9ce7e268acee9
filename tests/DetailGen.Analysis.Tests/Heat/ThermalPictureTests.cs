using DetailGen.Analysis.Heat;

namespace DetailGen.Analysis.Tests.Heat;

public class ThermalPictureTests
{
    [Theory]
    [InlineData(0.4, 19.6, 9)] // every 2 K
    [InlineData(0.2, 27.8, 13)]
    [InlineData(3.2, 14.8, 11)] // every 1 K
    [InlineData(-19.6, 21.5, 8)] // every 5 K
    [InlineData(18.1, 21.9, 3)] // no whole step gives more
    public void Isotherms_are_whole_degrees_at_a_step_that_gives_8_to_14_lines_where_any_does(double least, double most, int count)
    {
        var lines = ThermalPicture.Temperatures(least, most);
        Assert.All(lines, line => Assert.True(line > least && line < most && line == Math.Round(line)));
        Assert.Equal(lines.Order(), lines);
        Assert.Single(lines.Zip(lines.Skip(1), (a, b) => b - a).Distinct());
        Assert.Equal(count, lines.Count);
    }
}
