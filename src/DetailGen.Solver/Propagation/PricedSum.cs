namespace DetailGen.Solver.Propagation;

/// <summary>
/// Σ (weight · steps from the wish + factor · value) ≤ offset, one of the variables the cost of a level: what that and multiples of other claims say together.
/// Where the multiples are well chosen it bounds the cost from below and forbids every value that is too dear.
/// </summary>
internal sealed class PricedSum(PricedSum.Term[] terms, long offset) : Propagator
{
    private readonly long[] least = new long[terms.Length];

    public override bool Propagate(State state)
    {
        var slack = offset - Least(state);
        if (slack < 0)
        {
            return state.Fail(Index);
        }

        for (var i = 0; i < terms.Length; i++)
        {
            var id = terms[i].Variable;
            if (state.IsFixed(id))
            {
                continue;
            }

            long low = state.Lows[id], high = state.Highs[id], limit = least[i] + slack;
            if (terms[i].At(low) > limit && !state.AtLeast(id, terms[i].First(low, high, limit), Index))
            {
                return false;
            }

            if (terms[i].At(high) > limit && !state.AtMost(id, terms[i].Last(state.Lows[id], high, limit), Index))
            {
                return false;
            }
        }

        return true;
    }

    public override void Watch(Watchers watchers)
    {
        foreach (var term in terms)
        {
            if (term.Weight != 0 || term.Factor > 0)
            {
                watchers.OnLow(term.Variable, Index);
            }

            if (term.Weight != 0 || term.Factor < 0)
            {
                watchers.OnHigh(term.Variable, Index);
            }
        }
    }

    public override void Explain(int variable, bool isLow, Needed needed)
    {
        foreach (var term in terms)
        {
            if (term.Weight != 0 || term.Factor > 0)
            {
                needed.Low(term.Variable);
            }

            if (term.Weight != 0 || term.Factor < 0)
            {
                needed.High(term.Variable);
            }
        }
    }

    private long Least(State state)
    {
        var sum = 0L;
        for (var i = 0; i < terms.Length; i++)
        {
            var id = terms[i].Variable;
            sum += least[i] = terms[i].Least(state.Lows[id], state.Highs[id]);
        }

        return sum;
    }

    /// <param name="Place">Of the wish in the domain; of no account where the weight is 0.</param>
    internal readonly record struct Term(int Variable, Domain Domain, long Place, long Weight, long Factor)
    {
        public long At(long value) => Factor * value + (Weight == 0 ? 0 : Weight * Math.Abs(Domain.PlaceAtMost(value) - Place));

        public long Least(long low, long high)
        {
            if (low == high)
            {
                return At(low);
            }

            if (Weight != 0 && Domain.IsListed)
            {
                var best = long.MaxValue;
                for (var place = Domain.PlaceAtMost(low); place < Domain.Count && Domain.At(place) <= high; place++)
                {
                    best = Math.Min(best, At(Domain.At(place)));
                }

                return best;
            }

            var ends = Math.Min(At(low), At(high));
            var wish = Weight == 0 ? low : Domain.At(Place);
            return wish > low && wish < high ? Math.Min(ends, At(wish)) : ends;
        }

        /// <summary>The least value in low … high whose price is within the limit; one such there is.</summary>
        public long First(long low, long high, long limit)
        {
            if (Weight != 0 && Domain.IsListed)
            {
                var place = Domain.PlaceAtMost(low);
                while (At(Domain.At(place)) > limit)
                {
                    place++;
                }

                return Domain.At(place);
            }

            // The price falls from low on, at one rate up to the wish and at another beyond it.
            var wish = Weight == 0 ? high : Math.Clamp(Domain.At(Place), low, high);
            return wish > low && At(wish) <= limit ? Cross(low, wish, limit) : Cross(wish, high, limit);
        }

        /// <summary>The greatest value in low … high whose price is within the limit; one such there is.</summary>
        public long Last(long low, long high, long limit)
        {
            if (Weight != 0 && Domain.IsListed)
            {
                var place = Domain.PlaceAtMost(high);
                while (At(Domain.At(place)) > limit)
                {
                    place--;
                }

                return Domain.At(place);
            }

            var wish = Weight == 0 ? low : Math.Clamp(Domain.At(Place), low, high);
            return wish < high && At(wish) <= limit ? Cross(high, wish, limit) : Cross(wish, low, limit);
        }

        /// <summary>On a straight piece, from a value that is too dear towards one that may not be, by whole steps: the first within the limit.</summary>
        private long Cross(long from, long to, long limit)
        {
            var steps = Math.Abs(to - from) / Domain.Step;
            if (steps == 0)
            {
                return to;
            }

            var fall = (At(from) - At(to)) / steps;
            if (fall <= 0)
            {
                return from;
            }

            var needed = Math.Min(steps, Arithmetic.CeilingDivide(At(from) - limit, fall));
            return to > from ? from + needed * Domain.Step : from - needed * Domain.Step;
        }
    }
}
