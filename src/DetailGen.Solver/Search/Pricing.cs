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
    private readonly State state = problem.State;
    private readonly List<(Row Row, bool Equation)> rows = [];
    private readonly List<Column> columns = [];
    private readonly int[] firstColumn = new int[problem.State.VariableCount];
    private readonly long[] place = new long[problem.State.VariableCount];
    private readonly double[] cost = new double[problem.State.VariableCount];
    private readonly bool isTerm = Array.IndexOf(goal.Sum.Variables, goal.Cost) >= 0; // the only one, then
    private readonly bool[] ofPart = new bool[problem.State.VariableCount];

    /// <summary>The claim; null where there is nothing linear to add, or the numbers grow too large.</summary>
    public PricedSum? Claim()
    {
        Array.Fill(place, -1);
        Array.ForEach(goal.Part, id => ofPart[id] = true);
        CollectCosts();
        CollectRows();
        if (rows.Count == 0)
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
                place[id] = at;
            }

            return;
        }

        for (var i = 0; i < row.Variables.Length; i++)
        {
            cost[row.Variables[i]] = row.Factors[i];
        }
    }

    private void CollectRows()
    {
        for (var i = 0; i < state.PropagatorCount; i++)
        {
            if (!state.Enabled[i])
            {
                continue;
            }

            switch (state.PropagatorAt(i))
            {
                case AtMostRow single:
                    Add(single.Row, false);
                    break;
                case Equality equality:
                    Add(equality.AtMost, true);
                    break;
                case Alternatives alternatives:
                    if (alternatives.OnlyOpen(state) is { } open)
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
        if (!equation && row.Most(state) <= row.Bound)
        {
            return;
        }

        // Other parts bound nothing here, and the goal's own sum says nothing. What claims of the part tie to it is of the part too: costs of earlier levels.
        var touches = false;
        foreach (var id in row.Variables)
        {
            if (!state.IsFixed(id) && ((id < problem.Variables && !ofPart[id]) || (id == goal.Cost && !isTerm)))
            {
                return;
            }

            touches |= ofPart[id] && !state.IsFixed(id);
        }

        if (touches)
        {
            Array.ForEach(row.Variables, id => ofPart[id] = true);
            rows.Add((row, equation));
        }
    }

    private void CollectColumns()
    {
        Array.Fill(firstColumn, -1);
        foreach (var (row, _) in rows)
        {
            foreach (var id in row.Variables)
            {
                if (firstColumn[id] >= 0 || state.IsFixed(id))
                {
                    continue;
                }

                firstColumn[id] = columns.Count;
                long low = state.Lows[id], high = state.Highs[id];
                if (place[id] < 0)
                {
                    columns.Add(cost[id] < 0 ? new Column(id, high, -1, high - low, -cost[id]) : new Column(id, low, 1, high - low, cost[id]));
                    continue;
                }

                var start = Math.Clamp(problem.Domains[id].At(place[id]), low, high);
                if (start < high)
                {
                    columns.Add(new Column(id, start, 1, high - start, Slope(id, start, high)));
                }

                if (start > low)
                {
                    columns.Add(new Column(id, start, -1, start - low, Slope(id, start, low)));
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
        var origin = Math.Abs(at - place[id]);
        for (var k = Math.Min(at, end); k <= Math.Max(at, end); k++)
        {
            if (k != at)
            {
                slope = Math.Min(slope, (Math.Abs(k - place[id]) - origin) / (double)Math.Abs(domain.At(k) - from));
            }
        }

        return Math.Max(slope, 0);
    }

    private double[] Solve()
    {
        var table = new double[rows.Count * columns.Count];
        var right = new double[rows.Count];
        var equation = new bool[rows.Count];
        var scales = new double[rows.Count];
        var columnScale = columns.ConvertAll(column => (double)problem.Domains[column.Id].Step);
        for (var i = 0; i < rows.Count; i++)
        {
            var row = rows[i].Row;
            equation[i] = rows[i].Equation;
            double rest = row.Bound, largest = 0;
            for (var k = 0; k < row.Variables.Length; k++)
            {
                var id = row.Variables[k];
                double factor = row.Factors[k];
                if (firstColumn[id] < 0)
                {
                    rest -= factor * state.Lows[id];
                    continue;
                }

                rest -= factor * columns[firstColumn[id]].Start;
                for (var j = firstColumn[id]; j < columns.Count && columns[j].Id == id; j++)
                {
                    table[i * columns.Count + j] = factor * columns[j].Sign * columnScale[j];
                    largest = Math.Max(largest, Math.Abs(factor) * columnScale[j]);
                }
            }

            scales[i] = largest;
            right[i] = rest / largest;
            for (var j = 0; j < columns.Count; j++)
            {
                table[i * columns.Count + j] /= largest;
            }
        }

        var costs = new double[columns.Count];
        var upper = new double[columns.Count];
        for (var j = 0; j < costs.Length; j++)
        {
            costs[j] = columns[j].Cost * columnScale[j];
            upper[j] = columns[j].Length / columnScale[j];
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
        var factors = new Int128[state.VariableCount];
        Int128 offset = 0;
        for (var i = 0; i < multipliers.Length; i++)
        {
            var rounded = Math.Round(multipliers[i] * scale);
            if (!(Math.Abs(rounded) < 1e18))
            {
                return null;
            }

            var times = rows[i].Equation ? (long)rounded : Math.Max(0, (long)rounded);
            if (times == 0)
            {
                continue;
            }

            var row = rows[i].Row;
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
            if (factors[id] == 0 && place[id] < 0)
            {
                continue;
            }

            var domain = problem.Domains[id];
            reach += Int128.Abs(factors[id]) * Math.Max(Math.Abs(domain.Low), Math.Abs(domain.High)) + (place[id] < 0 ? 0 : scale * (Int128)domain.Count);
            if (reach > Largest)
            {
                return null;
            }

            terms.Add(new PricedSum.Term(id, domain, Math.Max(place[id], 0), place[id] < 0 ? 0 : scale, (long)factors[id]));
        }

        return new PricedSum([.. terms], (long)offset);
    }

    private readonly record struct Column(int Id, long Start, int Sign, long Length, double Cost);
}
