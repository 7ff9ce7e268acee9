namespace DetailGen.Solver;

/// <summary>An integer unknown of one model; the simplest linear expression.</summary>
public sealed class Variable : Linear
{
    internal Variable(int id, string name, Domain domain, string? domainTag, Domain? without)
    {
        Id = id;
        Name = name;
        Domain = domain;
        DomainTag = domainTag;
        Without = domainTag is null ? domain : without ?? domain.Widened();
        Terms = [new Term(this, 1)];
    }

    /// <summary>The order of adding, from 0.</summary>
    public int Id { get; }

    /// <summary>The key; ties between optima go by its ordinal order.</summary>
    public string Name { get; }

    public Domain Domain { get; }

    /// <summary>The tag under which the domain stands in conflicts; null where the domain cannot be given up.</summary>
    public string? DomainTag { get; }

    /// <summary>What the variable may be when its domain is given up.</summary>
    internal Domain Without { get; }

    /// <summary>The claim that the variable has this value.</summary>
    public Claim Is(long value) => EqualTo(value);

    /// <summary>The claim that the variable has another value.</summary>
    public Claim IsNot(long value) => Claim.Not(EqualTo(value));

    /// <summary>The claim that the variable has one of these values; with none it cannot hold.</summary>
    public Claim In(params ReadOnlySpan<long> values)
    {
        var sorted = values.ToArray();
        Array.Sort(sorted);
        return new Claim.Member(this, sorted);
    }

    public override string ToString() => Name;
}
