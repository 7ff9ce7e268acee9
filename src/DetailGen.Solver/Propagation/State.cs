namespace DetailGen.Solver.Propagation;

/// <summary>The bounds of all variables, with a trail to take changes back, and the queue of propagators to run.</summary>
internal sealed class State
{
    /// <summary>Reason of a bound that the caller supposes.</summary>
    public const int Supposed = -1;

    private readonly Watchers _watchers;
    private readonly int _firstPropagators;
    private readonly int _firstVariables;
    private Propagator[] _propagators;
    private Domain[] _domains;
    private long[] _low;
    private long[] _high;
    private bool[] _queued;
    private int[] _queue;
    private int _queueHead;
    private int _queueCount;
    private Change[] _trail = new Change[256];
    private int[] _levelStart = new int[64];
    private int[] _latest;

    public State(Propagator[] propagators, Domain[] domains)
    {
        _propagators = (Propagator[])propagators.Clone();
        _domains = (Domain[])domains.Clone();
        PropagatorCount = _firstPropagators = propagators.Length;
        VariableCount = _firstVariables = domains.Length;
        _low = new long[domains.Length];
        _high = new long[domains.Length];
        _latest = new int[2 * domains.Length];
        _queued = new bool[propagators.Length];
        _queue = new int[Math.Max(propagators.Length, 1)];
        Enabled = new bool[propagators.Length];
        _watchers = new Watchers(domains.Length);
        for (var i = 0; i < propagators.Length; i++)
        {
            propagators[i].Index = i;
            propagators[i].Watch(_watchers);
        }
    }

    public int VariableCount { get; private set; }

    public int PropagatorCount { get; private set; }

    public ReadOnlySpan<long> Lows => _low;

    public ReadOnlySpan<long> Highs => _high;

    /// <summary>By variable, as they are in force.</summary>
    public ReadOnlySpan<Domain> Domains => _domains;

    /// <summary>By propagator: whether it is in force.</summary>
    public bool[] Enabled { get; private set; }

    /// <summary>Levels pushed since the reset.</summary>
    public int Level { get; private set; }

    public int TrailCount { get; private set; }

    /// <summary>Propagator runs since the start: the unit of the step budget.</summary>
    public long Steps { get; private set; }

    /// <summary>The steps at which propagation stops, unfinished.</summary>
    public long StepLimit { get; set; } = long.MaxValue;

    public int FailedReason { get; private set; }

    /// <summary>The variable that ran out of values, or -1 where a propagator failed by itself.</summary>
    public int FailedVariable { get; private set; }

    public ref readonly Change TrailAt(int index) => ref _trail[index];

    /// <summary>Place on the trail of the last change to a bound (key: twice the variable, and one more for the lower); -1 where there is none.</summary>
    public int LatestChange(int key) => _latest[key];

    public int TrailStart(int level) => _levelStart[level];

    /// <summary>Copies what <see cref="LatestChange"/> gives for each key.</summary>
    public void CopyLatestChanges(Span<int> into) => _latest.AsSpan(0, 2 * VariableCount).CopyTo(into);

    /// <summary>Adds a propagator until the next reset, and runs it next; only at level 0.</summary>
    public void Add(Propagator propagator)
    {
        var index = propagator.Index = PropagatorCount++;
        if (index == _propagators.Length)
        {
            var size = 2 * index + 8;
            Array.Resize(ref _propagators, size);
            Array.Resize(ref _queued, size);
            var enabled = Enabled;
            Array.Resize(ref enabled, size);
            Enabled = enabled;
            var longer = new int[size];
            for (var i = 0; i < _queueCount; i++)
            {
                longer[i] = _queue[(_queueHead + i) % _queue.Length];
            }

            (_queue, _queueHead) = (longer, 0);
        }

        _propagators[index] = propagator;
        Enabled[index] = true;
        propagator.Watch(_watchers);
        Wake(index);
    }

    /// <summary>Adds a variable until the next reset; only at level 0.</summary>
    /// <returns>Its number.</returns>
    public int Add(Domain domain)
    {
        var id = VariableCount++;
        if (id == _domains.Length)
        {
            var size = 2 * id + 8;
            Array.Resize(ref _domains, size);
            Array.Resize(ref _low, size);
            Array.Resize(ref _high, size);
            Array.Resize(ref _latest, 2 * size);
            _watchers.Resize(size);
        }

        _domains[id] = domain;
        (_low[id], _high[id]) = (domain.Low, domain.High);
        _latest.AsSpan(2 * id, 2).Fill(-1);
        return id;
    }

    /// <summary>Puts another domain in force; shows after the next reset.</summary>
    public void Replace(int variable, Domain domain) => _domains[variable] = domain;

    /// <summary>Back to what there was at first, with whole domains, all enabled propagators waiting.</summary>
    public void Reset()
    {
        ClearQueue();
        if (PropagatorCount > _firstPropagators)
        {
            _watchers.DropFrom(_firstPropagators);
        }

        (PropagatorCount, VariableCount) = (_firstPropagators, _firstVariables);
        TrailCount = 0;
        Level = 0;
        Array.Fill(_latest, -1);
        for (var i = 0; i < VariableCount; i++)
        {
            _low[i] = _domains[i].Low;
            _high[i] = _domains[i].High;
        }

        for (var i = 0; i < PropagatorCount; i++)
        {
            Wake(i);
        }
    }

    public void Push()
    {
        Level++;
        if (Level == _levelStart.Length)
        {
            Array.Resize(ref _levelStart, Level * 2);
        }

        _levelStart[Level] = TrailCount;
    }

    /// <summary>Takes back all changes above this level.</summary>
    public void PopTo(int level)
    {
        if (level >= Level)
        {
            return;
        }

        var start = _levelStart[level + 1];
        while (TrailCount > start)
        {
            ref readonly var change = ref _trail[--TrailCount];
            _latest[2 * change.Variable + (change.IsLow ? 1 : 0)] = change.Previous;
            if (change.IsLow)
            {
                _low[change.Variable] = change.Before;
            }
            else
            {
                _high[change.Variable] = change.Before;
            }
        }

        Level = level;
        ClearQueue();
    }

    public Propagator PropagatorAt(int index) => _propagators[index];

    /// <summary>Those that any of the variables' bounds wakes, in their order.</summary>
    public Propagator[] PropagatorsOn(ReadOnlySpan<int> variables)
    {
        var on = new SortedSet<int>();
        foreach (var variable in variables)
        {
            foreach (var key in (ReadOnlySpan<int>)[2 * variable, 2 * variable + 1])
            {
                foreach (var index in _watchers.Of(key))
                {
                    on.Add(index);
                }
            }
        }

        var found = new Propagator[on.Count];
        var count = 0;
        foreach (var index in on)
        {
            found[count++] = _propagators[index];
        }

        return found;
    }

    public long StepOf(int variable) => _domains[variable].Step;

    /// <summary>The greatest member of the variable's domain that is not above the value.</summary>
    public long MemberAtMost(int variable, long value) => _domains[variable].Floor(value);

    public bool IsFixed(int variable) => _low[variable] == _high[variable];

    public void Wake(int propagator)
    {
        if (_queued[propagator] || !Enabled[propagator])
        {
            return;
        }

        _queued[propagator] = true;
        var tail = _queueHead + _queueCount++;
        _queue[tail < _queue.Length ? tail : tail - _queue.Length] = propagator;
    }

    /// <summary>Raises the lower bound to the next member of the domain; false where that leaves nothing.</summary>
    public bool AtLeast(int variable, long value, int reason)
    {
        if (value <= _low[variable])
        {
            return true;
        }

        var rounded = _domains[variable].Ceiling(value);
        if (rounded > _high[variable])
        {
            return FailAt(variable, reason);
        }

        Record(variable, true, _low[variable], rounded, reason);
        _low[variable] = rounded;
        foreach (var watcher in _watchers.Of(2 * variable + 1))
        {
            Wake(watcher);
        }

        return true;
    }

    /// <summary>Lowers the upper bound to the next member of the domain; false where that leaves nothing.</summary>
    public bool AtMost(int variable, long value, int reason)
    {
        if (value >= _high[variable])
        {
            return true;
        }

        var rounded = _domains[variable].Floor(value);
        if (rounded < _low[variable])
        {
            return FailAt(variable, reason);
        }

        Record(variable, false, _high[variable], rounded, reason);
        _high[variable] = rounded;
        foreach (var watcher in _watchers.Of(2 * variable))
        {
            Wake(watcher);
        }

        return true;
    }

    /// <summary>Counts work that is not a propagator's.</summary>
    public void Spend() => Steps++;

    /// <summary>Notes that this propagator cannot hold.</summary>
    public bool Fail(int propagator)
    {
        FailedReason = propagator;
        FailedVariable = -1;
        return false;
    }

    /// <summary>Runs the waiting propagators; false where one fails. Stops early at the step limit, which the caller has to look at.</summary>
    public bool Propagate()
    {
        while (_queueCount > 0 && Steps < StepLimit)
        {
            var index = _queue[_queueHead];
            _queueHead = _queueHead + 1 == _queue.Length ? 0 : _queueHead + 1;
            _queueCount--;
            _queued[index] = false;
            Steps++;
            if (!_propagators[index].Propagate(this))
            {
                ClearQueue();
                return false;
            }
        }

        return true;
    }

    private bool FailAt(int variable, int reason)
    {
        FailedReason = reason;
        FailedVariable = variable;
        return false;
    }

    private void Record(int variable, bool isLow, long before, long after, int reason)
    {
        if (TrailCount == _trail.Length)
        {
            Array.Resize(ref _trail, TrailCount * 2);
        }

        ref var last = ref _latest[2 * variable + (isLow ? 1 : 0)];
        _trail[TrailCount] = new Change(variable, isLow, before, after, last, reason);
        last = TrailCount++;
    }

    private void ClearQueue()
    {
        while (_queueCount > 0)
        {
            _queued[_queue[_queueHead]] = false;
            _queueHead = _queueHead + 1 == _queue.Length ? 0 : _queueHead + 1;
            _queueCount--;
        }
    }

    /// <summary>One bound as it was before it moved and after, and what moved it.</summary>
    /// <param name="Previous">Place on the trail of the change before to the same bound; -1 where there is none.</param>
    internal readonly record struct Change(int Variable, bool IsLow, long Before, long After, int Previous, int Reason);
}
