using DetailGen.Solver.Propagation;

namespace DetailGen.Solver.Search;

/// <summary>A sum to be made small.</summary>
/// <param name="Wishes">Where the sum is one of distances: of each term the variable and the place of its wish.</param>
/// <param name="Propagators">Of each term those of the problem's that say what it is; they come into force with it.</param>
/// <param name="Counted">Where each term is a shortfall: the sum that counts the claims. What is not broken falls short of nothing.</param>
internal sealed record Objective(Row Sum, (int Id, long Place)[]? Wishes, Range[] Propagators, Row? Counted = null);

/// <summary>Propagators over numbered variables, some of them under tags that can be given up, with the finder that works on them.</summary>
internal sealed class Problem
{
    private readonly Domain[] _full;
    private readonly Domain[] _without;
    private readonly int[] _domainTags;
    private readonly Propagator[] _propagators;
    private readonly int _hardCount;

    public Problem(Domain[] domains, Domain[] without, int[] domainTags, Propagator[] propagators, string[] tags, int variables, int hardCount, Objective[] objectives)
    {
        _full = domains;
        _without = without;
        _domainTags = domainTags;
        _propagators = propagators;
        Tags = tags;
        Variables = variables;
        Objectives = objectives;
        State = new State(propagators, domains);
        Finder = new Finder(State, variables);
        _hardCount = hardCount;
    }

    public State State { get; }

    public Finder Finder { get; }

    public string[] Tags { get; }

    /// <summary>How many variables are the model's own; the costs' come after.</summary>
    public int Variables { get; }

    public Objective[] Objectives { get; }

    public Propagator[] Propagators => _propagators;

    /// <summary>The domains now in force.</summary>
    public ReadOnlySpan<Domain> Domains => State.Domains;

    /// <summary>Starts afresh with the hard claims of these tags (null: all) in force.</summary>
    public void Reset(bool[]? enabled = null)
    {
        for (var i = 0; i < _propagators.Length; i++)
        {
            var tag = _propagators[i].Tag;
            State.Enabled[i] = i < _hardCount && (tag < 0 || enabled is null || enabled[tag]);
        }

        for (var i = 0; i < _full.Length; i++)
        {
            var tag = _domainTags[i];
            State.Replace(i, tag < 0 || enabled is null || enabled[tag] ? _full[i] : _without[i]);
        }

        State.Reset();
    }

    /// <summary>Finds some assignment within the present bounds, part by part: what one part can be does not hang on the others. What follows from the claims stays in the state.</summary>
    /// <param name="into">Takes it, by id; complete only where the answer is yes.</param>
    public Found Assign(long[] into)
    {
        if (!State.Propagate())
        {
            return Found.No;
        }

        State.Lows[..Variables].CopyTo(into);
        foreach (var part in Coupling.Of(State).Parts(Variables).Values)
        {
            var found = Finder.Ask([], part);
            if (found != Found.Yes)
            {
                return found;
            }

            foreach (var id in part)
            {
                into[id] = Finder.Solution[id];
            }
        }

        return Found.Yes;
    }

    /// <summary>Brings into force what the terms of an objective are.</summary>
    public void Enter(Objective objective)
    {
        for (var term = 0; term < objective.Propagators.Length; term++)
        {
            if (objective.Counted is { } counted && State.Highs[counted.Variables[term]] == 0)
            {
                _ = State.AtMost(objective.Sum.Variables[term], 0, State.Supposed);
                continue;
            }

            for (var i = objective.Propagators[term].Start.Value; i < objective.Propagators[term].End.Value; i++)
            {
                State.Enabled[i] = true;
                State.Wake(i);
            }
        }
    }

    /// <summary>Works out what the terms of an objective cost at these values of the model's variables; as yet they cost nothing.</summary>
    public void RaiseCosts(Objective objective, long[] values)
    {
        foreach (var range in objective.Propagators)
        {
            for (var i = range.Start.Value; i < range.End.Value; i++)
            {
                if (State.Enabled[i])
                {
                    _propagators[i].RaiseCost(values);
                }
            }
        }
    }

    /// <summary>Adds the tags that the last refutation used.</summary>
    public void CollectTags(bool[] into)
    {
        var tracer = Finder.Tracer;
        for (var i = 0; i < _propagators.Length; i++)
        {
            if (tracer.Propagators[i] && _propagators[i].Tag >= 0)
            {
                into[_propagators[i].Tag] = true;
            }
        }

        for (var i = 0; i < _full.Length; i++)
        {
            if (tracer.Domains[i] && _domainTags[i] >= 0)
            {
                into[_domainTags[i]] = true;
            }
        }
    }
}
