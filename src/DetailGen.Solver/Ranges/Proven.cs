namespace DetailGen.Solver.Ranges;

/// <summary>
/// The values of one variable that are proven to be feasible, as progressions. Those of one stride are told apart by their remainder; where every remainder
/// has one, all values up to the first gap are known at once.
/// </summary>
internal sealed class Proven
{
    private readonly Dictionary<(long Stride, long Remainder), (long Low, long High)> _stretches = [];
    private readonly List<long> _strides = [];

    public void Clear()
    {
        _stretches.Clear();
        _strides.Clear();
    }

    /// <summary>The walk goes up: of two progressions that leave a gap between them the later one is kept.</summary>
    public void Add(Progression progression)
    {
        var key = (progression.Stride, Remainder(progression.Low, progression.Stride));
        if (!_strides.Contains(progression.Stride))
        {
            _strides.Add(progression.Stride);
        }

        var (low, high) = (progression.Low, progression.High);
        if (_stretches.TryGetValue(key, out var before) && before.High >= low - progression.Stride && high >= before.Low - progression.Stride)
        {
            (low, high) = (Math.Min(low, before.Low), Math.Max(high, before.High));
        }

        _stretches[key] = (low, high);
    }

    /// <summary>This value and those above it that are proven without a gap, the value alone at least; null where it is not yet known.</summary>
    /// <param name="step">What values differ by.</param>
    public (long Low, long High)? From(long value, long step)
    {
        (long, long)? alone = null;
        foreach (var stride in _strides)
        {
            if (HighOf(value, stride) is { } high)
            {
                alone = (value, value);
                if (stride == step)
                {
                    return (value, high);
                }

                if (WithoutGap(value, stride, step) is { } end)
                {
                    return (value, end);
                }
            }
        }

        return alone;
    }

    // Each remainder ends at its own last value; the first that ends leaves the gap.
    private long? WithoutGap(long value, long stride, long step)
    {
        if (stride % step != 0)
        {
            return null;
        }

        var end = long.MaxValue;
        for (var next = value; next < value + stride; next += step)
        {
            if (HighOf(next, stride) is not { } high)
            {
                return null;
            }

            end = Math.Min(end, high + stride - step);
        }

        return end;
    }

    private long? HighOf(long value, long stride) =>
        _stretches.TryGetValue((stride, Remainder(value, stride)), out var stretch) && value >= stretch.Low && value <= stretch.High ? stretch.High : null;

    private static long Remainder(long value, long stride) => value - (Arithmetic.FloorDivide(value, stride) * stride);
}
