namespace DetailGen.Details.Rules.Language;

/// <summary>The tree as written, before names are resolved and kinds checked.</summary>
internal abstract record Raw(int Offset)
{
    /// <summary>A key, a slot or a word.</summary>
    public sealed record Name(int Offset, string Text) : Raw(Offset);

    /// <summary>A figure with its unit.</summary>
    public sealed record Figure(int Offset, string Text) : Raw(Offset);

    /// <summary>A function, and behind a point what is asked of its answer.</summary>
    public sealed record Call(int Offset, string Function, Raw[] Arguments, string? Property) : Raw(Offset);

    /// <summary>An operator between two.</summary>
    public sealed record Infix(int Offset, string Operator, Raw Left, Raw Right) : Raw(Offset);

    /// <summary>An operator before one.</summary>
    public sealed record Prefix(int Offset, string Operator, Raw Of) : Raw(Offset);

    /// <summary><c>in</c> or <c>not in</c> a list.</summary>
    public sealed record Listed(int Offset, Raw Left, Raw[] Members, bool Negated) : Raw(Offset);

    /// <summary><c>between</c> two.</summary>
    public sealed record Ranged(int Offset, Raw Left, Raw Low, Raw High) : Raw(Offset);
}
