using DetailGen.Drawing.Annotation.Notes;
using Google.OrTools.Sat;

namespace DetailGen.Drawing.Tests.Annotation;

/// <summary>The notes of one column as a model of whole numbers: which way each takes, with at most two angles; for columns too long to try every order and choice.</summary>
internal static class ColumnOptimum
{
    /// <summary>Costs in thousandths, levels in tenths of a millimetre: of uneven gaps alone, what is left out is far below a hundredth of a usual cost.</summary>
    private const double Costs = 1000, Levels = 10;

    /// <summary>In the solver's own measure of work, about seconds, so that the same columns are proven on every machine.</summary>
    private const double Effort = 10;

    /// <param name="Order">From the top.</param>
    internal sealed record Best(int[] Order, Option[] Taken, int Main);

    /// <returns>Null where no choice without a fault exists.</returns>
    /// <param name="isProven">False where the effort ran out before the best was known.</param>
    internal static Best? Of(Block[] blocks, Option[][] options, out bool isProven)
    {
        var cp = new CpModel();
        var count = blocks.Length;
        var costs = new ColumnCosts(blocks, 1, [.. blocks.Select(_ => -1)]);
        var taken = options.Select((ways, note) => ways.Select((_, way) => cp.NewBoolVar($"note {note} way {way}")).ToArray()).ToArray();
        var main = Angles.Degrees.Select(_ => cp.NewBoolVar("main")).ToArray();
        var used = Angles.Degrees.Select(_ => cp.NewBoolVar("used")).ToArray();
        var price = new List<LinearExpr>();
        cp.AddExactlyOne(main);
        cp.Add(LinearExpr.Sum(used) <= 2);
        for (var angle = 0; angle < used.Length; angle++)
        {
            cp.AddImplication(main[angle], used[angle]);
        }

        for (var note = 0; note < count; note++)
        {
            cp.AddExactlyOne(taken[note]);
            for (var way = 0; way < taken[note].Length; way++)
            {
                var (option, takes) = (options[note][way], taken[note][way]);
                price.Add((long)Math.Round(Costs * option.Cost) * takes);
                cp.AddImplication(takes, used[option.Angle]);
                if (option.Angle != 0)
                {
                    var other = cp.NewBoolVar("other angle");
                    cp.AddBoolOr([takes.Not(), main[option.Angle], other]);
                    price.Add((long)(Costs * Weights.OtherAngle) * other);
                }
            }
        }

        Pairs(cp, costs, options, taken, price);
        Gaps(cp, blocks, options, taken, price);
        cp.Minimize(LinearExpr.Sum(price));
        var solver = new CpSolver { StringParameters = FormattableString.Invariant($"num_workers:1 max_deterministic_time:{Effort} random_seed:1") };
        var status = solver.Solve(cp);
        isProven = status is CpSolverStatus.Optimal or CpSolverStatus.Infeasible;
        if (status is not CpSolverStatus.Optimal)
        {
            return null;
        }

        Option[] chosen = [.. options.Select((ways, note) => ways[Array.FindIndex(taken[note], solver.BooleanValue)])];
        int[] order = [.. Enumerable.Range(0, count).OrderByDescending(note => chosen[note].Level)];
        return new(order, [.. order.Select(note => chosen[note])], Array.FindIndex(main, solver.BooleanValue));
    }

    // Two ways that disturb each other, or leave their texts too little white, are never taken together; an order against the work costs.
    private static void Pairs(CpModel cp, ColumnCosts costs, Option[][] options, BoolVar[][] taken, List<LinearExpr> price)
    {
        for (var upper = 0; upper < options.Length; upper++)
        {
            for (var lower = 0; lower < options.Length; lower++)
            {
                for (var a = 0; upper != lower && a < options[upper].Length; a++)
                {
                    for (var b = 0; b < options[lower].Length; b++)
                    {
                        var (high, low) = (options[upper][a], options[lower][b]);
                        if (high.Level < low.Level || (high.Level == low.Level && upper > lower))
                        {
                            continue;
                        }

                        if (costs.Faults(upper, high, low) > 0)
                        {
                            cp.AddBoolOr([taken[upper][a].Not(), taken[lower][b].Not()]);
                        }
                        else if (costs.Order(upper, lower) > 0)
                        {
                            var against = cp.NewBoolVar("against the work");
                            cp.AddBoolOr([taken[upper][a].Not(), taken[lower][b].Not(), against]);
                            price.Add((long)Math.Round(Costs * costs.Order(upper, lower)) * against);
                        }
                    }
                }
            }
        }
    }

    // Every gap against their mean, squared, as far as it counts. Multiplied by the number of gaps all of it stays whole.
    private static void Gaps(CpModel cp, Block[] blocks, Option[][] options, BoolVar[][] taken, List<LinearExpr> price)
    {
        var (count, gaps) = (blocks.Length, blocks.Length - 1);
        if (count < 3)
        {
            return;
        }

        const long reach = 10_000;
        var at = Enumerable.Range(0, count).Select(_ => Enumerable.Range(0, count).Select(_ => cp.NewBoolVar("at")).ToArray()).ToArray();
        for (var i = 0; i < count; i++)
        {
            cp.AddExactlyOne(at[i]);
            cp.AddExactlyOne(Enumerable.Range(0, count).Select(place => at[place][i]));
        }

        var levels = taken.Select((ways, note) => LinearExpr.WeightedSum(ways, options[note].Select(option => (long)Math.Round(Levels * option.Level)))).ToArray();
        var tops = new IntVar[count];
        var feet = new IntVar[count];
        for (var place = 0; place < count; place++)
        {
            (tops[place], feet[place]) = (cp.NewIntVar(-reach, reach, "top"), cp.NewIntVar(-reach, reach, "foot"));
            for (var note = 0; note < count; note++)
            {
                cp.Add(tops[place] == levels[note] + (long)Math.Round(Levels * blocks[note].Above)).OnlyEnforceIf(at[place][note]);
                cp.Add(feet[place] == levels[note] - (long)Math.Round(Levels * blocks[note].Below)).OnlyEnforceIf(at[place][note]);
            }
        }

        var white = Enumerable.Range(0, gaps).Select(i => feet[i] - tops[i + 1]).ToArray();
        var most = (long)Math.Round(Costs * Weights.UnevenMost);
        var unit = (long)Math.Round(Levels * Levels * gaps * gaps / (Costs * Weights.Uneven)); // squared deviation that costs a thousandth
        foreach (var gap in white)
        {
            cp.Add(gap >= 0);
            var off = cp.NewIntVar(-reach * gaps, reach * gaps, "off");
            cp.Add(off == gaps * gap - LinearExpr.Sum(white));
            var square = cp.NewIntVar(0, reach * reach * gaps * gaps, "square");
            cp.AddMultiplicationEquality(square, off, off);
            var (cost, isCapped) = (cp.NewIntVar(0, most, "uneven"), cp.NewBoolVar("capped"));
            cp.Add(cost == most).OnlyEnforceIf(isCapped);
            cp.Add(unit * cost >= square).OnlyEnforceIf(isCapped.Not());
            price.Add(cost);
        }
    }
}
