namespace DetailGen.Solver.Propagation;

/// <summary>result = table[key], keys ascending.</summary>
internal sealed class TableLookup(int result, int key, long[] keys, long[] results) : Propagator
{
    public int Result => result;

    public int Key => key;

    /// <summary>The result for a key; null where the table lacks it.</summary>
    public long? At(long value) => Array.BinarySearch(keys, value) is >= 0 and var found ? results[found] : null;

    public override bool Propagate(State state)
    {
        long keyLow = state.Lows[key], keyHigh = state.Highs[key], low = state.Lows[result], high = state.Highs[result];
        var start = Array.BinarySearch(keys, keyLow);
        int first = -1, last = -1;
        long least = long.MaxValue, most = long.MinValue;
        for (var i = start >= 0 ? start : ~start; i < keys.Length && keys[i] <= keyHigh; i++)
        {
            var value = results[i];
            if (value < low || value > high)
            {
                continue;
            }

            first = first < 0 ? i : first;
            last = i;
            least = Math.Min(least, value);
            most = Math.Max(most, value);
        }

        return first < 0
            ? state.Fail(Index)
            : state.AtLeast(key, keys[first], Index) && state.AtMost(key, keys[last], Index)
                && state.AtLeast(result, least, Index) && state.AtMost(result, most, Index);
    }

    public override void Couple(State state, Coupling coupling) => coupling.Join([result, key]);

    public override void RaiseCost(long[] values) => values[result] = At(values[key]) ?? values[result];

    public override void Watch(Watchers watchers)
    {
        watchers.OnLow(key, Index);
        watchers.OnHigh(key, Index);
        watchers.OnLow(result, Index);
        watchers.OnHigh(result, Index);
    }

    public override void Explain(int variable, bool isLow, Needed needed)
    {
        needed.Both(key);
        needed.Both(result);
    }
}
