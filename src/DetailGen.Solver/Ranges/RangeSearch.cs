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
    private readonly Problem _problem;
    private readonly Problem _writtenOut;
    private readonly Problem _shrinking;
    private readonly State _state;
    private readonly Finder _finder;
    private readonly Stretch _stretch;
    private readonly Nudge _nudge;
    private readonly Proven _proven = new();
    private Coupling? _coupling;
    private Dictionary<int, int[]> _parts = [];
    private int[] _part = [];
    private long[] _first = [];
    private long[] _last = [];

    private RangeSearch(Model model)
    {
        _problem = ProblemBuilder.Hard(model);
        _writtenOut = ProblemBuilder.WrittenOut(model);
        _shrinking = ProblemBuilder.Hard(model);
        _state = _problem.State;
        _finder = _problem.Finder;
        _stretch = new Stretch(_writtenOut);
        _nudge = new Nudge(_writtenOut);
        Solving.Targets(model).CopyTo(_finder.Targets, 0);
        _finder.Budget = model.Budget;
        _shrinking.Finder.Budget = model.Budget;
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
        _problem.Reset();
        _writtenOut.Reset();
        // What follows from the claims alone is worked out once; every question starts from there, and can be traced to them, so nothing learnt is kept.
        if (!_state.Propagate() || !_writtenOut.State.Propagate())
        {
            throw new Ended();
        }

        _first = _state.Lows.ToArray();
        _coupling = Coupling.Of(_writtenOut.State);
        _parts = _coupling.Parts(_problem.Variables);
        foreach (var one in _parts.Values)
        {
            if (_finder.Run(part: one) != Found.Yes)
            {
                throw new Ended();
            }

            foreach (var id in one)
            {
                _first[id] = _finder.Solution[id];
            }
        }
    }

    private List<(long, long)> Walk(Variable variable, long step)
    {
        var pieces = new List<(long Low, long High)>();
        var domain = variable.Domain;
        var id = variable.Id;
        if (_writtenOut.State.IsFixed(id))
        {
            return [(_first[id], _first[id])];
        }

        _part = _parts[_coupling!.PartOf(id)];
        _stretch.Confine(_part);
        _nudge.Confine(_part);
        _proven.Clear();
        Learn(id, _first);
        for (var from = _state.Lows[id]; from <= _state.Highs[id];)
        {
            var (low, high) = _proven.From(from, step) ?? Prove(id, from);
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
        foreach (var propagator in _problem.Propagators)
        {
            if (propagator is not Equality equality || _state.IsFixed(variable.Id))
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
                else if (!_state.IsFixed(row.Variables[i]))
                {
                    others = Arithmetic.Gcd(others, row.Factors[i] * _problem.Domains[row.Variables[i]].Step);
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
        if (_nudge.To(id, from, _last) is { } near)
        {
            Learn(id, near);
            return (from, from);
        }

        _last.AsSpan(0, _finder.Targets.Length).CopyTo(_finder.Targets); // the next lies near the last, as a rule
        if (Next(id, from) is not { } low)
        {
            return (long.MaxValue, long.MaxValue);
        }

        var found = (long[])_first.Clone();
        foreach (var other in _part)
        {
            found[other] = _finder.Solution[other];
        }

        Learn(id, found);
        return (low, low);
    }

    private void Learn(int id, long[] assignment)
    {
        _last = assignment;
        var close = _stretch.Of(id, assignment);
        _proven.Add(close);
        if (close.Low == close.High && _stretch.Pace(id, assignment) is > 1 and var pace)
        {
            _proven.Add(_stretch.Of(id, assignment, pace)); // one for each remainder proves what else would take as many as there are values
        }
    }

    /// <summary>The least value of the variable at or above this one that can be.</summary>
    private long? Next(int id, long from)
    {
        _state.Push();
        var found = _state.AtLeast(id, from, State.Supposed) ? _finder.Run(id, _part) : Found.No;
        _state.PopTo(0);
        return found switch
        {
            Found.Yes => _finder.Solution[id],
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

        bool Suppose() => Move(_shrinking.State, variable.Id, next, up);
        // The first refutation starts from what is propagated already; only its few members are then tried one by one.
        _state.Push();
        var found = Found.No;
        if (Move(_state, variable.Id, next, up))
        {
            found = _finder.Run(part: _parts.GetValueOrDefault(_coupling!.PartOf(variable.Id))); // the other parts can be as they are
        }
        else
        {
            _finder.Tracer.Clear();
            _finder.Tracer.TraceAll();
        }

        var members = new bool[_problem.Tags.Length];
        _problem.CollectTags(members);
        _state.PopTo(0);
        if (found != Found.No)
        {
            throw new Ended();
        }

        // Without a member the rest holds near what is known to hold with it, as a rule.
        _first.AsSpan(0, _shrinking.Finder.Targets.Length).CopyTo(_shrinking.Finder.Targets);
        _ = MinimalConflict.Shrink(_shrinking, members, Suppose);
        return MinimalConflict.Names(_problem, members);
    }

    private static bool Move(State state, int id, long value, bool up) =>
        up ? state.AtLeast(id, value, State.Supposed) : state.AtMost(id, value, State.Supposed);

    /// <summary>The claims contradict each other, or the budget is spent: leaves the search from wherever it is, and never <see cref="Run"/>.</summary>
    private sealed class Ended : Exception;
}
