using DetailGen.Solver.Propagation;

namespace DetailGen.Solver.Search;

/// <summary>A sum to be made small.</summary>
/// <param name="Cost">The variable that is at least the sum.</param>
/// <param name="Grain">All values of the sum differ by multiples of this.</param>
/// <param name="Wishes">Where the sum is one of distances: variable and place of its wish.</param>
internal sealed record Objective(Row Sum, int Cost, long Grain, (int Id, long Place)[]? Wishes);

/// <summary>Propagators over numbered variables, some of them under tags that can be given up, with the finder that works on them.</summary>
internal sealed class Problem
{
    /// <summary>How many claims about its cost a level may add.</summary>
    public const int PricesPerLevel = 4;

    private readonly Domain[] domains;
    private readonly Domain[] full;
    private readonly Domain[] without;
    private readonly int[] domainTags;
    private readonly Propagator[] propagators;

    public Problem(Domain[] domains, Domain[] without, int[] domainTags, Propagator[] propagators, string[] tags, int variables, Objective[] objectives)
    {
        this.domains = (Domain[])domains.Clone();
        full = domains;
        this.without = without;
        this.domainTags = domainTags;
        this.propagators = propagators;
        Tags = tags;
        Variables = variables;
        Objectives = objectives;
        State = new State(propagators, this.domains, objectives.Length * PricesPerLevel);
        Finder = new Finder(State, variables, domains.Length);
    }

    public State State { get; }

    public Finder Finder { get; }

    public string[] Tags { get; }

    /// <summary>How many variables are the model's own; the costs' come after.</summary>
    public int Variables { get; }

    public Objective[] Objectives { get; }

    public Propagator[] Propagators => propagators;

    /// <summary>The domains now in force.</summary>
    public Domain[] Domains => domains;

    /// <summary>Starts afresh with these tags (null: all) in force.</summary>
    public void Reset(bool[]? enabled = null)
    {
        for (var i = 0; i < propagators.Length; i++)
        {
            var tag = propagators[i].Tag;
            State.Enabled[i] = tag < 0 || enabled is null || enabled[tag];
        }

        for (var i = 0; i < domains.Length; i++)
        {
            var tag = domainTags[i];
            domains[i] = tag < 0 || enabled is null || enabled[tag] ? full[i] : without[i];
        }

        State.Reset();
    }

    /// <summary>Adds the tags that the last refutation used.</summary>
    public void CollectTags(bool[] into)
    {
        var tracer = Finder.Tracer;
        for (var i = 0; i < propagators.Length; i++)
        {
            if (tracer.Propagators[i] && propagators[i].Tag >= 0)
            {
                into[propagators[i].Tag] = true;
            }
        }

        for (var i = 0; i < domains.Length; i++)
        {
            if (tracer.Domains[i] && domainTags[i] >= 0)
            {
                into[domainTags[i]] = true;
            }
        }
    }
}
