using System.Collections.Immutable;
using DetailGen.Analysis.Heat;
using DetailGen.Details.Solving;
using DetailGen.Physics.Fields;
using DetailGen.Testing;

namespace DetailGen.Details.Tests.Junctions;

/// <summary>Whatever can be built can be meshed. No field is solved, so that very many details can be tried (scripts/soak).</summary>
public class MeshingTests(ITestOutputHelper output)
{
    /// <summary>By how much corners that meet may be moved, mm.</summary>
    private const double Reach = 0.001;

    private static readonly HeatConditions Usual = new();

    [Fact]
    public void The_thermal_model_of_whatever_the_solver_allows_is_meshed_whole()
    {
        var (tried, meshed, cases, triangles) = (0, 0, 0, 0L);
        AnyDetail.Presets.Always(
            preset =>
            {
                Interlocked.Increment(ref tried);
                if (Shipped.Solve(preset) is not Solution.Solved sizes)
                {
                    return;
                }

                var model = ThermalModelling.Of(SectionBuilder.Build(sizes), Usual);
                foreach (var asked in model.Flanks.Select(flank => flank.Bay?.Case).OfType<FieldCase>().Prepend(model.Case))
                {
                    Interlocked.Add(ref triangles, Meshed(asked));
                    Interlocked.Increment(ref cases);
                }

                Interlocked.Increment(ref meshed);
            },
            cases: 60, print: AnyDetail.Told);
        output.WriteLine($"{tried} random presets, {meshed} of them with sizes: {cases} cases meshed, none failed, {triangles} triangles.");
        Assert.True(meshed > tried / 4, $"Only {meshed} of {tried} presets have sizes.");
    }

    private static int Meshed(FieldCase asked)
    {
        var mesh = CoarseMesh.Of(asked);
        Assert.Empty(mesh.Faults);
        Assert.True(mesh.Least > 0, $"A triangle of {mesh.Least} mm².");
        for (var i = 0; i < asked.Regions.Length; i++)
        {
            var region = asked.Regions[i];
            var rings = region.Holes.Prepend(region.Outline).ToArray();
            var area = Area(rings[0]) - rings[1..].Sum(Area);
            Assert.Equal(area, mesh.Areas[i], Reach * rings.Sum(Length));
        }

        return mesh.Triangles;
    }

    private static IEnumerable<(FieldPlace From, FieldPlace To)> Sides(ImmutableArray<FieldPlace> ring) =>
        ring.Select((from, i) => (from, ring[(i + 1) % ring.Length]));

    private static double Area(ImmutableArray<FieldPlace> ring) => Math.Abs(Sides(ring).Sum(side => (side.From.X * side.To.Y) - (side.From.Y * side.To.X))) / 2;

    private static double Length(ImmutableArray<FieldPlace> ring) => Sides(ring).Sum(side => double.Hypot(side.To.X - side.From.X, side.To.Y - side.From.Y));
}
