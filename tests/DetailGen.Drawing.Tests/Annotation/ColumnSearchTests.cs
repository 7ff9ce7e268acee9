using CsCheck;
using DetailGen.Drawing.Annotation.Notes;
using DetailGen.Drawing.Lettering;
using DetailGen.Drawing.Scenes;
using DetailGen.Testing;

namespace DetailGen.Drawing.Tests.Annotation;

/// <summary>The search against all orders and all choices of small columns.</summary>
public sealed class ColumnSearchTests
{
    private static readonly Gen<(Block Block, Option[] Options)> Note =
        from id in Gen.Int[0, 999_999]
        from lines in Gen.Int[1, 3]
        from options in Gen.Select(Gen.Double[-80, -10], Gen.Double[0, 90], Gen.Int[0, 4], Gen.Double[0, 20], Option).Array[2, 5]
        select (new Block(new($"part {id:000000}", [], "P1", "", $"part {id:000000}", id, TextSizes.Usual), [.. Enumerable.Repeat("Words", lines)], 40, 20, 0), options.OrderBy(option => option.Cost).ToArray());

    [Fact]
    public void The_cost_is_within_one_per_cent_of_the_optimum_in_the_median_and_fifteen_in_nineteen_of_twenty()
    {
        var ratios = new List<double>();
        var (missed, feasible) = (0, 0);
        Note.Array[2, 5].Where(notes => notes.Select(note => note.Block.Note.Id).Distinct(StringComparer.Ordinal).Count() == notes.Length).Always(notes =>
        {
            var search = Search(notes);
            var answer = search.Solve();
            var least = Optimum(search, [.. notes.Select(note => note.Options)]);
            feasible += least < Weights.Fault ? 1 : 0;
            missed += least < Weights.Fault && answer.HasFault ? 1 : 0;
            Assert.InRange(answer.Cost, least - 1e-6, double.MaxValue);
            if (!answer.HasFault)
            {
                ratios.Add(answer.Cost / least);
            }
        });
        ratios.Sort();
        Assert.InRange(ratios[ratios.Count / 2], 1 - 1e-9, 1.01);
        Assert.InRange(ratios[ratios.Count * 95 / 100], 1 - 1e-9, 1.15);
        Assert.InRange(missed, 0, feasible / 50);
    }

    [Fact]
    public void The_bound_is_never_above_the_cost() =>
        Note.Array[1, 6].Always(notes =>
        {
            var answer = Search(notes).Solve();
            Assert.True(answer.Bound <= answer.Cost + 1e-6);
        });

    private static ColumnSearch Search((Block Block, Option[] Options)[] notes) =>
        new([.. notes.Select(note => note.Options)], [.. notes.Select(note => note.Block)], 1, [.. notes.Select(_ => -1)]);

    private static Option Option(double x, double y, int angle, double extra)
    {
        var level = y + Angles.Slopes[angle] * -x;
        var run = -x / Angles.Cosines[angle];
        return new(level, new PaperPoint(x, y), angle, Angles.Slopes[angle], run, run + extra + (angle == 0 ? 0 : Weights.Bend), Ending.Dot, 1, "", true);
    }

    /// <summary>With at most two angles, as a column should have; with any where that cannot be.</summary>
    private static double Optimum(ColumnSearch search, Option[][] options)
    {
        var (two, any) = (double.MaxValue, double.MaxValue);
        foreach (var order in Orders([.. Enumerable.Range(0, options.Length)]))
        {
            Choose(order, new Option[order.Length], 0);
        }

        return two < Weights.Fault ? two : any;

        void Choose(int[] order, Option[] taken, int at)
        {
            if (at == order.Length)
            {
                for (var main = 0; main < Angles.Degrees.Length; main++)
                {
                    var cost = search.Judge(order, taken, main);
                    any = Math.Min(any, cost);
                    two = taken.Select(option => option.Angle).Append(main).Distinct().Count() <= 2 ? Math.Min(two, cost) : two;
                }

                return;
            }

            foreach (var option in options[order[at]])
            {
                taken[at] = option;
                Choose(order, taken, at + 1);
            }
        }
    }

    private static IEnumerable<int[]> Orders(int[] items)
    {
        if (items.Length < 2)
        {
            yield return items;
            yield break;
        }

        foreach (var first in items)
        {
            foreach (var rest in Orders([.. items.Where(item => item != first)]))
            {
                yield return [first, .. rest];
            }
        }
    }
}
