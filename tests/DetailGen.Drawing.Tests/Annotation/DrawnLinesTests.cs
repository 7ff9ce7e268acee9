using DetailGen.Drawing.Annotation;

namespace DetailGen.Drawing.Tests.Annotation;

public sealed class DrawnLinesTests
{
    private static readonly DrawnLines Edge = new([(new(0, 0), new(40, 0))]);

    [Theory]
    [InlineData(0.0)]
    [InlineData(0.6)]
    [InlineData(-0.6)]
    public void A_run_on_an_edge_or_close_beside_it_keeps_along_it(double off) => Assert.True(Edge.RunAlong(new(10, off), new(-30, off)));

    [Fact]
    public void A_run_clear_of_an_edge_does_not() => Assert.False(Edge.RunAlong(new(10, 0.8), new(-30, 0.8)));

    [Fact]
    public void A_run_over_an_edge_at_an_angle_does_not() => Assert.False(Edge.RunAlong(new(10, -10), new(10 + 20 * Math.Sqrt(3), 10)));

    [Fact]
    public void A_run_that_passes_an_edges_end_by_less_than_two_millimetres_does_not() => Assert.False(Edge.RunAlong(new(1.9, 0), new(-30, 0)));

    [Fact]
    public void No_run_keeps_along_a_short_stroke() => Assert.False(new DrawnLines([(new(0, 0), new(1.9, 0))]).RunAlong(new(10, 0), new(-10, 0)));

    [Fact]
    public void A_way_reaches_as_far_as_it_may_keep_along_an_edge()
    {
        Assert.Equal(12, Edge.Reach(new(-10, 0), new(1, 0)), 6);
        Assert.Equal(12, Edge.Reach(new(50, 0), new(-1, 0)), 6);
        Assert.True(Edge.Reach(new(-10, 0), new(-1, 0)) > 1000);
    }
}
