namespace DetailGen.Solver.Propagation;

/// <summary>Rounds the bounds in an equation to the remainders that the other variables can make up, since all of them move by whole steps.</summary>
internal sealed class Remainders : Propagator
{
    private readonly Row row;
    private readonly long[] strides;
    private readonly long[] after;

    /// <param name="row">The equation's sum and total.</param>
    /// <param name="steps">Of each variable in the row: all its values differ by multiples of this.</param>
    public Remainders(Row row, long[] steps)
    {
        this.row = row;
        strides = new long[steps.Length];
        for (var i = 0; i < strides.Length; i++)
        {
            strides[i] = Math.Abs(row.Factors[i]) * steps[i];
        }

        after = new long[steps.Length + 1];
    }

    public override bool Propagate(State state)
    {
        var variables = row.Variables;
        var factors = row.Factors;
        var rest = row.Bound;
        after[variables.Length] = 0;
        for (var i = variables.Length - 1; i >= 0; i--)
        {
            // Where a variable stands now is a base from which it moves by whole strides only.
            rest -= factors[i] * state.Lows[variables[i]];
            after[i] = state.IsFixed(variables[i]) ? after[i + 1] : Arithmetic.Gcd(after[i + 1], strides[i]);
        }

        if (after[0] == 0)
        {
            return rest == 0 || state.Fail(Index);
        }

        if (rest % after[0] != 0)
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

            var others = Arithmetic.Gcd(before, after[i + 1]);
            before = Arithmetic.Gcd(before, strides[i]);
            if (others == 0)
            {
                continue; // the only one left: the rows have fixed it, or will when they run again
            }

            var shared = Arithmetic.Gcd(strides[i], others);
            var period = others / shared;
            if (period == 1)
            {
                continue;
            }

            // stride · k ≡ rest (mod others), so k ≡ first (mod period), counted in steps from the lower bound
            var signed = factors[i] > 0 ? rest : -rest;
            var step = strides[i] / Math.Abs(factors[i]);
            var first = (long)((Int128)Arithmetic.Modulo(signed / shared, period) * Arithmetic.Inverse(strides[i] / shared, period) % period);
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
        foreach (var variable in row.Variables)
        {
            watchers.OnLow(variable, Index);
            watchers.OnHigh(variable, Index);
        }
    }

    /// <summary>Which of the others were fixed shapes the remainder, so both their sides count.</summary>
    public override void Explain(int variable, bool isLow, Needed needed)
    {
        foreach (var other in row.Variables)
        {
            needed.Both(other);
        }
    }
}
