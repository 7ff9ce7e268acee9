using CsCheck;
using DetailGen.Physics.Fields;
using DetailGen.Testing;

namespace DetailGen.Physics.Tests.Fields;

public class IsothermsTests
{
    private static readonly Gen<double> Size = Gen.Int[20_000, 400_000].Select(micrometres => micrometres / 1000.0);

    internal static readonly Gen<FieldLawTests.Blocks> Any = Gen.Select(Size.Array[2, 3], Size.Array[2, 3], Gen.Double[-1.7, 1.7].Array[9], Gen.Double[0.05, 0.3], Gen.Double[0.02, 0.1])
        .Select((widths, heights, decades, film, outer) => new FieldLawTests.Blocks(widths, heights, [.. decades.Select(decade => Math.Pow(10, decade))], film, outer));

    // Plane layers: the temperature falls from the warm side as the resistance that lies before a place.
    [Fact]
    public void In_a_plane_slab_an_isotherm_is_one_straight_line_where_its_resistance_lies()
    {
        var blocks = new FieldLawTests.Blocks([300, 200], [100, 150], [0.04, 0.04, 1.5, 1.5], 0.13, 0.04);
        var field = FieldLawTests.Solved(blocks.Case()).Isotherms!;
        var total = 0.13 + (0.1 / 0.04) + (0.15 / 1.5) + 0.04;
        foreach (var temperature in (double[])[2, 10, 18])
        {
            var line = Assert.Single(field.Of(temperature));
            var before = (20 - temperature) / 20 * total;
            var y = (before - 0.13) * 0.04 * 1000;
            Assert.All(line, place => Assert.Equal(y, place.Y, 1e-6));
            Assert.Equal([0.0, 500.0], new[] { line[0].X, line[^1].X }.Order());

            // the warm side, which is below, lies on the left
            Assert.True(line[0].X > line[^1].X);
        }
    }

    [Fact]
    public void Every_place_of_an_isotherm_has_its_temperature_and_lines_end_at_surfaces_only() => Gen.Select(Any, Gen.Double[1, 19]).Always(
        (blocks, temperature) =>
        {
            var lines = FieldLawTests.Solved(blocks.Case() with { WantedError = 1e-5 }).Isotherms!.Of(temperature);
            FieldPlace[] some = [.. lines.SelectMany(line => line.Where((_, i) => i % 7 == 0)).Take(40)];
            var asked = blocks.Case() with { WantedError = 1e-5, Points = [.. some.Select((place, i) => new FieldPoint($"p{i}", place))] };

            // chords of a parabola between places a quarter of a side apart, on a mesh of 0.001 %
            Assert.All(FieldLawTests.Solved(asked).Temperatures, found => Assert.Equal(temperature, found, 0.15));
            var (right, top) = (blocks.Widths.Sum(), blocks.Heights.Sum());
            Assert.All(lines.Where(line => line[0] != line[^1]).SelectMany(line => new[] { line[0], line[^1] }), end => Assert.True(
                Math.Abs(end.X) < 1e-6 || Math.Abs(end.X - right) < 1e-6 || Math.Abs(end.Y) < 1e-6 || Math.Abs(end.Y - top) < 1e-6, $"{end} is inside."));
        },
        cases: 20);

    [Fact]
    public void Beyond_the_coldest_and_the_warmest_place_there_is_no_line()
    {
        var field = FieldLawTests.Solved(new FieldLawTests.Blocks([200, 200], [100, 100], [0.04, 1, 1, 0.04], 0.13, 0.04).Case()).Isotherms!;
        var (least, most) = field.Range;
        Assert.True(least is > 0 and < 10 && most is > 10 and < 20);
        Assert.NotEmpty(field.Of((least + most) / 2));
        Assert.Empty(field.Of(least - 0.01));
        Assert.Empty(field.Of(most + 0.01));
    }
}
