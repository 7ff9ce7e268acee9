namespace DetailGen.Solver.Propagation;

/// <summary>Σ factor · variable = total, as two rows. What whole steps forbid beyond that is <see cref="Remainders"/>.</summary>
internal sealed class Equality : Propagator
{
    private readonly Row atMost;
    private readonly Row atLeast;
    private Row tried;

    public Equality(int[] variables, long[] factors, long total)
    {
        atMost = new Row(variables, factors, total);
        atLeast = new Row(variables, Array.ConvertAll(factors, factor => -factor), -total);
        tried = atMost;
    }

    public Row AtMost => atMost;

    public Row AtLeast => atLeast;

    public override bool Propagate(State state)
    {
        tried = atMost;
        if (!atMost.Narrow(state, Index))
        {
            return false;
        }

        tried = atLeast;
        return atLeast.Narrow(state, Index);
    }

    public override void Couple(State state, Coupling coupling) => coupling.Join(atMost.Variables);

    public override void Watch(Watchers watchers)
    {
        foreach (var variable in atMost.Variables)
        {
            watchers.OnLow(variable, Index);
            watchers.OnHigh(variable, Index);
        }
    }

    /// <summary>A failure is explained at once, so it is the row tried last that failed.</summary>
    public override void Explain(int variable, bool isLow, Needed needed)
    {
        var row = variable < 0 ? tried : atMost.Lowers(variable) == isLow ? atMost : atLeast;
        row.ExplainLeast(variable, needed);
    }
}
