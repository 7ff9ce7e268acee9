namespace DetailGen.Drawing.Annotation.Notes;

/// <summary>
/// The best choice among the options of a column's notes for one order of them. A dynamic programme from the bottom gives the least cost where only neighbours can disturb
/// each other; a search from the top guided by it sets every leader against all above it, the promising first. Work is counted in steps.
/// </summary>
internal sealed class Descent
{
    private readonly int _mostSteps;
    private readonly Option[][] _usable;
    private readonly double[][] _own;
    private readonly double[][] _levels;
    private readonly ColumnCosts _costs;

    /// <summary>For each pair of notes, whether the leaders of their options keep off each other: 1 yes, −1 no, 0 not asked yet.</summary>
    private readonly sbyte[]?[] _apart;

    // By place in the order: the least cost from an option downwards, and the same from the least on with the options that have it.
    private readonly double[][] _toGo;
    private readonly double[][] _sorted;
    private readonly int[][] _sortedOptions;

    // What the programme was last worked out for: orders that end alike share its rows.
    private readonly int[] _known;
    private double _knownGap;

    private readonly int[] _taken;
    private readonly int[] _best;
    private bool _found;
    private double _limit;
    private int[] _order = [];
    private double _meanGap;

    /// <param name="usable">For each note, cheapest first, none empty.</param>
    /// <param name="own">What each of them costs alone.</param>
    /// <param name="mostSteps">Once a choice is found; four times as many before.</param>
    internal Descent(Option[][] usable, double[][] own, ColumnCosts costs, int mostSteps)
    {
        (_usable, _own, _costs, _mostSteps) = (usable, own, costs, mostSteps);
        var (count, most) = (usable.Length, usable.Max(options => options.Length));
        double[][] Rows() => [.. usable.Select(_ => new double[most])];
        (_toGo, _sorted, _sortedOptions) = (Rows(), Rows(), [.. usable.Select(_ => new int[most])]);
        _levels = [.. usable.Select(options => Array.ConvertAll(options, option => option.Level))];
        _apart = new sbyte[]?[count * count];
        (_known, _taken, _best) = (new int[count], new int[count], new int[count]);
        Array.Fill(_known, -1);
    }

    /// <summary>Steps taken since it was set to 0; beyond a bound every note simply takes its cheapest option.</summary>
    internal int Steps { get; set; }

    /// <param name="meanGap">White that the notes are to leave between them, mm.</param>
    /// <param name="limit">Choices that cost as much are not looked for.</param>
    /// <returns>The option of each note of the order; where the limit cuts everything off, each note's cheapest.</returns>
    internal Option[] Place(int[] order, double meanGap, double limit)
    {
        (_order, _meanGap, _limit, _found) = (order, meanGap, limit, false);
        if (Steps < 4 * _mostSteps)
        {
            WorkUp();
            Go(0, 0);
        }

        var taken = new Option[order.Length];
        for (var i = 0; i < taken.Length; i++)
        {
            taken[i] = _usable[order[i]][_found ? _best[i] : 0];
        }

        return taken;
    }

    private void WorkUp()
    {
        var last = _order.Length - 1;
        while (last >= 0 && _knownGap == _meanGap && _known[last] == _order[last])
        {
            last--;
        }

        for (var i = last; i >= 0; i--)
        {
            WorkUp(i);
        }

        _order.CopyTo(_known, 0);
        _knownGap = _meanGap;
    }

    private void WorkUp(int at)
    {
        var (here, toGo, isLast) = (_usable[_order[at]], _toGo[at], at + 1 == _order.Length);
        for (var o = 0; o < here.Length; o++)
        {
            toGo[o] = _own[_order[at]][o] + (isLast ? 0 : LeastBelow(at, o));
        }

        var (sorted, options) = (_sorted[at], _sortedOptions[at]);
        for (var o = 0; o < here.Length; o++)
        {
            (sorted[o], options[o]) = (toGo[o], o);
        }

        Array.Sort(sorted, options, 0, here.Length);
    }

    // From the cheapest continuation on: what a pair costs each other is never less than nothing, so most need not be looked at.
    private double LeastBelow(int at, int option)
    {
        var least = double.MaxValue;
        var (upper, lower) = (_order[at], _order[at + 1]);
        var (level, levels, sorted, options) = (_levels[upper][option], _levels[lower], _sorted[at + 1], _sortedOptions[at + 1]);
        for (var p = 0; p < levels.Length && sorted[p] < least; p++)
        {
            var next = options[p];
            var clear = sorted[p] + _costs.Between(upper, level, lower, levels[next], _meanGap, apart: true);
            if (clear < least)
            {
                least = Apart(upper, option, lower, next) ? clear : Math.Min(least, sorted[p] + _costs.Between(upper, level, lower, levels[next], _meanGap, apart: false));
            }
        }

        return least;
    }

    private double Between(int above, int option)
    {
        var (upper, taken, lower) = (_order[above], _taken[above], _order[above + 1]);
        return _costs.Between(upper, _levels[upper][taken], lower, _levels[lower][option], _meanGap, Apart(upper, taken, lower, option));
    }

    // The same pairs are asked for in every order: each is worked out once.
    private bool Apart(int upper, int a, int lower, int b)
    {
        ref var table = ref _apart[upper * _usable.Length + lower];
        table ??= new sbyte[_usable[upper].Length * _usable[lower].Length];
        ref var known = ref table[a * _usable[lower].Length + b];
        if (known == 0)
        {
            known = (sbyte)(_costs.Apart(_usable[upper][a], _usable[lower][b]) ? 1 : -1);
        }

        return known > 0;
    }

    private void Go(int at, double spent)
    {
        if (at == _order.Length)
        {
            if (spent < _limit - 1e-9)
            {
                (_limit, _found) = (spent, true);
                _taken.CopyTo(_best, 0);
            }

            return;
        }

        var note = _order[at];
        var (usable, own, toGo) = (_usable[note], _own[note], _toGo[at]);
        var most = usable.Length;
        Span<int> next = most <= 128 ? stackalloc int[most] : new int[most];
        Span<int> choices = most <= 128 ? stackalloc int[most] : new int[most];
        Span<double> promise = most <= 128 ? stackalloc double[most] : new double[most];
        Span<double> between = most <= 128 ? stackalloc double[most] : new double[most];
        var count = 0;
        for (var o = 0; o < most; o++)
        {
            if (spent + toGo[o] >= _limit - 1e-9)
            {
                continue;
            }

            var cost = at == 0 ? 0 : Between(at - 1, o);
            if (spent + toGo[o] + cost is var least && least < _limit - 1e-9)
            {
                (next[count], promise[count], between[count]) = (count, least, cost);
                choices[count++] = o;
            }
        }

        promise[..count].Sort(next[..count]);
        for (var n = 0; n < count && promise[n] < _limit - 1e-9 && Steps < (_found ? _mostSteps : 4 * _mostSteps); n++)
        {
            var o = choices[next[n]];
            var more = between[next[n]];
            for (var above = 0; above < at - 1; above++)
            {
                more += (Apart(_order[above], _taken[above], note, o) ? 0 : Weights.Fault) + _costs.Order(_order[above], note);
            }

            Steps++;
            _taken[at] = o;
            Go(at + 1, spent + more + own[o]);
        }
    }
}
