namespace DetailGen.Solver;

/// <summary>A weighted sum of variables plus a constant. Values do not change; operators make new ones, and overflow throws.</summary>
public class Linear
{
    private protected Linear(Term[] terms, long constant)
    {
        Terms = terms;
        Constant = constant;
    }

    private protected Linear()
    {
        Terms = [];
    }

    /// <summary>The part without a variable.</summary>
    public long Constant { get; }

    /// <summary>By variable id, each variable once, no factor 0.</summary>
    internal Term[] Terms { get; private protected init; }

    /// <summary>The constant alone.</summary>
    public static implicit operator Linear(long constant) => new([], constant);

    public static Linear operator +(Linear left, Linear right)
    {
        var terms = new Term[left.Terms.Length + right.Terms.Length];
        int i = 0, j = 0, count = 0;
        while (i < left.Terms.Length || j < right.Terms.Length)
        {
            if (j == right.Terms.Length || (i < left.Terms.Length && left.Terms[i].Variable.Id < right.Terms[j].Variable.Id))
            {
                terms[count++] = left.Terms[i++];
            }
            else if (i == left.Terms.Length || right.Terms[j].Variable.Id < left.Terms[i].Variable.Id)
            {
                terms[count++] = right.Terms[j++];
            }
            else
            {
                var factor = checked(left.Terms[i].Factor + right.Terms[j].Factor);
                if (factor != 0)
                {
                    terms[count++] = new Term(left.Terms[i].Variable, factor);
                }

                i++;
                j++;
            }
        }

        Array.Resize(ref terms, count);
        return new Linear(terms, checked(left.Constant + right.Constant));
    }

    public static Linear operator *(long factor, Linear sum)
    {
        if (factor == 0)
        {
            return 0;
        }

        var terms = new Term[sum.Terms.Length];
        for (var i = 0; i < terms.Length; i++)
        {
            terms[i] = new Term(sum.Terms[i].Variable, checked(factor * sum.Terms[i].Factor));
        }

        return new Linear(terms, checked(factor * sum.Constant));
    }

    public static Linear operator *(Linear sum, long factor) => factor * sum;

    public static Linear operator -(Linear sum) => -1 * sum;

    public static Linear operator -(Linear left, Linear right) => left + -1 * right;

    public static Claim operator <=(Linear left, Linear right) => new Claim.AtMostZero(left - right);

    public static Claim operator >=(Linear left, Linear right) => new Claim.AtMostZero(right - left);

    /// <summary>The claim that both sides have the same value (the operator is left to reference equality).</summary>
    public Claim EqualTo(Linear other) => new Claim.IsZero(this - other);

    /// <summary>The value of the sum where each variable has the value at its id.</summary>
    internal Int128 At(ReadOnlySpan<long> values)
    {
        Int128 sum = Constant;
        foreach (var term in Terms)
        {
            sum += (Int128)term.Factor * values[term.Variable.Id];
        }

        return sum;
    }

    /// <summary>A variable times a factor.</summary>
    internal readonly record struct Term(Variable Variable, long Factor);
}
