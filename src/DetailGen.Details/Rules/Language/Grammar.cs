using Superpower;
using Superpower.Model;
using Superpower.Parsers;
using Superpower.Tokenizers;

namespace DetailGen.Details.Rules.Language;

internal enum Lexeme
{
    [Superpower.Display.Token(Category = "name")] Name,
    [Superpower.Display.Token(Category = "figure")] Figure,
    [Superpower.Display.Token(Example = "(")] Open,
    [Superpower.Display.Token(Example = ")")] Close,
    [Superpower.Display.Token(Example = "[")] OpenList,
    [Superpower.Display.Token(Example = "]")] CloseList,
    [Superpower.Display.Token(Example = ",")] Comma,
    [Superpower.Display.Token(Example = ".")] Dot,
    [Superpower.Display.Token(Example = "+")] Plus,
    [Superpower.Display.Token(Example = "-")] Minus,
    [Superpower.Display.Token(Example = "*")] Times,
    [Superpower.Display.Token(Example = "/")] Over,
    [Superpower.Display.Token(Category = "comparison")] Compare,
}

/// <summary>The tree as written, before names are resolved and kinds checked.</summary>
internal abstract record Raw(int Offset)
{
    public sealed record Name(int Offset, string Text) : Raw(Offset);

    public sealed record Figure(int Offset, string Text) : Raw(Offset);

    public sealed record Call(int Offset, string Function, Raw[] Arguments, string? Property) : Raw(Offset);

    public sealed record Infix(int Offset, string Operator, Raw Left, Raw Right) : Raw(Offset);

    public sealed record Prefix(int Offset, string Operator, Raw Of) : Raw(Offset);

    public sealed record Listed(int Offset, Raw Left, Raw[] Members, bool Negated) : Raw(Offset);

    public sealed record Ranged(int Offset, Raw Left, Raw Low, Raw High) : Raw(Offset);
}

/// <summary>
/// either = both {"or" both}; both = not {"and" not}; not = "not" not | relation; relation = sum [comparison sum | ["not"] "in" list | "between" sum "and" sum];
/// sum = term {("+" | "-") term}; term = factor {("*" | "/") factor}; factor = "-" factor | figure | name | call | "(" either ")".
/// </summary>
internal static class Grammar
{
    private static readonly string[] Reserved = ["and", "or", "not", "in", "between"];

    public static readonly Tokenizer<Lexeme> Tokens = new TokenizerBuilder<Lexeme>()
        .Ignore(Span.WhiteSpace)
        .Match(Span.Regex(@"\d+(?:\.\d+)?(?::\d+(?:\.\d+)?)?(?:\s*(?!(?:and|or|not|in|between)\b)(?:W/\(m·K\)|[\p{L}°%][\p{L}\d²³°]*(?:/\p{L}[\p{L}\d²³]*)?))?"), Lexeme.Figure)
        .Match(Span.Regex(@"[\p{L}_][\p{L}\d_]*(?:[.-][\p{L}\d_]+)*"), Lexeme.Name)
        .Match(Span.Regex("(?:<=|>=|!=|=|<|>)"), Lexeme.Compare)
        .Match(Character.EqualTo('('), Lexeme.Open)
        .Match(Character.EqualTo(')'), Lexeme.Close)
        .Match(Character.EqualTo('['), Lexeme.OpenList)
        .Match(Character.EqualTo(']'), Lexeme.CloseList)
        .Match(Character.EqualTo(','), Lexeme.Comma)
        .Match(Character.EqualTo('.'), Lexeme.Dot)
        .Match(Character.EqualTo('+'), Lexeme.Plus)
        .Match(Character.EqualTo('-'), Lexeme.Minus)
        .Match(Character.EqualTo('*'), Lexeme.Times)
        .Match(Character.EqualTo('/'), Lexeme.Over)
        .Build();

    private static readonly TokenListParser<Lexeme, Token<Lexeme>> Identifier =
        Token.EqualTo(Lexeme.Name).Where(token => !Reserved.Contains(token.ToStringValue(), StringComparer.Ordinal), "a name is expected here");

    private static readonly TokenListParser<Lexeme, Raw> Figure =
        Token.EqualTo(Lexeme.Figure).Select(token => (Raw)new Raw.Figure(token.Position.Absolute, token.ToStringValue()));

    private static readonly TokenListParser<Lexeme, Raw[]> Arguments =
        from open in Token.EqualTo(Lexeme.Open)
        from arguments in Parse.Ref(() => Sum!).ManyDelimitedBy(Token.EqualTo(Lexeme.Comma))
        from close in Token.EqualTo(Lexeme.Close)
        select arguments;

    private static readonly TokenListParser<Lexeme, string> Property =
        from dot in Token.EqualTo(Lexeme.Dot)
        from name in Identifier
        select name.ToStringValue();

    private static readonly TokenListParser<Lexeme, Raw> NameOrCall =
        from name in Identifier
        from call in Arguments.Select(arguments => (Raw[]?)arguments).OptionalOrDefault()
        from property in Property.AsNullable().OptionalOrDefault()
        select call is null && property is null
            ? (Raw)new Raw.Name(name.Position.Absolute, name.ToStringValue())
            : new Raw.Call(name.Position.Absolute, name.ToStringValue(), call ?? [], property);

    private static readonly TokenListParser<Lexeme, Raw> Bracketed =
        from open in Token.EqualTo(Lexeme.Open)
        from inner in Parse.Ref(() => Whole!)
        from close in Token.EqualTo(Lexeme.Close)
        select inner;

    private static readonly TokenListParser<Lexeme, Raw> Negative =
        from minus in Token.EqualTo(Lexeme.Minus)
        from of in Parse.Ref(() => Factor!)
        select (Raw)new Raw.Prefix(minus.Position.Absolute, "-", of);

    private static readonly TokenListParser<Lexeme, Raw> Factor = Figure.Or(NameOrCall).Or(Bracketed).Or(Negative).Named("a size, a key or a bracket");

    private static readonly TokenListParser<Lexeme, Raw> Term =
        Parse.Chain(Token.EqualTo(Lexeme.Times).Or(Token.EqualTo(Lexeme.Over)), Factor, Join);

    private static readonly TokenListParser<Lexeme, Raw> Sum =
        Parse.Chain(Token.EqualTo(Lexeme.Plus).Or(Token.EqualTo(Lexeme.Minus)), Term, Join);

    private static readonly TokenListParser<Lexeme, Raw[]> List =
        from open in Token.EqualTo(Lexeme.OpenList)
        from members in Sum.AtLeastOnceDelimitedBy(Token.EqualTo(Lexeme.Comma))
        from close in Token.EqualTo(Lexeme.CloseList)
        select members;

    private static readonly TokenListParser<Lexeme, Func<Raw, Raw>> Compared =
        from sign in Token.EqualTo(Lexeme.Compare)
        from right in Sum
        select (Func<Raw, Raw>)(left => new Raw.Infix(sign.Position.Absolute, sign.ToStringValue(), left, right));

    private static readonly TokenListParser<Lexeme, Func<Raw, Raw>> InList =
        from negated in Keyword("not").Value(true).OptionalOrDefault()
        from keyword in Keyword("in")
        from members in List
        select (Func<Raw, Raw>)(left => new Raw.Listed(keyword.Position.Absolute, left, members, negated));

    private static readonly TokenListParser<Lexeme, Func<Raw, Raw>> InRange =
        from keyword in Keyword("between")
        from low in Sum
        from and in Keyword("and")
        from high in Sum
        select (Func<Raw, Raw>)(left => new Raw.Ranged(keyword.Position.Absolute, left, low, high));

    private static readonly TokenListParser<Lexeme, Raw> Related =
        from left in Sum
        from rest in Compared.Or(InList).Or(InRange).OptionalOrDefault(left => left)
        select rest(left);

    private static readonly TokenListParser<Lexeme, Raw> Negated =
        (from keyword in Keyword("not")
         from of in Parse.Ref(() => Negated!)
         select (Raw)new Raw.Prefix(keyword.Position.Absolute, "not", of)).Or(Related);

    private static readonly TokenListParser<Lexeme, Raw> All = Parse.Chain(Keyword("and"), Negated, Join);

    private static readonly TokenListParser<Lexeme, Raw> Whole = Parse.Chain(Keyword("or"), All, Join);

    public static readonly TokenListParser<Lexeme, Raw> Text = Whole.AtEnd();

    private static TokenListParser<Lexeme, Token<Lexeme>> Keyword(string text) => Token.EqualToValue(Lexeme.Name, text).Named($"`{text}`");

    private static Raw Join(Token<Lexeme> sign, Raw left, Raw right) => new Raw.Infix(sign.Position.Absolute, sign.ToStringValue(), left, right);
}
