using DetailGen.Solver.Propagation;

namespace DetailGen.Solver.Search;

internal enum Found
{
    Yes,
    No,
    Spent,
}

/// <summary>
/// Depth-first search that learns: each decision halves one variable's bounds in two; a failure is traced to bounds that cannot all hold. These are kept for
/// the rest of the run, and the search goes back to the first level at which they say something new. Complete, since only what is proven is kept; ends,
/// since no set of bounds is learnt twice and they are finite.
/// </summary>
internal sealed class Finder
{
    private readonly State state;
    private readonly int first;
    private readonly Nogoods nogoods;
    private readonly Tracer tracer;
    private readonly int[] failures;
    private readonly long[] solution;

    /// <param name="first">How many variables are the model's own.</param>
    /// <param name="count">How many there are with the costs.</param>
    public Finder(State state, int first, int count)
    {
        (this.state, this.first) = (state, first);
        nogoods = new Nogoods(state, count);
        tracer = new Tracer(state, nogoods, count);
        failures = new int[count];
        solution = new long[count];
        Targets = new long[count];
    }

    /// <summary>The last assignment found, by id.</summary>
    public ReadOnlySpan<long> Solution => solution;

    /// <summary>What the last refutation used.</summary>
    public Tracer Tracer => tracer;

    /// <summary>Where each variable would like to stand.</summary>
    public long[] Targets { get; }

    /// <summary>Steps this finder may still spend.</summary>
    public long Budget
    {
        get => state.StepLimit - state.Steps;
        set => state.StepLimit = state.Steps + value;
    }

    /// <summary>Finds an assignment within the present bounds, or traces why there is none. The state is left at the level it had.</summary>
    /// <param name="lead">The variable to decide before all others, least value first; -1 for none.</param>
    public Found Run(int lead = -1)
    {
        var outer = state.Level;
        state.Push();
        nogoods.Clear();
        var found = Search(lead, null);
        state.PopTo(outer);
        return found;
    }

    /// <summary>
    /// Finds an assignment in which this holds too, or proves that there is none. Whatever is learnt holds without it, and stays: for the next question if the
    /// bounds have only been narrowed since, and what follows from the claims alone as bounds of the state, which is left at its level.
    /// </summary>
    public Found Ask(Literal? supposed, int lead = -1)
    {
        nogoods.Forget();
        return Search(lead, supposed);
    }

    private Found Search(int lead, Literal? supposed)
    {
        var root = state.Level;
        tracer.Clear();
        for (var i = 0; i < failures.Length; i++)
        {
            failures[i] /= 2;
        }

        if (!state.Propagate())
        {
            tracer.TraceAll();
            return End(root, Found.No);
        }

        while (true)
        {
            while (!nogoods.Propagate())
            {
                if (!JumpBack(root))
                {
                    return End(root, Found.No);
                }
            }

            if (state.Steps >= state.StepLimit)
            {
                return End(root, Found.Spent);
            }

            if (supposed is { } asked && state.Level == root && !asked.Holds(state))
            {
                if (asked.CannotHold(state))
                {
                    return End(root, Found.No);
                }

                Open(asked.Variable, !asked.IsLow, asked.Value);
                continue;
            }

            var variable = lead >= 0 && !state.IsFixed(lead) ? lead : Choose();
            if (variable < 0)
            {
                state.Lows.CopyTo(solution);
                return End(root, Found.Yes);
            }

            Decide(variable, variable == lead);
        }
    }

    private Found End(int root, Found found)
    {
        state.PopTo(root);
        nogoods.Rewind();
        return found;
    }

    /// <summary>The smallest domain first, where failures make a domain count as smaller; the variables proper before those of the costs.</summary>
    private int Choose()
    {
        var lows = state.Lows;
        var highs = state.Highs;
        var best = -1;
        var bestScore = double.MaxValue;
        for (var i = 0; i < first; i++)
        {
            if (lows[i] == highs[i])
            {
                continue;
            }

            var score = (highs[i] - lows[i]) / (double)state.StepOf(i) / (1 + failures[i]);
            if (score < bestScore)
            {
                best = i;
                bestScore = score;
            }
        }

        for (var i = first; best < 0 && i < lows.Length; i++)
        {
            best = lows[i] == highs[i] ? -1 : i;
        }

        return best;
    }

    private void Decide(int variable, bool leastFirst)
    {
        long low = state.Lows[variable], high = state.Highs[variable];
        var target = leastFirst ? low : Math.Clamp(Targets[variable], low, high);
        if (failures[variable] > 3)
        {
            // Value by value does not get on: give the half nearer to the target first.
            var middle = low + (high - low) / 2;
            target = target <= middle ? middle : Math.Min(middle + 1, high);
            Open(variable, target <= middle, target);
            return;
        }

        target = Math.Max(state.MemberAtMost(variable, target), low);
        Open(variable, target < high, target);
    }

    private void Open(int variable, bool atMost, long value)
    {
        state.Push();
        _ = atMost ? state.AtMost(variable, value, Tracer.Decision(state.Level)) : state.AtLeast(variable, value, Tracer.Decision(state.Level));
    }

    /// <summary>Learns from the failure and goes back to where that says something new; false where no decision is to blame.</summary>
    private bool JumpBack(int root)
    {
        if (tracer.Learn(root, out var back) is not { } learnt)
        {
            return false;
        }

        // The decision is to blame too: where its variable fails again and again, it is halved in place of tried value by value.
        var decided = state.TrailAt(state.TrailStart(state.Level)).Variable;
        failures[decided]++;
        failures[learnt[0].Variable] += learnt[0].Variable == decided ? 0 : 1;
        state.PopTo(back);
        return nogoods.Learn(learnt);
    }
}
