using DetailGen.Details.Rules.Language;
using DetailGen.Solver;

namespace DetailGen.Details.Solving;

/// <summary>Between what a sum can lie by the domains alone: loose, but never too tight.</summary>
internal sealed class Bounds(Situation situation, IReadOnlyDictionary<string, Variable> unknowns)
{
    private const decimal Beyond = 1_000_000_000_000;
    private static readonly (decimal, decimal) Anything = (-Beyond, Beyond);

    /// <summary>In the unit of the expression's kind.</summary>
    public (decimal Least, decimal Most) Of(Expression expression)
    {
        var settled = expression.In(situation);
        if (settled.IsKnown)
        {
            return (settled.Number, settled.Number);
        }

        return expression switch
        {
            Key key when unknowns.TryGetValue(key.Name, out var unknown) => (unknown.Domain.Low, unknown.Domain.High),
            Key key when situation.DerivedOf(key.Name) is { } derived => Of(derived),
            Extreme extreme => Of(extreme),
            Arithmetic { Operation: Operation.Plus } sum => Add(Of(sum.Left), Of(sum.Right)),
            Arithmetic { Operation: Operation.Minus } sum => Add(Of(sum.Left), Turned(Of(sum.Right))),
            Arithmetic { Operation: Operation.Times } product when product.Left.In(situation) is { IsKnown: true } factor => Times(factor.Number, Of(product.Right)),
            Arithmetic { Operation: Operation.Times } product when product.Right.In(situation) is { IsKnown: true } factor => Times(factor.Number, Of(product.Left)),
            Arithmetic { Operation: Operation.Over } quotient when Of(quotient.Left) is { Least: >= 0 } length && Of(quotient.Right) is { Least: >= 1 } by =>
                (length.Least / by.Most, Math.Ceiling(length.Most / by.Least)),
            _ => Anything,
        };
    }

    private (decimal, decimal) Of(Parameters.Derived derived)
    {
        var (least, most) = (Beyond, -Beyond);
        foreach (var (when, value) in derived.Cases)
        {
            if (when is not null && situation.Catalogue.Tree(when).In(situation).Fails)
            {
                continue;
            }

            var (low, high) = Of(situation.Catalogue.Tree(value));
            (least, most) = (Math.Min(least, low), Math.Max(most, high));
        }

        return least <= most ? (least, most) : Anything;
    }

    private (decimal, decimal) Of(Extreme extreme)
    {
        var all = extreme.Of.Select(Of).ToList();
        return extreme.Greatest ? (all.Max(one => one.Least), all.Max(one => one.Most)) : (all.Min(one => one.Least), all.Min(one => one.Most));
    }

    private static (decimal, decimal) Add((decimal Least, decimal Most) a, (decimal Least, decimal Most) b) => (a.Least + b.Least, a.Most + b.Most);

    private static (decimal, decimal) Turned((decimal Least, decimal Most) a) => (-a.Most, -a.Least);

    private static (decimal, decimal) Times(decimal factor, (decimal Least, decimal Most) a) =>
        factor >= 0 ? (factor * a.Least, factor * a.Most) : (factor * a.Most, factor * a.Least);
}
