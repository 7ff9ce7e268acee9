using System.Collections.Immutable;
using DetailGen.Physics.Fields;

namespace DetailGen.Physics.Tests.Fields;

public class FieldEngineTests
{
    private static readonly FieldEnvironment Inside = new("inside", 20, FieldSide.Internal), Outside = new("outside", 0, FieldSide.External);

    private static FieldPlace Turned(double x, double y, double angle, double scale) =>
        new(scale * ((x * Math.Cos(angle)) - (y * Math.Sin(angle))), scale * ((x * Math.Sin(angle)) + (y * Math.Cos(angle))));

    /// <summary>An L of equal legs 1500 mm long and 300 mm thick.</summary>
    private static FieldCase Corner(double film, double outerFilm, double angle = 0, double scale = 1, double conductivity = 0.5, double wanted = 0.001)
    {
        FieldPlace P(double x, double y) => Turned(x, y, angle, scale);
        return new("corner",
            [new("wall", conductivity, [P(-300, -1500), P(0, -1500), P(0, 0), P(1500, 0), P(1500, 300), P(-300, 300)], [])],
            [
                new(Inside, film, [P(0, -1500), P(0, 0), P(1500, 0)]),
                new(Outside, outerFilm, [P(-300, -1500), P(-300, 300), P(1500, 300)]),
                new(null, 0, [P(-300, -1500), P(0, -1500)]),
                new(null, 0, [P(1500, 0), P(1500, 300)]),
            ], [], [], null, wanted);
    }

    private static FieldAnswer Solved(FieldCase asked) => Assert.IsType<FieldOutcome.Solved>(FieldEngine.Solve(asked)).Answer;

    /// <summary>Square corner by conformal map: L = λ(l₁/d + l₂/d + 1 − 2 ln 2/π); the legs' ends change it by less than 1e-9.</summary>
    [Theory]
    [InlineData(0.1)]
    [InlineData(0.01)]
    [InlineData(0.001)]
    public void The_bounds_hold_the_analytic_value_of_a_square_corner(double wanted)
    {
        var exact = 0.5 * (10 + 1 - (2 * Math.Log(2) / Math.PI));
        var answer = Solved(Corner(0, 0, wanted: wanted));
        Assert.InRange(exact, answer.Bounds!.Value.Lower, answer.Bounds.Value.Upper);
        Assert.True(answer.ErrorEstimate <= wanted * answer.Coupling);
    }

    [Theory]
    [InlineData(0, 0)]
    [InlineData(0.13, 0.04)]
    public void The_gap_is_the_sum_of_what_the_triangles_hold_and_the_flows_balance(double film, double outer)
    {
        var asked = Corner(film, outer);
        var field = new MeshField(Arrangement.Build(asked).Mesh!, Conditions.Of(asked, 0, 20, null));
        Assert.InRange(field.Gaps.Sum() / (field.Upper - field.Lower), 1 - 1e-6, 1 + 1e-6);
        Assert.InRange(Solved(asked).HeatBalance!.Value, -1e-9, 1e-9);
    }

    [Fact]
    public void Turning_keeps_the_coupling_and_scaling_lengths_and_conductivities_scales_it()
    {
        var plain = Solved(Corner(0.13, 0.04)).Bounds!.Value;
        var turned = Solved(Corner(0.13, 0.04, angle: 0.7)).Bounds!.Value;
        var scaled = Solved(Corner(0.13, 0.04, scale: 2, conductivity: 1)).Bounds!.Value;
        Assert.True(turned.Lower <= plain.Upper && plain.Lower <= turned.Upper);
        Assert.Equal(2 * plain.Upper, scaled.Upper, 1e-9);
        Assert.Equal(2 * plain.Lower, scaled.Lower, 1e-9);
    }

    /// <summary>A region that falls together to a line, alone or beside others, is told as what it is, at any angle; one of a hundredth of a millimetre has an area.</summary>
    [Theory]
    [InlineData(new double[] { 0, 0, 50, 0, 120, 0 }, true)] // three corners on a line
    [InlineData(new double[] { 0, 0, 50, 0, 50, 30, 50, 0 }, true)] // there and back
    [InlineData(new double[] { 0, 0, 120, 0, 60, 0.0004 }, true)] // the third corner counts as on the edge
    [InlineData(new double[] { 0, 0, 120, 0, 120, 0.02, 0, 0.02 }, false)]
    public void A_region_without_area_is_named(double[] corners, bool flat)
    {
        foreach (var angle in (double[])[0, 0.7, 2.1])
        {
            FieldPlace P(double x, double y) => Turned(x, y, angle, 1);
            ImmutableArray<FieldPlace> outline = [.. corners.Chunk(2).Select(at => P(at[0], at[1]))];
            var good = Corner(0.13, 0.04, angle);
            var asked = good with { Regions = [.. good.Regions, new("sheet", 1, [.. outline.Select(at => new FieldPlace(at.X + 9000, at.Y))], [])] };
            var faults = Assert.IsType<FieldOutcome.Refused>(FieldEngine.Solve(asked)).Faults;
            Assert.Equal(flat, faults.Contains(Messages.NoArea("regions.1", hole: false, asked.Regions[1].Outline[0])));
            Assert.Equal(!flat, faults.Any(fault => fault.Path == "boundary"));
            var pierced = good with { Regions = [good.Regions[0] with { Holes = [[.. corners.Chunk(2).Select(at => P(-200 + at[0], -500 + at[1]))]] }] };
            Assert.Equal(flat, Assert.IsType<FieldOutcome.Refused>(FieldEngine.Solve(pierced)).Faults.Any(fault => fault.Reason.StartsWith("A hole of regions.0, ", StringComparison.Ordinal)));
        }
    }

    // A corner of an outline that lies on a neighbour's edge, or a line that ends on one, is moved by the grid of geometry as soon as the drawing is turned.
    [Fact]
    public void An_edge_that_a_neighbour_or_a_line_ends_on_holds_at_any_angle()
    {
        for (var step = 0; step < 200; step++)
        {
            var angle = step * 0.0314159;
            FieldPlace P(double x, double y) => Turned(x + 4000, y + 2000, angle, 1);
            var asked = new FieldCase("seam",
                [
                    new("wall", 0.5, [P(0, 0), P(268.3, 0), P(268.3, 500), P(0, 500)], []),
                    new("board", 0.04, [P(268.3, 1.5), P(331.7, 1.5), P(331.7, 398.9), P(268.3, 398.9)], []),
                ],
                [
                    new(Inside, 0.13, [P(0, 3.3), P(0, 496.7)]), new(null, 0, [P(0, 3.3), P(0, 0), P(268.3, 0), P(268.3, 1.5)]), new(null, 0, [P(0, 496.7), P(0, 500), P(268.3, 500)]),
                    new(Outside, 0.04, [P(268.3, 1.5), P(331.7, 1.5), P(331.7, 398.9), P(268.3, 398.9), P(268.3, 500)]),
                ], [], [], null, 0.1);
            Assert.Empty(Arrangement.Build(asked).Faults);
        }
    }

    // A thin board that is warmed on most of one face only: its end is coldest, which a coarse mesh does not show. The factor along the face is that of a fin.
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void The_coldest_place_is_found_where_a_coarse_mesh_does_not_show_it(bool mirrored)
    {
        FieldPlace P(double x, double y) => new(mirrored ? -x : x, y);
        FieldCase Board(double wanted) => new("board", [new("board", 0.0565, [P(0, 0), P(4.669, 0), P(4.669, 547.112), P(0, 547.112)], [])],
            [
                new(Inside, 0.13, [P(4.669, 0), P(0, 0), P(0, 497.851)]), new(null, 0, [P(0, 497.851), P(0, 547.112)]),
                new(Outside, 0.04, [P(4.669, 0), P(4.669, 547.112), P(0, 547.112)]),
            ], [], [], null, wanted);
        var (usual, fine) = (Solved(Board(0.001)).Factor!, Solved(Board(1e-6)).Factor!);
        Assert.Equal(P(0, 497.851), usual.At);
        Assert.Equal(fine.Value, usual.Value, 0.001);
    }

    // The factor does not know which side is the warm one: u and 1 - u have one factor.
    [Fact]
    public void Where_it_is_warmer_outside_the_least_factor_is_at_the_warmest_place_inside()
    {
        var heated = Corner(0.13, 0.04) with { HumidityFilm = 0.25 };
        var cooled = heated with
        {
            Boundary = [.. heated.Boundary.Select(line => line.Environment is { } air ? line with { Environment = air with { Temperature = 30 - air.Temperature } } : line)],
        };
        var (winter, summer) = (Solved(heated), Solved(cooled));
        Assert.Equal(winter.Factor!.Value, summer.Factor!.Value, 1e-12);
        Assert.Equal(winter.HumidityFactor!.Value, summer.HumidityFactor!.Value, 1e-12);
        Assert.Equal(winter.Factor.Change!.Value, summer.Factor.Change!.Value, 1e-12);
        Assert.Equal(winter.Factor.At, summer.Factor.At);
        Assert.Equal(winter.HeatFlow, summer.HeatFlow);
        Assert.Equal([("inside", -winter.Flows[0].Flow), ("outside", -winter.Flows[1].Flow)], summer.Flows);
        Assert.Equal(30 - winter.Surfaces!.Profiles[0].Places.Min(place => place.Temperature), summer.Surfaces!.Profiles[0].Places.Max(place => place.Temperature), 1e-9);
    }

    [Theory]
    [InlineData(1e-300)]
    [InlineData(1e-11)]
    [InlineData(1e-9)]
    public void A_film_of_next_to_nothing_holds_the_surface_and_the_flows_balance(double film)
    {
        FieldPlace P(double x, double y) => new(x, y);
        var answer = Solved(new("slab", [new("slab", 1, [P(0, 0), P(1000, 0), P(1000, 200), P(0, 200)], [])],
            [new(Inside, film, [P(0, 0), P(1000, 0)]), new(Outside, 0.04, [P(0, 200), P(1000, 200)]), new(null, 0, [P(0, 0), P(0, 200)]), new(null, 0, [P(1000, 0), P(1000, 200)])],
            [], [], null, 0.001));
        Assert.InRange(1 / 0.24, answer.Bounds!.Value.Lower, answer.Bounds.Value.Upper * (1 + (film / 0.24)));
        Assert.InRange(answer.HeatBalance!.Value, -1e-9, 1e-9);
    }

    [Theory]
    [InlineData(0.3)]
    [InlineData(1.1)]
    [InlineData(5.7)]
    public void The_bounds_hold_the_value_of_a_sheet_of_half_a_millimetre_at_any_angle(double angle)
    {
        FieldPlace P(double x, double y) => Turned(x, y, angle, 1);
        var answer = Solved(new("sheet", [new("sheet", 1e-4, [P(0, 0), P(1000, 0), P(1000, 0.512), P(0, 0.512)], [])],
            [new(Inside, 0.13, [P(0, 0), P(1000, 0)]), new(Outside, 0.04, [P(0, 0.512), P(1000, 0.512)]), new(null, 0, [P(0, 0), P(0, 0.512)]), new(null, 0, [P(1000, 0), P(1000, 0.512)])],
            [], [], null, 0.001));
        Assert.InRange(1 / (0.13 + 5.12 + 0.04), answer.Bounds!.Value.Lower, answer.Bounds.Value.Upper);
    }
}
