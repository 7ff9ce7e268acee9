using CsCheck;
using DetailGen.Drawing.Annotation.Dimensions;
using DetailGen.Sections;
using DetailGen.Testing;

namespace DetailGen.Drawing.Tests.Annotation;

public sealed class RoundingTests
{
    [Fact]
    public void Shown_parts_add_up_to_the_shown_whole_and_stay_within_half_a_millimetre() =>
        Gen.Int[5_000, 400_000].Array[2, 9].Always(spans =>
        {
            var figures = Rounding.Of(Chain([.. spans.Select(span => span / 1000.0)]));
            var whole = figures.Single(figure => figure.Measure.Id == "whole");
            Assert.Equal(whole.Shown, figures.Where(figure => figure != whole).Sum(figure => figure.Shown), 6);
            Assert.All(figures, figure => Assert.InRange(figure.Shown - figure.Model, -0.5 - 1e-9, 0.5 + 1e-9));
        });

    [Fact]
    public void Exact_halves_are_kept()
    {
        var figures = Rounding.Of(Chain(102.5, 150, 100, 15, 40, 12.5));
        Assert.Equal(["102.5", "150", "100", "15", "40", "12.5", "420"], figures.Select(figure => figure.Text));
    }

    [Fact]
    public void Sheets_under_five_millimetres_are_left_out_and_the_whole_runs_over_the_boards_alone()
    {
        var figures = Rounding.Of(Chain(12.5, 220, 18, 0.5, 80, 80, 1.5));
        Assert.Equal(6, figures.Count);
        Assert.Equal("410.5", figures[^1].Text);
        Assert.Equal(410.5, figures[^1].Model, 6);
    }

    [Fact]
    public void The_largest_remainder_is_rounded_up() =>
        Assert.Equal(["53", "52", "105"], Rounding.Of(Chain(52.7, 52.3)).Select(figure => figure.Text));

    // 599.5 beside a level of +0.600 is a mistake that a reviewer marks.
    [Fact]
    public void A_whole_that_is_exact_is_shown_exactly_and_its_parts_add_up_to_it() =>
        Assert.Equal(["150", "13", "317.5", "119.5", "600"], Rounding.Of(Chain(150, 13.182, 317.5, 119.318)).Select(figure => figure.Text));

    [Fact]
    public void Words_after_a_figure_are_kept() =>
        Assert.Equal("150 min.", Rounding.Of([new("upstand", new(0, 0), new(0, 150), Axis.Vertical, Chains.Heights, 0, "min.")])[0].Text);

    private static IReadOnlyList<Measure> Chain(params double[] spans)
    {
        var measures = new List<Measure>();
        var at = 0.0;
        foreach (var span in spans)
        {
            measures.Add(new($"part {measures.Count}", new(at, 0), new(at + span, 0), Axis.Horizontal, Chains.WallFoot));
            at += span;
        }

        return [.. measures, new("whole", new(0, 0), new(at, 0), Axis.Horizontal, Chains.WallFoot, 1)];
    }
}
