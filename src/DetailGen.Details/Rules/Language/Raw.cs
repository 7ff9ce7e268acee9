namespace DetailGen.Details.Rules.Language;

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
