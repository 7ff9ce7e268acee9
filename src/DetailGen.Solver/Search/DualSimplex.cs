namespace DetailGen.Solver.Search;

/// <summary>
/// min cost · x with rows · x + slack = right, 0 ≤ x ≤ upper, 0 ≤ slack (≤ 0 in an equation), cost ≥ 0. Starts at x = 0, which prices out, and repairs one
/// violated bound a pivot. In floating point: its multipliers are only a hint, whoever uses them works out in whole numbers what they prove.
/// </summary>
internal sealed class DualSimplex
{
    private const double Tolerance = 1e-7;
    private readonly int rows;
    private readonly int columns;
    private readonly double[] table;
    private readonly double[] price;
    private readonly double[] upper;
    private readonly double[] basicValue;
    private readonly bool[] atUpper;
    private readonly int[] basic;
    private readonly int[] nonbasic;

    /// <param name="table">rows × columns, row by row; taken over and changed.</param>
    public DualSimplex(double[] table, double[] right, bool[] equation, double[] cost, double[] upper)
    {
        rows = right.Length;
        columns = cost.Length;
        this.table = table;
        price = (double[])cost.Clone();
        basicValue = (double[])right.Clone();
        this.upper = new double[columns + rows];
        upper.CopyTo(this.upper, 0);
        basic = new int[rows];
        nonbasic = new int[columns];
        atUpper = new bool[columns];
        for (var j = 0; j < columns; j++)
        {
            nonbasic[j] = j;
        }

        for (var i = 0; i < rows; i++)
        {
            basic[i] = columns + i;
            this.upper[columns + i] = equation[i] ? 0 : double.PositiveInfinity;
        }
    }

    /// <summary>The multiplier of each row: not below 0 for an inequality, in the end or wherever the pivots ran out.</summary>
    public double[] Multipliers(int pivots)
    {
        while (pivots-- > 0 && Pivot())
        {
        }

        var multipliers = new double[rows];
        for (var j = 0; j < columns; j++)
        {
            if (nonbasic[j] >= columns)
            {
                multipliers[nonbasic[j] - columns] = price[j];
            }
        }

        return multipliers;
    }

    private bool Pivot()
    {
        var leaving = -1;
        var worst = Tolerance;
        for (var i = 0; i < rows; i++)
        {
            var over = Math.Max(-basicValue[i], basicValue[i] - upper[basic[i]]);
            if (over > worst)
            {
                (leaving, worst) = (i, over);
            }
        }

        if (leaving < 0)
        {
            return false;
        }

        var rise = basicValue[leaving] < 0;
        var row = table.AsSpan(leaving * columns, columns);
        var entering = -1;
        double bestRatio = double.PositiveInfinity, bestSize = 0;
        for (var j = 0; j < columns; j++)
        {
            var factor = row[j];
            var size = Math.Abs(factor);
            if (size < 1e-9 || upper[nonbasic[j]] == 0 || (factor < 0) == atUpper[j] == rise)
            {
                continue;
            }

            var ratio = Math.Abs(price[j]) / size;
            if (ratio < bestRatio - 1e-12 || (ratio <= bestRatio + 1e-12 && size > bestSize))
            {
                (entering, bestRatio, bestSize) = (j, ratio, size);
            }
        }

        if (entering < 0)
        {
            return false;
        }

        Exchange(leaving, entering, rise ? 0 : upper[basic[leaving]]);
        return true;
    }

    private void Exchange(int leaving, int entering, double target)
    {
        var row = table.AsSpan(leaving * columns, columns);
        var pivot = row[entering];
        var moved = (basicValue[leaving] - target) / pivot;
        for (var i = 0; i < rows; i++)
        {
            basicValue[i] -= table[i * columns + entering] * moved;
        }

        var before = atUpper[entering] ? upper[nonbasic[entering]] : 0;
        basicValue[leaving] = before + moved;
        for (var j = 0; j < columns; j++)
        {
            row[j] /= pivot;
        }

        row[entering] = 1 / pivot;
        for (var i = 0; i < rows; i++)
        {
            var factor = table[i * columns + entering];
            if (i == leaving || factor == 0)
            {
                continue;
            }

            var other = table.AsSpan(i * columns, columns);
            for (var j = 0; j < columns; j++)
            {
                other[j] -= factor * row[j];
            }

            other[entering] = -factor / pivot;
        }

        var cost = price[entering];
        for (var j = 0; j < columns; j++)
        {
            price[j] -= cost * row[j];
        }

        price[entering] = -cost / pivot;
        (basic[leaving], nonbasic[entering]) = (nonbasic[entering], basic[leaving]);
        atUpper[entering] = target != 0;
    }
}
