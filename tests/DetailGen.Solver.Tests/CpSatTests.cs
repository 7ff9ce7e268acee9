using DetailGen.Testing;

namespace DetailGen.Solver.Tests;

/// <summary>The solver against another complete one, on models too large to try every assignment.</summary>
public class CpSatTests
{
    [Fact]
    public void Models_of_real_shape_cost_the_same_at_every_level()
    {
        for (var seed = 0; seed < Soak.Cases(64) / 4; seed++)
        {
            Compare(LayeredModel.Of(seed, blocks: 1, givens: 2), $"layered {seed}");
        }
    }

    [Fact]
    public void Random_models_of_middle_size_cost_the_same_at_every_level()
    {
        for (var seed = 0; seed < Soak.Cases(60); seed++)
        {
            Compare(RandomModel.Of(seed, variables: 12, most: 12).Model, $"random {seed}");
        }
    }

    private static void Compare(Model model, string name)
    {
        var expected = CpSatOracle.Costs(model);
        switch (model.Solve())
        {
            case Answer.Best(_, var costs):
                var actual = costs.Zip(model.Levels).SelectMany(pair =>
                    pair.Second is Level.Wanted ? [pair.First.Broken.Count, pair.First.Total] : (long[])[pair.First.Total]);
                Assert.True(expected is not null, name);
                Assert.True(expected.SequenceEqual(actual), $"{name}: {string.Join(' ', expected)} and {string.Join(' ', actual)}");
                break;
            case Answer.Conflict:
                Assert.True(expected is null, name);
                break;
            default:
                Assert.Fail($"{name} was not proven.");
                break;
        }
    }
}
