namespace DetailGen.Solver.Propagation;

/// <summary>Σ factor · variable = total, as two rows. What whole steps forbid beyond that is <see cref="Remainders"/>.</summary>
internal sealed class Equality : Propagator
{
    private readonly Row _atMost;
    private readonly Row _atLeast;
    private Row _tried;

    public Equality(int[] variables, long[] factors, long total)
    {
        _atMost = new Row(variables, factors, total);
        _atLeast = new Row(variables, Array.ConvertAll(factors, factor => -factor), -total);
        _tried = _atMost;
    }

    public Row AtMost => _atMost;

    public Row AtLeast => _atLeast;

    public override bool Propagate(State state)
    {
        _tried = _atMost;
        if (!_atMost.Narrow(state, Index))
        {
            return false;
        }

        _tried = _atLeast;
        return _atLeast.Narrow(state, Index);
    }

    public override void Couple(State state, Coupling coupling) => coupling.Join(_atMost.Variables);

    public override void Watch(Watchers watchers)
    {
        foreach (var variable in _atMost.Variables)
        {
            watchers.OnLow(variable, Index);
            watchers.OnHigh(variable, Index);
        }
    }

    /// <summary>A failure is explained at once, so it is the row tried last that failed.</summary>
    public override void Explain(int variable, bool isLow, Needed needed)
    {
        var row = variable < 0 ? _tried : _atMost.Lowers(variable) == isLow ? _atMost : _atLeast;
        row.ExplainLeast(variable, needed);
    }
}
