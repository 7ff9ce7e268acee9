namespace DetailGen.Solver;

/// <summary>Whole-number division and divisors, as the search needs them.</summary>
internal static class Arithmetic
{
    /// <summary>The greatest common divisor of the absolute values; that of 0 and 0 is 0.</summary>
    public static long Gcd(long a, long b)
    {
        a = Math.Abs(a);
        b = Math.Abs(b);
        while (b != 0)
        {
            (a, b) = (b, a % b);
        }

        return a;
    }

    /// <summary>The quotient rounded down; the divisor is positive.</summary>
    public static long FloorDivide(long a, long b) => a >= 0 ? a / b : -((-a + b - 1) / b);

    /// <summary>The quotient rounded up; the divisor is positive.</summary>
    public static long CeilingDivide(long a, long b) => a >= 0 ? (a + b - 1) / b : -(-a / b);

    /// <summary>The remainder in 0 … b - 1; the divisor is positive.</summary>
    public static long Modulo(long a, long b) => (a % b + b) % b;

    /// <summary>The inverse of a modulo m, where both have no divisor in common; m is positive.</summary>
    public static long Inverse(long a, long m)
    {
        long r0 = m, r1 = Modulo(a, m), t0 = 0, t1 = 1;
        while (r1 != 0)
        {
            var q = r0 / r1;
            (r0, r1) = (r1, r0 - q * r1);
            (t0, t1) = (t1, t0 - q * t1);
        }

        return Modulo(t0, m);
    }
}
