namespace DetailGen.Solver.Propagation;

/// <summary>Σ factor · variable ≤ bound. Its sums were proven to stay far inside 64 bits when the problem was built.</summary>
internal sealed class Row(int[] variables, long[] factors, long bound)
{
    public int[] Variables { get; } = variables;

    public long[] Factors { get; } = factors;

    public long Bound { get; set; } = bound;

    /// <summary>The least the sum can be.</summary>
    public long Least(State state)
    {
        unchecked
        {
            var lows = state.Lows;
            var highs = state.Highs;
            var sum = 0L;
            for (var i = 0; i < Variables.Length; i++)
            {
                var factor = Factors[i];
                sum += factor * (factor > 0 ? lows[Variables[i]] : highs[Variables[i]]);
            }

            return sum;
        }
    }

    /// <summary>The most the sum can be.</summary>
    public long Most(State state)
    {
        unchecked
        {
            var lows = state.Lows;
            var highs = state.Highs;
            var sum = 0L;
            for (var i = 0; i < Variables.Length; i++)
            {
                var factor = Factors[i];
                sum += factor * (factor > 0 ? highs[Variables[i]] : lows[Variables[i]]);
            }

            return sum;
        }
    }

    public long At(ReadOnlySpan<long> values)
    {
        var sum = 0L;
        for (var i = 0; i < Variables.Length; i++)
        {
            sum += Factors[i] * values[Variables[i]];
        }

        return sum;
    }

    /// <summary>Narrows each variable to what the others leave.</summary>
    public bool Narrow(State state, int reason)
    {
        unchecked
        {
            var slack = Bound - Least(state);
            if (slack < 0)
            {
                return state.Fail(reason);
            }

            for (var i = 0; i < Variables.Length; i++)
            {
                var variable = Variables[i];
                var factor = Factors[i];
                var low = state.Lows[variable];
                var high = state.Highs[variable];
                if (factor > 0)
                {
                    if (factor * (high - low) > slack && !state.AtMost(variable, low + slack / factor, reason))
                    {
                        return false;
                    }
                }
                else if (-factor * (high - low) > slack && !state.AtLeast(variable, high - slack / -factor, reason))
                {
                    return false;
                }
            }

            return true;
        }
    }

    /// <summary>Holds each term at its least.</summary>
    public void Fix(State state)
    {
        for (var i = 0; i < Variables.Length; i++)
        {
            var id = Variables[i];
            _ = Factors[i] > 0 ? state.AtMost(id, state.Lows[id], State.Supposed) : state.AtLeast(id, state.Highs[id], State.Supposed);
        }
    }

    /// <summary>True where the sum falls as the variable grows, so that this row moves its lower bound.</summary>
    public bool Lowers(int variable) => Factors[Array.IndexOf(Variables, variable)] < 0;

    /// <summary>Wakes the propagator where the least of the sum grows.</summary>
    public void WatchLeast(Watchers watchers, int propagator)
    {
        for (var i = 0; i < Variables.Length; i++)
        {
            if (Factors[i] > 0)
            {
                watchers.OnLow(Variables[i], propagator);
            }
            else
            {
                watchers.OnHigh(Variables[i], propagator);
            }
        }
    }

    /// <summary>Marks the bounds that make up the least of the sum, but for one variable's (-1: all).</summary>
    public void ExplainLeast(int except, Needed needed)
    {
        for (var i = 0; i < Variables.Length; i++)
        {
            if (Variables[i] == except)
            {
                continue;
            }

            if (Factors[i] > 0)
            {
                needed.Low(Variables[i]);
            }
            else
            {
                needed.High(Variables[i]);
            }
        }
    }
}
