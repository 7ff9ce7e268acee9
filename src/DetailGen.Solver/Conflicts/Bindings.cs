using DetailGen.Solver.Search;

namespace DetailGen.Solver.Conflicts;

/// <summary>Looks up on demand what keeps a variable from the next step towards its wish.</summary>
internal sealed class Bindings
{
    private readonly Model _model;
    private readonly long[] _wishes;
    private readonly Lazy<Model> _held;
    private readonly Lazy<Problem> _problem;

    public Bindings(Model model, Values values)
    {
        _model = model;
        _wishes = Solving.Targets(model);
        _held = new(() => model.WithHeld(values));
        _problem = new(() => ProblemBuilder.Hard(_held.Value));
    }

    public IReadOnlyList<string> Of(Variable variable, Values values)
    {
        _model.MustOwn(variable);
        var now = values[variable];
        var wish = _wishes[variable.Id];
        var up = wish > now;
        if (wish == now)
        {
            return [];
        }

        var domain = variable.Domain;
        var next = up ? domain.Ceiling(now + 1) : domain.Floor(now - 1);
        if (next is long.MaxValue or long.MinValue)
        {
            return variable.DomainTag is { } tag ? [tag] : [];
        }

        var problem = _problem.Value;
        problem.Finder.Budget = _model.Budget;
        bool Suppose() => up
            ? problem.State.AtLeast(variable.Id, next, Propagation.State.Supposed)
            : problem.State.AtMost(variable.Id, next, Propagation.State.Supposed);
        var found = MinimalConflict.Check(problem, null, Suppose);
        if (found == Found.No)
        {
            var members = new bool[problem.Tags.Length];
            problem.CollectTags(members);
            _ = MinimalConflict.Shrink(problem, members, Suppose);
            return MinimalConflict.Names(problem, members);
        }

        return Direct(variable, next, values);
    }

    private List<string> Direct(Variable variable, long next, Values values)
    {
        var moved = values.ById.ToArray();
        moved[variable.Id] = next;
        var tags = new SortedSet<string>(StringComparer.Ordinal);
        foreach (var (tag, claim) in _held.Value.Hard)
        {
            if (tag is not null && Normal.Shortfall(claim, moved) > 0)
            {
                tags.Add(tag);
            }
        }

        return [.. tags];
    }
}
