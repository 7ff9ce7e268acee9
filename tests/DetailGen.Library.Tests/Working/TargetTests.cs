using DetailGen.Details.Solving;
using DetailGen.Library.Working;

namespace DetailGen.Library.Tests.Working;

/// <summary>Which sizes are tried for a target on the heat through the junction.</summary>
public class TargetTests
{
    [Theory]
    [InlineData(true, 0.5, 0.4, 0.35, 0.33, 0.32)] // thicker is better, and the thickest is not good enough
    [InlineData(true, 0.32, 0.32, 0.33, 0.35, 0.4)] // thicker is worse
    [InlineData(false, 0.5, 0.4, 0.33, 0.35, 0.4)] // between may lie what no end shows
    [InlineData(false, 0.5, 0.4, 0.35, 0.33, 0.29)]
    [InlineData(false, 0.5, 0.4, 0.35, 0.33)] // one of them cannot be built
    public void Sizes_between_are_left_out_only_where_the_figure_rises_or_falls_all_along_and_misses_at_both_ends(bool hopeless, params double[] figures) =>
        Assert.Equal(hopeless, Targets.IsHopeless([new("junction.psi", 0.3m, default)], [.. figures.Select(figure => new Simulated(0.9m, (decimal)figure))]));

    [Fact]
    public void Of_many_sizes_the_thickest_and_three_between_are_looked_at_first()
    {
        Assert.Equal([5, 10, 15, 20], Targets.Spread([.. Enumerable.Range(1, 20)]));
        Assert.Equal([2, 4, 6, 9], Targets.Spread([.. Enumerable.Range(1, 9)]));
        Assert.Empty(Targets.Spread([.. Enumerable.Range(1, 8)]));
    }
}
