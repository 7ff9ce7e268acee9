namespace DetailGen.Sections.Tests;

public class CoursingTests
{
    private static readonly Coursing Blocks = new(10, 225, 10);

    [Fact]
    public void Beds_lie_at_whole_courses_from_the_datum_and_reach_round_the_levels_asked_for() =>
        Assert.Equal([-215, 10, 235], Blocks.Beds(-100, 200));

    [Fact]
    public void A_level_on_a_bed_is_its_own_end() => Assert.Equal([10, 235], Blocks.Beds(10, 235));

    [Theory]
    [InlineData(100, new double[] { 10, 100, 235 })]
    [InlineData(35, new double[] { 35, 235 })] // 15 mm of a block would be left under it
    [InlineData(210, new double[] { 10, 210 })]
    public void A_bed_made_up_leaves_out_one_that_would_leave_less_of_a_unit_than_can_be_cut(double madeUp, double[] beds)
    {
        var coursing = Blocks with { MadeUp = [madeUp] };
        Assert.Equal(beds, coursing.Beds(10, 235));
        Assert.Equal(beds.Length == 2, coursing.LeavesOut(10) || coursing.LeavesOut(235));
    }
}
