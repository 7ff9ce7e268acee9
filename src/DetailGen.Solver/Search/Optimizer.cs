using DetailGen.Solver.Propagation;

namespace DetailGen.Solver.Search;

/// <summary>
/// Meets the levels in order. Each level's least cost is enclosed from below (refuted costs) and above (assignments found); the bound asked for starts at what
/// propagation alone proves and strides upwards, doubling. A settled cost is kept as a bound for all later levels. Ties go to the smaller value by name.
/// </summary>
internal sealed class Optimizer(Problem problem, IReadOnlyList<Variable> variables)
{
    private const long FirstEffort = 8000;

    /// <summary>How far above what is proven the next cost is asked for, of the span that is open. A search that goes astray at one may be short at another.</summary>
    private static readonly long[] Eighths = [0, 1, 4, 8];
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
            if (!Minimise(objective))
            {
                return Found.Spent;
            }

            Probe();
        }

        return BreakTies() ? Found.Yes : Found.Spent;
    }

    private bool Minimise(Objective objective)
    {
        var row = objective.Propagator.Row;
        var grain = objective.Grain;
        var high = row.At(best);
        var low = high - Arithmetic.FloorDivide(high - row.Least(state), grain) * grain;
        PricedSum? priced = null;
        var effort = FirstEffort;
        var stride = 0L;
        var attempt = 0;
        var tried = false;
        while (low < high)
        {
            var open = (high - low) / grain - 1;
            var bound = priced is null ? high - grain : low + Math.Min(open, Math.Max(stride, open * Eighths[attempt] / 8)) * grain;
            Bound(bound);
            switch (RunWithin(effort))
            {
                case Found.Yes:
                    best = finder.Solution.ToArray();
                    high = row.At(best);
                    stride = 0;
                    attempt = 0;
                    Price();
                    break;
                case Found.No:
                    low = bound + grain;
                    stride = (2 * stride) + 1;
                    attempt = 0;
                    break;
                case Found.Spent when state.Steps < state.StepLimit:
                    Price();
                    stride = 0;
                    attempt = (attempt + 1) % Eighths.Length;
                    effort += attempt == 0 ? effort : 0;
                    break;
                default:
                    return false;
            }
        }

        Bound(high);
        Settle();
        return state.Steps < state.StepLimit;

        void Price()
        {
            // Worked out only once a first look has not settled the level: mostly it is not needed.
            if (priced is not null || low >= high || tried)
            {
                return;
            }

            tried = true;
            priced = new Pricing(problem, objective).Claim();
            if (priced is not null)
            {
                state.Add(priced);
                low = Math.Max(low, high - Arithmetic.FloorDivide(high - priced.LeastCost(state), grain) * grain);
            }
        }

        void Bound(long cost)
        {
            row.Bound = cost;
            state.Wake(objective.Propagator.Index);
            if (priced is not null)
            {
                priced.Cost = cost;
                state.Wake(priced.Index);
            }
        }
    }

    /// <summary>A search that is given up after so many steps; what it learnt about the variables stays for the next.</summary>
    private Found RunWithin(long effort)
    {
        var limit = state.StepLimit;
        state.StepLimit = Math.Min(limit, state.Steps + effort);
        var found = finder.Run();
        state.StepLimit = limit;
        return found;
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
