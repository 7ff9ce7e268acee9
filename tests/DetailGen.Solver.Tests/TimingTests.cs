using System.Diagnostics;
using System.Globalization;

namespace DetailGen.Solver.Tests;

/// <summary>Figures to read, not to pass or fail by: they depend on the machine.</summary>
public class TimingTests(ITestOutputHelper output)
{
    [Fact]
    public void A_model_of_real_size_is_answered_with_proof_and_the_times_are_told()
    {
        for (var seed = 0; seed < 8; seed++)
        {
            var model = LayeredModel.Of(seed, blocks: 3);
            var answer = model.Solve();
            var solve = Milliseconds(() => model.Solve());
            Assert.IsNotType<Answer.NotProven>(answer);
            var ranges = answer is Answer.Best ? Milliseconds(() => model.Ranges([.. model.Variables])) : double.NaN;
            output.WriteLine(string.Create(
                CultureInfo.InvariantCulture,
                $"{seed}: {model.Variables.Count} variables, {answer.GetType().Name}, solve {solve:0.00} ms, all ranges {ranges:0.00} ms"));
        }
    }

    private static double Milliseconds(Action work)
    {
        for (var i = 0; i < 3; i++)
        {
            work();
        }

        var watch = Stopwatch.StartNew();
        work();
        return watch.Elapsed.TotalMilliseconds;
    }
}
