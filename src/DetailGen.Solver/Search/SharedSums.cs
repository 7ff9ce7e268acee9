using DetailGen.Solver.Propagation;

namespace DetailGen.Solver.Search;

/// <summary>
/// Sums that several rows hold, each a variable of its own. That a − b ≥ 3 and a − b ≤ 2 contradict each other the bounds of a and b show only value by value;
/// those of the difference show it at once.
/// </summary>
internal sealed class SharedSums
{
    private readonly List<(Row Sum, int Id)> _sums = [];

    /// <summary>From now on this variable stands for the sum.</summary>
    /// <param name="sum">In variables of the model; its bound is of no account.</param>
    public void Add(Row sum, int id) => _sums.Add((sum, id));

    /// <summary>The same row with a multiple of each sum, the last first, in its variable, wherever that makes the row shorter.</summary>
    public Row Shorter(Row row)
    {
        for (var i = _sums.Count - 1; i >= 0; i--)
        {
            var (sum, id) = _sums[i];
            var best = row;
            for (var k = 0; k < sum.Variables.Length; k++)
            {
                var at = Array.IndexOf(row.Variables, sum.Variables[k]);
                if (at >= 0 && row.Factors[at] % sum.Factors[k] == 0 && Less(row, sum, row.Factors[at] / sum.Factors[k], id) is { } less && less.Variables.Length < best.Variables.Length)
                {
                    best = less;
                }
            }

            row = best;
        }

        return row;
    }

    /// <summary>The row less so many times the sum, and the variable so many times in its place; null where the sum has a variable that the row lacks.</summary>
    private static Row? Less(Row row, Row sum, long times, int id)
    {
        var variables = new List<int>();
        var factors = new List<long>();
        var met = 0;
        for (var i = 0; i < row.Variables.Length; i++)
        {
            var at = Array.IndexOf(sum.Variables, row.Variables[i]);
            met += at < 0 ? 0 : 1;
            var rest = row.Factors[i] - (at < 0 ? 0 : times * sum.Factors[at]);
            if (rest != 0)
            {
                variables.Add(row.Variables[i]);
                factors.Add(rest);
            }
        }

        variables.Add(id);
        factors.Add(times);
        return met == sum.Variables.Length ? new Row([.. variables], [.. factors], row.Bound) : null;
    }
}
