namespace DetailGen.Solver.Propagation;

/// <summary>Keeps one row.</summary>
internal sealed class AtMostRow(Row row) : Propagator
{
    public Row Row => row;

    public override bool Propagate(State state) => row.Narrow(state, Index);

    public override void Couple(State state, Coupling coupling)
    {
        if (row.Most(state) > row.Bound)
        {
            coupling.Join(row.Variables);
        }
    }

    public override void RaiseCost(long[] values)
    {
        // the cost is last
        var over = row.At(values) - row.Bound;
        if (over > 0)
        {
            values[row.Variables[^1]] += Arithmetic.CeilingDivide(over, -row.Factors[^1]);
        }
    }

    public override void Watch(Watchers watchers) => row.WatchLeast(watchers, Index);

    public override void Explain(int variable, bool isLow, Needed needed) => row.ExplainLeast(variable, needed);
}
