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
}
