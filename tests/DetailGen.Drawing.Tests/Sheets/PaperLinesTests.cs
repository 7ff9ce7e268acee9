using CsCheck;
using DetailGen.Drawing.Scenes;
using DetailGen.Drawing.Sheets.Companions;
using DetailGen.Testing;

namespace DetailGen.Drawing.Tests.Sheets;

public class PaperLinesTests
{
    private static readonly PaperBox Box = new(-1, -1, 1, 1);

    // whole numbers too, so that corners lie on the edges of the box
    private static readonly Gen<PaperPoint> Place = Gen.Select(Gen.Int[-30, 30], Gen.Int[-30, 30]).Select((x, y) => new PaperPoint(x / 10.0, y / 10.0));

    [Fact]
    public void What_lies_inside_a_box_and_what_lies_outside_make_up_the_line() => Place.List[2, 12].Always(line =>
    {
        var (inside, outside) = (PaperLines.Inside(line, Box), PaperLines.Outside(line, Box));
        Assert.All(inside.SelectMany(Middles), place => Assert.True(Math.Abs(place.X) <= 1 + 1e-9 && Math.Abs(place.Y) <= 1 + 1e-9));
        Assert.All(outside.SelectMany(Middles), place => Assert.False(Math.Abs(place.X) < 1 - 1e-9 && Math.Abs(place.Y) < 1 - 1e-9));
        Assert.Equal(Length(line), inside.Sum(Length) + outside.Sum(Length), 1e-9);
    });

    [Fact]
    public void A_closed_line_with_one_gap_is_one_line()
    {
        PaperPoint[] around = [new(3, 3), new(-3, 3), new(-3, 0), new(3, 0), new(3, 3)];
        var left = Assert.Single(PaperLines.Outside(around, Box));
        Assert.Equal(new PaperPoint(1, 0), left[0]);
        Assert.Equal(new PaperPoint(-1, 0), left[^1]);
    }

    [Fact]
    public void A_thinned_line_keeps_its_ends_and_its_distance() => Gen.Select(Place.List[2, 30], Gen.Double[0.01, 1]).Always((line, within) =>
    {
        var thin = PaperLines.Thinned(line, within);
        Assert.Equal((line[0], line[^1]), (thin[0], thin[^1]));
        Assert.All(line, place => Assert.True(thin.Zip(thin.Skip(1), (a, b) => PaperLines.Distance(place, a, b)).Min() <= within + 1e-9));
    });

    private static IEnumerable<PaperPoint> Middles(IReadOnlyList<PaperPoint> line) => line.Zip(line.Skip(1), (a, b) => 0.5 * (a + b));

    private static double Length(IReadOnlyList<PaperPoint> line) => line.Zip(line.Skip(1), (a, b) => (b - a).Length).Sum();
}
