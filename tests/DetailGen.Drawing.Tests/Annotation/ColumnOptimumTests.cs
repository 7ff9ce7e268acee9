using DetailGen.Drawing.Annotation.Notes;
using DetailGen.Drawing.Lettering;
using DetailGen.Drawing.Scenes;

namespace DetailGen.Drawing.Tests.Annotation;

/// <summary>The search against an exact solver, on columns of six to eight notes with four to eight ways each.</summary>
public sealed class ColumnOptimumTests(ITestOutputHelper told)
{
    private const int Wanted = 36, Most = 400;

    [Fact]
    public void The_cost_is_within_five_per_cent_of_the_proven_optimum_in_the_median_and_fifteen_at_worst()
    {
        var ratios = new List<double>();
        var (unproven, missed) = (0, 0);
        for (var seed = 0; seed < Most && ratios.Count + missed < Wanted; seed++)
        {
            var (blocks, options) = Column(new Random(seed));
            var best = ColumnOptimum.Of(blocks, options, out var isProven);
            unproven += isProven ? 0 : 1;
            if (best is null)
            {
                continue; // nothing without a fault, or not known
            }

            var search = new ColumnSearch(options, blocks, 1, [.. blocks.Select(_ => -1)]);
            var least = search.Judge(best.Order, best.Taken, best.Main);
            Assert.InRange(least, 0, Weights.Fault - 1); // the model and the judge mean the same
            var answer = search.Solve();
            missed += answer.HasFault ? 1 : 0;
            if (!answer.HasFault)
            {
                ratios.Add(answer.Cost / least);
            }
        }

        ratios.Sort();
        told.WriteLine(FormattableString.Invariant($"{ratios.Count} columns solved by both, {missed} by the exact solver only, {unproven} not proven; ratio median {ratios[ratios.Count / 2]:0.0000}, 90 % {ratios[ratios.Count * 9 / 10]:0.0000}, worst {ratios[^1]:0.0000}, best {ratios[0]:0.0000}"));
        Assert.True(ratios.Count >= 30);

        // Below 1 where the search took a third angle, which the model forbids. Of columns of nine notes one reached 1.156.
        // In the product a column starts from places known to fit, so what is missed here from nothing is more than is missed there.
        Assert.InRange(ratios[ratios.Count / 2], 0.9, 1.05);
        Assert.InRange(ratios[^1], 0.9, 1.15);
        Assert.InRange(missed, 0, (ratios.Count + missed) / 4);
    }

    private static (Block[] Blocks, Option[][] Options) Column(Random random)
    {
        var count = random.Next(6, 9);
        var blocks = new Block[count];
        var options = new Option[count][];
        for (var note = 0; note < count; note++)
        {
            var id = FormattableString.Invariant($"part {note:00}");
            blocks[note] = new(new(id, [], "P1", "", id, random.Next(100), TextSizes.Usual), [.. Enumerable.Repeat("Words", random.Next(1, 4))], 40, 20, 0);

            // Parts lie anywhere before the column, each with several ways to its own place or to one beside it.
            var (x, y) = (-10 - 70 * random.NextDouble(), 25.0 * note * random.NextDouble() + 60 * random.NextDouble());
            options[note] = [.. Enumerable.Range(0, random.Next(4, 9)).Select(_ => Way(x - 10 * random.NextDouble(), y + 12 * random.NextDouble(), random.Next(5), 20 * random.NextDouble())).OrderBy(option => option.Cost)];
        }

        return (blocks, options);
    }

    private static Option Way(double x, double y, int angle, double extra)
    {
        var run = -x / Angles.Cosines[angle];
        return new(y + Angles.Slopes[angle] * -x, new PaperPoint(x, y), angle, Angles.Slopes[angle], run, run + extra + (angle == 0 ? 0 : Weights.Bend), Ending.Dot, 1, "", true);
    }
}
