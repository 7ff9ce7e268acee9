namespace DetailGen.Solver.Propagation;

/// <summary>
/// Σ (weight · steps from the wish + factor · value) ≤ offset, one of the variables the cost of a level: what that and multiples of other claims say together.
/// Where the multiples are well chosen it bounds the cost from below and forbids every value that is too dear.
/// </summary>
internal sealed class PricedSum(PricedSum.Term[] terms, long offset) : Propagator
{
    private readonly Price[] _prices = new Price[terms.Length];

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

            var (least, atLow, atHigh) = _prices[i];
            long low = state.Lows[id], high = state.Highs[id], limit = least + slack;
            if (atLow > limit && !state.AtLeast(id, terms[i].First(low, high, limit), Index))
            {
                return false;
            }

            if (atHigh > limit && !state.AtMost(id, terms[i].Last(state.Lows[id], high, limit), Index))
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
            _prices[i] = terms[i].Between(state.Lows[id], state.Highs[id]);
            sum += _prices[i].Least;
        }

        return sum;
    }

    /// <summary>What a term costs at its least, and at both ends.</summary>
    internal readonly record struct Price(long Least, long AtLow, long AtHigh);

    /// <summary>What a variable costs: its factor, and its distance from a wish times a weight.</summary>
    /// <param name="Place">Of the wish in the domain; of no account where the weight is 0.</param>
    internal readonly record struct Term(int Variable, Domain Domain, long Place, long Weight, long Factor)
    {
        public long At(long value) => Factor * value + (Weight == 0 ? 0 : Weight * Math.Abs(Domain.PlaceAtMost(value) - Place));

        private long AtPlace(long place) => Factor * Domain.At(place) + (Weight * Math.Abs(place - Place));

        public Price Between(long low, long high)
        {
            var atLow = At(low);
            if (low == high)
            {
                return new(atLow, atLow, atLow);
            }

            var atHigh = At(high);
            var least = Math.Min(atLow, atHigh);
            if (Weight == 0)
            {
                return new(least, atLow, atHigh);
            }

            if (Domain.IsListed)
            {
                for (var place = Domain.PlaceAtMost(low) + 1; Domain.At(place) < high; place++)
                {
                    least = Math.Min(least, AtPlace(place));
                }

                return new(least, atLow, atHigh);
            }

            var wish = Domain.At(Place);
            return new(wish > low && wish < high ? Math.Min(least, Factor * wish) : least, atLow, atHigh);
        }

        /// <summary>The least value in low … high whose price is within the limit; one such there is.</summary>
        public long First(long low, long high, long limit)
        {
            if (Weight != 0 && Domain.IsListed)
            {
                var place = Domain.PlaceAtMost(low);
                while (AtPlace(place) > limit)
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
                while (AtPlace(place) > limit)
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
