using DetailGen.Details.Rules.Language;
using DetailGen.Solver;

namespace DetailGen.Details.Solving;

/// <summary>Turns expressions into claims on the solver's unknowns. What is settled already is worked out on the way.</summary>
internal sealed class Translation(Model model, Situation situation, IReadOnlyDictionary<string, Variable> unknowns)
{
    // a rise is at most 10 m either way
    private const long Reach = 10_000_000;
    private readonly Bounds _bounds = new(situation, unknowns);
    private Dictionary<string, Sum> _known = new(StringComparer.Ordinal);
    private IReadOnlyDictionary<string, Linear> _counted = new Dictionary<string, Linear>();

    /// <summary>The same unknowns, where some layers count towards resistance as if they were so thick; by the key of their thickness, micrometres.</summary>
    public Translation Counting(IReadOnlyDictionary<string, Linear> layers) => new(model, situation, unknowns) { _known = _known, _counted = layers };

    /// <summary>What of a layer's thickness counts towards resistance.</summary>
    public Sum Thickness(ResistanceLayer layer) =>
        layer.Thickness is Key key && _counted.TryGetValue(key.Name, out var thick) ? new Sum(thick, 1) : Sum(layer.Thickness);

    /// <summary>The claim that the expression holds.</summary>
    /// <exception cref="NotLinear">It says something that is not linear.</exception>
    public DetailGen.Solver.Claim Claim(Expression expression)
    {
        var settled = expression.In(situation);
        if (settled.IsKnown)
        {
            return settled.Holds ? (Linear)0 <= 0 : (Linear)1 <= 0;
        }

        return expression switch
        {
            Both both => DetailGen.Solver.Claim.All(Claim(both.Left), Claim(both.Right)),
            Either either => Any(either),
            Not not => DetailGen.Solver.Claim.Not(Claim(not.Of)),
            Between between => DetailGen.Solver.Claim.All(
                Compare(Relation.AtLeast, between.Left, between.Low), Compare(Relation.AtMost, between.Left, between.High)),
            Among among => Among(among),
            Comparison comparison => Compare(comparison.Relation, comparison.Left, comparison.Right),
            _ => throw new NotLinear($"{expression} is no claim."),
        };
    }

    /// <summary>The sum that the expression stands for.</summary>
    public Sum Sum(Expression expression)
    {
        var settled = expression.In(situation);
        if (settled.IsKnown)
        {
            return Solving.Sum.Of(settled.Number);
        }

        return expression switch
        {
            Key key => Of(key.Name),
            Extreme extreme => Once(extreme.ToString(), () => Greatest(extreme)),
            Arithmetic { Operation: Operation.Plus } sum => Sum(sum.Left) + Sum(sum.Right),
            Arithmetic { Operation: Operation.Minus } sum => Sum(sum.Left) - Sum(sum.Right),
            Arithmetic { Operation: Operation.Times } sum => Product(sum),
            Arithmetic sum => Quotient(sum),
            _ => throw new NotLinear($"{expression} is no sum."),
        };
    }

    private DetailGen.Solver.Claim Any(Either either)
    {
        var parts = new List<DetailGen.Solver.Claim>();
        Collect(either);
        return parts.Count == 1 ? parts[0] : DetailGen.Solver.Claim.Any([.. parts]);

        void Collect(Expression part)
        {
            if (part is Either inner)
            {
                Collect(inner.Left);
                Collect(inner.Right);
            }
            else if (!part.In(situation).Fails)
            {
                parts.Add(Claim(part));
            }
        }
    }

    private DetailGen.Solver.Claim Among(Among among)
    {
        if (among.Left is Key key && unknowns.TryGetValue(key.Name, out var unknown) && among.Members.All(member => member is Figure))
        {
            return unknown.In([.. among.Members.Cast<Figure>().Select(member => (long)member.Value)]);
        }

        return DetailGen.Solver.Claim.Any([.. among.Members.Select(member => Compare(Relation.Equal, among.Left, member))]);
    }

    private DetailGen.Solver.Claim Compare(Relation relation, Expression left, Expression right)
    {
        if (Slope(left) || Slope(right))
        {
            // the steeper is the greater and has the smaller n
            return Compare(relation, N(right), N(left));
        }

        if (left is Key { Kind: Kind.RValue } resistance && right.In(situation) is { IsKnown: true } least)
        {
            return Resistance(relation, resistance.Name, least.Number * Resistances.Unit);
        }

        if (right is Key { Kind: Kind.RValue } && left.In(situation).IsKnown)
        {
            return Compare(Turned(relation), right, left);
        }

        if (left is Key { Kind: Kind.UValue } transmittance)
        {
            return Transmittance(relation, transmittance, right);
        }

        return right is Key { Kind: Kind.UValue } other ? Transmittance(Turned(relation), other, left) : Compare(relation, Sum(left), Sum(right));
    }

    private static bool Slope(Expression side) => side is Key { Kind: Kind.Slope } or Figure { Kind: Kind.Slope or Kind.Angle };

    private Sum N(Expression side) => side is Figure { Kind: Kind.Angle } angle ? Solving.Sum.Of(Evaluation.SlopeOf(angle.Value)) : Sum(side);

    private static DetailGen.Solver.Claim Compare(Relation relation, Sum left, Sum right)
    {
        var (a, b, _) = Solving.Sum.Common(left, right);
        return relation switch
        {
            Relation.Equal => a.EqualTo(b),
            Relation.NotEqual => DetailGen.Solver.Claim.Not(a.EqualTo(b)),
            Relation.AtLeast => a >= b,
            Relation.AtMost => a <= b,
            Relation.More => a >= b + 1,
            _ => a <= b - 1,
        };
    }

    // U ≤ u is R ≥ 1/u; the bound is taken up (or down) to the next whole unit, so that U never exceeds u by rounding
    private DetailGen.Solver.Claim Transmittance(Relation relation, Key key, Expression limit)
    {
        var figure = limit.In(situation);
        if (!figure.IsKnown || figure.Number <= 0)
        {
            throw new NotLinear($"{key.Name} can be compared with a figure only.");
        }

        return Resistance(Turned(relation), key.Name, Resistances.Unit / figure.Number);
    }

    /// <param name="limit">In units of 10⁻¹² m²·K/W.</param>
    private DetailGen.Solver.Claim Resistance(Relation relation, string key, decimal limit)
    {
        var corrected = key.EndsWith(".u-value", StringComparison.Ordinal);
        var element = key[..key.IndexOf('.', StringComparison.Ordinal)];
        var (up, down) = ((long)Math.Ceiling(limit), (long)Math.Floor(limit));
        return relation switch
        {
            Relation.AtLeast => All(up),
            Relation.More => All(down + 1),
            Relation.AtMost => Any(down),
            Relation.Less => Any(up - 1),
            Relation.Equal => up == down ? DetailGen.Solver.Claim.All(All(up), Any(up)) : (Linear)1 <= 0,
            _ => up == down ? DetailGen.Solver.Claim.Any(All(up + 1), Any(up - 1)) : (Linear)0 <= 0,
        };

        DetailGen.Solver.Claim All(long bound) => new Resistances(this, _bounds, situation).AtLeast(element, bound, corrected);

        DetailGen.Solver.Claim Any(long bound) => new Resistances(this, _bounds, situation).AtMost(element, bound);
    }

    private static Relation Turned(Relation relation) => relation switch
    {
        Relation.AtLeast => Relation.AtMost,
        Relation.AtMost => Relation.AtLeast,
        Relation.More => Relation.Less,
        Relation.Less => Relation.More,
        _ => relation,
    };

    private Sum Of(string key)
    {
        if (unknowns.TryGetValue(key, out var unknown))
        {
            return new Sum(unknown, 1);
        }

        return Once(key, () => key switch
        {
            _ when situation.DerivedOf(key) is { } derived => Derived(derived),
            _ => throw new NotLinear($"The detail has no size {key}."),
        });
    }

    // written into whatever names it where it is a plain sum; an unknown of its own where which case holds hangs on sizes
    private Sum Derived(Parameters.Derived derived)
    {
        var open = new List<(DetailGen.Solver.Claim When, Sum Value)>();
        foreach (var (when, value) in derived.Cases)
        {
            var tree = when is null ? null : situation.Catalogue.Tree(when);
            var settled = tree?.In(situation) ?? Value.Of(true);
            if (settled.Fails)
            {
                continue;
            }

            var sum = Sum(situation.Catalogue.Tree(value));
            if (settled.IsKnown && open.Count == 0)
            {
                model.Share(sum.Value);
                return sum;
            }

            open.Add((settled.IsKnown ? (Linear)0 <= 0 : Claim(tree!), sum));
            if (settled.IsKnown)
            {
                break;
            }
        }

        var unknown = model.Add(derived.Key, Domain.Range(-10 * Reach, 10 * Reach));
        DetailGen.Solver.Claim? before = null;
        foreach (var (when, value) in open)
        {
            var (left, right, _) = Solving.Sum.Common(new Sum(unknown, 1), value);
            model.Require(null, DetailGen.Solver.Claim.When(before is null ? when : DetailGen.Solver.Claim.All(before, when), left.EqualTo(right)));
            before = before is null ? DetailGen.Solver.Claim.Not(when) : DetailGen.Solver.Claim.All(before, DetailGen.Solver.Claim.Not(when));
        }

        return new Sum(unknown, 1);
    }

    private Sum Product(Arithmetic product)
    {
        var (left, right) = (product.Left.In(situation), product.Right.In(situation));
        if (!left.IsKnown && !right.IsKnown)
        {
            throw new NotLinear($"{product} multiplies two unknowns.");
        }

        var (factor, sum) = left.IsKnown ? (left, Sum(product.Right)) : (right, Sum(product.Left));
        return factor.Kind == Kind.Density ? sum * (factor.Number / 1_000_000) : sum * factor.Number;
    }

    private Sum Quotient(Arithmetic quotient)
    {
        var divisor = quotient.Right.In(situation);
        if (divisor.IsKnown && divisor.Kind == Kind.Number)
        {
            var whole = Solving.Sum.Of(divisor.Number);
            var sum = Sum(quotient.Left);
            var factor = whole.Value.Constant;
            return new Sum(sum.Value * (factor < 0 ? -whole.Scale : whole.Scale), checked(sum.Scale * Math.Abs(factor)));
        }

        if (divisor.IsKnown && divisor.Kind == Kind.Conductivity)
        {
            return Sum(quotient.Left) * Math.Round(1 / (1_000_000 * divisor.Number), 9, MidpointRounding.ToZero);
        }

        return Once(quotient.ToString(), () => Rise(quotient, divisor));
    }

    // the whole micrometre at or above length / n
    private Sum Rise(Arithmetic quotient, Value divisor)
    {
        var (length, scale) = (Sum(quotient.Left).Value, Sum(quotient.Left).Scale);
        if (divisor.IsKnown)
        {
            var fixedRise = model.Add(quotient.ToString(), Domain.Range(-Reach, Reach));
            model.Require(null, DetailGen.Solver.Claim.All(NotBelow(fixedRise, (long)divisor.Number), NotAbove(fixedRise, (long)divisor.Number)));
            return new Sum(fixedRise, 1);
        }

        if (quotient.Right is not Key key || !unknowns.TryGetValue(key.Name, out var n))
        {
            throw new NotLinear($"{quotient} divides by what is no slope.");
        }

        var (least, most) = _bounds.Of(quotient.Left);
        var rise = least >= 0 && most <= Reach
            ? model.Add(quotient.ToString(), Domain.Range((long)Math.Ceiling(least / n.Domain.High), (long)Math.Ceiling(most / n.Domain.Low)))
            : model.Add(quotient.ToString(), Domain.Range(-Reach, Reach));
        model.Require(null, DetailGen.Solver.Claim.Quotient(rise, length, n, scale));
        return new Sum(rise, 1);

        DetailGen.Solver.Claim NotBelow(Variable at, long ratio) => at * checked(ratio * scale) >= length;

        DetailGen.Solver.Claim NotAbove(Variable at, long ratio) => at * checked(ratio * scale) <= length + (checked(ratio * scale) - 1);
    }

    private Sum Greatest(Extreme extreme)
    {
        var sums = extreme.Of.Select(part => extreme.Greatest ? Sum(part) : Sum(part) * -1m).ToList();
        var scale = sums.Aggregate(1L, (all, sum) => Solving.Sum.Common(new Sum(0, all), sum).Scale);
        var best = model.Add(extreme.ToString(), Domain.Range(-10 * Reach * scale, 10 * Reach * scale));
        model.Require(null, DetailGen.Solver.Claim.Greatest(best, [.. sums.Select(sum => sum.Value * (scale / sum.Scale))]));
        return extreme.Greatest ? new Sum(best, scale) : new Sum(-best, scale);
    }

    private Sum Once(string text, Func<Sum> make)
    {
        if (!_known.TryGetValue(text, out var sum))
        {
            sum = make();
            _known[text] = sum;
        }

        return sum;
    }
}

/// <summary>An expression that the solver cannot be told; <see cref="DetailProblem"/> leaves it to be judged afterwards.</summary>
internal sealed class NotLinear(string reason) : Exception(reason);
