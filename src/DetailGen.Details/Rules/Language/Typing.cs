using System.Globalization;
using DetailGen.Details.Reading;

namespace DetailGen.Details.Rules.Language;

/// <summary>Resolves names and checks kinds; tells all faults of an expression at once.</summary>
internal sealed class Typing(Vocabulary vocabulary, Mark at)
{
    private static readonly string[] Properties = ["kind", "id", "conductivity", "density"];
    private readonly List<Diagnostic> _faults = [];

    public IReadOnlyList<Diagnostic> Faults => _faults;

    public (Expression Expression, Kind Kind) Of(Raw raw)
    {
        var (expression, kind) = Resolve(raw);
        return (expression with { Offset = raw.Offset }, kind);
    }

    private (Expression, Kind) Resolve(Raw raw) => raw switch
    {
        Raw.Figure figure => Figure(figure),
        Raw.Name name => Name(name),
        Raw.Call call => Call(call),
        Raw.Prefix { Operator: "not" } not => (new Not(Truth(not.Of)), Kind.Truth),
        Raw.Prefix minus => Negative(minus),
        Raw.Infix { Operator: "and" } both => (new Both(Truth(both.Left), Truth(both.Right)), Kind.Truth),
        Raw.Infix { Operator: "or" } either => (new Either(Truth(either.Left), Truth(either.Right)), Kind.Truth),
        Raw.Infix { Operator: "+" or "-" or "*" or "/" } sum => Sum(sum),
        Raw.Infix compare => Compare(compare),
        Raw.Listed listed => Listed(listed),
        Raw.Ranged ranged => Ranged(ranged),
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    private (Expression, Kind) Figure(Raw.Figure figure)
    {
        var digits = 0;
        while (digits < figure.Text.Length && (char.IsAsciiDigit(figure.Text[digits]) || figure.Text[digits] is '.' or ':'))
        {
            digits++;
        }

        var number = figure.Text[..digits];
        var unit = figure.Text[digits..].Trim();
        if (number.IndexOf(':', StringComparison.Ordinal) is var colon and >= 0)
        {
            return unit.Length == 0 && number[..colon] == "1" && Number(number[(colon + 1)..]) is { } n && n >= 1 && n <= 1_000_000 && decimal.IsInteger(n)
                ? (new Figure(n, Kind.Slope), Kind.Slope)
                : Fault(RuleMessages.BadFigure(Place(figure.Offset), figure.Text), Kind.Slope);
        }

        if (Units.Find(unit) is not { } found)
        {
            return Fault(RuleMessages.UnknownUnit(Place(figure.Offset + digits + 1), unit), Kind.Length);
        }

        if (Number(number) is not { } amount || (found.Kind == Kind.Length && !decimal.IsInteger(amount * found.Factor))
            || (found.Kind == Kind.Angle && amount is <= 0 or >= 90))
        {
            return Fault(RuleMessages.BadFigure(Place(figure.Offset), figure.Text), found.Kind);
        }

        return (new Figure(amount * found.Factor, found.Kind), found.Kind);
    }

    // twelve digits keep every product of two figures inside decimal and the solver's range
    private static decimal? Number(string text) =>
        text.Length <= 12 && decimal.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var number) ? number : null;

    private (Expression, Kind) Name(Raw.Name name) => vocabulary.Find(name.Text) is { } key
        ? (new Key(key.Name, key.Kind), key.Kind)
        : Fault(RuleMessages.UnknownKey(Place(name.Offset), name.Text, Nearest.To(name.Text, vocabulary.Keys)), Kind.Text);

    private (Expression, Kind) Call(Raw.Call call)
    {
        switch (call.Function, call.Property, call.Arguments)
        {
            case ("has", null, [Raw.Name slot]):
                return (new Has(Slot(slot)), Kind.Truth);
            case ("material", { } property, [Raw.Name slot]) when Properties.Contains(property, StringComparer.Ordinal):
                var kind = property switch { "conductivity" => Kind.Conductivity, "density" => Kind.Density, _ => Kind.Text };
                return (new Property(Slot(slot), property), kind);
            case ("r-value", null, [Raw.Name { Text: "wall" or "roof" } element]):
                return (new Key(element.Text + ".r-value", Kind.RValue), Kind.RValue);
            case ("max" or "min", null, { Length: >= 2 } several):
                var parts = Array.ConvertAll(several, Of);
                var first = parts[0];
                for (var i = 1; i < parts.Length; i++)
                {
                    Same(several[i].Offset, first, parts[i]);
                }

                Ordered(several[0].Offset, first);
                return (new Extreme(call.Function == "max", Array.ConvertAll(parts, part => part.Expression)), first.Kind);
            default:
                return Fault(RuleMessages.UnknownFunction(Place(call.Offset), call.Function), Kind.Truth);
        }
    }

    private string Slot(Raw.Name slot)
    {
        if (!vocabulary.HasSlot(slot.Text))
        {
            _faults.Add(RuleMessages.UnknownSlot(Place(slot.Offset), slot.Text, Nearest.To(slot.Text, vocabulary.Slots)));
        }

        return slot.Text;
    }

    private (Expression, Kind) Negative(Raw.Prefix minus)
    {
        var (of, kind) = Of(minus.Of);
        if (kind is Kind.Text or Kind.Truth or Kind.Slope or Kind.Angle)
        {
            return Fault(RuleMessages.NoArithmetic(Place(minus.Offset), "with a minus sign", kind, kind), kind);
        }

        return (of is Figure figure ? figure with { Value = -figure.Value } : new Arithmetic(Operation.Times, new Figure(-1, Kind.Number), of), kind);
    }

    private Expression Truth(Raw raw)
    {
        var (expression, kind) = Of(raw);
        if (kind != Kind.Truth && _faults.Count == 0)
        {
            _faults.Add(RuleMessages.WrongKind(Place(raw.Offset), expression.ToString(), kind, Kind.Truth));
        }

        return expression;
    }

    private (Expression, Kind) Sum(Raw.Infix sum)
    {
        var (left, right) = (Of(sum.Left), Of(sum.Right));
        var operation = sum.Operator switch { "+" => Operation.Plus, "-" => Operation.Minus, "*" => Operation.Times, _ => Operation.Over };
        Kind? kind = (operation, left.Kind, right.Kind) switch
        {
            (_, Kind.Text or Kind.Truth or Kind.Angle or Kind.UValue, _) or (_, _, Kind.Text or Kind.Truth or Kind.Angle or Kind.UValue) => null,
            (Operation.Plus or Operation.Minus, Kind.Slope, _) => null,
            (Operation.Plus or Operation.Minus, var a, var b) => a == b ? a : null,
            (Operation.Times, Kind.Slope, _) or (Operation.Times, _, Kind.Slope) or (_, Kind.Slope, _) => null,
            (Operation.Times, Kind.Number, var b) => b,
            (Operation.Times, var a, Kind.Number) => a,
            (Operation.Times, Kind.Length, Kind.Density) or (Operation.Times, Kind.Density, Kind.Length) => Kind.AreaMass,
            (Operation.Over, var a, Kind.Number) => a,
            (Operation.Over, Kind.Length, Kind.Slope) => Kind.Length,
            (Operation.Over, Kind.Length, Kind.Conductivity) => Kind.RValue,
            _ => null,
        };
        if (kind is null)
        {
            return Fault(RuleMessages.NoArithmetic(Place(sum.Offset), sum.Operator, left.Kind, right.Kind), left.Kind);
        }

        var product = operation == Operation.Times && Open(left.Expression) && Open(right.Expression);
        var quotient = operation == Operation.Over && right.Kind == Kind.Number && right.Expression is not Language.Figure { Value: not 0 };
        if (product || quotient)
        {
            _faults.Add(RuleMessages.NotLinear(Place(sum.Offset)));
        }

        return (new Arithmetic(operation, left.Expression, right.Expression), kind.Value);
    }

    private static bool Open(Expression expression) => expression.All().Any(part => part is Key);

    private (Expression, Kind) Compare(Raw.Infix compare)
    {
        var relation = compare.Operator switch
        {
            "=" => Relation.Equal,
            "!=" => Relation.NotEqual,
            ">=" => Relation.AtLeast,
            "<=" => Relation.AtMost,
            ">" => Relation.More,
            _ => Relation.Less,
        };
        var left = Of(compare.Left);
        var right = Right(left, compare.Right);
        Same(compare.Right.Offset, left, right);
        if (relation is not (Relation.Equal or Relation.NotEqual))
        {
            Ordered(compare.Offset, left);
        }

        return (new Comparison(relation, left.Expression, right.Expression), Kind.Truth);
    }

    private (Expression, Kind) Listed(Raw.Listed listed)
    {
        var left = Of(listed.Left);
        var members = new List<Expression>();
        foreach (var raw in listed.Members)
        {
            var member = Right(left, raw);
            Same(raw.Offset, left, member);
            members.Add(member.Expression);
        }

        var among = new Among(left.Expression, members) { Offset = listed.Offset };
        return (listed.Negated ? new Not(among) : among, Kind.Truth);
    }

    private (Expression, Kind) Ranged(Raw.Ranged ranged)
    {
        var (left, low, high) = (Of(ranged.Left), Of(ranged.Low), Of(ranged.High));
        Same(ranged.Low.Offset, left, low);
        Same(ranged.High.Offset, left, high);
        Ordered(ranged.Offset, left);
        return (new Between(left.Expression, low.Expression, high.Expression), Kind.Truth);
    }

    /// <summary>What stands right of a comparison: beside a text a bare name is a word, checked against what the left can be.</summary>
    private (Expression Expression, Kind Kind) Right((Expression Expression, Kind Kind) left, Raw raw)
    {
        if (left.Kind != Kind.Text || raw is not Raw.Name name || vocabulary.Find(name.Text) is { Kind: Kind.Text })
        {
            return Of(raw);
        }

        var options = left.Expression switch
        {
            Key key => vocabulary.Find(key.Name)?.Options ?? [],
            Property { Name: "kind" } => Vocabulary.MaterialKinds,
            Property { Name: "id" } => [.. vocabulary.Materials],
            _ => [],
        };
        if (options.Count > 0 && !options.Contains(name.Text, StringComparer.Ordinal))
        {
            _faults.Add(RuleMessages.UnknownWord(Place(name.Offset), name.Text, left.Expression.ToString(), options, Nearest.To(name.Text, options)));
        }

        return (new Word(name.Text) { Offset = name.Offset }, Kind.Text);
    }

    private void Same(int offset, (Expression Expression, Kind Kind) left, (Expression Expression, Kind Kind) right)
    {
        var alike = left.Kind == right.Kind || (left.Kind, right.Kind) is (Kind.Slope, Kind.Angle) or (Kind.Angle, Kind.Slope);
        if (!alike && _faults.Count == 0)
        {
            _faults.Add(RuleMessages.KindsDiffer(Place(offset), left.Expression.ToString(), left.Kind, right.Expression.ToString(), right.Kind));
        }
    }

    private void Ordered(int offset, (Expression Expression, Kind Kind) side)
    {
        if (side.Kind is Kind.Text or Kind.Truth && _faults.Count == 0)
        {
            _faults.Add(RuleMessages.NotComparable(Place(offset), side.Expression.ToString(), side.Kind));
        }
    }

    private (Expression, Kind) Fault(Diagnostic fault, Kind kind)
    {
        _faults.Add(fault);
        return (new Word("?"), kind);
    }

    private Mark Place(int offset) => ExpressionReader.Shift(at, offset);
}
