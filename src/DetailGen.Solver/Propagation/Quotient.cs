namespace DetailGen.Solver.Propagation;

/// <summary>
/// result = ⌈numerator / (scale · divisor)⌉; the divisor is at least 1, be its domain what it may. The numerator is the row's sum less its bound (where its constant stands).
/// Bounds only: once numerator and divisor are fixed, so is the result.
/// </summary>
internal sealed class Quotient(int result, Row numerator, int divisor, long scale) : Propagator
{
    private readonly Row _atMost = new(numerator.Variables, numerator.Factors, 0);
    private readonly Row _atLeast = new(numerator.Variables, Array.ConvertAll(numerator.Factors, factor => -factor), 0);
    private readonly bool _appearsTwice = result == divisor || Array.IndexOf(numerator.Variables, result) >= 0 || Array.IndexOf(numerator.Variables, divisor) >= 0;

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
        _atMost.Bound = numerator.Bound + (scale * last * (last >= 0 ? high : low));
        _atLeast.Bound = -numerator.Bound - (scale * (first - 1) * (first >= 1 ? low : high)) - 1;
        return _atMost.Narrow(state, Index) && _atLeast.Narrow(state, Index);
    }

    public override void Couple(State state, Coupling coupling)
    {
        var joined = coupling.Join(coupling.Join(-1, result), divisor);
        foreach (var variable in numerator.Variables)
        {
            joined = coupling.Join(joined, variable);
        }
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

    /// <summary>One side of the numerator is enough, and of the result where the sign does not hang on it; what stands in two places is explained in full.</summary>
    public override void Explain(int variable, bool isLow, Needed needed)
    {
        if (variable < 0 || _appearsTwice)
        {
            foreach (var other in numerator.Variables)
            {
                needed.Both(other);
            }

            needed.Both(divisor);
            needed.Both(result);
            return;
        }

        // The least of the numerator raises result and divisor; the most of the result bounds the numerator from above, and so the divisor from below.
        var fromBelow = variable == result || variable == divisor ? isLow : numerator.Lowers(variable) == isLow;
        (fromBelow ? _atMost : _atLeast).ExplainLeast(variable, needed);
        if (variable != divisor)
        {
            needed.Both(divisor);
        }

        if (variable != result)
        {
            needed.Add((2 * result) + (fromBelow ? 0 : 1));
        }
    }
}
