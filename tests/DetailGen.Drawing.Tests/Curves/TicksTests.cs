using CsCheck;
using DetailGen.Drawing.Curves;
using DetailGen.Testing;

namespace DetailGen.Drawing.Tests.Curves;

public class TicksTests
{
    [Fact]
    public void Ticks_hold_every_value_between_them_and_are_few() => Gen.Select(Gen.Double[-2, 2], Gen.Double[-4, 3], Gen.Int[3, 9]).Always((least, decade, wanted) =>
    {
        var most = least + Math.Pow(10, decade);
        var ticks = Ticks.Over(least, most, wanted);
        Assert.True(ticks.Least <= least + 1e-9 && ticks.Most >= most - 1e-9, $"{ticks.Least} to {ticks.Most}");
        Assert.InRange(ticks.Values.Count, 2, wanted + 3);
        Assert.Equal(ticks.Values.Count, ticks.Values.Select(ticks.Written).Distinct().Count());
    });

    [Fact]
    public void A_figure_that_never_changes_has_an_axis_all_the_same()
    {
        var ticks = Ticks.Over(0.95, 0.95, 5);
        Assert.True(ticks.Least <= 0.95 && ticks.Most >= 0.95 && ticks.Least < ticks.Most);
    }

    [Fact]
    public void Nothing_is_written_as_minus_nothing() => Assert.Equal("0.0", Ticks.Over(-0.2, 0.3, 5).Written(-0.00001));
}
