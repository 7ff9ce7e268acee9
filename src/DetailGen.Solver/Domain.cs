namespace DetailGen.Solver;

/// <summary>The values a variable may take: a range with a step, or a list.</summary>
public sealed class Domain
{
    private readonly long[]? _listed;

    private Domain(long low, long high, long step, long[]? listed)
    {
        Low = low;
        High = high;
        Step = step;
        _listed = listed;
    }

    /// <summary>The least value.</summary>
    public long Low { get; }

    /// <summary>The greatest value, itself a member.</summary>
    public long High { get; }

    /// <summary>Distance between neighbours of a range; the greatest common divisor of the distances in a list; never below 1.</summary>
    public long Step { get; }

    /// <summary>True where the values were listed one by one.</summary>
    public bool IsListed => _listed is not null;

    /// <summary>How many values there are; at least 1.</summary>
    public long Count => _listed?.Length ?? (High - Low) / Step + 1;

    /// <summary>low, low + step, … up to high (the last one may fall short of it).</summary>
    /// <exception cref="ArgumentOutOfRangeException">The step is below 1, high lies below low, or a bound is beyond ±10^15.</exception>
    public static Domain Range(long low, long high, long step = 1)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(step, 1);
        ArgumentOutOfRangeException.ThrowIfLessThan(high, low);
        ArgumentOutOfRangeException.ThrowIfLessThan(low, -Limit);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(high, Limit);
        return new Domain(low, low + (high - low) / step * step, step, null);
    }

    /// <summary>Exactly these values, in any order, repeats allowed.</summary>
    /// <exception cref="ArgumentOutOfRangeException">No value, or one beyond ±10^15.</exception>
    public static Domain Of(params ReadOnlySpan<long> values)
    {
        ArgumentOutOfRangeException.ThrowIfZero(values.Length);
        var sorted = values.ToArray();
        Array.Sort(sorted);
        var count = 1;
        for (var i = 1; i < sorted.Length; i++)
        {
            if (sorted[i] != sorted[count - 1])
            {
                sorted[count++] = sorted[i];
            }
        }

        Array.Resize(ref sorted, count);
        ArgumentOutOfRangeException.ThrowIfLessThan(sorted[0], -Limit);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(sorted[^1], Limit);
        var step = 0L;
        for (var i = 1; i < count; i++)
        {
            step = Arithmetic.Gcd(step, sorted[i] - sorted[i - 1]);
        }

        return new Domain(sorted[0], sorted[^1], Math.Max(step, 1), sorted);
    }

    /// <summary>What a level may cost: a range whose bounds may lie beyond those of a range for users, as far as sums may (2^61).</summary>
    internal static Domain OfCost(long low, long high, long step) => new(low, high, step, null);

    /// <summary>The value at a place, 0 for the least.</summary>
    public long At(long place) => _listed is null ? Low + place * Step : _listed[place];

    /// <summary>True where the value is a member.</summary>
    public bool Contains(long value) => value >= Low && value <= High && Ceiling(value) == value;

    /// <summary>The place of the nearest member (of two equally near the smaller), 0 for the least.</summary>
    public long NearestPlace(long value)
    {
        if (value <= Low)
        {
            return 0;
        }

        if (value >= High)
        {
            return Count - 1;
        }

        var below = PlaceAtMost(value);
        return At(below) == value || value - At(below) <= At(below + 1) - value ? below : below + 1;
    }

    /// <summary>The steps between a member and the member nearest to the wish: places in a list.</summary>
    public long Distance(long member, long wish) => Math.Abs(PlaceAtMost(member) - NearestPlace(wish));

    /// <summary>The least member at or above the value, or long.MaxValue where there is none.</summary>
    internal long Ceiling(long value)
    {
        if (value <= Low)
        {
            return Low;
        }

        if (value > High)
        {
            return long.MaxValue;
        }

        if (_listed is null)
        {
            return Low + (value - Low + Step - 1) / Step * Step;
        }

        var found = Array.BinarySearch(_listed, value);
        return found >= 0 ? value : _listed[~found];
    }

    /// <summary>The greatest member at or below the value, or long.MinValue where there is none.</summary>
    internal long Floor(long value)
    {
        if (value >= High)
        {
            return High;
        }

        return value < Low ? long.MinValue : At(PlaceAtMost(value));
    }

    /// <summary>What a variable may be when its own domain is given up and nothing wider was named: three times as far on both sides.</summary>
    internal Domain Widened()
    {
        var reach = Math.Max(Math.Max(Math.Abs(Low), Math.Abs(High)), Step);
        var steps = Math.Min(reach / Step * 3, (Limit - reach) / Step);
        return Range(Low - steps * Step, High + steps * Step, Step);
    }

    private const long Limit = 1_000_000_000_000_000;

    /// <summary>The place of the greatest member at or below the value, which is not below all of them.</summary>
    internal long PlaceAtMost(long value)
    {
        if (_listed is null)
        {
            return (value - Low) / Step;
        }

        var found = Array.BinarySearch(_listed, value);
        return found >= 0 ? found : ~found - 1;
    }
}
