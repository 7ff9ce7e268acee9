using DetailGen.Solver.Propagation;

namespace DetailGen.Solver.Search;

/// <summary>What a search came to; spent where its budget ran out first.</summary>
internal enum Found
{
    Yes,
    No,
    Spent,
}

/// <summary>
/// Depth-first search that learns: each decision halves one variable's bounds in two; a failure is traced to bounds that cannot all hold. These are kept for
/// the rest of the run, and the search goes back to the first level at which they say something new. Complete, since only what is proven is kept; ends,
/// since no set of bounds is learnt twice and they are finite.
/// </summary>
internal sealed class Finder
{
    private readonly State _state;
    private readonly int[] _all;
    private readonly Nogoods _nogoods;
    private readonly Tracer _tracer;
    private int[] _failures = [];
    private long[] _solution = [];

    /// <param name="first">How many variables are the model's own. Costs are never decided: once these are fixed, each may be as low as it can.</param>
    public Finder(State state, int first)
    {
        _state = state;
        _nogoods = new Nogoods(state);
        _tracer = new Tracer(state, _nogoods);
        Targets = new long[first];
        _all = new int[first];
        for (var i = 0; i < first; i++)
        {
            _all[i] = i;
        }

        MakeRoom();
    }

    /// <summary>The last assignment found, by id; of a part where only a part was asked for.</summary>
    public ReadOnlySpan<long> Solution => _solution;

    /// <summary>What the last refutation used.</summary>
    public Tracer Tracer => _tracer;

    /// <summary>Of the bounds last supposed those that cannot all hold, where there was no assignment.</summary>
    public List<Literal> Core { get; } = [];

    /// <summary>Where each variable of the model would like to stand.</summary>
    public long[] Targets { get; }

    /// <summary>Steps this finder may still spend.</summary>
    public long Budget
    {
        get => _state.StepLimit - _state.Steps;
        set => _state.StepLimit = _state.Steps + value;
    }

    /// <summary>Forgets what was learnt; to be called where claims or bounds are no longer those it was learnt from.</summary>
    public void Forget() => _nogoods.Clear();

    /// <summary>Finds an assignment within the present bounds, or traces why there is none. The state is left at the level it had.</summary>
    /// <param name="lead">The variable to decide before all others, least value first; -1 for none.</param>
    /// <param name="part">As for <see cref="Ask"/>; null: all.</param>
    public Found Run(int lead = -1, int[]? part = null)
    {
        var outer = _state.Level;
        _state.Push();
        _nogoods.Clear();
        var found = Search(lead, [], part ?? _all);
        _state.PopTo(outer);
        return found;
    }

    /// <summary>
    /// Finds an assignment in which these hold too, or proves that there is none (<see cref="Core"/> then says which of them are to blame). Whatever is learnt holds without them, and stays: for the next question if the
    /// bounds have only been narrowed since, and what follows from the claims alone as bounds of the state, which is left at its level.
    /// </summary>
    /// <param name="part">The variables to be fixed, all of one or several parts; what the others can be does not depend on them.</param>
    public Found Ask(ReadOnlySpan<Literal> supposed, int[] part, int lead = -1)
    {
        _nogoods.Forget();
        return Search(lead, supposed, part);
    }

    private Found Search(int lead, ReadOnlySpan<Literal> supposed, int[] part)
    {
        var root = _state.Level;
        var settled = int.MaxValue; // the level from which on all that is supposed holds
        MakeRoom();
        _tracer.Clear();
        for (var i = 0; i < _failures.Length; i++)
        {
            _failures[i] /= 2;
        }

        if (!_state.Propagate())
        {
            _tracer.TraceAll();
            return End(root, Found.No);
        }

        while (true)
        {
            while (!_nogoods.Propagate())
            {
                if (!JumpBack(root))
                {
                    return End(root, Found.No);
                }
            }

            if (_state.Steps >= _state.StepLimit)
            {
                return End(root, Found.Spent);
            }

            if (_state.Level < settled && Missing(supposed) is { } missing)
            {
                if (missing.CannotHold(_state))
                {
                    _tracer.Blame(missing, root, Core);
                    return End(root, Found.No);
                }

                Open(missing.Variable, !missing.IsLow, missing.Value);
                continue;
            }

            settled = Math.Min(settled, _state.Level);

            var variable = lead >= 0 && !_state.IsFixed(lead) ? lead : Choose(part);
            if (variable < 0)
            {
                _state.Lows.CopyTo(_solution);
                return End(root, Found.Yes);
            }

            Decide(variable, variable == lead);
        }
    }

    private Literal? Missing(ReadOnlySpan<Literal> supposed)
    {
        foreach (var literal in supposed)
        {
            if (!literal.Holds(_state))
            {
                return literal;
            }
        }

        return null;
    }

    private Found End(int root, Found found)
    {
        _state.PopTo(root);
        _nogoods.Rewind();
        return found;
    }

    /// <summary>Variables may have come since the last search.</summary>
    private void MakeRoom()
    {
        if (_solution.Length < _state.Lows.Length)
        {
            Array.Resize(ref _failures, _state.Lows.Length);
            Array.Resize(ref _solution, _state.Lows.Length);
            _nogoods.Resize(_state.Lows.Length);
            _tracer.Resize(_state.Lows.Length);
        }
    }

    /// <summary>The smallest domain first, where failures make a domain count as smaller; -1 where all are fixed.</summary>
    private int Choose(int[] part)
    {
        var lows = _state.Lows;
        var highs = _state.Highs;
        var best = -1;
        var bestScore = double.MaxValue;
        foreach (var i in part)
        {
            if (lows[i] == highs[i])
            {
                continue;
            }

            var score = (highs[i] - lows[i]) / (double)_state.StepOf(i) / (1 + _failures[i]);
            if (score < bestScore)
            {
                best = i;
                bestScore = score;
            }
        }

        return best;
    }

    private void Decide(int variable, bool leastFirst)
    {
        long low = _state.Lows[variable], high = _state.Highs[variable];
        var target = leastFirst ? low : Math.Clamp(Targets[variable], low, high);
        if (_failures[variable] > 3)
        {
            // Value by value does not get on: give the half nearer to the target first.
            var middle = low + (high - low) / 2;
            target = target <= middle ? middle : Math.Min(middle + 1, high);
            Open(variable, target <= middle, target);
            return;
        }

        target = Math.Max(_state.MemberAtMost(variable, target), low);
        Open(variable, target < high, target);
    }

    private void Open(int variable, bool atMost, long value)
    {
        _state.Push();
        _ = atMost ? _state.AtMost(variable, value, Tracer.Decision(_state.Level)) : _state.AtLeast(variable, value, Tracer.Decision(_state.Level));
    }

    /// <summary>Learns from the failure and goes back to where that says something new; false where no decision is to blame.</summary>
    private bool JumpBack(int root)
    {
        if (_tracer.Learn(root, out var back) is not { } learnt)
        {
            return false;
        }

        // The decision is to blame too: where its variable fails again and again, it is halved in place of tried value by value.
        var decided = _state.TrailAt(_state.TrailStart(_state.Level)).Variable;
        _failures[decided]++;
        _failures[learnt[0].Variable] += learnt[0].Variable == decided ? 0 : 1;
        _state.PopTo(back);
        return _nogoods.Learn(learnt);
    }
}
