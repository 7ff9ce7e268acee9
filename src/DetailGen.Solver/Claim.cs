namespace DetailGen.Solver;

/// <summary>Something that may be required or wanted of the variables.</summary>
/// <remarks>
/// How far a claim falls short: a linear claim by the amount by which its two sides miss, a membership by the distance to the nearest
/// member, <see cref="Any"/> by the least of its parts, <see cref="All"/> by the greatest, <see cref="When"/> not at all while its condition fails.
/// </remarks>
public abstract class Claim
{
    private Claim()
    {
    }

    /// <summary>At least one of the claims holds.</summary>
    public static Claim Any(params ReadOnlySpan<Claim> claims) => new AnyOf(claims.ToArray());

    /// <summary>All of the claims hold.</summary>
    public static Claim All(params ReadOnlySpan<Claim> claims) => new AllOf(claims.ToArray());

    /// <summary>The second holds wherever the first does.</summary>
    /// <exception cref="ArgumentException">The condition is a table or a quotient.</exception>
    public static Claim When(Claim condition, Claim then) => new AnyOf([Not(condition), then]);

    /// <summary>The claim does not hold.</summary>
    /// <exception cref="ArgumentException">The claim is, or holds, a table or a quotient.</exception>
    public static Claim Not(Claim claim) => claim switch
    {
        AtMostZero(var sum) => new AtMostZero(1 - sum),
        IsZero(var sum) => new AnyOf([new AtMostZero(sum + 1), new AtMostZero(1 - sum)]),
        Member member => NotAmong(member),
        AnyOf(var parts) => new AllOf(Array.ConvertAll(parts, Not)),
        AllOf(var parts) => new AnyOf(Array.ConvertAll(parts, Not)),
        _ => throw new ArgumentException("A table or a quotient has no opposite.", nameof(claim)),
    };

    /// <summary>The result is the value that the table gives for the key; keys outside the table cannot be.</summary>
    /// <exception cref="ArgumentException">A key stands twice.</exception>
    public static Claim Table(Variable result, Variable key, params ReadOnlySpan<(long Key, long Result)> rows)
    {
        var sorted = rows.ToArray();
        Array.Sort(sorted, static (a, b) => a.Key.CompareTo(b.Key));
        for (var i = 1; i < sorted.Length; i++)
        {
            if (sorted[i].Key == sorted[i - 1].Key)
            {
                throw new ArgumentException($"The key {sorted[i].Key} stands twice in the table for {result.Name}.", nameof(rows));
            }
        }

        return new Lookup(result, key, sorted);
    }

    /// <summary>The result is the greatest of the sums.</summary>
    public static Claim Greatest(Linear result, params ReadOnlySpan<Linear> sums)
    {
        var parts = new Claim[sums.Length + 1];
        var reached = new Claim[sums.Length];
        for (var i = 0; i < sums.Length; i++)
        {
            parts[i] = result >= sums[i];
            reached[i] = result <= sums[i];
        }

        parts[^1] = new AnyOf(reached);
        return new AllOf(parts);
    }

    /// <summary>The result is the numerator divided by scale · divisor, taken up to the next whole number; the divisor is at least 1, also where its domain is given up.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The divisor may be below 1, or the scale is.</exception>
    public static Claim Quotient(Variable result, Linear numerator, Variable divisor, long scale = 1)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(scale, 1);
        ArgumentOutOfRangeException.ThrowIfLessThan(divisor.Domain.Low, 1);
        return new Ratio(result, numerator, divisor, scale);
    }

    private static AnyOf NotAmong(Member member)
    {
        var (variable, values) = member;
        if (values.Length == 0)
        {
            return new AnyOf([new AtMostZero(0)]);
        }

        var parts = new List<Claim> { variable <= values[0] - 1 };
        for (var i = 1; i < values.Length; i++)
        {
            if (values[i] > values[i - 1] + 1)
            {
                parts.Add(new AllOf([variable >= values[i - 1] + 1, variable <= values[i] - 1]));
            }
        }

        parts.Add(variable >= values[^1] + 1);
        return new AnyOf([.. parts]);
    }

    /// <summary>The sum is 0 or less.</summary>
    internal sealed class AtMostZero(Linear sum) : Claim
    {
        public void Deconstruct(out Linear value) => value = sum;
    }

    /// <summary>The sum is 0.</summary>
    internal sealed class IsZero(Linear sum) : Claim
    {
        public void Deconstruct(out Linear value) => value = sum;
    }

    /// <summary>One of the parts holds, or several.</summary>
    internal sealed class AnyOf(Claim[] parts) : Claim
    {
        public void Deconstruct(out Claim[] value) => value = parts;
    }

    /// <summary>All parts hold.</summary>
    internal sealed class AllOf(Claim[] parts) : Claim
    {
        public void Deconstruct(out Claim[] value) => value = parts;
    }

    /// <summary>The variable has one of these values.</summary>
    internal sealed class Member(Variable variable, long[] values) : Claim
    {
        public void Deconstruct(out Variable of, out long[] among) => (of, among) = (variable, values);
    }

    /// <summary>The result is that of the row whose key the variable has.</summary>
    internal sealed class Lookup(Variable result, Variable key, (long Key, long Result)[] rows) : Claim
    {
        public Variable Result => result;

        public Variable Key => key;

        public (long Key, long Result)[] Rows => rows;
    }

    /// <summary>The result is the numerator over scale times divisor, taken up to the next whole number.</summary>
    internal sealed class Ratio(Variable result, Linear numerator, Variable divisor, long scale) : Claim
    {
        public Variable Result => result;

        public Linear Numerator => numerator;

        public Variable Divisor => divisor;

        public long Scale => scale;

        /// <summary>The sums that are at most 0 where the divisor has this value.</summary>
        public List<Linear> At(long value)
        {
            var unit = checked(value * scale);
            return [divisor - value, value - divisor, numerator - (unit * result), (unit * result) - numerator - (unit - 1)];
        }
    }
}
