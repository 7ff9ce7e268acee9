using DetailGen.Solver.Propagation;
using DetailGen.Solver.Search;

namespace DetailGen.Solver.Ranges;

/// <summary>
/// From one assignment to a neighbour: one variable is moved, and whatever breaks is mended by the least move of one other, without search. Finds a neighbour
/// or gives up; a neighbour found holds every claim.
/// </summary>
internal sealed class Nudge(Problem problem)
{
    private const int MostMoves = 48;
    private readonly State _state = problem.State;
    private readonly Domain[] _domains = problem.Domains.ToArray();
    private readonly int[] _moves = new int[problem.Domains.Length];
    private readonly bool[] _ofPart = new bool[problem.Domains.Length];
    private Propagator[] _claims = [];
    private long[] _values = [];
    private int _lead;

    /// <summary>From now on only variables of this part are moved, and only claims on them looked at: the others hold whatever these do.</summary>
    public void Confine(int[] part)
    {
        Array.Clear(_ofPart);
        Array.ForEach(part, id => _ofPart[id] = true);
        _claims = _state.PropagatorsOn(part);
    }

    /// <summary>An assignment in which the variable has this value; null where none was found.</summary>
    /// <param name="from">Holds every claim, by id; not changed.</param>
    public long[]? To(int variable, long value, long[] from)
    {
        if (value < _state.Lows[variable] || value > _state.Highs[variable])
        {
            return null;
        }

        _values = (long[])from.Clone();
        _values[variable] = value;
        _lead = variable;
        Array.Clear(_moves);
        for (var left = MostMoves; left > 0; left--)
        {
            if (Mend() is not { } mended)
            {
                return _values;
            }

            if (!mended)
            {
                return null;
            }
        }

        return null;
    }

    /// <summary>Mends the first broken claim; null where all hold, false where it cannot be mended.</summary>
    private bool? Mend()
    {
        foreach (var propagator in _claims)
        {
            var mended = propagator switch
            {
                AtMostRow single => Mend(single.Row),
                Equality equality => Mend(equality.AtMost) ?? Mend(equality.AtLeast),
                Remainders => null, // hold where the equation does
                Alternatives alternatives => Mend(alternatives),
                Quotient quotient => Put(quotient.Result, quotient.At(_values)),
                TableLookup table => table.At(_values[table.Key]) is { } result ? Put(table.Result, result) : false,
                Membership membership => membership.Holds(_values[membership.Variable]) ? null : false,
                _ => false,
            };
            if (mended is not null)
            {
                return mended;
            }
        }

        return null;
    }

    private bool? Put(int variable, long value) =>
        _values[variable] == value ? null : Move(variable, value);

    private bool Move(int variable, long value)
    {
        if (variable == _lead || !_ofPart[variable] || value < _state.Lows[variable] || value > _state.Highs[variable] || !_domains[variable].Contains(value))
        {
            return false;
        }

        _values[variable] = value;
        _moves[variable]++;
        return true;
    }

    private bool? Mend(Alternatives alternatives)
    {
        Row? nearest = null;
        var least = long.MaxValue;
        foreach (var rows in alternatives.Rows)
        {
            Row? worst = null;
            var most = 0L;
            foreach (var row in rows)
            {
                var over = row.At(_values) - row.Bound;
                if (over > most)
                {
                    (worst, most) = (row, over);
                }
            }

            if (worst is null)
            {
                return null;
            }

            if (most < least)
            {
                (nearest, least) = (worst, most);
            }
        }

        return nearest is not null && Mend(nearest) == true;
    }

    /// <summary>Moves one variable of the row as little as makes it hold: of those moved least often one that need not overshoot, and of these the one with most room.</summary>
    private bool? Mend(Row row)
    {
        var over = row.At(_values) - row.Bound;
        if (over <= 0)
        {
            return null;
        }

        var best = -1;
        var bestValue = 0L;
        var bestMoves = int.MaxValue;
        var bestIsExact = false;
        var bestRoom = -1.0;
        for (var i = 0; i < row.Variables.Length; i++)
        {
            var id = row.Variables[i];
            if (id == _lead || !_ofPart[id])
            {
                continue;
            }

            var factor = row.Factors[i];
            var needed = Arithmetic.CeilingDivide(over, Math.Abs(factor));
            var value = factor > 0 ? _domains[id].Floor(_values[id] - needed) : _domains[id].Ceiling(_values[id] + needed);
            if (value < _state.Lows[id] || value > _state.Highs[id])
            {
                continue;
            }

            var room = (double)(factor > 0 ? _values[id] - _state.Lows[id] : _state.Highs[id] - _values[id]) / needed;
            var isExact = Math.Abs(value - _values[id]) == needed;
            if (_moves[id] < bestMoves || (_moves[id] == bestMoves && (isExact, room).CompareTo((bestIsExact, bestRoom)) > 0))
            {
                (best, bestValue, bestMoves, bestIsExact, bestRoom) = (id, value, _moves[id], isExact, room);
            }
        }

        return best >= 0 && Move(best, bestValue);
    }
}
