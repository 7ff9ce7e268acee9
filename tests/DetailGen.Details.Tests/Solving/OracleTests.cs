using CsCheck;
using DetailGen.Details.Presets;
using DetailGen.Details.Solving;
using DetailGen.Solver;
using DetailGen.Solver.Tests;
using DetailGen.Testing;

namespace DetailGen.Details.Tests.Solving;

/// <summary>The solver against another complete one (CP-SAT, one worker), on details with the shipped rules and random wishes: feasible or not, and the same cost at every level.</summary>
public class OracleTests(ITestOutputHelper output)
{
    private long _asked;
    private long _compared;

    [Fact]
    public void Another_solver_finds_the_same_costs_at_every_level()
    {
        ProvenTests.Details.Always(Compare, cases: 40, print: ProvenTests.Told);
        output.WriteLine($"{_compared} of {_asked} costs of solvable details compared; the others CP-SAT could not prove within its limit.");
        Assert.True(_asked > 0 && _compared * 10 >= _asked * 9, $"Only {_compared} of {_asked} costs could be compared.");
    }

    private void Compare(Preset preset)
    {
        var model = new DetailProblem(new Situation(preset, ProvenTests.Whole), DetailSolver.RulesOf(preset, ProvenTests.Whole)).Model;
        var expected = CpSatOracle.Costs(model);
        switch (model.Solve())
        {
            case Answer.Best(_, var costs):
                var actual = costs.Zip(model.Levels).SelectMany(pair => pair.Second is Level.Wanted ? [pair.First.Broken.Count, pair.First.Total] : (long[])[pair.First.Total]);
                Assert.NotNull(expected);
                Interlocked.Add(ref _asked, actual.Count());
                Interlocked.Add(ref _compared, expected.Count);
                Assert.Equal(expected, actual.Take(expected.Count)); // as far as the other one could prove its costs
                break;
            case Answer.Conflict:
                Assert.True(expected is null or { Count: 0 });
                break;
            default:
                break; // ProvenTests counts what is not proven
        }
    }
}
