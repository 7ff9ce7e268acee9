using DetailGen.Sections;

namespace DetailGen.Details.Rules.Language;

/// <summary>What is known of a value.</summary>
public enum Knowledge
{
    Known,

    /// <summary>The detail has it, but it is not solved yet.</summary>
    Open,

    /// <summary>The detail has no such thing.</summary>
    Missing,
}

/// <summary>A value as far as it is known.</summary>
/// <param name="Number">In the unit of the kind; 1 and 0 for a truth.</param>
public readonly record struct Value(Knowledge Knowledge, Kind Kind, decimal Number, string? Text)
{
    public static readonly Value Open = new(Knowledge.Open, Kind.Truth, 0, null);

    public static readonly Value Missing = new(Knowledge.Missing, Kind.Truth, 0, null);

    public static Value Of(decimal number, Kind kind) => new(Knowledge.Known, kind, number, null);

    public static Value Of(string text) => new(Knowledge.Known, Kind.Text, 0, text);

    public static Value Of(bool truth) => new(Knowledge.Known, Kind.Truth, truth ? 1 : 0, null);

    public bool IsKnown => Knowledge == Knowledge.Known;

    /// <summary>Known to hold.</summary>
    public bool Holds => IsKnown && Number != 0;

    /// <summary>Known not to hold.</summary>
    public bool Fails => IsKnown && Number == 0;

    public override string ToString() => Text ?? Printing.Amount(Number, Kind);
}

/// <summary>What a detail says of itself when asked.</summary>
public interface IFacts
{
    Value Find(string key);

    bool Has(string slot);

    /// <summary>Null where there is no such slot.</summary>
    Material? MaterialIn(string slot);
}

/// <summary>Works expressions out, as far as the facts allow.</summary>
public static class Evaluation
{
    /// <summary>The value; open where it hangs on what is not solved yet. A comparison with something the detail lacks does not hold.</summary>
    public static Value In(this Expression expression, IFacts facts) => expression switch
    {
        Key key => facts.Find(key.Name),
        Word word => Value.Of(word.Text),
        Figure figure => Value.Of(figure.Value, figure.Kind),
        Has has => Value.Of(facts.Has(has.Slot)),
        Property property => Of(property, facts),
        Arithmetic sum => Of(sum, facts),
        Extreme extreme => Of(extreme, facts),
        Comparison comparison => Compare(comparison.Relation, comparison.Left.In(facts), comparison.Right.In(facts)),
        Between between => And(
            Compare(Relation.AtLeast, between.Left.In(facts), between.Low.In(facts)), Compare(Relation.AtMost, between.Left.In(facts), between.High.In(facts))),
        Among among => Of(among, facts),
        Both both => And(both.Left.In(facts), both.Right.In(facts)),
        Either either => Or(either.Left.In(facts), either.Right.In(facts)),
        Not not => Opposite(not.Of.In(facts)),
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    /// <summary>The n of the slope that an angle makes, not rounded.</summary>
    internal static decimal SlopeOf(decimal degrees) => (decimal)Math.Round(1 / Math.Tan((double)degrees * Math.PI / 180), 9);

    /// <summary>A length over a slope 1:n, up to the next whole micrometre: what is built is never short.</summary>
    internal static decimal Rise(decimal length, decimal n) => Math.Ceiling(length / n);

    private static Value Of(Property property, IFacts facts)
    {
        if (facts.MaterialIn(property.Slot) is not { } material)
        {
            return Value.Missing;
        }

        return property.Name switch
        {
            "kind" => Value.Of(material.Kind),
            "id" => Value.Of(material.Id),
            "density" => Value.Of((decimal)material.Density, Kind.Density),
            _ => material.Conductivity is { } conductivity ? Value.Of((decimal)conductivity, Kind.Conductivity) : Value.Missing,
        };
    }

    private static Value Of(Arithmetic sum, IFacts facts)
    {
        var (left, right) = (sum.Left.In(facts), sum.Right.In(facts));
        if (!left.IsKnown || !right.IsKnown)
        {
            return left.Knowledge == Knowledge.Missing || right.Knowledge == Knowledge.Missing ? Value.Missing : Value.Open;
        }

        return (sum.Operation, left.Kind, right.Kind) switch
        {
            (Operation.Plus, var kind, _) => Value.Of(left.Number + right.Number, kind),
            (Operation.Minus, var kind, _) => Value.Of(left.Number - right.Number, kind),
            (Operation.Times, Kind.Length, Kind.Density) or (Operation.Times, Kind.Density, Kind.Length) =>
                Value.Of(left.Number * right.Number / 1_000_000, Kind.AreaMass),
            (Operation.Times, Kind.Number, var kind) => Value.Of(left.Number * right.Number, kind),
            (Operation.Times, var kind, _) => Value.Of(left.Number * right.Number, kind),
            (_, _, Kind.Slope) => Value.Of(Rise(left.Number, right.Number), Kind.Length),
            (_, _, Kind.Conductivity) => right.Number == 0 ? Value.Missing : Value.Of(left.Number / 1_000_000 / right.Number, Kind.RValue),
            (_, var kind, _) => Value.Of(left.Number / right.Number, kind),
        };
    }

    private static Value Of(Extreme extreme, IFacts facts)
    {
        var values = extreme.Of.Select(part => part.In(facts)).ToList();
        if (values.Exists(value => !value.IsKnown))
        {
            return values.Exists(value => value.Knowledge == Knowledge.Missing) ? Value.Missing : Value.Open;
        }

        return values.Aggregate((best, next) => Order(next, best) > 0 == extreme.Greatest ? next : best);
    }

    private static Value Of(Among among, IFacts facts)
    {
        var left = among.Left.In(facts);
        var holds = Value.Of(false);
        foreach (var member in among.Members)
        {
            holds = Or(holds, Compare(Relation.Equal, left, member.In(facts)));
        }

        return holds;
    }

    internal static Value Compare(Relation relation, Value left, Value right)
    {
        if (left.Knowledge == Knowledge.Missing || right.Knowledge == Knowledge.Missing)
        {
            return Value.Of(false);
        }

        if (!left.IsKnown || !right.IsKnown)
        {
            return Value.Open;
        }

        var order = Order(left, right);
        return Value.Of(relation switch
        {
            Relation.Equal => order == 0,
            Relation.NotEqual => order != 0,
            Relation.AtLeast => order >= 0,
            Relation.AtMost => order <= 0,
            Relation.More => order > 0,
            _ => order < 0,
        });
    }

    // of two slopes the steeper is the greater, and it has the smaller n
    private static int Order(Value left, Value right) => (left.Kind, right.Kind) switch
    {
        (Kind.Text, _) => string.CompareOrdinal(left.Text, right.Text),
        (Kind.Slope, Kind.Slope) => right.Number.CompareTo(left.Number),
        (Kind.Slope, Kind.Angle) => SlopeOf(right.Number).CompareTo(left.Number),
        (Kind.Angle, Kind.Slope) => right.Number.CompareTo(SlopeOf(left.Number)),
        _ => left.Number.CompareTo(right.Number),
    };

    internal static Value And(Value left, Value right) =>
        left.Fails || right.Fails ? Value.Of(false) : left.IsKnown && right.IsKnown ? Value.Of(true) : Value.Open;

    internal static Value Or(Value left, Value right) =>
        left.Holds || right.Holds ? Value.Of(true) : left.IsKnown && right.IsKnown ? Value.Of(false) : Value.Open;

    private static Value Opposite(Value value) => value.IsKnown ? Value.Of(value.Number == 0) : value;
}
