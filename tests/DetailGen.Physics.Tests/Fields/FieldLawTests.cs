using CsCheck;
using DetailGen.Physics.Fields;
using DetailGen.Testing;

namespace DetailGen.Physics.Tests.Fields;

/// <summary>What holds for every field, on blocks of random materials between a warm and a cold air.</summary>
public class FieldLawTests
{
    private static readonly FieldEnvironment Inside = new("inside", 20, FieldSide.Internal), Outside = new("outside", 0, FieldSide.External);

    // 2 to 3 columns and 2 to 3 rows of blocks, 20 to 400 mm in whole micrometres (the grid of geometry is finer, and the bounds are those of the geometry on it), from insulation to metal.
    private static readonly Gen<double> Size = Gen.Int[20_000, 400_000].Select(micrometres => micrometres / 1000.0);

    private static readonly Gen<Blocks> Any = Gen.Select(Size.Array[2, 3], Size.Array[2, 3], Gen.Double[-1.7, 1.7].Array[9], Gen.Double[0.05, 0.3], Gen.Double[0.02, 0.1])
        .Select((widths, heights, decades, film, outer) => new Blocks(widths, heights, [.. decades.Select(decade => Math.Pow(10, decade))], film, outer));

    [Fact]
    public void Raising_a_conductivity_lowers_neither_bound_on_the_same_mesh() => Gen.Select(Any, Gen.Int[0, 8], Gen.Double[1.01, 10]).Always(
        (blocks, which, more) =>
        {
            var raised = blocks with { Conductivity = [.. blocks.Conductivity.Select((value, i) => i == which % blocks.Count ? value * more : value)] };
            var (before, after) = (OnMesh(blocks.Case()), OnMesh(raised.Case()));
            Assert.True(after.Upper > before.Upper && after.Lower > before.Lower, $"{before.Lower}..{before.Upper} and {after.Lower}..{after.Upper}");
        },
        cases: 60);

    [Fact]
    public void Refining_lowers_the_upper_bound_and_raises_the_lower_one() => Any.Always(
        blocks =>
        {
            var (coarse, fine) = (OnMesh(blocks.Case()), OnMesh(blocks.Case(), rounds: 1));
            Assert.True(fine.Upper <= coarse.Upper * (1 + 1e-12) && fine.Lower >= coarse.Lower * (1 - 1e-12) && fine.Lower <= fine.Upper, $"{coarse.Lower}..{coarse.Upper} and {fine.Lower}..{fine.Upper}");
        },
        cases: 60);

    [Fact]
    public void Lengths_and_conductivities_times_s_multiply_the_coupling_by_s_and_keep_the_temperature_factor() => Gen.Select(Any, Gen.Double[0.3, 3]).Always(
        (blocks, s) =>
        {
            var scaled = blocks with { Widths = Times(blocks.Widths, s), Heights = Times(blocks.Heights, s), Conductivity = Times(blocks.Conductivity, s) };
            var (plain, other) = (Solved(blocks.Case()), Solved(scaled.Case()));
            Assert.True(other.Bounds!.Value.Lower <= s * plain.Bounds!.Value.Upper * (1 + 1e-8) && s * plain.Bounds.Value.Lower <= other.Bounds.Value.Upper * (1 + 1e-8)); // the grid, as below
            Assert.Equal(plain.Factor!.Value, other.Factor!.Value, 0.001);
        },
        cases: 12);

    [Fact]
    public void Turning_and_mirroring_keep_the_coupling_and_the_temperature_factor() => Gen.Select(Any, Gen.Double[0, 6.28], Gen.Bool).Always(
        (blocks, angle, mirrored) =>
        {
            var (plain, other) = (Solved(blocks.Case()), Solved(blocks.Case(angle, mirrored)));
            // Turned corners come to lie between the places of the grid of geometry: 1e-8 mm on 20 mm.
            Assert.True(other.Bounds!.Value.Lower <= plain.Bounds!.Value.Upper * (1 + 1e-8) && plain.Bounds.Value.Lower <= other.Bounds.Value.Upper * (1 + 1e-8), $"{plain.Bounds} and {other.Bounds}");
            Assert.Equal(plain.Factor!.Value, other.Factor!.Value, 0.001);
        },
        cases: 12);

    [Fact]
    public void What_flows_in_flows_out() => Any.Always(blocks => Assert.InRange(Solved(blocks.Case()).HeatBalance!.Value, -1e-9, 1e-9), cases: 12);

    /// <summary>The mesh follows the films of the heat flow; another film may have its coldest place elsewhere.</summary>
    [Fact]
    public void A_film_of_the_second_calculation_gives_the_factor_that_it_gives_in_the_first() => Gen.Select(Any, Gen.Double[0.02, 1]).Always(
        (blocks, film) =>
        {
            var second = Solved(blocks.Case(wanted: 0.001) with { HumidityFilm = film }).HumidityFactor!;
            Assert.Equal(Solved((blocks with { Film = film }).Case(wanted: 0.001)).Factor!.Value, second.Value, 0.001);
            Assert.True(second.Change is null or >= 0);
        },
        cases: 12);

    /// <summary>Long sheets of metal in insulation: their coefficients are so large that, without correction, their rounding alone takes up heat.</summary>
    [Fact]
    public void What_flows_in_flows_out_past_thin_sheets_of_metal_too() =>
        Gen.Select(Any, Gen.Int[100, 3_000].Select(micrometres => micrometres / 1000.0), Gen.Int[400_000, 5_000_000].Select(micrometres => micrometres / 1000.0), Gen.Double[1.7, 4], Gen.Int[0, 2]).Always(
            (blocks, thin, length, decade, row) =>
            {
                var sheet = Math.Min(row, blocks.Heights.Length - 1);
                var metal = blocks with
                {
                    Widths = [length, .. blocks.Widths[1..]],
                    Heights = [.. blocks.Heights.Select((height, i) => i == sheet ? thin : height)],
                    Conductivity = [.. blocks.Conductivity.Select((value, i) => i / blocks.Widths.Length == sheet ? Math.Pow(10, decade) : value)],
                };
                Assert.InRange(Solved(metal.Case()).HeatBalance!.Value, -1e-9, 1e-9);
            },
            cases: 12);

    [Fact]
    public void The_stated_gap_is_reached_and_the_lower_bound_never_passes_the_upper() => Gen.Select(Any, Gen.Double[-3, -1]).Always(
        (blocks, decade) =>
        {
            var wanted = Math.Pow(10, decade);
            var answer = Solved(blocks.Case(wanted: wanted));
            Assert.True(answer.Bounds!.Value.Lower <= answer.Bounds.Value.Upper);
            Assert.True(answer.ErrorEstimate <= wanted * answer.Coupling || answer.Warnings.Length > 0);
        },
        cases: 12);

    // Plane layers: L = width / (Rsi + Σ d/λ + Rse).
    [Fact]
    public void The_bounds_hold_the_value_of_plane_layers() => Any.Always(
        blocks =>
        {
            var plane = blocks with { Conductivity = [.. Enumerable.Range(0, blocks.Count).Select(i => blocks.Conductivity[i / blocks.Widths.Length])] };
            var exact = blocks.Widths.Sum() / 1000 / (blocks.Film + blocks.OuterFilm + blocks.Heights.Select((height, row) => height / 1000 / blocks.Conductivity[row]).Sum());
            var answer = Solved(plane.Case());
            Assert.InRange(exact, answer.Bounds!.Value.Lower, answer.Bounds.Value.Upper);
        },
        cases: 60);

    // J. B. Keller, J. Math. Phys. 5 (1964); A. M. Dykhne, Sov. Phys. JETP 32 (1971), from memory: a chessboard square conducts as the geometric mean.
    [Fact]
    public void The_bounds_hold_the_value_of_a_chessboard() => Gen.Select(Gen.Double[-1, 1], Gen.Double[1, 20], Size).Always(
        (decade, ratio, side) =>
        {
            var (one, other) = (Math.Pow(10, decade), Math.Pow(10, decade) * ratio);
            var answer = Solved(new Blocks([side, side], [side, side], [one, other, other, one], 0, 0).Case(wanted: 0.01));
            Assert.InRange(Math.Sqrt(one * other), answer.Bounds!.Value.Lower, answer.Bounds.Value.Upper);
        },
        cases: 12);

    internal static FieldAnswer Solved(FieldCase asked) => Assert.IsType<FieldOutcome.Solved>(FieldEngine.Solve(asked)).Answer;

    // the same refinement everywhere, whatever the field: equal geometry gives equal meshes
    private static MeshField OnMesh(FieldCase asked, int rounds = 0)
    {
        var mesh = Arrangement.Build(asked).Mesh!;
        for (var round = 0; round < 4 + rounds; round++)
        {
            mesh = mesh.Refine([.. mesh.Triangles.Select(_ => true)]).Mesh;
        }

        return new(mesh, Conditions.Of(asked, 0, 20, null));
    }

    private static double[] Times(double[] values, double factor) => [.. values.Select(value => value * factor)];

    /// <summary>Blocks row by row from the warm side below; the sides let no heat pass.</summary>
    /// <param name="Widths">mm.</param>
    /// <param name="Heights">mm.</param>
    /// <param name="Conductivity">W/(m·K), the first ones in use.</param>
    internal sealed record Blocks(double[] Widths, double[] Heights, double[] Conductivity, double Film, double OuterFilm)
    {
        internal int Count => Widths.Length * Heights.Length;

        internal FieldCase Case(double angle = 0, bool mirrored = false, double wanted = 0.01)
        {
            FieldPlace P(double x, double y) => new(((mirrored ? -x : x) * Math.Cos(angle)) - (y * Math.Sin(angle)), ((mirrored ? -x : x) * Math.Sin(angle)) + (y * Math.Cos(angle)));
            double X(int column) => Widths.Take(column).Sum();
            double Y(int row) => Heights.Take(row).Sum();
            var (right, top) = (X(Widths.Length), Y(Heights.Length));
            return new(
                "blocks",
                [
                    .. Enumerable.Range(0, Count).Select(i => (Column: i % Widths.Length, Row: i / Widths.Length)).Select(at => new FieldRegion(
                        "m", Conductivity[(at.Row * Widths.Length) + at.Column],
                        [P(X(at.Column), Y(at.Row)), P(X(at.Column + 1), Y(at.Row)), P(X(at.Column + 1), Y(at.Row + 1)), P(X(at.Column), Y(at.Row + 1))], [])),
                ],
                [
                    new(Inside, Film, [P(0, 0), P(right, 0)]), new(Outside, OuterFilm, [P(0, top), P(right, top)]),
                    new(null, 0, [P(0, 0), P(0, top)]), new(null, 0, [P(right, 0), P(right, top)]),
                ],
                [], [], null, wanted);
        }
    }
}
