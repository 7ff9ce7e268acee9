namespace DetailGen.Drawing.Annotation.Notes;

/// <summary>A column's notes in their places: for each note of the order, from the top, the option taken.</summary>
/// <param name="Bound">A cost that no choice in any order and angle can beat.</param>
internal sealed record ColumnAnswer(int[] Order, Option[] Taken, double Cost, double Bound, int Main)
{
    internal bool HasFault => Cost >= Weights.Fault;
}

/// <summary>
/// The best places of the notes of one column, for the pairs of angles that promise most. The order starts from the level at which each note would like to leave and is
/// improved by exchanging neighbours; <see cref="Descent"/> finds the places for an order.
/// </summary>
internal sealed class ColumnSearch
{
    private const int MostDescents = 400;
    private const int MostRounds = 3;
    private const int FewEnough = 5;

    /// <summary>Pairs of angles that are worth a search in a long column; the best bounds stand first.</summary>
    private const int Worthwhile = 3;

    /// <summary>Neighbours whose notes would leave this far apart, in mm, are not exchanged while nothing is at fault.</summary>
    private const double Distinct = 8;

    private readonly Option[][] _options;
    private readonly ColumnCosts _costs;
    private readonly string[] _groups;
    private readonly int[] _earlierOrder;
    private readonly double[] _wish;
    private bool _anyAngle;
    private int _main;
    private double _meanGap;
    private Option[][] _usable = [];
    private double[][] _own = [];
    private Descent? _descent;

    /// <param name="options">For each note, cheapest first, none empty.</param>
    /// <param name="earlierOrder">Rank of each note in the earlier issue's column, −1 where it was not there.</param>
    internal ColumnSearch(Option[][] options, Block[] blocks, int side, int[] earlierOrder)
    {
        _options = options;
        _costs = new(blocks, side, earlierOrder);
        _groups = [.. blocks.Select(block => block.Note.Group)];
        _wish = new double[options.Length];
        _earlierOrder = earlierOrder;
        Bound = _options.Sum(options => options[0].Cost);
    }

    internal double Bound { get; }

    /// <param name="known">Places, one for each note, that disturb each other nowhere, to be bettered; null where none are known.</param>
    internal ColumnAnswer Solve(Option[]? known = null)
    {
        if (_options.Length == 0)
        {
            return new([], [], 0, 0, 0);
        }

        var start = known is null ? null : Known(known);
        var best = start;
        var searched = 0;
        foreach (var (main, second, bound) in Pairs())
        {
            if (best is not null && (bound >= best.Cost - 1e-9 || (!IsShort && searched >= (best.HasFault ? 2 * Worthwhile : Worthwhile))))
            {
                break;
            }

            searched++;

            Allow(main, option => option.Angle == main || option.Angle == second);
            var answer = Improve(best?.Cost ?? double.MaxValue);
            best = best is null || answer.Cost < best.Cost - 1e-9 ? answer : best;
        }

        if (best is null || best.HasFault || ReferenceEquals(best, start))
        {
            // More than two angles before a fault.
            _anyAngle = true;
            Allow(best?.Main ?? 0, _ => true);
            var answer = Improve(best?.Cost ?? double.MaxValue, start?.Order);
            best = best is null || answer.Cost < best.Cost - 1e-9 ? answer : best;
        }

        return best;
    }

    /// <summary>The places with the main angle that makes the least of them; null where groups do not hold.</summary>
    private ColumnAnswer? Known(Option[] places)
    {
        int[] order = [.. Enumerable.Range(0, places.Length).OrderByDescending(note => places[note].Level)];
        Option[] taken = [.. order.Select(note => places[note])];
        return GroupsHold(order)
            ? Enumerable.Range(0, Angles.Degrees.Length).Select(main => new ColumnAnswer(order, taken, Judge(order, taken, main), Bound, main)).MinBy(answer => answer.Cost)
            : null;
    }

    /// <summary>The cost of a choice, with all that depends on several notes; <see cref="Weights.Fault"/> for each pair that disturbs each other.</summary>
    internal double Judge(int[] order, Option[] taken, int main)
    {
        var cost = 0.0;
        _main = main;
        for (var i = 0; i < order.Length; i++)
        {
            cost += Own(taken[i]);
            for (var j = 0; j < i; j++)
            {
                cost += i - j == 1 ? _costs.Faults(order[j], taken[j], taken[i]) : _costs.Apart(taken[j], taken[i]) ? 0 : Weights.Fault;
                cost += _costs.Order(order[j], order[i]);
            }
        }

        return cost + _costs.Uneven(order, taken, _costs.Mean(order, taken));
    }

    // An earlier issue's places are looked for to the end: notes that need not move stay.
    private bool IsShort => Array.Exists(_earlierOrder, rank => rank >= 0) || IsFew;

    private bool IsFew => _options.Length <= FewEnough && _options.Sum(options => options.Length) <= FewEnough * 6;

    private void Allow(int main, Predicate<Option> isAllowed)
    {
        _main = main;
        _usable = [.. _options.Select(options => Array.FindAll(options, isAllowed))];
        _own = [.. _usable.Select(options => Array.ConvertAll(options, option => Own(option)))];
        _descent = new(_usable, _own, _costs, MostDescents);
    }

    /// <summary>Pairs of angles with the least that their options can cost, best first.</summary>
    private IEnumerable<(int Main, int Second, double Bound)> Pairs()
    {
        var least = _options.Select(LeastByAngle).ToArray();
        var pairs =
            from main in Enumerable.Range(0, Angles.Degrees.Length)
            from second in Enumerable.Range(0, Angles.Degrees.Length)
            let bound = least.Sum(costs => Math.Min(costs[main], costs[second] + Extra(second, main)))
            where bound < double.MaxValue
            orderby bound, main, second
            select (main, second, bound);
        return pairs;
    }

    private static double[] LeastByAngle(Option[] options)
    {
        var least = new double[Angles.Degrees.Length];
        Array.Fill(least, double.MaxValue);
        foreach (var option in options)
        {
            least[option.Angle] = Math.Min(least[option.Angle], option.Cost);
        }

        return least;
    }

    private double Own(in Option option) => option.Cost + Extra(option.Angle, _main);

    private static double Extra(int angle, int main) => angle == 0 || angle == main ? 0 : Weights.OtherAngle;

    /// <summary>The order settled: the white between the notes is tried wider and narrower, for its evenness is known only afterwards.</summary>
    private ColumnAnswer Refine(ColumnAnswer best)
    {
        foreach (var gap in (ReadOnlySpan<double>)[2, 12, 25, 45])
        {
            (_meanGap, _descent!.Steps) = (gap, 0);
            var tried = PlaceForGap(best.Order, best.Cost);
            best = tried.Cost < best.Cost - 1e-9 ? tried : best;
        }

        return best;
    }

    private ColumnAnswer Improve(double toBeat, int[]? start = null)
    {
        _descent!.Steps = 0;
        _meanGap = 6;
        var first = FirstOrder();
        var order = start is null ? first : [.. start];
        var best = Place(order, toBeat);
        for (var round = 0; round < MostRounds; round++)
        {
            var better = false;
            for (var i = 0; i + 1 < order.Length; i++)
            {
                if (!IsShort && !best.HasFault && _wish[order[i]] - _wish[order[i + 1]] > Distinct)
                {
                    continue;
                }

                (order[i], order[i + 1]) = (order[i + 1], order[i]);
                var tried = GroupsHold(order) ? Try(order, best.Cost) : null;
                if (tried is not null && tried.Cost < best.Cost - 1e-9)
                {
                    (best, better) = (tried, true);
                }
                else
                {
                    (order[i], order[i + 1]) = (order[i + 1], order[i]);
                }
            }

            // A note in the wrong place altogether is taken out and put in elsewhere.
            for (var from = 0; from < order.Length && (IsShort || (_anyAngle && best.HasFault && !better)); from++)
            {
                for (var to = 0; to < order.Length; to++)
                {
                    var moved = Math.Abs(from - to) > 1 ? Moved(order, from, to) : order;
                    if (!ReferenceEquals(moved, order) && GroupsHold(moved) && Try(moved, best.Cost) is var tried && tried.Cost < best.Cost - 1e-9)
                    {
                        (best, order, better) = (tried, moved, true);
                    }
                }
            }

            if (!better)
            {
                break;
            }
        }

        best = Refine(best);
        return best.HasFault && order.Length <= FewEnough ? Exhaust(order, 0, best) : best;
    }

    /// <summary>All orders, for a handful of notes that fits in none of the likely ones.</summary>
    private ColumnAnswer Exhaust(int[] order, int at, ColumnAnswer best)
    {
        if (at == order.Length)
        {
            return GroupsHold(order) && Place(order, best.Cost) is var tried && tried.Cost < best.Cost - 1e-9 ? tried : best;
        }

        for (var i = at; i < order.Length; i++)
        {
            (order[at], order[i]) = (order[i], order[at]);
            best = Exhaust(order, at + 1, best);
            (order[at], order[i]) = (order[i], order[at]);
        }

        return best;
    }

    private static int[] Moved(int[] order, int from, int to)
    {
        var list = order.ToList();
        list.RemoveAt(from);
        list.Insert(to, order[from]);
        return [.. list];
    }

    /// <summary>By the level of each note's cheapest option, groups kept together at their mean.</summary>
    private int[] FirstOrder()
    {
        var wish = _wish;
        for (var i = 0; i < wish.Length; i++)
        {
            var least = double.MaxValue;
            for (var o = 0; o < _own[i].Length; o++)
            {
                if (_own[i][o] < least)
                {
                    (least, wish[i]) = (_own[i][o], _usable[i][o].Level);
                }
            }
        }

        return
        [
            .. Enumerable.Range(0, wish.Length)
                .GroupBy(i => _groups[i], StringComparer.Ordinal)
                .OrderByDescending(group => Math.Round(group.Average(i => wish[i]), 6)).ThenBy(group => group.Key, StringComparer.Ordinal)
                .SelectMany(group => group.OrderByDescending(i => Math.Round(wish[i], 6)).ThenBy(i => i)),
        ];
    }

    private bool GroupsHold(int[] order)
    {
        for (var i = 1; i < order.Length; i++)
        {
            if (_groups[order[i]] != _groups[order[i - 1]])
            {
                for (var j = 0; j < i; j++)
                {
                    if (_groups[order[j]] == _groups[order[i]])
                    {
                        return false;
                    }
                }
            }
        }

        return true;
    }

    private ColumnAnswer Try(int[] order, double toBeat) => IsShort ? Place(order, toBeat) : PlaceForGap(order, toBeat);

    private ColumnAnswer Place(int[] order, double toBeat)
    {
        ColumnAnswer? best = null;
        for (var round = 0; round < 3; round++)
        {
            var answer = PlaceForGap(order, toBeat);
            best = best is null || answer.Cost < best.Cost - 1e-9 ? answer : best;
            var mean = _costs.Mean(order, answer.Taken);
            if (order.Length < 3 || Math.Abs(mean - _meanGap) < 0.5)
            {
                break;
            }

            _meanGap = mean;
        }

        return best!;
    }

    private ColumnAnswer PlaceForGap(int[] order, double toBeat)
    {
        var taken = _descent!.Place(order, _meanGap, toBeat + Weights.Fault);
        return new([.. order], taken, Judge(order, taken, _main), Bound, _main);
    }
}
