using DetailGen.Solver.Conflicts;
using DetailGen.Solver.Search;

namespace DetailGen.Solver;

/// <summary>Collects integer unknowns, claims about them and wishes in order of rank; then solves. Exact, complete, deterministic.</summary>
public sealed class Model
{
    private readonly List<Variable> _variables;
    private readonly HashSet<string> _names = new(StringComparer.Ordinal);
    private readonly List<(string? Tag, Claim Claim)> _hard = [];
    private readonly List<Given> _givens = [];
    private readonly List<Level> _levels = [];
    private readonly List<Linear> _shared = [];

    public Model() => _variables = [];

    private Model(Model of)
    {
        _variables = [.. of._variables];
        _names.UnionWith(_variables.Select(variable => variable.Name));
        _shared.AddRange(of._shared);
        Budget = of.Budget;
    }

    /// <summary>How many smallest sets of changes are told.</summary>
    public const int MostRepairs = 5;

    /// <summary>Propagator runs that one question may cost before it is answered with "not proven"; the same on every machine.</summary>
    public long Budget { get; init; } = 20_000_000;

    public IReadOnlyList<Variable> Variables => _variables;

    internal IReadOnlyList<(string? Tag, Claim Claim)> Hard => _hard;

    internal IReadOnlyList<Given> Givens => _givens;

    internal IReadOnlyList<Level> Levels => _levels;

    internal IReadOnlyList<Linear> Shared => _shared;

    /// <summary>A new unknown.</summary>
    /// <param name="tag">Makes the domain a member of conflicts; null: it always stands.</param>
    /// <param name="without">What the unknown may be where a tagged domain is given up; three times as far on both sides where null.</param>
    /// <exception cref="ArgumentException">The name is taken.</exception>
    public Variable Add(string name, Domain domain, string? tag = null, Domain? without = null)
    {
        if (!_names.Add(name))
        {
            throw new ArgumentException($"There is a variable {name} already.", nameof(name));
        }

        var variable = new Variable(_variables.Count, name, domain, tag, without);
        _variables.Add(variable);
        return variable;
    }

    /// <summary>The claim must hold. Several claims may share a tag; they then stand and fall together. Without a tag it cannot be given up.</summary>
    public void Require(string? tag, Claim claim) => _hard.Add((tag, claim));

    /// <summary>Names a sum that stands in several claims. No answer hangs on it, but what one claim says of the sum the others then know, so that contradictions show sooner.</summary>
    public void Share(Linear sum) => _shared.Add(sum);

    /// <summary>Fixes a value from outside. Like a required claim, and what repairs may release.</summary>
    /// <remarks>The value need not be a member of the domain: that is a contradiction, not an error.</remarks>
    public void Give(string tag, Variable variable, long value)
    {
        MustOwn(variable);
        var claim = variable.Is(value);
        _givens.Add(new Given(tag, variable, value, claim));
        _hard.Add((tag, claim));
    }

    /// <summary>Adds the next lower rank of wishes.</summary>
    public void Then(Level level) => _levels.Add(level);

    /// <summary>Finds the best assignment, or a minimal conflict.</summary>
    public Answer Solve() => Solving.Solve(this, _variables);

    /// <summary>Whether all hard claims can hold together, with no regard to wishes; null where the budget is spent before that is known.</summary>
    public bool? CanHold() => Solving.CanHold(this);

    /// <summary>The same question again and again while given values move, as under a slider.</summary>
    public Session Start() => new(this);

    /// <summary>Every value that each of the variables can take while all hard claims hold, and what stops it, in the order asked; null where they contradict each other or the budget is spent.</summary>
    public IReadOnlyList<FeasibleRange>? Ranges(params ReadOnlySpan<Variable> of) => Solver.Ranges.RangeSearch.Run(this, of);

    /// <summary>The ways in which the hard claims contradict each other, at most so many, smallest first.</summary>
    public ConflictSets Conflicts(int most) => ConflictSearch.Run(this, most);

    /// <summary>
    /// The changes of given values that make the hard claims agree: for each releasable given alone the nearest value below and above; where no single one
    /// helps, every smallest set of them (up to <see cref="MostRepairs"/>), with values as near as can be in sum of steps, and the set first that costs the wishes
    /// least in order of rank, then the nearest. Empty where even all together do not help, or the claims agree already.
    /// </summary>
    /// <param name="releasable">Which tags of givens may be released; null: all.</param>
    /// <param name="most">The most changes that a set may have.</param>
    public IReadOnlyList<Repair> Repairs(Func<string, bool>? releasable = null, int most = int.MaxValue) => RepairSearch.Run(this, releasable ?? (_ => true), most);

    /// <summary>The same unknowns and hard claims, and as hard claims too the wanted ones that hold at these values.</summary>
    internal Model WithHeld(Values values)
    {
        var held = new Model(this);
        held._hard.AddRange(_hard);
        foreach (var level in _levels)
        {
            if (level is Level.Wanted(_, var claims))
            {
                foreach (var soft in claims)
                {
                    if (Normal.Shortfall(soft.Claim, values.ById) == 0)
                    {
                        held._hard.Add((soft.Tag, soft.Claim));
                    }
                }
            }
        }

        return held;
    }

    /// <summary>As <see cref="Solve()"/>, where only these values are of interest: ties between the others are not broken, which may take longer than all the rest.</summary>
    internal Answer Solve(IEnumerable<Variable> asked) => Solving.Solve(this, asked);

    /// <summary>The same unknowns, the hard claims but for some givens, and other wishes.</summary>
    internal Model Released(Func<Given, bool> released, IEnumerable<Level> instead)
    {
        var model = new Model(this);
        foreach (var (tag, claim) in _hard)
        {
            if (!_givens.Exists(given => ReferenceEquals(given.Claim, claim) && released(given)))
            {
                model._hard.Add((tag, claim));
            }
        }

        model._levels.AddRange(instead);
        return model;
    }

    /// <summary>The same in all but some given values.</summary>
    internal Model Moved(IReadOnlyDictionary<string, long> values)
    {
        var model = new Model(this);
        foreach (var (tag, claim) in _hard)
        {
            if (_givens.Find(given => ReferenceEquals(given.Claim, claim)) is { } given)
            {
                model.Give(given.Tag, given.Variable, values[given.Tag]);
            }
            else
            {
                model._hard.Add((tag, claim));
            }
        }

        model._levels.AddRange(_levels);
        return model;
    }

    internal void MustOwn(Variable variable)
    {
        if (variable.Id >= _variables.Count || !ReferenceEquals(_variables[variable.Id], variable))
        {
            throw new ArgumentException($"The variable {variable.Name} belongs to another model.", nameof(variable));
        }
    }

    /// <summary>A value from outside, which repairs may release.</summary>
    internal sealed record Given(string Tag, Variable Variable, long Value, Claim Claim);
}
