namespace DetailGen.Solver.Propagation;

/// <summary>
/// result = ⌈numerator / (scale · divisor)⌉; the divisor is at least 1, be its domain what it may. The numerator is the row's sum less its bound (where its constant stands).
/// Bounds only: once numerator and divisor are fixed, so is the result.
/// </summary>
internal sealed class Quotient(int result, Row numerator, int divisor, long scale) : Propagator
{
    private readonly Row atMost = new(numerator.Variables, numerator.Factors, 0);
    private readonly Row atLeast = new(numerator.Variables, Array.ConvertAll(numerator.Factors, factor => -factor), 0);

    public int Result => result;

    public Row Numerator => numerator;

    public int Divisor => divisor;

    public long Scale => scale;

    /// <summary>What the result has to be where numerator and divisor have these values.</summary>
    public long At(ReadOnlySpan<long> values) => Arithmetic.CeilingDivide(numerator.At(values) - numerator.Bound, scale * values[divisor]);

    public override bool Propagate(State state)
    {
        if (!state.AtLeast(divisor, 1, Index))
        {
            return false;
        }

        // Each narrows what the next builds on; a bound that moved wakes this again.
        var (least, most) = (numerator.Least(state) - numerator.Bound, numerator.Most(state) - numerator.Bound);
        long low = state.Lows[divisor], high = state.Highs[divisor];
        if (!state.AtLeast(result, Arithmetic.CeilingDivide(least, scale * (least >= 0 ? high : low)), Index)
            || !state.AtMost(result, Arithmetic.CeilingDivide(most, scale * (most >= 0 ? low : high)), Index))
        {
            return false;
        }

        long first = state.Lows[result], last = state.Highs[result];
        if (last > 0 && !state.AtLeast(divisor, Arithmetic.CeilingDivide(least, scale * last), Index))
        {
            return false;
        }

        if (first > 1 && !state.AtMost(divisor, Arithmetic.FloorDivide(most - 1, scale * (first - 1)), Index))
        {
            return false;
        }

        (low, high) = (state.Lows[divisor], state.Highs[divisor]);
        atMost.Bound = numerator.Bound + (scale * last * (last >= 0 ? high : low));
        atLeast.Bound = -numerator.Bound - (scale * (first - 1) * (first >= 1 ? low : high)) - 1;
        return atMost.Narrow(state, Index) && atLeast.Narrow(state, Index);
    }

    public override void Watch(Watchers watchers)
    {
        foreach (var variable in numerator.Variables)
        {
            watchers.OnLow(variable, Index);
            watchers.OnHigh(variable, Index);
        }

        foreach (var variable in (int[])[divisor, result])
        {
            watchers.OnLow(variable, Index);
            watchers.OnHigh(variable, Index);
        }
    }

    public override void Explain(int variable, Needed needed)
    {
        foreach (var other in numerator.Variables)
        {
            needed.Both(other);
        }

        needed.Both(divisor);
        needed.Both(result);
    }
}
