namespace DetailGen.Solver.Search;

/// <summary>
/// min cost · x with rows · x + slack = right, 0 ≤ x ≤ upper, 0 ≤ slack (≤ 0 in an equation), cost ≥ 0. Starts at x = 0, which prices out, and repairs one
/// violated bound a pivot. In floating point: its multipliers are only a hint, whoever uses them works out in whole numbers what they prove.
/// </summary>
internal sealed class DualSimplex
{
    private const double Tolerance = 1e-7;
    private readonly int _rows;
    private readonly int _columns;
    private readonly double[] _table;
    private readonly double[] _price;
    private readonly double[] _upper;
    private readonly double[] _basicValue;
    private readonly bool[] _atUpper;
    private readonly int[] _basic;
    private readonly int[] _nonbasic;

    /// <param name="table">rows × columns, row by row; taken over and changed.</param>
    public DualSimplex(double[] table, double[] right, bool[] equation, double[] cost, double[] upper)
    {
        _rows = right.Length;
        _columns = cost.Length;
        _table = table;
        _price = (double[])cost.Clone();
        _basicValue = (double[])right.Clone();
        _upper = new double[_columns + _rows];
        upper.CopyTo(_upper, 0);
        _basic = new int[_rows];
        _nonbasic = new int[_columns];
        _atUpper = new bool[_columns];
        for (var j = 0; j < _columns; j++)
        {
            _nonbasic[j] = j;
        }

        for (var i = 0; i < _rows; i++)
        {
            _basic[i] = _columns + i;
            _upper[_columns + i] = equation[i] ? 0 : double.PositiveInfinity;
        }
    }

    /// <summary>The multiplier of each row: not below 0 for an inequality, in the end or wherever the pivots ran out.</summary>
    public double[] Multipliers(int pivots)
    {
        while (pivots-- > 0 && Pivot())
        {
        }

        var multipliers = new double[_rows];
        for (var j = 0; j < _columns; j++)
        {
            if (_nonbasic[j] >= _columns)
            {
                multipliers[_nonbasic[j] - _columns] = _price[j];
            }
        }

        return multipliers;
    }

    private bool Pivot()
    {
        var leaving = -1;
        var worst = Tolerance;
        for (var i = 0; i < _rows; i++)
        {
            var over = Math.Max(-_basicValue[i], _basicValue[i] - _upper[_basic[i]]);
            if (over > worst)
            {
                (leaving, worst) = (i, over);
            }
        }

        if (leaving < 0)
        {
            return false;
        }

        var rise = _basicValue[leaving] < 0;
        var row = _table.AsSpan(leaving * _columns, _columns);
        var entering = -1;
        double bestRatio = double.PositiveInfinity, bestSize = 0;
        for (var j = 0; j < _columns; j++)
        {
            var factor = row[j];
            var size = Math.Abs(factor);
            if (size < 1e-9 || _upper[_nonbasic[j]] == 0 || (factor < 0) == _atUpper[j] == rise)
            {
                continue;
            }

            var ratio = Math.Abs(_price[j]) / size;
            if (ratio < bestRatio - 1e-12 || (ratio <= bestRatio + 1e-12 && size > bestSize))
            {
                (entering, bestRatio, bestSize) = (j, ratio, size);
            }
        }

        if (entering < 0)
        {
            return false;
        }

        Exchange(leaving, entering, rise ? 0 : _upper[_basic[leaving]]);
        return true;
    }

    private void Exchange(int leaving, int entering, double target)
    {
        var row = _table.AsSpan(leaving * _columns, _columns);
        var pivot = row[entering];
        var moved = (_basicValue[leaving] - target) / pivot;
        for (var i = 0; i < _rows; i++)
        {
            _basicValue[i] -= _table[i * _columns + entering] * moved;
        }

        var before = _atUpper[entering] ? _upper[_nonbasic[entering]] : 0;
        _basicValue[leaving] = before + moved;
        for (var j = 0; j < _columns; j++)
        {
            row[j] /= pivot;
        }

        row[entering] = 1 / pivot;
        for (var i = 0; i < _rows; i++)
        {
            var factor = _table[i * _columns + entering];
            if (i == leaving || factor == 0)
            {
                continue;
            }

            var other = _table.AsSpan(i * _columns, _columns);
            for (var j = 0; j < _columns; j++)
            {
                other[j] -= factor * row[j];
            }

            other[entering] = -factor / pivot;
        }

        var cost = _price[entering];
        for (var j = 0; j < _columns; j++)
        {
            _price[j] -= cost * row[j];
        }

        _price[entering] = -cost / pivot;
        (_basic[leaving], _nonbasic[entering]) = (_nonbasic[entering], _basic[leaving]);
        _atUpper[entering] = target != 0;
    }
}
