namespace DetailGen.Solver;

/// <summary>One rank of wishes. Ranks are met in order: a later one never costs an earlier one anything.</summary>
public abstract record Level(string Name)
{
    /// <summary>Claims wanted: first as few broken as can be, then the least total shortfall.</summary>
    public sealed record Wanted(string Name, IReadOnlyList<SoftClaim> Claims) : Level(Name);

    /// <summary>Values wished: the least sum of distances in steps of the domain (places in a list). A wish between two members means the nearer, or the smaller.</summary>
    public sealed record Wished(string Name, IReadOnlyList<Wish> Wishes) : Level(Name);

    /// <summary>A sum to make as small as it can be.</summary>
    public sealed record Least(string Name, Linear Sum) : Level(Name);
}

/// <summary>A claim that may be broken at a cost; the weight multiplies its shortfall, not its count.</summary>
public sealed record SoftClaim(string Tag, Claim Claim, long Weight = 1);

/// <summary>A value wished for a variable.</summary>
public sealed record Wish(Variable Variable, long Value);
