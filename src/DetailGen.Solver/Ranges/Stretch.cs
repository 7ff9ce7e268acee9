using DetailGen.Solver.Propagation;
using DetailGen.Solver.Search;

namespace DetailGen.Solver.Ranges;

/// <summary>
/// Stretches one assignment upwards along one variable: where a claim would break at the first step another variable in it follows at a whole rate, all else
/// stands still. Then each claim is a linear condition on how far the variable moved, so all values of a progression are proven at once.
/// </summary>
internal sealed class Stretch(Problem problem)
{
    private const int MostFollowers = 24;
    private readonly State _state = problem.State;
    private readonly Domain[] _domains = problem.Domains.ToArray();
    private readonly long[] _rates = new long[problem.Domains.Length];
    private readonly bool[] _ofPart = new bool[problem.Domains.Length];
    private Propagator[] _claims = [];
    private long[] _values = [];
    private long _stride;
    private long _least;
    private long _most;

    /// <summary>From now on only variables of this part are moved, and only claims on them looked at: the others hold whatever these do.</summary>
    public void Confine(int[] part)
    {
        Array.Clear(_ofPart);
        Array.ForEach(part, id => _ofPart[id] = true);
        _claims = _state.PropagatorsOn(part);
    }

    /// <summary>Values low, low + stride, … high of the variable that can all be, the assignment's own among them.</summary>
    /// <param name="from">An assignment that holds every claim, by id.</param>
    /// <param name="pace">How far the variable goes while others go by whole rates: 1, or a pace at which quotients follow without a remainder.</param>
    public Progression Of(int variable, long[] from, long pace = 1)
    {
        var here = from[variable];
        var alone = new Progression(here, here, _domains[variable].Step);
        if (_domains[variable].IsListed)
        {
            return alone;
        }

        _values = from;
        Array.Clear(_rates);
        _rates[variable] = pace;
        _stride = Period(pace, variable);
        if (!Follow() || !Bound())
        {
            return alone;
        }

        var step = pace * _stride;
        return new Progression(here + Arithmetic.CeilingDivide(_least, _stride) * step, here + Arithmetic.FloorDivide(_most, _stride) * step, step);
    }

    /// <summary>The least pace at which the first quotient of the variable follows by whole steps; 1 where it is in none.</summary>
    public long Pace(int variable, long[] from)
    {
        foreach (var propagator in _claims)
        {
            if (propagator is Quotient quotient && Array.IndexOf(quotient.Numerator.Variables, variable) is >= 0 and var at && !_state.IsFixed(quotient.Result))
            {
                var unit = quotient.Scale * from[quotient.Divisor];
                return unit / Arithmetic.Gcd(unit, quotient.Numerator.Factors[at]);
            }
        }

        return 1;
    }

    /// <summary>Lets one more variable follow in each claim that would break at the first step, until none does.</summary>
    private bool Follow()
    {
        for (var followers = 0; followers < MostFollowers; followers++)
        {
            if (Broken() is var (row, rate))
            {
                if (!AddFollower(row, rate))
                {
                    return false;
                }
            }
            else if (Left() is { } quotient)
            {
                if (!Follow(quotient))
                {
                    return false;
                }
            }
            else
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>A quotient whose numerator moves by whole units while its result stands still.</summary>
    private Quotient? Left()
    {
        foreach (var propagator in _claims)
        {
            if (propagator is Quotient quotient && _rates[quotient.Divisor] == 0 && _rates[quotient.Result] == 0
                && Rate(quotient.Numerator) is not 0 and var rate && rate % Unit(quotient) == 0)
            {
                return quotient;
            }
        }

        return null;
    }

    private bool Follow(Quotient quotient)
    {
        var (id, rate) = (quotient.Result, Rate(quotient.Numerator) / Unit(quotient));
        if (!_ofPart[id] || _domains[id].IsListed)
        {
            return false;
        }

        _rates[id] = rate;
        _stride = _stride / Arithmetic.Gcd(_stride, Period(rate, id)) * Period(rate, id);
        return true;
    }

    private long Unit(Quotient quotient) => quotient.Scale * _values[quotient.Divisor];

    /// <summary>A row that one step upwards would break, and by how much a unit; null where none would.</summary>
    private (Row Row, long Rate)? Broken()
    {
        foreach (var propagator in _claims)
        {
            var broken = propagator switch
            {
                Equality equality => Breaks(equality.AtMost) ?? Breaks(equality.AtLeast),
                AtMostRow single => Breaks(single.Row),
                Alternatives alternatives => Breaks(alternatives),
                _ => null,
            };
            if (broken is not null)
            {
                return broken;
            }
        }

        return null;
    }

    private (Row Row, long Rate)? Breaks(Row row)
    {
        var rate = Rate(row);
        return rate > 0 && rate > Arithmetic.FloorDivide(row.Bound - row.At(_values), _stride) ? (row, rate) : null;
    }

    /// <summary>Null where some alternative holds now and at the first step too; else what breaks the first that holds now.</summary>
    private (Row Row, long Rate)? Breaks(Alternatives alternatives)
    {
        (Row, long)? first = null;
        foreach (var rows in alternatives.Rows)
        {
            if (Array.Exists(rows, row => row.At(_values) > row.Bound))
            {
                continue;
            }

            (Row, long)? broken = null;
            foreach (var row in rows)
            {
                broken ??= Breaks(row);
            }

            if (broken is null)
            {
                return null;
            }

            first ??= broken;
        }

        return first;
    }

    /// <summary>The one that does not lengthen the stride before one that does; of these the one with most room upwards.</summary>
    private bool AddFollower(Row row, long rate)
    {
        var best = -1;
        var bestStride = long.MaxValue;
        var bestRoom = -1L;
        for (var i = 0; i < row.Variables.Length; i++)
        {
            var id = row.Variables[i];
            if (_rates[id] != 0 || !_ofPart[id] || _domains[id].IsListed || rate % row.Factors[i] != 0)
            {
                continue;
            }

            var own = -rate / row.Factors[i];
            var longer = _stride / Arithmetic.Gcd(_stride, Period(own, id)) * Period(own, id);
            var room = own > 0 ? (_state.Highs[id] - _values[id]) / own : (_values[id] - _state.Lows[id]) / -own;
            if (room < 1)
            {
                continue;
            }

            if (longer < bestStride || (longer == bestStride && room > bestRoom))
            {
                (best, bestStride, bestRoom) = (i, longer, room);
            }
        }

        if (best < 0)
        {
            return false;
        }

        _rates[row.Variables[best]] = -rate / row.Factors[best];
        _stride = bestStride;
        return true;
    }

    /// <summary>How far the leading variable has to move for the follower to move by whole steps.</summary>
    private long Period(long rate, int id) => _domains[id].Step / Arithmetic.Gcd(rate, _domains[id].Step);

    private bool Bound()
    {
        (_least, _most) = (long.MinValue / 4, long.MaxValue / 4);
        for (var id = 0; id < _rates.Length; id++)
        {
            if (_rates[id] != 0)
            {
                Limit(_rates[id], _state.Highs[id] - _values[id], ref _least, ref _most);
                Limit(-_rates[id], _values[id] - _state.Lows[id], ref _least, ref _most);
            }
        }

        foreach (var propagator in _claims)
        {
            switch (propagator)
            {
                case AtMostRow single:
                    Limit(Rate(single.Row), single.Row.Bound - single.Row.At(_values), ref _least, ref _most);
                    break;
                case Alternatives alternatives:
                    Widest(alternatives);
                    break;
                case Quotient quotient when !Keep(quotient):
                    return false;
                case TableLookup table when _rates[table.Key] != 0 || _rates[table.Result] != 0:
                case Membership membership when _rates[membership.Variable] != 0:
                    return false;
                default:
                    break;
            }
        }

        return true;
    }

    /// <summary>The numerator moves as far as the quotient stays what it is, or as far as it will where the quotient goes with it; false where the divisor moves.</summary>
    private bool Keep(Quotient quotient)
    {
        var unit = Unit(quotient);
        if (_rates[quotient.Divisor] != 0 || _rates[quotient.Result] != 0)
        {
            return _rates[quotient.Divisor] == 0 && Rate(quotient.Numerator) == _rates[quotient.Result] * unit;
        }

        var above = quotient.Numerator.Bound + (unit * _values[quotient.Result]) - quotient.Numerator.At(_values);
        var rate = Rate(quotient.Numerator);
        Limit(rate, above, ref _least, ref _most);
        Limit(-rate, unit - 1 - above, ref _least, ref _most);
        return true;
    }

    /// <summary>Of the alternatives that hold now, keeps the one that holds longest.</summary>
    private void Widest(Alternatives alternatives)
    {
        var (low, high) = (0L, 0L);
        foreach (var rows in alternatives.Rows)
        {
            var (from, to) = (_least, _most);
            var holds = true;
            foreach (var row in rows)
            {
                var slack = row.Bound - row.At(_values);
                holds = holds && slack >= 0;
                Limit(Rate(row), slack, ref from, ref to);
            }

            if (holds && to - from > high - low)
            {
                (low, high) = (from, to);
            }
        }

        (_least, _most) = (low, high);
    }

    private long Rate(Row row)
    {
        var rate = 0L;
        for (var i = 0; i < row.Variables.Length; i++)
        {
            rate += row.Factors[i] * _rates[row.Variables[i]];
        }

        return rate;
    }

    /// <summary>rate · moved ≤ slack.</summary>
    private static void Limit(long rate, long slack, ref long least, ref long most)
    {
        if (rate > 0)
        {
            most = Math.Min(most, Arithmetic.FloorDivide(slack, rate));
        }
        else if (rate < 0)
        {
            least = Math.Max(least, -Arithmetic.FloorDivide(slack, -rate));
        }
    }
}

/// <summary>low, low + stride, … high.</summary>
internal readonly record struct Progression(long Low, long High, long Stride)
{
    public bool Holds(long value) => value >= Low && value <= High && (value - Low) % Stride == 0;
}
