namespace DetailGen.Solver.Propagation;

/// <summary>Σ factor · variable = total, with the bounds also rounded to the remainders that the other variables can make up.</summary>
internal sealed class Equality : Propagator
{
    private readonly Row atMost;
    private readonly Row atLeast;
    private readonly long[] strides;
    private readonly long[] after;

    /// <param name="steps">Of each variable in the row: all its values differ by multiples of this.</param>
    public Equality(int[] variables, long[] factors, long total, long[] steps)
    {
        atMost = new Row(variables, factors, total);
        atLeast = new Row(variables, Array.ConvertAll(factors, factor => -factor), -total);
        strides = new long[variables.Length];
        for (var i = 0; i < strides.Length; i++)
        {
            strides[i] = Math.Abs(factors[i]) * steps[i];
        }

        after = new long[variables.Length + 1];
    }

    public Row AtMost => atMost;

    public Row AtLeast => atLeast;

    public override bool Propagate(State state) =>
        atMost.Narrow(state, Index) && atLeast.Narrow(state, Index) && NarrowToRemainders(state);

    public override void Watch(Watchers watchers)
    {
        foreach (var variable in atMost.Variables)
        {
            watchers.OnLow(variable, Index);
            watchers.OnHigh(variable, Index);
        }
    }

    public override void Explain(int variable, Needed needed)
    {
        foreach (var other in atMost.Variables)
        {
            needed.Both(other);
        }
    }

    private bool NarrowToRemainders(State state)
    {
        var variables = atMost.Variables;
        var factors = atMost.Factors;
        var rest = atMost.Bound;
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
            var base0 = state.Lows[variable];
            var most = (state.Highs[variable] - base0) / step;
            if (first > most)
            {
                return state.Fail(Index);
            }

            var last = first + (most - first) / period * period;
            if (first > 0 && !Moved(state, variable, base0 + first * step, true))
            {
                return false;
            }

            if (last < most && !Moved(state, variable, base0 + last * step, false))
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

    private bool Moved(State state, int variable, long value, bool low) =>
        low ? state.AtLeast(variable, value, Index) : state.AtMost(variable, value, Index);
}
