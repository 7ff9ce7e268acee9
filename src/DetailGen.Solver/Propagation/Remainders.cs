namespace DetailGen.Solver.Propagation;

/// <summary>Rounds the bounds in an equation to the remainders that the other variables can make up, since all of them move by whole steps.</summary>
internal sealed class Remainders : Propagator
{
    private readonly Row _row;
    private readonly long[] _strides;
    private readonly long[] _after;

    /// <param name="row">The equation's sum and total.</param>
    /// <param name="steps">Of each variable in the row: all its values differ by multiples of this.</param>
    public Remainders(Row row, long[] steps)
    {
        _row = row;
        _strides = new long[steps.Length];
        for (var i = 0; i < _strides.Length; i++)
        {
            _strides[i] = Math.Abs(row.Factors[i]) * steps[i];
        }

        _after = new long[steps.Length + 1];
    }

    public override bool Propagate(State state)
    {
        var variables = _row.Variables;
        var factors = _row.Factors;
        var rest = _row.Bound;
        _after[variables.Length] = 0;
        for (var i = variables.Length - 1; i >= 0; i--)
        {
            // Where a variable stands now is a base from which it moves by whole strides only.
            rest -= factors[i] * state.Lows[variables[i]];
            _after[i] = state.IsFixed(variables[i]) ? _after[i + 1] : Arithmetic.Gcd(_after[i + 1], _strides[i]);
        }

        if (_after[0] == 0)
        {
            return rest == 0 || state.Fail(Index);
        }

        if (rest % _after[0] != 0)
        {
            return state.Fail(Index);
        }

        var before = 0L;
        for (var i = 0; i < variables.Length; i++)
        {
            var variable = variables[i];
            if (state.IsFixed(variable))
            {
                continue;
            }

            var others = Arithmetic.Gcd(before, _after[i + 1]);
            before = Arithmetic.Gcd(before, _strides[i]);
            if (others == 0)
            {
                continue; // the only one left: the rows have fixed it, or will when they run again
            }

            var shared = Arithmetic.Gcd(_strides[i], others);
            var period = others / shared;
            if (period == 1)
            {
                continue;
            }

            // stride · k ≡ rest (mod others), so k ≡ first (mod period), counted in steps from the lower bound
            var signed = factors[i] > 0 ? rest : -rest;
            var step = _strides[i] / Math.Abs(factors[i]);
            var first = (long)((Int128)Arithmetic.Modulo(signed / shared, period) * Arithmetic.Inverse(_strides[i] / shared, period) % period);
            var from = state.Lows[variable];
            var most = (state.Highs[variable] - from) / step;
            if (first > most)
            {
                return state.Fail(Index);
            }

            var last = first + (most - first) / period * period;
            if (first > 0 && !state.AtLeast(variable, from + first * step, Index))
            {
                return false;
            }

            if (last < most && !state.AtMost(variable, from + last * step, Index))
            {
                return false;
            }

            if (first > 0)
            {
                state.Wake(Index); // the base moved: the others are looked at again from there
                return true;
            }
        }

        return true;
    }

    public override void Watch(Watchers watchers)
    {
        foreach (var variable in _row.Variables)
        {
            watchers.OnLow(variable, Index);
            watchers.OnHigh(variable, Index);
        }
    }

    /// <summary>Which of the others were fixed shapes the remainder, so both their sides count.</summary>
    public override void Explain(int variable, bool isLow, Needed needed)
    {
        foreach (var other in _row.Variables)
        {
            needed.Both(other);
        }
    }
}
