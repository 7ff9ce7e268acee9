using DetailGen.Solver.Propagation;

namespace DetailGen.Solver.Search;

/// <summary>
/// Walks the trail back from a failure. Within the deepest level to blame it goes on until one bound of that level is left: that bound and those of lower
/// levels cannot all hold. Where no decision is to blame it walks to the start, and knows what the refutation rests on.
/// </summary>
internal sealed class Tracer(State state, Nogoods nogoods)
{
    private readonly Needed _needed = new();
    private int[] _latest = [];
    // changes of the root and below that something learnt rests on; the same bound may have moved since
    private readonly List<int> _atRoot = [];
    private readonly List<Literal> _learnt = [];

    /// <summary>Propagators that the refutation used since <see cref="Clear"/>; those added later, which stand under no tag, are left out.</summary>
    public bool[] Propagators { get; } = new bool[state.PropagatorCount];

    /// <summary>Variables whose domain the refutation used since <see cref="Clear"/>.</summary>
    public bool[] Domains { get; private set; } = [];

    /// <summary>Makes room for so many variables.</summary>
    public void Resize(int variables)
    {
        _needed.Resize(variables);
        Array.Resize(ref _latest, 2 * variables);
        var domains = Domains;
        Array.Resize(ref domains, variables);
        Domains = domains;
    }

    public static int Decision(int level) => -1 - level;

    public void Clear()
    {
        Array.Clear(Propagators);
        Array.Clear(Domains);
        _atRoot.Clear();
    }

    /// <summary>Traces a failure that no decision is to blame for, back to the start.</summary>
    public void TraceAll()
    {
        Fail();
        Finish();
    }

    /// <summary>What the failure that the state has just met teaches: bounds that cannot all hold, first the one to deny; null where no decision above the root is to blame.</summary>
    /// <param name="back">The level to go back to.</param>
    public Literal[]? Learn(int root, out int back)
    {
        Fail();
        back = root;
        var rootEnd = state.Level > root ? state.TrailStart(root + 1) : state.TrailCount;
        var deepest = -1;
        state.CopyLatestChanges(_latest);
        foreach (var key in _needed.Keys)
        {
            deepest = Math.Max(deepest, _latest[key]);
        }

        if (deepest < rootEnd)
        {
            state.PopTo(root); // else a bound that an idle decision moved would hide the one that counts
            Finish();
            return null;
        }

        _learnt.Clear();
        Resolve(state.TrailStart(LevelOf(deepest)));
        var second = -1;
        foreach (var key in _needed.Keys)
        {
            if (!_needed.Take(key))
            {
                continue;
            }

            if (_latest[key] < rootEnd)
            {
                Domains[key / 2] = true;
                if (_latest[key] >= 0)
                {
                    _atRoot.Add(_latest[key]);
                }

                continue;
            }

            ref readonly var change = ref state.TrailAt(_latest[key]);
            Domains[change.Variable] = true;
            _learnt.Add(new Literal(change.Variable, change.IsLow, change.After));
            if (_latest[key] > second)
            {
                second = _latest[key];
                (_learnt[1], _learnt[^1]) = (_learnt[^1], _learnt[1]);
            }
        }

        _needed.Clear();
        back = second < 0 ? root : LevelOf(second);
        return [.. _learnt];
    }

    /// <summary>Which decisions above the root, all of them suppositions, keep this one from holding: they and it.</summary>
    public void Blame(Literal denied, int root, List<Literal> into)
    {
        into.Clear();
        into.Add(denied);
        _needed.Clear();
        _needed.Add(denied.Key ^ 1);
        var rootEnd = state.Level > root ? state.TrailStart(root + 1) : state.TrailCount;
        for (var i = state.TrailCount - 1; i >= rootEnd; i--)
        {
            ref readonly var change = ref state.TrailAt(i);
            if (!_needed.Take(2 * change.Variable + (change.IsLow ? 1 : 0)))
            {
                continue;
            }

            if (change.Reason < State.Supposed)
            {
                into.Add(new Literal(change.Variable, change.IsLow, change.After));
            }
            else
            {
                Expand(change.Reason, change.Variable, change.IsLow);
            }
        }

        _needed.Clear();
    }

    private int LevelOf(int change)
    {
        var level = state.Level;
        while (state.TrailStart(level) > change)
        {
            level--;
        }

        return level;
    }

    /// <summary>Expands the changes from this one on until one needed bound of them is left, the first learnt.</summary>
    private void Resolve(int start)
    {
        var open = 0;
        foreach (var key in _needed.Keys)
        {
            open += _latest[key] >= start ? 1 : 0;
        }

        for (var i = state.TrailCount - 1; ; i--)
        {
            ref readonly var change = ref state.TrailAt(i);
            var key = 2 * change.Variable + (change.IsLow ? 1 : 0);
            _latest[key] = change.Previous;
            if (!_needed.Take(key))
            {
                continue;
            }

            Domains[change.Variable] = true;
            if (--open == 0)
            {
                _learnt.Add(new Literal(change.Variable, change.IsLow, change.After));
                return;
            }

            var before = _needed.Keys.Count;
            Expand(change.Reason, change.Variable, change.IsLow);
            for (var k = before; k < _needed.Keys.Count; k++)
            {
                open += _latest[_needed.Keys[k]] >= start ? 1 : 0;
            }
        }
    }

    private void Fail()
    {
        _needed.Clear();
        if (state.FailedVariable >= 0)
        {
            _needed.Both(state.FailedVariable);
            Domains[state.FailedVariable] = true;
        }

        Expand(state.FailedReason, -1, false);
    }

    private void Finish()
    {
        _atRoot.Sort();
        var next = _atRoot.Count - 1;
        for (var i = state.TrailCount - 1; i >= 0; i--)
        {
            ref readonly var change = ref state.TrailAt(i);
            var rested = false;
            for (; next >= 0 && _atRoot[next] == i; next--)
            {
                rested = true;
            }

            if (_needed.Take(2 * change.Variable + (change.IsLow ? 1 : 0)) || rested)
            {
                Domains[change.Variable] = true;
                Expand(change.Reason, change.Variable, change.IsLow);
            }
        }

        foreach (var key in _needed.Keys)
        {
            Domains[key / 2] |= _needed.Take(key);
        }
    }

    private void Expand(int reason, int variable, bool isLow)
    {
        if (Nogoods.IsReason(reason))
        {
            foreach (var literal in nogoods.Of(reason))
            {
                // The denied bound is the other side of the change it made.
                if (literal.Variable != variable || literal.IsLow == isLow)
                {
                    _needed.Add(literal.Key);
                }
            }
        }
        else if (reason >= 0)
        {
            if (reason < Propagators.Length)
            {
                Propagators[reason] = true;
            }

            state.PropagatorAt(reason).Explain(variable, isLow, _needed);
        }
    }
}
