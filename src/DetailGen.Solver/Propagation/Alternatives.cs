namespace DetailGen.Solver.Propagation;

/// <summary>At least one of the alternatives holds; each is a set of rows that hold together.</summary>
internal sealed class Alternatives(Row[][] alternatives) : Propagator
{
    private int _first;
    private int _second = 1;

    public Row[][] Rows => alternatives;

    public override bool Propagate(State state)
    {
        // While two can hold nothing follows; as a rule they are those of the last time.
        if (_second < alternatives.Length && CanHold(_first, state) && CanHold(_second, state))
        {
            return true;
        }

        var open = -1;
        for (var i = 0; i < alternatives.Length; i++)
        {
            if (!CanHold(i, state))
            {
                continue;
            }

            if (open >= 0)
            {
                (_first, _second) = (open, i);
                return true;
            }

            open = i;
        }

        if (open < 0)
        {
            return state.Fail(Index);
        }

        foreach (var row in alternatives[open])
        {
            if (!row.Narrow(state, Index))
            {
                return false;
            }
        }

        return true;
    }

    private bool CanHold(int alternative, State state)
    {
        foreach (var row in alternatives[alternative])
        {
            if (row.Least(state) > row.Bound)
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>The alternative that has to hold since all others cannot; null while there are several.</summary>
    public Row[]? OnlyOpen(State state)
    {
        Row[]? open = null;
        foreach (var rows in alternatives)
        {
            if (!Array.Exists(rows, row => row.Least(state) > row.Bound))
            {
                if (open is not null)
                {
                    return null;
                }

                open = rows;
            }
        }

        return open;
    }

    public override void Couple(State state, Coupling coupling)
    {
        if (Array.Exists(alternatives, rows => Array.TrueForAll(rows, row => row.Most(state) <= row.Bound)))
        {
            return;
        }

        var joined = -1;
        foreach (var rows in alternatives)
        {
            if (Array.Exists(rows, row => row.Least(state) > row.Bound))
            {
                continue;
            }

            foreach (var row in rows)
            {
                foreach (var variable in row.Variables)
                {
                    joined = coupling.Join(joined, variable);
                }
            }
        }
    }

    public override void RaiseCost(long[] values)
    {
        // the last is that it costs one
        for (var i = 0; i < alternatives.Length; i++)
        {
            if (Array.TrueForAll(alternatives[i], row => row.At(values) <= row.Bound))
            {
                return;
            }
        }

        values[alternatives[^1][0].Variables[0]] = 1;
    }

    public override void Watch(Watchers watchers)
    {
        foreach (var rows in alternatives)
        {
            foreach (var row in rows)
            {
                row.WatchLeast(watchers, Index);
            }
        }
    }

    /// <summary>Whatever excluded an alternative, or narrowed the last, was the least that a row's sum can be.</summary>
    public override void Explain(int variable, bool isLow, Needed needed)
    {
        foreach (var rows in alternatives)
        {
            foreach (var row in rows)
            {
                row.ExplainLeast(-1, needed);
            }
        }
    }
}
