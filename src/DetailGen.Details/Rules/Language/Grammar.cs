namespace DetailGen.Details.Rules.Language;

/// <summary>
/// either = both {"or" both}; both = not {"and" not}; not = "not" not | relation; relation = sum [comparison sum | ["not"] "in" list | "between" sum "and" sum];
/// sum = term {("+" | "-") term}; term = factor {("*" | "/") factor}; factor = "-" factor | figure | name | call | "(" either ")".
/// One method for each line; it recurs as deep as the text nests, which is bounded before.
/// </summary>
internal sealed class Grammar
{
    private const string Operand = "a size, a key or a bracket";

    private readonly List<Token> _tokens;
    private int _at;

    private Grammar(List<Token> tokens) => _tokens = tokens;

    private Token Now => _tokens[_at];

    /// <exception cref="ExpressionRefused">It is no expression; told at the first word that cannot stand where it stands.</exception>
    public static Raw Parse(string text)
    {
        var grammar = new Grammar(Lexemes.Of(text));
        var whole = grammar.Either();
        return grammar.Now.Lexeme == Lexeme.End ? whole : throw grammar.Unexpected();
    }

    private Raw Either()
    {
        var left = Both();
        while (Take("or") is { } word)
        {
            left = Join(word, left, Both());
        }

        return left;
    }

    private Raw Both()
    {
        var left = Negated();
        while (Take("and") is { } word)
        {
            left = Join(word, left, Negated());
        }

        return left;
    }

    private Raw Negated() => Take("not") is { } word ? new Raw.Prefix(word.Offset, "not", Negated())
        : BeginsOperand() ? Related()
        : throw Unexpected($"`not` or {Operand}");

    private Raw Related()
    {
        var left = Sum();
        if (Now.Lexeme == Lexeme.Compare)
        {
            var sign = Next();
            return Join(sign, left, Sum());
        }

        if (Take("between") is { } between)
        {
            var low = Sum();
            Must("and");
            return new Raw.Ranged(between.Offset, left, low, Sum());
        }

        var negated = Take("not") is not null;
        return negated || Now.Is("in") ? new Raw.Listed(Must("in").Offset, left, Members(), negated) : left;
    }

    private Raw[] Members()
    {
        Must("[");
        return Several("]");
    }

    private Raw[] Several(string close)
    {
        var several = new List<Raw> { Sum() };
        while (Take(",") is not null)
        {
            several.Add(Sum());
        }

        Must(close);
        return [.. several];
    }

    private Raw Sum()
    {
        var left = Term();
        while ((Take("+") ?? Take("-")) is { } sign)
        {
            left = Join(sign, left, Term());
        }

        return left;
    }

    private Raw Term()
    {
        var left = Factor();
        while ((Take("*") ?? Take("/")) is { } sign)
        {
            left = Join(sign, left, Factor());
        }

        return left;
    }

    private Raw Factor()
    {
        if (!BeginsOperand())
        {
            throw Unexpected(Operand);
        }

        var first = Next();
        switch (first.Text)
        {
            case "-":
                return new Raw.Prefix(first.Offset, "-", Factor());
            case "(":
                var inner = Either();
                Must(")");
                return inner;
            default:
                return first.Lexeme == Lexeme.Figure ? new Raw.Figure(first.Offset, first.Text) : NameOrCall(first);
        }
    }

    private Raw NameOrCall(Token name)
    {
        Raw[]? arguments = null;
        if (Take("(") is not null)
        {
            arguments = BeginsOperand() ? Several(")") : None();
        }

        var property = Take(".") is null ? null : PropertyName();
        return arguments is null && property is null ? new Raw.Name(name.Offset, name.Text) : new Raw.Call(name.Offset, name.Text, arguments ?? [], property);
    }

    private Raw[] None()
    {
        Must(")");
        return [];
    }

    private string PropertyName() => Now switch
    {
        { Lexeme: not Lexeme.Name } => throw Unexpected("name"),
        var word when IsReserved(word) => throw new ExpressionRefused(word.Offset, RuleMessages.NameExpected),
        _ => Next().Text,
    };

    private bool BeginsOperand() => Now.Lexeme == Lexeme.Figure || Now.Is("(") || Now.Is("-") || (Now.Lexeme == Lexeme.Name && !IsReserved(Now));

    private static bool IsReserved(Token word) => Array.IndexOf(Lexemes.Reserved, word.Text) >= 0;

    private static Raw.Infix Join(Token sign, Raw left, Raw right) => new(sign.Offset, sign.Text, left, right);

    private Token Next() => _tokens[_at++];

    private Token? Take(string text) => Now.Is(text) ? Next() : null;

    private Token Must(string text) => Take(text) ?? throw Unexpected($"`{text}`");

    private ExpressionRefused Unexpected(string? expected = null) => new(Now.Offset, RuleMessages.Unexpected(Now, expected));
}

/// <summary>Ends a reading that cannot go on; <see cref="ExpressionReader"/> makes a fault of it.</summary>
internal sealed class ExpressionRefused(int offset, string reason) : Exception(reason)
{
    public int Offset { get; } = offset;
}
