using DetailGen.Solver.Propagation;

namespace DetailGen.Solver.Search;

internal enum Found
{
    Yes,
    No,
    Spent,
}

/// <summary>
/// Depth-first search that jumps back: each decision halves one variable's bounds in two; a failure is traced to the decisions it rests on, the deepest
/// of them is turned into its opposite, and those in between are forgotten. Complete, since the opposite is then implied; ends, since bounds are finite.
/// </summary>
internal sealed class Finder(State state, int first, int count)
{
    private readonly Tracer tracer = new(state, count);
    private readonly int[] failures = new int[count];
    private readonly long[] solution = new long[count];
    private Decision[] decisions = new Decision[64];

    /// <summary>The last assignment found, by id.</summary>
    public ReadOnlySpan<long> Solution => solution;

    /// <summary>What the last refutation used.</summary>
    public Tracer Tracer => tracer;

    /// <summary>Where each variable would like to stand.</summary>
    public long[] Targets { get; } = new long[count];

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
        var root = state.Level;
        tracer.Clear();
        for (var i = 0; i < failures.Length; i++)
        {
            failures[i] /= 2;
        }

        if (!state.Propagate())
        {
            tracer.Trace(root);
            return End(outer, Found.No);
        }

        while (state.Steps < state.StepLimit)
        {
            var variable = lead >= 0 && !state.IsFixed(lead) ? lead : Choose();
            if (variable < 0)
            {
                state.Lows.CopyTo(solution);
                return End(outer, Found.Yes);
            }

            Decide(variable, variable == lead);
            while (!state.Propagate())
            {
                if (!JumpBack(root))
                {
                    return End(outer, Found.No);
                }
            }
        }

        return End(outer, Found.Spent);
    }

    private Found End(int outer, Found found)
    {
        state.PopTo(outer);
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
        if (state.Level >= decisions.Length)
        {
            Array.Resize(ref decisions, state.Level * 2);
        }

        decisions[state.Level] = new Decision(variable, atMost, value);
        _ = atMost ? state.AtMost(variable, value, Tracer.Decision(state.Level)) : state.AtLeast(variable, value, Tracer.Decision(state.Level));
    }

    /// <summary>Undoes the deepest decision to blame and posts its opposite; false where none is to blame.</summary>
    private bool JumpBack(int root)
    {
        while (true)
        {
            tracer.Trace(root);
            var deepest = tracer.Deepest();
            if (deepest <= root)
            {
                return false;
            }

            var decision = decisions[deepest];
            state.PopTo(deepest - 1);
            var reason = tracer.Keep(deepest);
            failures[decision.Variable]++;
            var posted = decision.AtMost
                ? state.AtLeast(decision.Variable, decision.Value + 1, reason)
                : state.AtMost(decision.Variable, decision.Value - 1, reason);
            if (posted)
            {
                return true;
            }
        }
    }

    private readonly record struct Decision(int Variable, bool AtMost, long Value);
}
