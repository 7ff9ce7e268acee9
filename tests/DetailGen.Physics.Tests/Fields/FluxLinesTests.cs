using DetailGen.Testing;

namespace DetailGen.Physics.Tests.Fields;

public class FluxLinesTests
{
    // Two slabs side by side, each homogeneous across: heat runs straight through, and as much through a width as its conductance says.
    [Fact]
    public void In_a_plane_slab_the_lines_run_straight_across_and_part_the_width_evenly()
    {
        var blocks = new FieldLawTests.Blocks([300, 200], [100, 150], [0.04, 0.04, 1.5, 1.5], 0.13, 0.04);
        var lines = FieldLawTests.Solved(blocks.Case()).FluxLines!;
        var density = 20 / (0.13 + (0.1 / 0.04) + (0.15 / 1.5) + 0.04);
        Assert.Equal(density * 0.5, lines.Whole, 1e-6);
        var each = density * 0.05;
        var found = lines.Every(each);
        Assert.Equal(10, found.Count);
        double[] places = [.. found.Select(line => line[0].X).Order()];
        Assert.All(found, line => Assert.All(line, place => Assert.Equal(line[0].X, place.X, 1e-6)));
        Assert.All(places.Select((x, i) => (x, i)), one => Assert.Equal(25 + (50 * one.i), one.x, 1e-6));
    }

    [Fact]
    public void Between_two_lines_the_same_heat_crosses_the_warm_and_the_cold_surface() => IsothermsTests.Any.Always(
        blocks =>
        {
            var answer = FieldLawTests.Solved(blocks.Case() with { WantedError = 1e-4 });
            var flows = answer.Flows.ToDictionary(flow => flow.Environment, flow => Math.Abs(flow.Flow));
            var whole = answer.FluxLines!.Whole;
            Assert.All(flows.Values, flow => Assert.Equal(flow, whole, 2e-3 * whole));

            // What no heat passes lies at the sides: all lines lead from below to above, and none closes.
            var height = blocks.Heights.Sum();
            var lines = answer.FluxLines.Every(whole / 8);
            Assert.Equal(8, lines.Count);
            Assert.All(lines, line =>
            {
                Assert.Equal(0, Math.Min(line[0].Y, line[^1].Y), 1e-6);
                Assert.Equal(height, Math.Max(line[0].Y, line[^1].Y), 1e-6);
            });
        },
        cases: 20);

    [Fact]
    public void Lines_of_no_flow_are_refused() => Assert.Throws<ArgumentOutOfRangeException>(
        () => FieldLawTests.Solved(new FieldLawTests.Blocks([200, 200], [100, 100], [0.04, 1, 1, 0.04], 0.13, 0.04).Case()).FluxLines!.Every(0));
}
