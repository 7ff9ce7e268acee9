using DetailGen.Solver.Conflicts;
using DetailGen.Solver.Propagation;
using DetailGen.Solver.Search;

namespace DetailGen.Solver.Ranges;

/// <summary>
/// Walks up through each variable's domain: the next value that can be (proven: none between), then as far as one assignment can be stretched (proven: all
/// between can be), and on. Before it searches it tries the neighbours of the last assignment.
/// </summary>
internal sealed class RangeSearch
{
    private readonly Problem problem;
    private readonly Problem writtenOut;
    private readonly Problem shrinking;
    private readonly State state;
    private readonly Finder finder;
    private readonly Stretch stretch;
    private readonly Nudge nudge;
    private readonly Proven proven = new();
    private Coupling? coupling;
    private Dictionary<int, int[]> parts = [];
    private int[] part = [];
    private long[] first = [];
    private long[] last = [];

    private RangeSearch(Model model)
    {
        problem = ProblemBuilder.Hard(model);
        writtenOut = ProblemBuilder.WrittenOut(model);
        shrinking = ProblemBuilder.Hard(model);
        state = problem.State;
        finder = problem.Finder;
        stretch = new Stretch(writtenOut);
        nudge = new Nudge(writtenOut);
        Solving.Targets(model).CopyTo(finder.Targets, 0);
        finder.Budget = model.Budget;
        shrinking.Finder.Budget = model.Budget;
    }

    /// <summary>Null where the hard claims contradict each other or the budget is spent.</summary>
    public static IReadOnlyList<FeasibleRange>? Run(Model model, ReadOnlySpan<Variable> of)
    {
        try
        {
            return new RangeSearch(model).Of(of);
        }
        catch (Ended)
        {
            return null;
        }
    }

    private FeasibleRange[] Of(ReadOnlySpan<Variable> of)
    {
        Start();
        var values = new List<(long, long)>[of.Length];
        var steps = new long[of.Length];
        for (var i = 0; i < of.Length; i++)
        {
            steps[i] = Grain(of[i]);
            values[i] = Walk(of[i], steps[i]);
        }

        var ranges = new FeasibleRange[of.Length];
        for (var i = 0; i < of.Length; i++)
        {
            ranges[i] = new FeasibleRange(of[i], steps[i], values[i], Stops(of[i], values[i][0].Item1, false), Stops(of[i], values[i][^1].Item2, true));
        }

        return ranges;
    }

    private void Start()
    {
        problem.Reset();
        writtenOut.Reset();
        // What follows from the claims alone is worked out once; every question starts from there, and can be traced to them, so nothing learnt is kept.
        if (!state.Propagate() || !writtenOut.State.Propagate())
        {
            throw new Ended();
        }

        first = state.Lows.ToArray();
        coupling = Coupling.Of(writtenOut.State);
        parts = coupling.Parts(problem.Variables);
        foreach (var one in parts.Values)
        {
            if (finder.Run(part: one) != Found.Yes)
            {
                throw new Ended();
            }

            foreach (var id in one)
            {
                first[id] = finder.Solution[id];
            }
        }
    }

    private List<(long, long)> Walk(Variable variable, long step)
    {
        var pieces = new List<(long Low, long High)>();
        var domain = variable.Domain;
        var id = variable.Id;
        if (writtenOut.State.IsFixed(id))
        {
            return [(first[id], first[id])];
        }

        part = parts[coupling!.PartOf(id)];
        stretch.Confine(part);
        nudge.Confine(part);
        proven.Clear();
        Learn(id, first);
        for (var from = state.Lows[id]; from <= state.Highs[id];)
        {
            var (low, high) = proven.From(from, step) ?? Prove(id, from);
            if (low == long.MaxValue)
            {
                break;
            }

            if (pieces.Count > 0 && !domain.IsListed && pieces[^1].High + step == low)
            {
                pieces[^1] = (pieces[^1].Low, high);
            }
            else
            {
                pieces.Add((low, high));
            }

            from = domain.IsListed ? domain.Ceiling(high + 1) : high + step;
        }

        return pieces;
    }

    /// <summary>
    /// The distance that all values of the variable keep, since the others in one of its equations move by whole steps only: a multiple of its domain's step.
    /// </summary>
    private long Grain(Variable variable)
    {
        var grain = variable.Domain.Step;
        foreach (var propagator in problem.Propagators)
        {
            if (propagator is not Equality equality || state.IsFixed(variable.Id))
            {
                continue;
            }

            var row = equality.AtMost;
            long own = 0, others = 0;
            for (var i = 0; i < row.Variables.Length; i++)
            {
                if (row.Variables[i] == variable.Id)
                {
                    own = Math.Abs(row.Factors[i]);
                }
                else if (!state.IsFixed(row.Variables[i]))
                {
                    others = Arithmetic.Gcd(others, row.Factors[i] * problem.Domains[row.Variables[i]].Step);
                }
            }

            if (own > 0 && others > 0)
            {
                var period = others / Arithmetic.Gcd(own, others);
                grain = grain / Arithmetic.Gcd(grain, period) * period;
            }
        }

        return grain;
    }

    private (long Low, long High) Prove(int id, long from)
    {
        // A neighbour of what was found last costs no search.
        if (nudge.To(id, from, last) is { } near)
        {
            Learn(id, near);
            return (from, from);
        }

        last.AsSpan(0, finder.Targets.Length).CopyTo(finder.Targets); // the next lies near the last, as a rule
        if (Next(id, from) is not { } low)
        {
            return (long.MaxValue, long.MaxValue);
        }

        var found = (long[])first.Clone();
        foreach (var other in part)
        {
            found[other] = finder.Solution[other];
        }

        Learn(id, found);
        return (low, low);
    }

    private void Learn(int id, long[] assignment)
    {
        last = assignment;
        var close = stretch.Of(id, assignment);
        proven.Add(close);
        if (close.Low == close.High && stretch.Pace(id, assignment) is > 1 and var pace)
        {
            proven.Add(stretch.Of(id, assignment, pace)); // one for each remainder proves what else would take as many as there are values
        }
    }

    /// <summary>The least value of the variable at or above this one that can be.</summary>
    private long? Next(int id, long from)
    {
        state.Push();
        var found = state.AtLeast(id, from, State.Supposed) ? finder.Run(id, part) : Found.No;
        state.PopTo(0);
        return found switch
        {
            Found.Yes => finder.Solution[id],
            Found.No => null,
            _ => throw new Ended(),
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

        bool Suppose() => Move(shrinking.State, variable.Id, next, up);
        // The first refutation starts from what is propagated already; only its few members are then tried one by one.
        state.Push();
        var found = Found.No;
        if (Move(state, variable.Id, next, up))
        {
            found = finder.Run(part: parts.GetValueOrDefault(coupling!.PartOf(variable.Id))); // the other parts can be as they are
        }
        else
        {
            finder.Tracer.Clear();
            finder.Tracer.TraceAll();
        }

        var members = new bool[problem.Tags.Length];
        problem.CollectTags(members);
        state.PopTo(0);
        if (found != Found.No)
        {
            throw new Ended();
        }

        // Without a member the rest holds near what is known to hold with it, as a rule.
        first.AsSpan(0, shrinking.Finder.Targets.Length).CopyTo(shrinking.Finder.Targets);
        _ = MinimalConflict.Shrink(shrinking, members, Suppose);
        return MinimalConflict.Names(problem, members);
    }

    private static bool Move(State state, int id, long value, bool up) =>
        up ? state.AtLeast(id, value, State.Supposed) : state.AtMost(id, value, State.Supposed);

    /// <summary>The claims contradict each other, or the budget is spent: leaves the search from wherever it is, and never <see cref="Run"/>.</summary>
    private sealed class Ended : Exception;
}
