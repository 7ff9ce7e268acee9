using DetailGen.Solver.Propagation;

namespace DetailGen.Solver.Search;

/// <summary>That a variable is at least, or at most, so much.</summary>
internal readonly record struct Literal(int Variable, bool IsLow, long Value)
{
    public int Key => 2 * Variable + (IsLow ? 1 : 0);

    public bool Holds(State state) => IsLow ? state.Lows[Variable] >= Value : state.Highs[Variable] <= Value;

    public bool CannotHold(State state) => IsLow ? state.Highs[Variable] < Value : state.Lows[Variable] > Value;

    /// <summary>Posts the opposite.</summary>
    public bool Deny(State state, int reason) => IsLow ? state.AtMost(Variable, Value - 1, reason) : state.AtLeast(Variable, Value + 1, reason);
}

/// <summary>
/// What the search has learnt in one run: sets of bounds that cannot all hold. Each set watches two bounds that do not hold yet; when one comes to
/// hold it looks for another, and where only one is left denies it.
/// </summary>
internal sealed class Nogoods
{
    private const int ReasonBase = 1 << 28;
    private const int Most = 4000;
    private const int ShortSet = 8;
    private readonly State _state;
    private readonly List<Literal[]> _sets = [];
    private List<int>[] _watchers = [];
    private int _head;

    public Nogoods(State state) => _state = state;

    public static bool IsReason(int reason) => reason >= ReasonBase;

    public Literal[] Of(int reason) => _sets[reason - ReasonBase];

    /// <summary>Makes room for so many variables.</summary>
    public void Resize(int variables)
    {
        var before = _watchers.Length;
        Array.Resize(ref _watchers, 2 * variables);
        for (var i = before; i < _watchers.Length; i++)
        {
            _watchers[i] = [];
        }
    }

    public void Clear()
    {
        foreach (var set in _sets)
        {
            _watchers[set[0].Key].Clear();
            if (set.Length > 1)
            {
                _watchers[set[1].Key].Clear();
            }
        }

        _sets.Clear();
        _head = _state.TrailCount;
    }

    /// <summary>Where there are very many, keeps the short ones, which say most; only at the level where all that was learnt holds.</summary>
    public void Forget()
    {
        if (_sets.Count <= Most)
        {
            return;
        }

        var kept = _sets.FindAll(set => set.Length <= ShortSet);
        if (kept.Count > Most)
        {
            kept.RemoveRange(0, kept.Count - (Most / 2));
        }

        Clear();
        foreach (var set in kept)
        {
            Watch(set);
        }

        _head = 0; // what holds already is met again
    }

    /// <summary>To be called when bounds were taken back: what comes after is looked at afresh.</summary>
    public void Rewind() => _head = Math.Min(_head, _state.TrailCount);

    /// <summary>Adds a set, the bound to deny first and a bound of the deepest level below it next, and denies.</summary>
    public bool Learn(Literal[] set)
    {
        var reason = ReasonBase + _sets.Count;
        Watch(set);
        _head = Math.Min(_head, _state.TrailCount);
        return set[0].Deny(_state, reason);
    }

    /// <summary>Runs propagators and learnt sets until nothing moves; false where one fails.</summary>
    public bool Propagate()
    {
        _head = Math.Min(_head, _state.TrailCount);
        while (true)
        {
            if (!_state.Propagate())
            {
                return false;
            }

            if (_head >= _state.TrailCount || _state.Steps >= _state.StepLimit)
            {
                return true;
            }

            while (_head < _state.TrailCount)
            {
                ref readonly var change = ref _state.TrailAt(_head++);
                if (!Visit(2 * change.Variable + (change.IsLow ? 1 : 0)))
                {
                    return false;
                }
            }
        }
    }

    private void Watch(Literal[] set)
    {
        if (set.Length > 1)
        {
            _watchers[set[0].Key].Add(_sets.Count);
            _watchers[set[1].Key].Add(_sets.Count);
        }

        _sets.Add(set);
    }

    private bool Visit(int key)
    {
        var list = _watchers[key];
        var kept = 0;
        var good = true;
        for (var i = 0; i < list.Count; i++)
        {
            var index = list[i];
            var set = _sets[index];
            list[kept++] = index;
            var own = set[0].Key == key && set[0].Holds(_state) ? 0 : set[1].Key == key && set[1].Holds(_state) ? 1 : -1;
            if (!good || own < 0)
            {
                continue;
            }

            _state.Spend();
            var other = set[1 - own];
            if (other.CannotHold(_state))
            {
                continue;
            }

            if (Replace(set, own))
            {
                if (set[own].Key != key)
                {
                    _watchers[set[own].Key].Add(index);
                    kept--;
                }
            }
            else
            {
                good = other.Holds(_state) ? _state.Fail(ReasonBase + index) : other.Deny(_state, ReasonBase + index);
            }
        }

        list.RemoveRange(kept, list.Count - kept);
        return good;
    }

    private bool Replace(Literal[] set, int own)
    {
        for (var k = 2; k < set.Length; k++)
        {
            if (!set[k].Holds(_state))
            {
                (set[own], set[k]) = (set[k], set[own]);
                return true;
            }
        }

        return false;
    }
}
