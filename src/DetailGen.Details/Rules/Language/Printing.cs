using System.Globalization;

namespace DetailGen.Details.Rules.Language;

/// <summary>Expressions and figures as text, the same under every culture.</summary>
public static class Printing
{
    internal static string Text(Expression expression) => expression switch
    {
        Key key => key.Name,
        Word word => word.Text,
        Figure quantity => Amount(quantity.Value, quantity.Kind),
        Property property => $"material({property.Slot}).{property.Name}",
        Has has => $"has({has.Slot})",
        Extreme extreme => $"{(extreme.Greatest ? "max" : "min")}({List(extreme.Of)})",
        Arithmetic sum => $"{Inside(sum.Left, Rank(sum))} {Sign(sum.Operation)} {Inside(sum.Right, Rank(sum) + 1)}",
        Comparison comparison => $"{Inside(comparison.Left, 4)} {comparison.Relation.Sign()} {Inside(comparison.Right, 4)}",
        Among among => $"{Inside(among.Left, 4)} in [{List(among.Members)}]",
        Between between => $"{Inside(between.Left, 4)} between {Inside(between.Low, 4)} and {Inside(between.High, 4)}",
        Both both => $"{Inside(both.Left, 1)} and {Inside(both.Right, 2)}",
        Either either => $"{Inside(either.Left, 0)} or {Inside(either.Right, 1)}",
        Not not => $"not {Inside(not.Of, 2)}",
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    /// <summary>A figure with its unit: "102.5 mm", "1:40", "0.16 W/m²K".</summary>
    public static string Amount(decimal amount, Kind kind) => kind switch
    {
        Kind.Length => $"{Plain(amount / 1000m)} mm",
        Kind.Slope => $"1:{Plain(amount)}",
        Kind.Angle => $"{Plain(amount)}°",
        Kind.Truth => amount != 0 ? "yes" : "no",
        _ => kind.Unit() is { } unit ? $"{Plain(amount)} {unit}" : Plain(amount),
    };

    /// <summary>At most six decimals, none needlessly.</summary>
    public static string Plain(decimal amount) => amount.ToString("0.######", CultureInfo.InvariantCulture);

    /// <summary>As written between two sides.</summary>
    public static string Sign(this Relation relation) => relation switch
    {
        Relation.Equal => "=",
        Relation.NotEqual => "!=",
        Relation.AtLeast => ">=",
        Relation.AtMost => "<=",
        Relation.More => ">",
        _ => "<",
    };

    private static string Sign(Operation operation) => operation switch
    {
        Operation.Plus => "+",
        Operation.Minus => "-",
        Operation.Times => "*",
        _ => "/",
    };

    private static string List(IEnumerable<Expression> members) => string.Join(", ", members.Select(Text));

    private static string Inside(Expression part, int least) => Rank(part) < least ? $"({Text(part)})" : Text(part);

    private static int Rank(Expression expression) => expression switch
    {
        Either => 0,
        Both => 1,
        Not => 2,
        Comparison or Among or Between => 3,
        Arithmetic { Operation: Operation.Plus or Operation.Minus } => 4,
        Arithmetic => 5,
        Figure { Value: < 0 } => 4,
        _ => 6,
    };
}
