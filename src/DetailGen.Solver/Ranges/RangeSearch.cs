using DetailGen.Solver.Conflicts;
using DetailGen.Solver.Propagation;
using DetailGen.Solver.Search;

namespace DetailGen.Solver.Ranges;

/// <summary>
/// Walks up through each variable's domain: the next value that can be (proven: none between), then as far as one assignment can be stretched (proven: all
/// between can be), and on. Each assignment met on the way also counts for the other variables.
/// </summary>
internal sealed class RangeSearch
{
    private readonly Problem problem;
    private readonly State state;
    private readonly Finder finder;

    private RangeSearch(Model model)
    {
        problem = ProblemBuilder.Hard(model);
        state = problem.State;
        finder = problem.Finder;
        Solving.Targets(model, finder.Targets.Length).CopyTo(finder.Targets, 0);
        finder.Budget = model.Budget;
    }

    public static IReadOnlyList<FeasibleRange> Run(Model model, ReadOnlySpan<Variable> of)
    {
        var search = new RangeSearch(model);
        search.Start();
        var values = new List<(long, long)>[of.Length];
        for (var i = 0; i < of.Length; i++)
        {
            values[i] = search.Walk(of[i]);
        }

        var ranges = new FeasibleRange[of.Length];
        for (var i = 0; i < of.Length; i++)
        {
            ranges[i] = new FeasibleRange(of[i], values[i], search.Stops(of[i], values[i][0].Item1, false), search.Stops(of[i], values[i][^1].Item2, true));
        }

        return ranges;
    }

    private void Start()
    {
        problem.Reset();
        if (finder.Run() != Found.Yes || !state.Propagate())
        {
            throw new InvalidOperationException("There are no ranges: the hard claims contradict each other, or the budget is spent.");
        }
    }

    private List<(long, long)> Walk(Variable variable)
    {
        var pieces = new List<(long Low, long High)>();
        var domain = variable.Domain;
        var from = state.Lows[variable.Id];
        while (from <= state.Highs[variable.Id] && Next(variable.Id, from) is { } low)
        {
            if (pieces.Count > 0 && !domain.IsListed && pieces[^1].High + domain.Step == low)
            {
                pieces[^1] = (pieces[^1].Low, low);
            }
            else
            {
                pieces.Add((low, low));
            }

            from = domain.Ceiling(low + 1);
        }

        return pieces;
    }

    /// <summary>The least value of the variable at or above this one that can be.</summary>
    private long? Next(int id, long from)
    {
        state.Push();
        var found = state.AtLeast(id, from, State.Supposed) ? finder.Run(id) : Found.No;
        state.PopTo(0);
        return found switch
        {
            Found.Yes => finder.Solution[id],
            Found.No => null,
            _ => throw new InvalidOperationException("The budget is spent."),
        };
    }

    private IReadOnlyList<string> Stops(Variable variable, long end, bool up)
    {
        var domain = variable.Domain;
        var next = up ? domain.Ceiling(end + 1) : domain.Floor(end - 1);
        if (next is long.MaxValue or long.MinValue)
        {
            return variable.DomainTag is { } tag ? [tag] : [];
        }

        bool Suppose() => up ? state.AtLeast(variable.Id, next, State.Supposed) : state.AtMost(variable.Id, next, State.Supposed);
        if (MinimalConflict.Check(problem, null, Suppose) != Found.No)
        {
            throw new InvalidOperationException("The budget is spent.");
        }

        var members = new bool[problem.Tags.Length];
        problem.CollectTags(members);
        return MinimalConflict.Shrink(problem, members, Suppose) is { } least
            ? MinimalConflict.Names(problem, least)
            : throw new InvalidOperationException("The budget is spent.");
    }
}
