using CsCheck;
using DetailGen.Physics.Fields;
using DetailGen.Testing;

namespace DetailGen.Physics.Tests.Fields;

/// <summary>Two stacks of blocks side by side whose joints do not meet, turned: corners then lie beside the sides of their neighbours by the rounding of their coordinates.</summary>
public class TurnedJointTests
{
    private static readonly FieldEnvironment Inside = new("inside", 20, FieldSide.Internal), Outside = new("outside", 0, FieldSide.External);

    // sheets and blocks; joints are apart by 0.1 mm or not at all
    private static readonly Gen<double[]> Heights = Gen.OneOf(Gen.Int[1, 10], Gen.Int[10, 4_000]).Select(tenths => tenths / 10.0).Array[1, 5];

    private static readonly Gen<Stacks> Any = Gen.Select(Gen.Int[1, 300], Gen.Int[1, 300], Heights, Heights, Gen.Double[-1.7, 1.7].Array[10], Gen.Double[0, 6.28])
        .Select((left, right, low, high, decades, angle) => new Stacks(left, right, low, high, [.. decades.Select(decade => Math.Pow(10, decade))], angle));

    [Fact]
    public void No_triangle_is_a_sliver_of_rounding() => Any.Always(
        stacks =>
        {
            var mesh = Arrangement.Build(stacks.Case()).Mesh!;
            Assert.All(Enumerable.Range(0, mesh.Triangles.Length), t => Assert.True(2 * new Shape(mesh, t).Area / mesh.Extent(t) > 1e-6));
        },
        cases: 200);

    [Fact]
    public void The_coupling_is_that_of_the_stacks_as_they_stood() => Any.Always(
        stacks =>
        {
            var (turned, plain) = (FieldLawTests.Solved(stacks.Case()).Bounds!.Value, FieldLawTests.Solved((stacks with { Angle = 0 }).Case()).Bounds!.Value);
            Assert.True(turned.Lower <= plain.Upper * (1 + 1e-8) && plain.Lower <= turned.Upper * (1 + 1e-8), $"{turned} and {plain}");
        },
        cases: 20);

    /// <summary>The flow of a mesh whose bounds are so close cannot change by more on one that is finer.</summary>
    [Fact]
    public void Where_the_bounds_are_close_the_comparison_of_two_subdivisions_is_met() => Any.Always(
        stacks =>
        {
            var answer = FieldLawTests.Solved(stacks.Case() with { WantedError = 0.005 });
            Assert.True(answer.ErrorEstimate <= 0.005 * answer.Coupling);
            Assert.True(answer.Subdivision is { Met: true, Change: < 0.01 } two && 2 * two.Coarse <= two.Fine, $"{answer.Subdivision}");
        },
        cases: 40);

    /// <summary>Where no finer mesh is made, since the bounds prove what it would say, finer ones do say so.</summary>
    [Fact]
    public void What_the_bounds_prove_of_a_finer_subdivision_holds_on_finer_meshes()
    {
        var proven = 0;
        Any.Always(
            stacks =>
            {
                var answer = FieldLawTests.Solved(stacks.Case() with { WantedError = 0.01 });
                if (answer.Subdivision is { IsProven: true } two)
                {
                    Interlocked.Increment(ref proven);
                    var finer = FieldLawTests.Solved(stacks.Case() with { WantedError = 1e-4 });
                    Assert.InRange(Math.Abs(finer.Coupling!.Value - answer.Coupling!.Value), 0, two.Change * finer.Coupling.Value);
                }
            },
            cases: 40);
        Assert.True(proven > 0);
    }

    private sealed record Stacks(int Left, int Right, double[] Low, double[] High, double[] Conductivity, double Angle)
    {
        internal FieldCase Case()
        {
            // the shorter stack is as high as the other by its last block
            var top = Math.Max(Low.Sum(), High.Sum());
            var regions = Blocks(-Left, 0, Low, top, 0).Concat(Blocks(0, Right, High, top, 5));
            return new("stacks", [.. regions],
                [
                    new(Inside, 0.13, [At(-Left, 0), At(-Left, top)]), new(Outside, 0.04, [At(Right, 0), At(Right, top)]),
                    new(null, 0, [At(-Left, 0), At(Right, 0)]), new(null, 0, [At(-Left, top), At(Right, top)]),
                ],
                [], [], null, 0.01);
        }

        private IEnumerable<FieldRegion> Blocks(double from, double to, double[] heights, double top, int first)
        {
            var foot = 0.0;
            for (var i = 0; i < heights.Length; i++)
            {
                var head = i == heights.Length - 1 ? top : foot + heights[i];
                yield return new("block", Conductivity[first + i], [At(from, foot), At(to, foot), At(to, head), At(from, head)], []);
                foot = head;
            }
        }

        private FieldPlace At(double x, double y) => new((x * Math.Cos(Angle)) - (y * Math.Sin(Angle)), (x * Math.Sin(Angle)) + (y * Math.Cos(Angle)));
    }
}
