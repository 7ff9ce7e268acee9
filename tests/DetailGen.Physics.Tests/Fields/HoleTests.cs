using System.Collections.Immutable;
using DetailGen.Physics.Fields;

namespace DetailGen.Physics.Tests.Fields;

/// <summary>Solids with holes that take up heat, where the flow function has more values than one, against the part of them that symmetry leaves, which has no hole.</summary>
public class HoleTests
{
    private static readonly FieldEnvironment Inside = new("inside", 20, FieldSide.Internal), Outside = new("outside", 0, FieldSide.External);

    private static FieldPlace P(double x, double y) => new(x, y);

    private static ImmutableArray<FieldPlace> Box(double x0, double y0, double x1, double y1) => [P(x0, y0), P(x1, y0), P(x1, y1), P(x0, y1)];

    private static FieldBoundary Round(FieldEnvironment? air, double film, ImmutableArray<FieldPlace> box) => new(air, film, [.. box, box[0]]);

    private static FieldCase Of(FieldRegion solid, params FieldBoundary[] boundary) => new("holed", [solid], [.. boundary], [], [], null, 0.0005);

    private static (double Lower, double Upper) Bounds(FieldCase asked)
    {
        var answer = FieldLawTests.Solved(asked);
        Assert.Empty(answer.Warnings);
        Assert.InRange(answer.HeatBalance!.Value, -1e-9, 1e-9);
        return answer.Bounds!.Value;
    }

    private static void Same((double Lower, double Upper) whole, double times, (double Lower, double Upper) part)
    {
        Assert.True(whole.Lower <= times * part.Upper && times * part.Lower <= whole.Upper, $"{whole} against {times} times {part}");
        Assert.True(whole.Upper - whole.Lower <= 0.0005 * whole.Upper);
    }

    [Theory]
    [InlineData(0, 0)]
    [InlineData(0.13, 0.04)]
    public void A_duct_conducts_four_times_what_its_quarter_does(double film, double outer)
    {
        var duct = Of(
            new("wall", 0.5, Box(-400, -400, 400, 400), [Box(-150, -150, 150, 150)]), Round(Inside, film, Box(-150, -150, 150, 150)), Round(Outside, outer, Box(-400, -400, 400, 400)));
        var quarter = Of(
            new("wall", 0.5, [P(150, 0), P(400, 0), P(400, 400), P(0, 400), P(0, 150), P(150, 150)], []),
            new(Inside, film, [P(150, 0), P(150, 150), P(0, 150)]), new(Outside, outer, [P(400, 0), P(400, 400), P(0, 400)]),
            new(null, 0, [P(150, 0), P(400, 0)]), new(null, 0, [P(0, 150), P(0, 400)]));
        Same(Bounds(duct), 4, Bounds(quarter));
    }

    // two holes of one temperature, and of two with an outline that lets no heat pass: then the path from hole to hole meets no outer edge
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Two_holes_conduct_twice_what_the_half_does(bool alike)
    {
        ImmutableArray<FieldPlace> outline = Box(-600, -300, 600, 300), left = Box(-400, -100, -200, 100), right = Box(150, -120, 450, 120);
        var second = alike ? Inside : Outside;
        var outer = alike ? Outside : null;
        double outerFilm = alike ? 0.04 : 0;
        var whole = Of(new("wall", 1.5, outline, [left, right]), Round(Inside, 0.13, left), Round(second, 0.1, right), Round(outer, outerFilm, outline));
        var half = Of(
            new("wall", 1.5, [P(-600, 0), P(-400, 0), P(-400, 100), P(-200, 100), P(-200, 0), P(150, 0), P(150, 120), P(450, 120), P(450, 0), P(600, 0), P(600, 300), P(-600, 300)], []),
            new(Inside, 0.13, [P(-400, 0), P(-400, 100), P(-200, 100), P(-200, 0)]), new(second, 0.1, [P(150, 0), P(150, 120), P(450, 120), P(450, 0)]),
            new(outer, outerFilm, [P(600, 0), P(600, 300), P(-600, 300), P(-600, 0)]),
            new(null, 0, [P(-600, 0), P(-400, 0)]), new(null, 0, [P(-200, 0), P(150, 0)]), new(null, 0, [P(450, 0), P(600, 0)]));
        Same(Bounds(whole), 2, Bounds(half));
    }

    [Fact]
    public void A_hole_part_of_whose_edge_lets_no_heat_pass_conducts_twice_what_the_half_does()
    {
        var hole = Box(-100, -100, 100, 100);
        var whole = Of(
            new("wall", 0.8, Box(-300, -200, 300, 200), [hole]), new(Inside, 0.13, [P(-100, 100), P(-100, -100)]), new(null, 0, [P(-100, -100), P(100, -100), P(100, 100), P(-100, 100)]),
            new(Outside, 0.04, [P(300, -200), P(300, 200)]), new(null, 0, [P(300, 200), P(-300, 200), P(-300, -200), P(300, -200)]));
        var half = Of(
            new("wall", 0.8, [P(-300, 0), P(-100, 0), P(-100, 100), P(100, 100), P(100, 0), P(300, 0), P(300, 200), P(-300, 200)], []),
            new(Inside, 0.13, [P(-100, 0), P(-100, 100)]), new(null, 0, [P(-100, 100), P(100, 100), P(100, 0), P(300, 0)]), new(Outside, 0.04, [P(300, 0), P(300, 200)]),
            new(null, 0, [P(300, 200), P(-300, 200), P(-300, 0), P(-100, 0)]));
        Same(Bounds(whole), 2, Bounds(half));
    }

    // Heat passes no corner: two squares that touch in one only conduct as one plus one.
    [Fact]
    public void Solids_that_touch_at_a_corner_only_conduct_apart()
    {
        FieldCase Squares(params double[] at) => new(
            "squares", [.. at.Select(x => new FieldRegion("wall", 1, Box(x, x, x + 300, x + 300), []))],
            [
                .. at.SelectMany(x => new[]
                {
                    new FieldBoundary(Inside, 0.13, [P(x, x), P(x + 300, x)]), new FieldBoundary(Outside, 0.04, [P(x, x + 300), P(x + 300, x + 300)]),
                    new FieldBoundary(null, 0, [P(x, x), P(x, x + 300)]), new FieldBoundary(null, 0, [P(x + 300, x), P(x + 300, x + 300)]),
                }),
            ], [], [], null, 0.0005);
        Same(Bounds(Squares(0, 300)), 2, Bounds(Squares(0)));
    }

    [Fact]
    public void Where_no_solid_joins_a_warm_and_a_cold_air_nothing_flows_and_the_answer_says_so()
    {
        var (warm, cold) = (Box(0, 0, 300, 300), Box(300, 300, 600, 600));
        var answer = FieldLawTests.Solved(new(
            "apart", [new("wall", 1, warm, []), new("wall", 1, cold, [])], [Round(Inside, 0.13, warm), Round(Outside, 0.04, cold)], [new("in the warm", P(150, 150))], [], null, 0.001));
        Assert.Equal((0, 0, (0, 0), null), (answer.Coupling, answer.ErrorEstimate, answer.Bounds, answer.HeatBalance));
        Assert.Equal([Messages.NothingJoins], answer.Warnings);
        Assert.Equal(20, answer.Temperatures[0], 1e-9);
        Assert.Equal(1, answer.Factor!.Value, 1e-9);
    }

    [Fact]
    public void The_comparison_of_two_subdivisions_is_told_and_met_where_the_bounds_are_close()
    {
        var duct = Of(
            new("wall", 0.5, Box(-400, -400, 400, 400), [Box(-150, -150, 150, 150)]), Round(Inside, 0.13, Box(-150, -150, 150, 150)), Round(Outside, 0.04, Box(-400, -400, 400, 400)));
        var answer = FieldLawTests.Solved(duct);
        var two = answer.Subdivision!;
        Assert.True(2 * two.Coarse <= two.Fine && two.Met && two.Change > 0, two.ToString());
        Assert.InRange(answer.Factor!.Change!.Value, 0, 1e-3);
    }
}
