using CsCheck;
using DetailGen.Testing;

namespace DetailGen.Solver.Tests;

/// <summary>Moving values in a session is solving afresh, only quicker.</summary>
public class SessionTests
{
    private static readonly Gen<(int Seed, int Moves)> Cases = Gen.Select(Gen.Int[0, int.MaxValue], Gen.Int[1, 8]);

    [Fact]
    public void A_move_answers_as_the_moved_model_does() =>
        Cases.Always((seed, moves) => Compare(RandomModel.Of(seed).Model, new Random(seed), moves), cases: 1000);

    [Fact]
    public void A_move_in_a_model_of_real_shape_answers_as_the_moved_model_does() =>
        Cases.Always((seed, moves) => Compare(LayeredModel.Of(seed, blocks: 2, givens: 3), new Random(seed), moves), cases: 20);

    [Fact]
    public void Only_what_is_given_can_be_moved()
    {
        var model = new Model();
        model.Give("given", model.Add("a", Domain.Range(0, 5)), 1);
        Assert.Throws<KeyNotFoundException>(() => model.Start().Move("another", 2));
    }

    private static void Compare(Model model, Random random, int moves)
    {
        var session = model.Start();
        var values = model.Givens.ToDictionary(given => given.Tag, given => given.Value);
        for (var move = 0; move < moves && values.Count > 0; move++)
        {
            var given = model.Givens[random.Next(model.Givens.Count)];
            var domain = given.Variable.Domain;
            // now and then a value that the domain lacks
            values[given.Tag] = domain.At(random.NextInt64(domain.Count)) + (random.Next(10) == 0 ? 1 : 0);
            var (expected, actual) = (model.Moved(values).Solve(), session.Move(given.Tag, values[given.Tag]));
            switch (expected, actual)
            {
                case (Answer.Best one, Answer.Best other):
                    Assert.Equal(model.Variables.Select(variable => one.Values[variable]), model.Variables.Select(variable => other.Values[variable]));
                    Assert.Equal(one.Costs.Select(cost => (cost.Name, cost.Broken.Count, cost.Total)), other.Costs.Select(cost => (cost.Name, cost.Broken.Count, cost.Total)));
                    break;
                case (Answer.Conflict one, Answer.Conflict other):
                    Assert.Equal(one.Tags, other.Tags);
                    break;
                default:
                    Assert.Fail($"{expected.GetType().Name} and {actual.GetType().Name}");
                    break;
            }
        }
    }
}
