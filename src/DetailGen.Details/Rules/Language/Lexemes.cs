namespace DetailGen.Details.Rules.Language;

/// <summary>Kinds of words in an expression.</summary>
internal enum Lexeme
{
    Name,
    Figure,
    Compare,
    Sign,
    End,
}

/// <summary>A word of an expression.</summary>
/// <param name="Offset">Where it begins, from 0.</param>
internal sealed record Token(Lexeme Lexeme, int Offset, string Text)
{
    /// <summary>Whether it is that keyword or sign.</summary>
    public bool Is(string text) => Lexeme is not (Lexeme.Figure or Lexeme.End) && string.Equals(Text, text, StringComparison.Ordinal);
}

/// <summary>Cuts an expression into its words. By hand: patterns that are compiled at every start cost more than all the expressions of a detail.</summary>
internal static class Lexemes
{
    private const string Signs = "()[],.+-*/";

    internal static readonly string[] Reserved = ["and", "or", "not", "in", "between"];

    /// <summary>The words in order, behind them one <see cref="Lexeme.End"/>.</summary>
    /// <exception cref="ExpressionRefused">A sign that no expression holds.</exception>
    public static List<Token> Of(string text)
    {
        var tokens = new List<Token>();
        for (var at = Blanks(text, 0); at < text.Length; at = Blanks(text, at))
        {
            var (lexeme, end) = Next(text, at);
            tokens.Add(new(lexeme, at, text[at..end]));
            at = end;
        }

        tokens.Add(new(Lexeme.End, text.Length, ""));
        return tokens;
    }

    private static (Lexeme, int End) Next(string text, int at) => text[at] switch
    {
        var sign when char.IsDigit(sign) => (Lexeme.Figure, Figure(text, at)),
        var sign when char.IsLetter(sign) || sign == '_' => (Lexeme.Name, Name(text, at)),
        '<' or '>' or '!' when Sign(text, at + 1) == '=' => (Lexeme.Compare, at + 2),
        '<' or '>' or '=' => (Lexeme.Compare, at + 1),
        var sign when Signs.Contains(sign, StringComparison.Ordinal) => (Lexeme.Sign, at + 1),
        var sign => throw new ExpressionRefused(at, RuleMessages.Unexpected(sign.ToString())),
    };

    // a number or two with a colon between, and what stands behind it if that is a unit
    private static int Figure(string text, int at)
    {
        var end = Number(text, at);
        if (Sign(text, end) == ':' && char.IsDigit(Sign(text, end + 1)))
        {
            end = Number(text, end + 1);
        }

        return Unit(text, Blanks(text, end)) ?? end;
    }

    private static int Number(string text, int at)
    {
        var end = While(text, at, char.IsDigit);
        return Sign(text, end) == '.' && char.IsDigit(Sign(text, end + 1)) ? While(text, end + 1, char.IsDigit) : end;
    }

    private static int? Unit(string text, int at)
    {
        const string spelled = "W/(m·K)";
        if (IsKeyword(text, at))
        {
            return null;
        }

        if (text.AsSpan(at).StartsWith(spelled, StringComparison.Ordinal))
        {
            return at + spelled.Length;
        }

        if (!(char.IsLetter(Sign(text, at)) || Sign(text, at) is '°' or '%'))
        {
            return null;
        }

        var end = While(text, at + 1, sign => InUnit(sign) || sign == '°');
        return Sign(text, end) == '/' && char.IsLetter(Sign(text, end + 1)) ? While(text, end + 2, InUnit) : end;
    }

    private static bool InUnit(char sign) => char.IsLetter(sign) || char.IsDigit(sign) || sign is '²' or '³';

    private static bool IsKeyword(string text, int at)
    {
        foreach (var word in Reserved)
        {
            if (text.AsSpan(at).StartsWith(word, StringComparison.Ordinal) && !InName(Sign(text, at + word.Length)))
            {
                return true;
            }
        }

        return false;
    }

    // a dot or hyphen within a name has a letter or digit on both sides
    private static int Name(string text, int at)
    {
        var end = While(text, at, InName);
        while (Sign(text, end) is '.' or '-' && InName(Sign(text, end + 1)))
        {
            end = While(text, end + 1, InName);
        }

        return end;
    }

    private static bool InName(char sign) => char.IsLetter(sign) || char.IsDigit(sign) || sign == '_';

    private static int Blanks(string text, int at) => While(text, at, char.IsWhiteSpace);

    private static int While(string text, int at, Func<char, bool> holds)
    {
        while (at < text.Length && holds(text[at]))
        {
            at++;
        }

        return at;
    }

    private static char Sign(string text, int at) => at < text.Length ? text[at] : '\0';
}
