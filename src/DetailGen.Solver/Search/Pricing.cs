using DetailGen.Solver.Propagation;

namespace DetailGen.Solver.Search;

/// <summary>Finds multiples of the linear claims which, added to a goal's cost, show how low it can go.</summary>
/// <remarks>
/// The multiples come from the linear relaxation in floating point and are rounded to whole numbers; any multiples give a true claim, so nothing
/// rests on the rounding but how sharp the claim is.
/// </remarks>
internal sealed class Pricing(Problem problem, Goal goal)
{
    private const int MostPivots = 400;
    private static readonly Int128 Largest = (Int128)1 << 60;
    private readonly State _state = problem.State;
    private readonly List<(Row Row, bool Equation)> _rows = [];
    private readonly List<Column> _columns = [];
    private readonly int[] _firstColumn = new int[problem.State.VariableCount];
    private readonly long[] _place = new long[problem.State.VariableCount];
    private readonly double[] _cost = new double[problem.State.VariableCount];
    private readonly bool _isTerm = Array.IndexOf(goal.Sum.Variables, goal.Cost) >= 0; // the only one, then
    private readonly bool[] _ofPart = new bool[problem.State.VariableCount];

    /// <summary>The claim; null where there is nothing linear to add, or the numbers grow too large.</summary>
    public PricedSum? Claim()
    {
        Array.Fill(_place, -1);
        Array.ForEach(goal.Part, id => _ofPart[id] = true);
        CollectCosts();
        CollectRows();
        if (_rows.Count == 0)
        {
            return null;
        }

        CollectColumns();
        var multipliers = Solve();
        for (var scale = 10_000_000_000; scale >= 1000; scale /= 100)
        {
            if (Combine(multipliers, scale) is { } claim)
            {
                return claim;
            }
        }

        return null;
    }

    private void CollectCosts()
    {
        var row = goal.Sum;
        if (goal.Wishes is { } wishes)
        {
            foreach (var (id, at) in wishes)
            {
                _place[id] = at;
            }

            return;
        }

        for (var i = 0; i < row.Variables.Length; i++)
        {
            _cost[row.Variables[i]] = row.Factors[i];
        }
    }

    private void CollectRows()
    {
        for (var i = 0; i < _state.PropagatorCount; i++)
        {
            if (!_state.Enabled[i])
            {
                continue;
            }

            switch (_state.PropagatorAt(i))
            {
                case AtMostRow single:
                    Add(single.Row, false);
                    break;
                case Equality equality:
                    Add(equality.AtMost, true);
                    break;
                case Alternatives alternatives:
                    if (alternatives.OnlyOpen(_state) is { } open)
                    {
                        foreach (var row in open)
                        {
                            Add(row, false);
                        }
                    }

                    break;
                default:
                    break;
            }
        }
    }

    private void Add(Row row, bool equation)
    {
        if (!equation && row.Most(_state) <= row.Bound)
        {
            return;
        }

        // Other parts bound nothing here, and the goal's own sum says nothing. What claims of the part tie to it is of the part too: costs of earlier levels.
        var touches = false;
        foreach (var id in row.Variables)
        {
            if (!_state.IsFixed(id) && ((id < problem.Variables && !_ofPart[id]) || (id == goal.Cost && !_isTerm)))
            {
                return;
            }

            touches |= _ofPart[id] && !_state.IsFixed(id);
        }

        if (touches)
        {
            Array.ForEach(row.Variables, id => _ofPart[id] = true);
            _rows.Add((row, equation));
        }
    }

    private void CollectColumns()
    {
        Array.Fill(_firstColumn, -1);
        foreach (var (row, _) in _rows)
        {
            foreach (var id in row.Variables)
            {
                if (_firstColumn[id] >= 0 || _state.IsFixed(id))
                {
                    continue;
                }

                _firstColumn[id] = _columns.Count;
                long low = _state.Lows[id], high = _state.Highs[id];
                if (_place[id] < 0)
                {
                    _columns.Add(_cost[id] < 0 ? new Column(id, high, -1, high - low, -_cost[id]) : new Column(id, low, 1, high - low, _cost[id]));
                    continue;
                }

                var start = Math.Clamp(problem.Domains[id].At(_place[id]), low, high);
                if (start < high)
                {
                    _columns.Add(new Column(id, start, 1, high - start, Slope(id, start, high)));
                }

                if (start > low)
                {
                    _columns.Add(new Column(id, start, -1, start - low, Slope(id, start, low)));
                }
            }
        }
    }

    /// <summary>The least price of a unit on the way from here to there.</summary>
    private double Slope(int id, long from, long to)
    {
        var domain = problem.Domains[id];
        if (!domain.IsListed)
        {
            return 1.0 / domain.Step;
        }

        var slope = double.PositiveInfinity;
        var at = domain.PlaceAtMost(from);
        var end = domain.PlaceAtMost(to);
        var origin = Math.Abs(at - _place[id]);
        for (var k = Math.Min(at, end); k <= Math.Max(at, end); k++)
        {
            if (k != at)
            {
                slope = Math.Min(slope, (Math.Abs(k - _place[id]) - origin) / (double)Math.Abs(domain.At(k) - from));
            }
        }

        return Math.Max(slope, 0);
    }

    private double[] Solve()
    {
        var table = new double[_rows.Count * _columns.Count];
        var right = new double[_rows.Count];
        var equation = new bool[_rows.Count];
        var scales = new double[_rows.Count];
        var columnScale = _columns.ConvertAll(column => (double)problem.Domains[column.Id].Step);
        for (var i = 0; i < _rows.Count; i++)
        {
            var row = _rows[i].Row;
            equation[i] = _rows[i].Equation;
            double rest = row.Bound, largest = 0;
            for (var k = 0; k < row.Variables.Length; k++)
            {
                var id = row.Variables[k];
                double factor = row.Factors[k];
                if (_firstColumn[id] < 0)
                {
                    rest -= factor * _state.Lows[id];
                    continue;
                }

                rest -= factor * _columns[_firstColumn[id]].Start;
                for (var j = _firstColumn[id]; j < _columns.Count && _columns[j].Id == id; j++)
                {
                    table[i * _columns.Count + j] = factor * _columns[j].Sign * columnScale[j];
                    largest = Math.Max(largest, Math.Abs(factor) * columnScale[j]);
                }
            }

            scales[i] = largest;
            right[i] = rest / largest;
            for (var j = 0; j < _columns.Count; j++)
            {
                table[i * _columns.Count + j] /= largest;
            }
        }

        var costs = new double[_columns.Count];
        var upper = new double[_columns.Count];
        for (var j = 0; j < costs.Length; j++)
        {
            costs[j] = _columns[j].Cost * columnScale[j];
            upper[j] = _columns[j].Length / columnScale[j];
        }

        var multipliers = new DualSimplex(table, right, equation, costs, upper).Multipliers(MostPivots);
        for (var i = 0; i < multipliers.Length; i++)
        {
            multipliers[i] /= scales[i];
        }

        return multipliers;
    }

    private PricedSum? Combine(double[] multipliers, long scale)
    {
        var factors = new Int128[_state.VariableCount];
        Int128 offset = 0;
        for (var i = 0; i < multipliers.Length; i++)
        {
            var rounded = Math.Round(multipliers[i] * scale);
            if (!(Math.Abs(rounded) < 1e18))
            {
                return null;
            }

            var times = _rows[i].Equation ? (long)rounded : Math.Max(0, (long)rounded);
            if (times == 0)
            {
                continue;
            }

            var row = _rows[i].Row;
            offset += (Int128)times * row.Bound;
            for (var k = 0; k < row.Variables.Length; k++)
            {
                factors[row.Variables[k]] += (Int128)times * row.Factors[k];
            }
        }

        if (goal.Wishes is null)
        {
            var row = goal.Sum;
            for (var k = 0; k < row.Variables.Length; k++)
            {
                factors[row.Variables[k]] += (Int128)scale * row.Factors[k];
            }
        }

        factors[goal.Cost] -= scale;
        var terms = new List<PricedSum.Term>();
        var reach = Int128.Abs(offset);
        for (var id = 0; id < factors.Length; id++)
        {
            if (factors[id] == 0 && _place[id] < 0)
            {
                continue;
            }

            var domain = problem.Domains[id];
            reach += Int128.Abs(factors[id]) * Math.Max(Math.Abs(domain.Low), Math.Abs(domain.High)) + (_place[id] < 0 ? 0 : scale * (Int128)domain.Count);
            if (reach > Largest)
            {
                return null;
            }

            terms.Add(new PricedSum.Term(id, domain, Math.Max(_place[id], 0), _place[id] < 0 ? 0 : scale, (long)factors[id]));
        }

        return new PricedSum([.. terms], (long)offset);
    }

    private readonly record struct Column(int Id, long Start, int Sign, long Length, double Cost);
}
