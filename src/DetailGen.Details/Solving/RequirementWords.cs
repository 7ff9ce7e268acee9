using DetailGen.Details.Rules;
using DetailGen.Details.Rules.Language;

namespace DetailGen.Details.Solving;

/// <summary>Requirements as one would say them: "the wall cavity must be at least 50 mm".</summary>
public static class RequirementWords
{
    private const int MostConditions = 3; // a longer one is told by its rule's own text

    /// <summary>Of an enforced rule, with what it hangs on; begins small, without a full stop.</summary>
    public static string Of(Rule rule)
    {
        var asked = rule.Require!.All().Count(IsCondition) <= MostConditions ? Said(rule.Require!, "must be") : rule.Text.TrimEnd('.', ' ');
        return rule.When is { } when && when.All().Count(IsCondition) <= MostConditions ? $"where {Said(when, "is")}, {asked}" : asked;
    }

    /// <summary>"the coping drip clearance" for <c>coping.drip-clearance</c>.</summary>
    public static string Name(string key) => key switch
    {
        "junction" => "the junction",
        _ when key.StartsWith("site.", StringComparison.Ordinal) || key.StartsWith("building.", StringComparison.Ordinal) => "the " + Spaced(key[(key.IndexOf('.', StringComparison.Ordinal) + 1)..]),
        _ => "the " + Spaced(key),
    };

    private static string Spaced(string key) => key.Replace("u-value", "U-value", StringComparison.Ordinal).Replace("r-value", "R-value", StringComparison.Ordinal)
        .Replace('.', ' ').Replace('-', ' ').Replace("U value", "U-value", StringComparison.Ordinal).Replace("R value", "R-value", StringComparison.Ordinal);

    private static bool IsCondition(Expression expression) => expression is Comparison or Among or Between or Has;

    private static string Said(Expression expression, string verb) => expression switch
    {
        Comparison { Relation: Rules.Language.Relation.NotEqual } other => $"{Side(other.Left)} {Denied(verb)} {Side(other.Right)}",
        Comparison { Right: Figure { Kind: Kind.Slope or Kind.Angle } fall } slope => $"{Side(slope.Left)} {verb} {ComparisonWords.Of(slope.Relation.Sign(), Side(fall), fall: true)}",
        Comparison comparison => $"{Side(comparison.Left)} {verb} {Relation(comparison.Relation)}{Side(comparison.Right)}",
        Among { Members: [var only] } one => $"{Side(one.Left)} {verb} {Side(only)}",
        Among among => $"{Side(among.Left)} {verb} {string.Join(", ", among.Members.SkipLast(1).Select(Side))} or {Side(among.Members[^1])}",
        Between between => $"{Side(between.Left)} {verb} {Side(between.Low)} to {Side(between.High)}",
        Has has => $"there {verb} {Article(Spaced(has.Slot))}",
        Not { Of: Has has } => $"there {verb} no {Spaced(has.Slot)}",
        Not { Of: Among or Comparison { Relation: Rules.Language.Relation.Equal } or Between } not => Said(not.Of, Denied(verb)),
        Not not => "not: " + Said(not.Of, verb),
        Both both => $"{Said(both.Left, verb)} and {Said(both.Right, verb)}",
        Either either => $"{Said(either.Left, verb)} or {Said(either.Right, verb)}",
        _ => expression.ToString(),
    };

    private static string Denied(string verb) => verb == "is" ? "is not" : "must not be";

    private static string Relation(Relation relation) => relation switch
    {
        Rules.Language.Relation.AtLeast => "at least ",
        Rules.Language.Relation.AtMost => "at most ",
        Rules.Language.Relation.More => "more than ",
        Rules.Language.Relation.Less => "less than ",
        _ => "",
    };

    private static string Side(Expression side) => side switch
    {
        Key key => Name(key.Name),
        Word word => word.Text,
        Property property => $"the {(property.Name == "id" ? "material" : property.Name)} of {Name(property.Slot)}",
        Arithmetic { Operation: Operation.Plus } sum => $"{Side(sum.Left)} plus {Side(sum.Right)}",
        Arithmetic { Operation: Operation.Minus } sum => $"{Side(sum.Left)} less {Side(sum.Right)}",
        Arithmetic { Operation: Operation.Times } product => $"{Side(product.Left)} times {Side(product.Right)}",
        Arithmetic quotient => $"{Side(quotient.Left)} over {Side(quotient.Right)}",
        Extreme extreme => $"the {(extreme.Greatest ? "greater" : "lesser")} of {string.Join(" and ", extreme.Of.Select(Side))}",
        _ => side.ToString(),
    };

    private static string Article(string noun) => ("aeiou".Contains(noun[0], StringComparison.Ordinal) ? "an " : "a ") + noun;
}
