using DetailGen.Details.Reading;

namespace DetailGen.Details.Rules.Language;

/// <summary>Reads expressions: grammar, names, kinds and units, all checked before anything is worked out.</summary>
public static class ExpressionReader
{
    private const int Longest = 2000;
    private const int Deepest = 32;

    /// <summary>Something that holds or does not.</summary>
    public static Outcome<Expression> Condition(Written written, Vocabulary vocabulary) => Read(written, vocabulary, Kind.Truth);

    /// <summary>A length.</summary>
    public static Outcome<Expression> Length(Written written, Vocabulary vocabulary) => Read(written, vocabulary, Kind.Length);

    private static Outcome<Expression> Read(Written written, Vocabulary vocabulary, Kind wanted)
    {
        var (text, at) = (written.Text, written.At);
        if (text.Length > Longest)
        {
            return Outcome.Bad<Expression>(RuleMessages.TooLong(at, text.Length, Longest));
        }

        if (Depth(text) > Deepest)
        {
            return Outcome.Bad<Expression>(RuleMessages.TooDeep(at, Deepest));
        }

        try
        {
            return Typed(Grammar.Parse(text), written, vocabulary, wanted);
        }
        catch (ExpressionRefused refused)
        {
            return Outcome.Bad<Expression>(RuleMessages.Syntax(Shift(at, refused.Offset), refused.Message));
        }
    }

    private static Outcome<Expression> Typed(Raw raw, Written written, Vocabulary vocabulary, Kind wanted)
    {
        var typing = new Typing(vocabulary, written.At);
        var (expression, kind) = typing.Of(raw);
        if (typing.Faults.Count == 0 && kind != wanted)
        {
            return Outcome.Bad<Expression>(RuleMessages.WrongKind(written.At, written.Text, kind, wanted));
        }

        return typing.Faults.Count == 0 ? Outcome.Good(expression) : Outcome.Bad<Expression>(typing.Faults);
    }

    internal static Mark Shift(Mark at, int offset) => at with { Column = at.Column + offset };

    // each level of nesting costs stack, so the depth is bounded before the parser sees it; a bracket, a `not` and a sign nest alike
    private static int Depth(string text)
    {
        var (depth, deepest, chain) = (0, 0, 0);
        foreach (var token in text.Split([' ', '\t', '\r', '\n'], StringSplitOptions.RemoveEmptyEntries))
        {
            chain = token is "not" or "-" ? chain + 1 : 0;
            deepest = Math.Max(deepest, depth + chain);
            var signs = 0;
            foreach (var sign in token)
            {
                depth += sign switch { '(' or '[' => 1, ')' or ']' => -1, _ => 0 };
                signs = sign == '-' ? signs + 1 : 0;
                deepest = Math.Max(deepest, depth + signs);
            }
        }

        return deepest;
    }
}
