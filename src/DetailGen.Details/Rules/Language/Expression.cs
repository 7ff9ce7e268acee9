namespace DetailGen.Details.Rules.Language;

/// <summary>An expression as a tree, its names resolved and its kinds checked.</summary>
public abstract record Expression
{
    /// <summary>Where it begins in its text, from 0. Not part of equality of meaning: compare printed texts.</summary>
    public int Offset { get; init; }

    /// <summary>The canonical text; reading it back gives the same tree.</summary>
    public sealed override string ToString() => Printing.Text(this);
}

/// <summary>A parameter, a derived value, a choice, a circumstance or a measure, by its key.</summary>
public sealed record Key(string Name, Kind Kind) : Expression;

/// <summary>A choice's option, a material's id or kind.</summary>
public sealed record Word(string Text) : Expression;

/// <summary>A figure, in the unit of its kind.</summary>
public sealed record Figure(decimal Value, Kind Kind) : Expression;

/// <summary>A property of the material in a slot: <c>material(roof.deck).kind</c>.</summary>
/// <param name="Name">kind, id, conductivity or density.</param>
public sealed record Property(string Slot, string Name) : Expression;

/// <summary>Whether the detail has that slot, part or parameter.</summary>
public sealed record Has(string Slot) : Expression;

/// <summary>The operators of arithmetic.</summary>
public enum Operation
{
    Plus,
    Minus,
    Times,

    /// <summary>A length over a slope 1:n is the rise, length / n, taken up to the next whole micrometre.</summary>
    Over,
}

/// <summary>Two quantities reckoned with.</summary>
public sealed record Arithmetic(Operation Operation, Expression Left, Expression Right) : Expression;

/// <summary>The greatest or the least of several.</summary>
public sealed record Extreme(bool Greatest, IReadOnlyList<Expression> Of) : Expression;

/// <summary>The comparisons.</summary>
public enum Relation
{
    Equal,
    NotEqual,
    AtLeast,
    AtMost,
    More,
    Less,
}

/// <summary>Two quantities or words compared.</summary>
public sealed record Comparison(Relation Relation, Expression Left, Expression Right) : Expression;

/// <summary>One of a list.</summary>
public sealed record Among(Expression Left, IReadOnlyList<Expression> Members) : Expression;

/// <summary>From one to another, both included.</summary>
public sealed record Between(Expression Left, Expression Low, Expression High) : Expression;

/// <summary>Holds where both hold.</summary>
public sealed record Both(Expression Left, Expression Right) : Expression;

/// <summary>Holds where one of them holds, or both.</summary>
public sealed record Either(Expression Left, Expression Right) : Expression;

/// <summary>Holds where the other fails.</summary>
public sealed record Not(Expression Of) : Expression;

/// <summary>Walks over trees.</summary>
public static class Trees
{
    /// <summary>The expression and all within it.</summary>
    public static IEnumerable<Expression> All(this Expression expression)
    {
        yield return expression;
        foreach (var part in Parts(expression))
        {
            foreach (var inner in part.All())
            {
                yield return inner;
            }
        }
    }

    /// <summary>Every key it names, once, in ordinal order.</summary>
    public static IReadOnlyList<string> Keys(this Expression expression) =>
        [.. expression.All().OfType<Key>().Select(key => key.Name).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)];

    private static IReadOnlyList<Expression> Parts(Expression expression) => expression switch
    {
        Arithmetic sum => [sum.Left, sum.Right],
        Extreme extreme => extreme.Of,
        Comparison comparison => [comparison.Left, comparison.Right],
        Among among => [among.Left, .. among.Members],
        Between between => [between.Left, between.Low, between.High],
        Both both => [both.Left, both.Right],
        Either either => [either.Left, either.Right],
        Not not => [not.Of],
        _ => [],
    };
}
