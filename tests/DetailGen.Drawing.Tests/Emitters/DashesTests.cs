using CsCheck;
using DetailGen.Drawing.Emitters.Plain;
using DetailGen.Drawing.Scenes;
using DetailGen.Testing;

namespace DetailGen.Drawing.Tests.Emitters;

public class DashesTests
{
    private static readonly LayerRow Vapour = new("sheet.VC.roof", "A-EF3010E5N-----2-VC", 0.35, "dashed", Ink.Black);

    [Fact]
    public void A_dashed_line_begins_and_ends_on_a_whole_dash() => Gen.Double[5, 300].Always(length =>
    {
        PaperPoint[] line = [new(0, 0), new(length, 0)];
        var dashes = Dashes.Split(line, closed: false, Dashes.Fit(Dashes.Pattern(Vapour), length, closed: false) is { Length: > 0 } fitted ? fitted : [length, 1]).ToArray();
        Assert.Equal(0, dashes[0][0].X);
        Assert.Equal(length, dashes[^1][^1].X, 6);
        Assert.Equal(Dashes.Length(dashes[0], closed: false), Dashes.Length(dashes[^1], closed: false), 6);
    });

    [Fact]
    public void The_pattern_is_stretched_by_less_than_half_a_period() => Gen.Double[20, 300].Always(length =>
    {
        var fitted = Dashes.Fit(Dashes.Pattern(Vapour), length, closed: false);
        Assert.InRange(fitted[0] / (12 * 0.35), 1 - 15 * 0.35 / length, 1 + 15 * 0.35 / length);
    });

    [Fact]
    public void A_dash_goes_round_a_corner()
    {
        var dashes = Dashes.Split([new(0, 0), new(3, 0), new(3, 3)], closed: false, [4, 1]).ToArray();
        Assert.Equal([[new(0, 0), new(3, 0), new(3, 1)], [new(3, 2), new(3, 3)]], dashes);
    }

    [Fact]
    public void A_line_shorter_than_two_dashes_is_drawn_through() => Assert.Empty(Dashes.Fit(Dashes.Pattern(Vapour), 5, closed: false));

    [Fact]
    public void An_unknown_line_type_is_told_with_its_layer() =>
        Assert.Contains(Vapour.Name, Assert.Throws<ArgumentException>(() => Dashes.Pattern(Vapour with { LineType = "wavy" })).Message, StringComparison.Ordinal);
}
