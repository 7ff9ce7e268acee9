namespace DetailGen.Solver.Propagation;

/// <summary>What is missing of a claim of several alternatives is at least what is missing of the nearest; each alternative's rows have it with a factor of -1.</summary>
internal sealed class Shortfall(Row[][] alternatives, int missing) : Propagator
{
    private readonly Alternatives _open = new(alternatives);

    public override bool Propagate(State state)
    {
        var high = state.Highs[missing];
        var nearest = long.MaxValue;
        foreach (var rows in alternatives)
        {
            var most = 0L;
            for (var i = 0; i < rows.Length && most < nearest; i++)
            {
                most = Math.Max(most, rows[i].Least(state) - rows[i].Bound + high);
            }

            nearest = Math.Min(nearest, most);
            if (nearest <= state.Lows[missing])
            {
                break;
            }
        }

        _open.Index = Index;
        return state.AtLeast(missing, nearest, Index) && _open.Propagate(state);
    }

    public override void RaiseCost(long[] values)
    {
        var nearest = long.MaxValue;
        foreach (var rows in alternatives)
        {
            var most = 0L;
            foreach (var row in rows)
            {
                most = Math.Max(most, row.At(values) - row.Bound);
            }

            nearest = Math.Min(nearest, most);
        }

        values[missing] += nearest;
    }

    public override void Watch(Watchers watchers)
    {
        _open.Index = Index;
        _open.Watch(watchers);
    }

    public override void Couple(State state, Coupling coupling) => _open.Couple(state, coupling);

    public override void Explain(int variable, bool isLow, Needed needed) => _open.Explain(variable, isLow, needed);
}
