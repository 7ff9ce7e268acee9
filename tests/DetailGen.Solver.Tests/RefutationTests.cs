using DetailGen.Solver.Conflicts;
using DetailGen.Solver.Search;

namespace DetailGen.Solver.Tests;

/// <summary>What a refutation says it rests on contradicts itself, whichever claims are in force.</summary>
public class RefutationTests
{
    [Fact]
    public void The_tags_that_a_refutation_used_cannot_hold_together()
    {
        var seeds = new Random(4711);
        for (var round = 0; round < 20000; round++)
        {
            var seed = round == 0 ? 1586332884 : seeds.Next();
            var made = RandomModel.Of(seed);
            var problem = ProblemBuilder.Hard(made.Model);
            var choice = new Random(seed);
            var enabled = Array.ConvertAll(problem.Tags, _ => round == 0 || choice.Next(4) > 0);
            bool InForce(bool[] tags, string tag) => tags[Array.IndexOf(problem.Tags, tag)];
            var found = MinimalConflict.Check(problem, enabled, null);
            Assert.True(found == Found.Yes == made.Feasible(tag => InForce(enabled, tag)).Any(), $"model {seed}: {found}");
            if (found == Found.No)
            {
                var used = new bool[enabled.Length];
                problem.CollectTags(used);
                Assert.True(!made.Feasible(tag => InForce(used, tag) && InForce(enabled, tag)).Any(), $"model {seed}: the tags used do not contradict each other");
            }
        }
    }
}
