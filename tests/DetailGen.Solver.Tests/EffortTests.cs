using CsCheck;
using DetailGen.Solver.Search;
using DetailGen.Testing;

namespace DetailGen.Solver.Tests;

/// <summary>How soon a search is given up for another shapes the way to the optimum, not the optimum.</summary>
public class EffortTests
{
    private static readonly Gen<(int Seed, int Effort)> Cases = Gen.Select(Gen.Int[0, int.MaxValue], Gen.Int[10, 200]);

    [Fact]
    public void Little_effort_finds_the_same_optimum() => Cases.Always((seed, effort) => Compare(RandomModel.Of(seed, variables: 12, most: 12).Model, effort), cases: 1000);

    [Fact]
    public void Little_effort_finds_the_same_optimum_of_a_model_of_real_shape() => Cases.Always((seed, effort) => Compare(LayeredModel.Of(seed, blocks: 2, givens: 2), 5 * effort), cases: 40);

    private static void Compare(Model model, int effort)
    {
        Variable[] byName = [.. model.Variables.OrderBy(variable => variable.Name, StringComparer.Ordinal)];
        var optimizer = new Optimizer(ProblemBuilder.Whole(model), byName, effort);
        var found = optimizer.Run(Solving.Targets(model), model.Budget);
        var answer = model.Solve();
        Assert.Equal(answer is Answer.Best ? Found.Yes : Found.No, found);
        if (answer is Answer.Best(var values, _))
        {
            Assert.Equal(model.Variables.Select(variable => values[variable]), model.Variables.Select(variable => optimizer.Best![variable.Id]));
        }
    }
}
