using DetailGen.Solver.Search;

namespace DetailGen.Solver.Conflicts;

/// <summary>Looks up on demand what keeps a variable from the next step towards its wish.</summary>
internal sealed class Bindings
{
    private readonly Model model;
    private readonly long[] wishes;
    private readonly Lazy<Model> held;
    private readonly Lazy<Problem> problem;

    public Bindings(Model model, Values values)
    {
        this.model = model;
        wishes = Solving.Targets(model);
        held = new(() => model.WithHeld(values));
        problem = new(() => ProblemBuilder.Hard(held.Value));
    }

    public IReadOnlyList<string> Of(Variable variable, Values values)
    {
        model.MustOwn(variable);
        var now = values[variable];
        var wish = wishes[variable.Id];
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

        var problem = this.problem.Value;
        problem.Finder.Budget = model.Budget;
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
        foreach (var (tag, claim) in held.Value.Hard)
        {
            if (tag is not null && Normal.Shortfall(claim, moved) > 0)
            {
                tags.Add(tag);
            }
        }

        return [.. tags];
    }
}
