namespace DetailGen.Solver.Propagation;

/// <summary>The variable has one of these values, ascending.</summary>
internal sealed class Membership(int variable, long[] values) : Propagator
{
    public int Variable => variable;

    public bool Holds(long value) => Array.BinarySearch(values, value) >= 0;

    public override bool Propagate(State state)
    {
        var first = Array.BinarySearch(values, state.Lows[variable]);
        first = first >= 0 ? first : ~first;
        var last = Array.BinarySearch(values, state.Highs[variable]);
        last = last >= 0 ? last : ~last - 1;
        return first > last
            ? state.Fail(Index)
            : state.AtLeast(variable, values[first], Index) && state.AtMost(variable, values[last], Index);
    }

    public override void Watch(Watchers watchers)
    {
        watchers.OnLow(variable, Index);
        watchers.OnHigh(variable, Index);
    }

    public override void Explain(int moved, bool isLow, Needed needed) => needed.Both(variable);
}
