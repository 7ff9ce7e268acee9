using DetailGen.Solver.Propagation;

namespace DetailGen.Solver.Search;

/// <summary>
/// Meets the levels in order. Each level's least cost is enclosed from below (refuted costs) and above (assignments found); the bound asked for starts at what
/// propagation alone proves and strides upwards, doubling. A settled cost is kept as a bound for all later levels. Ties go to the smaller value by name.
/// </summary>
internal sealed class Optimizer(Problem problem, IReadOnlyList<Variable> variables)
{
    private readonly State state = problem.State;
    private readonly Finder finder = problem.Finder;
    private readonly Probing probing = new(problem.State, problem.Domains, problem.Variables);
    private long[]? best;

    /// <summary>The best assignment so far, model variables and costs; null before the first.</summary>
    public long[]? Best => best;

    /// <summary>Yes: <see cref="Best"/> is the optimum. No: the hard claims contradict each other.</summary>
    public Found Run(long[] targets, long budget)
    {
        problem.Reset();
        finder.Budget = budget;
        targets.CopyTo(finder.Targets, 0);
        var found = finder.Run();
        if (found != Found.Yes)
        {
            return found;
        }

        best = finder.Solution.ToArray();
        Settle();
        Probe();
        foreach (var objective in problem.Objectives)
        {
            if (!Minimise(objective.Propagator.Row, objective.Propagator.Index, objective.Grain))
            {
                return Found.Spent;
            }

            Probe();
        }

        return BreakTies() ? Found.Yes : Found.Spent;
    }

    private bool Minimise(Row row, int index, long grain)
    {
        var low = row.Least(state);
        var high = row.At(best);
        low = high - Arithmetic.FloorDivide(high - low, grain) * grain;
        var halve = false;
        while (low < high)
        {
            var bound = halve ? low + (high - low) / grain / 2 * grain : high - grain;
            row.Bound = bound;
            state.Wake(index);
            switch (finder.Run())
            {
                case Found.Yes:
                    best = finder.Solution.ToArray();
                    high = row.At(best);
                    halve = true;
                    break;
                case Found.No:
                    low = bound + grain;
                    halve = false;
                    break;
                default:
                    return false;
            }
        }

        row.Bound = high;
        state.Wake(index);
        Settle();
        return state.Steps < state.StepLimit;
    }

    private bool BreakTies()
    {
        foreach (var variable in variables)
        {
            var id = variable.Id;
            if (best![id] > state.Lows[id])
            {
                state.Push();
                var found = state.AtMost(id, best[id] - 1, State.Supposed) ? finder.Run(id) : Found.No;
                state.PopTo(state.Level - 1);
                if (found == Found.Spent)
                {
                    return false;
                }

                if (found == Found.Yes)
                {
                    best = finder.Solution.ToArray();
                }
            }

            if (!state.AtMost(id, best[id], State.Supposed) || !state.AtLeast(id, best[id], State.Supposed))
            {
                throw new System.Diagnostics.UnreachableException();
            }

            Settle();
            if (state.Steps >= state.StepLimit)
            {
                return false;
            }
        }

        return true;
    }

    private void Probe()
    {
        if (!probing.Run())
        {
            throw new System.Diagnostics.UnreachableException();
        }
    }

    private void Settle()
    {
        if (!state.Propagate())
        {
            throw new System.Diagnostics.UnreachableException();
        }
    }
}
