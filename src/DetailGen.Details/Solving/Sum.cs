using DetailGen.Solver;

namespace DetailGen.Details.Solving;

/// <summary>An exact value that hangs on unknowns: a whole-numbered sum over a scale, in the unit of its kind.</summary>
internal readonly record struct Sum(Linear Value, long Scale)
{
    public static Sum Of(decimal number)
    {
        var scale = 1L;
        while (!decimal.IsInteger(number * scale) && scale < 1_000_000_000)
        {
            scale *= 10;
        }

        return new Sum((long)Math.Round(number * scale), scale);
    }

    public static Sum operator +(Sum left, Sum right)
    {
        var (a, b, scale) = Common(left, right);
        return new Sum(a + b, scale);
    }

    public static Sum operator -(Sum left, Sum right) => left + (right * -1m);

    public static Sum operator *(Sum sum, decimal factor)
    {
        var (whole, scale) = (Of(factor).Value.Constant, Of(factor).Scale);
        return new Sum(sum.Value * whole, checked(sum.Scale * scale));
    }

    /// <summary>Both over one scale.</summary>
    public static (Linear Left, Linear Right, long Scale) Common(Sum left, Sum right)
    {
        if (left.Scale == right.Scale)
        {
            return (left.Value, right.Value, left.Scale);
        }

        var scale = checked(left.Scale / Gcd(left.Scale, right.Scale) * right.Scale);
        return (left.Value * (scale / left.Scale), right.Value * (scale / right.Scale), scale);
    }

    private static long Gcd(long a, long b) => b == 0 ? a : Gcd(b, a % b);
}
