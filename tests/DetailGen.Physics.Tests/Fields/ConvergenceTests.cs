using DetailGen.Physics.Fields;

namespace DetailGen.Physics.Tests.Fields;

/// <summary>How fast the bounds close in when the sides of all triangles are halved.</summary>
public class ConvergenceTests
{
    private static readonly FieldEnvironment Inside = new("inside", 20, FieldSide.Internal), Outside = new("outside", 0, FieldSide.External);

    // Where the sides of an equilateral triangle meet, the field is smooth to the third power of the distance, so both energies of quadratic elements err
    // as h⁴. (Films of two temperatures that meet square would leave r² ln r, and the fourth power is then reached slowly.)
    [Fact]
    public void On_a_smooth_field_both_bounds_close_with_the_fourth_power()
    {
        FieldPlace a = new(0, 0), b = new(1000, 0), c = new(500, Math.Round(1000 * Math.Sqrt(0.75), 5)); // rounded, so that one side is the longest and all halvings cut alike
        var triangle = new FieldCase(
            "triangle", [new("wall", 1, [a, b, c], [])], [new(Inside, 1, [a, b]), new(Outside, 0.5, [b, c]), new(null, 0, [c, a])], [], [], null, 0.001);
        var bounds = Halved(triangle, 6, 4);
        Assert.InRange(Order(bounds.Select(one => one.Upper)), 3.9, 4.1);
        Assert.InRange(Order(bounds.Select(one => one.Lower)), 3.9, 4.1);
    }

    // At a reentrant square corner the field goes as r^(2/3), so both energies err as h^(4/3).
    [Fact]
    public void At_a_reentrant_corner_both_bounds_close_with_twice_its_exponent()
    {
        FieldPlace P(double x, double y) => new(x, y);
        const double leg = 1200, thick = 300;
        var corner = new FieldCase(
            "corner", [new("wall", 1, [P(-thick, -leg), P(0, -leg), P(0, 0), P(leg, 0), P(leg, thick), P(-thick, thick)], [])],
            [
                new(Inside, 0, [P(0, -leg), P(0, 0), P(leg, 0)]), new(Outside, 0, [P(-thick, -leg), P(-thick, thick), P(leg, thick)]),
                new(null, 0, [P(-thick, -leg), P(0, -leg)]), new(null, 0, [P(leg, 0), P(leg, thick)]),
            ], [], [], null, 0.001);
        // Square corner by conformal map; the legs' ends change it by less than 1e-6.
        var exact = (2 * leg / thick) + 1 - (2 * Math.Log(2) / Math.PI);
        var bounds = Halved(corner, 5, 3);
        Assert.InRange(Math.Log2((bounds[^2].Upper - exact) / (bounds[^1].Upper - exact)), 1.23, 1.43);
        Assert.InRange(Math.Log2((exact - bounds[^2].Lower) / (exact - bounds[^1].Lower)), 1.23, 1.43);
    }

    // In a chessboard the field goes as r^a with a = (4/π) atan √(λ₁/λ₂) (from memory), so both energies err as h^(2a).
    [Theory]
    [InlineData(3)]
    [InlineData(10)]
    public void In_a_chessboard_both_bounds_close_with_twice_its_exponent(double ratio)
    {
        var board = new FieldLawTests.Blocks([500, 500], [500, 500], [1, ratio, ratio, 1], 0, 0).Case();
        var (exact, expected) = (Math.Sqrt(ratio), 8 / Math.PI * Math.Atan(Math.Sqrt(1 / ratio)));
        var bounds = Halved(board, 5, 3);
        Assert.InRange(Math.Log2((bounds[^2].Upper - exact) / (bounds[^1].Upper - exact)), expected - 0.1, expected + 0.1);
        Assert.InRange(Math.Log2((exact - bounds[^2].Lower) / (exact - bounds[^1].Lower)), expected - 0.1, expected + 0.1);
    }

    // Refined where the two fluxes differ, the gap falls at least as 1/n whatever the corner.
    [Fact]
    public void Refined_where_it_pays_the_gap_falls_at_least_with_the_unknowns()
    {
        var board = new FieldLawTests.Blocks([500, 500], [500, 500], [1, 10, 10, 1], 0, 0);
        var (coarse, fine) = (FieldLawTests.Solved(board.Case(wanted: 0.03)), FieldLawTests.Solved(board.Case(wanted: 0.001)));
        var exponent = Math.Log(coarse.ErrorEstimate!.Value / fine.ErrorEstimate!.Value) / Math.Log((double)fine.Unknowns / coarse.Unknowns);
        Assert.True(exponent >= 0.9, $"The gap falls as n^-{exponent}.");
    }

    /// <summary>Bounds on meshes each of whose sides are half as long as those before: two halvings of every triangle.</summary>
    private static List<(double Lower, double Upper)> Halved(FieldCase asked, int start, int times)
    {
        var mesh = Arrangement.Build(asked).Mesh!;
        for (var round = 0; round < start; round++)
        {
            mesh = mesh.Refine([.. mesh.Triangles.Select(_ => true)]).Mesh;
        }

        var bounds = new List<(double, double)>();
        for (var step = 0; step < times; step++)
        {
            var field = new MeshField(mesh, Conditions.Of(asked, 0, 20, null));
            bounds.Add((field.Lower, field.Upper));
            mesh = mesh.Refine([.. mesh.Triangles.Select(_ => true)]).Mesh;
            mesh = mesh.Refine([.. mesh.Triangles.Select(_ => true)]).Mesh;
        }

        return bounds;
    }

    /// <summary>From the last three values, without knowing the limit.</summary>
    private static double Order(IEnumerable<double> values)
    {
        var last = values.TakeLast(3).ToArray();
        return Math.Log2((last[0] - last[1]) / (last[1] - last[2]));
    }
}
