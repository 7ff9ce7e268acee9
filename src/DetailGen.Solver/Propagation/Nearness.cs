namespace DetailGen.Solver.Propagation;

/// <summary>What it costs that a variable should have one of these values, ascending: the distance to the nearest, or where it is only counted 1 if it has none of them.</summary>
internal sealed class Nearness(int variable, long[] values, int cost, bool counted) : Propagator
{
    public override bool Propagate(State state)
    {
        long low = state.Lows[variable], high = state.Highs[variable];
        var above = FirstFrom(low, values);
        var distance = Distance(low, high, above, values);
        if (!state.AtLeast(cost, counted ? Math.Min(1, distance) : distance, Index))
        {
            return false;
        }

        if (counted && state.Highs[cost] > 0)
        {
            return true;
        }

        // Were there no value within reach, the cost would have failed.
        var reach = state.Highs[cost];
        if (!(above > 0 && low - values[above - 1] <= reach) && !state.AtLeast(variable, values[above] - reach, Index))
        {
            return false;
        }

        var beyond = FirstFrom(high, values);
        return (beyond < values.Length && values[beyond] - high <= reach) || state.AtMost(variable, values[beyond - 1] + reach, Index);
    }

    public override void Couple(State state, Coupling coupling) => coupling.Join([variable, cost]);

    public override void RaiseCost(long[] of)
    {
        var distance = Distance(of[variable], values);
        of[cost] += counted ? Math.Min(1, distance) : distance;
    }

    public override void Watch(Watchers watchers)
    {
        watchers.OnLow(variable, Index);
        watchers.OnHigh(variable, Index);
        watchers.OnHigh(cost, Index);
    }

    public override void Explain(int moved, bool isLow, Needed needed)
    {
        if (moved != variable)
        {
            needed.Both(variable);
        }
        else if (isLow)
        {
            needed.Low(variable);
        }
        else
        {
            needed.High(variable);
        }

        if (moved != cost)
        {
            needed.High(cost);
        }
    }

    /// <summary>From the value to the nearest of these.</summary>
    public static long Distance(long value, long[] values) => Distance(value, value, FirstFrom(value, values), values);

    /// <summary>The greatest distance that any number from low to high has from the nearest of the values.</summary>
    public static long Farthest(long low, long high, long[] values)
    {
        var farthest = Math.Max(0, Math.Max(values[0] - low, high - values[^1]));
        for (var i = 1; i < values.Length; i++)
        {
            farthest = Math.Max(farthest, (values[i] - values[i - 1]) / 2);
        }

        return farthest;
    }

    private static int FirstFrom(long value, long[] values)
    {
        var found = Array.BinarySearch(values, value);
        return found >= 0 ? found : ~found;
    }

    /// <param name="above">Place of the first value from low on.</param>
    private static long Distance(long low, long high, int above, long[] values)
    {
        if (above < values.Length && values[above] <= high)
        {
            return 0;
        }

        return Math.Min(above > 0 ? low - values[above - 1] : long.MaxValue, above < values.Length ? values[above] - high : long.MaxValue);
    }
}
