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

    // A coping far from the room has the temperature outside but for what arithmetic leaves, and once got a line of 0 °C in its corner.
    [Theory]
    [InlineData(-1e-9, 19.2)]
    [InlineData(1e-9, 20 + 1e-9)]
    public void No_line_is_drawn_of_the_air_itself(double least, double most)
    {
        var lines = ThermalPicture.Temperatures(least, most);
        Assert.Equal((2, 18), (lines[0], lines[^1]));
    }

    [Theory]
    [InlineData(16, 1)]
    [InlineData(16.1, 2)]
    [InlineData(9.7, 1)]
    [InlineData(0.75, 0.05)]
    [InlineData(1500, 100)]
    public void Between_two_flux_lines_flows_a_round_amount_of_which_there_are_at_most_16(double whole, double each) => Assert.Equal(each, ThermalPicture.Each(whole), 1e-12);
}
