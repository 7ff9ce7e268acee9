namespace DetailGen.Solver.Propagation;

/// <summary>The bounds of all variables, with a trail to take changes back, and the queue of propagators to run.</summary>
internal sealed class State
{
    /// <summary>Reason of a bound that the caller supposes.</summary>
    public const int Supposed = -1;

    private readonly Watchers watchers;
    private readonly int firstPropagators;
    private readonly int firstVariables;
    private Propagator[] propagators;
    private Domain[] domains;
    private long[] low;
    private long[] high;
    private bool[] queued;
    private int[] queue;
    private int queueHead;
    private int queueCount;
    private Change[] trail = new Change[256];
    private int[] levelStart = new int[64];
    private int[] latest;

    public State(Propagator[] propagators, Domain[] domains)
    {
        this.propagators = (Propagator[])propagators.Clone();
        this.domains = (Domain[])domains.Clone();
        PropagatorCount = firstPropagators = propagators.Length;
        VariableCount = firstVariables = domains.Length;
        low = new long[domains.Length];
        high = new long[domains.Length];
        latest = new int[2 * domains.Length];
        queued = new bool[propagators.Length];
        queue = new int[Math.Max(propagators.Length, 1)];
        Enabled = new bool[propagators.Length];
        watchers = new Watchers(domains.Length);
        for (var i = 0; i < propagators.Length; i++)
        {
            propagators[i].Index = i;
            propagators[i].Watch(watchers);
        }
    }

    public int VariableCount { get; private set; }

    public int PropagatorCount { get; private set; }

    public ReadOnlySpan<long> Lows => low;

    public ReadOnlySpan<long> Highs => high;

    /// <summary>By variable, as they are in force.</summary>
    public ReadOnlySpan<Domain> Domains => domains;

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

    public ref readonly Change TrailAt(int index) => ref trail[index];

    /// <summary>Place on the trail of the last change to a bound (key: twice the variable, and one more for the lower); -1 where there is none.</summary>
    public int LatestChange(int key) => latest[key];

    public int TrailStart(int level) => levelStart[level];

    /// <summary>Copies what <see cref="LatestChange"/> gives for each key.</summary>
    public void CopyLatestChanges(Span<int> into) => latest.AsSpan(0, 2 * VariableCount).CopyTo(into);

    /// <summary>Adds a propagator until the next reset, and runs it next; only at level 0.</summary>
    public void Add(Propagator propagator)
    {
        var index = propagator.Index = PropagatorCount++;
        if (index == propagators.Length)
        {
            var size = 2 * index + 8;
            Array.Resize(ref propagators, size);
            Array.Resize(ref queued, size);
            var enabled = Enabled;
            Array.Resize(ref enabled, size);
            Enabled = enabled;
            var longer = new int[size];
            for (var i = 0; i < queueCount; i++)
            {
                longer[i] = queue[(queueHead + i) % queue.Length];
            }

            (queue, queueHead) = (longer, 0);
        }

        propagators[index] = propagator;
        Enabled[index] = true;
        propagator.Watch(watchers);
        Wake(index);
    }

    /// <summary>Adds a variable until the next reset; only at level 0.</summary>
    /// <returns>Its number.</returns>
    public int Add(Domain domain)
    {
        var id = VariableCount++;
        if (id == domains.Length)
        {
            var size = 2 * id + 8;
            Array.Resize(ref domains, size);
            Array.Resize(ref low, size);
            Array.Resize(ref high, size);
            Array.Resize(ref latest, 2 * size);
            watchers.Resize(size);
        }

        domains[id] = domain;
        (low[id], high[id]) = (domain.Low, domain.High);
        latest.AsSpan(2 * id, 2).Fill(-1);
        return id;
    }

    /// <summary>Puts another domain in force; shows after the next reset.</summary>
    public void Replace(int variable, Domain domain) => domains[variable] = domain;

    /// <summary>Back to what there was at first, with whole domains, all enabled propagators waiting.</summary>
    public void Reset()
    {
        ClearQueue();
        if (PropagatorCount > firstPropagators)
        {
            watchers.DropFrom(firstPropagators);
        }

        (PropagatorCount, VariableCount) = (firstPropagators, firstVariables);
        TrailCount = 0;
        Level = 0;
        Array.Fill(latest, -1);
        for (var i = 0; i < VariableCount; i++)
        {
            low[i] = domains[i].Low;
            high[i] = domains[i].High;
        }

        for (var i = 0; i < PropagatorCount; i++)
        {
            Wake(i);
        }
    }

    public void Push()
    {
        Level++;
        if (Level == levelStart.Length)
        {
            Array.Resize(ref levelStart, Level * 2);
        }

        levelStart[Level] = TrailCount;
    }

    /// <summary>Takes back all changes above this level.</summary>
    public void PopTo(int level)
    {
        if (level >= Level)
        {
            return;
        }

        var start = levelStart[level + 1];
        while (TrailCount > start)
        {
            ref readonly var change = ref trail[--TrailCount];
            latest[2 * change.Variable + (change.IsLow ? 1 : 0)] = change.Previous;
            if (change.IsLow)
            {
                low[change.Variable] = change.Before;
            }
            else
            {
                high[change.Variable] = change.Before;
            }
        }

        Level = level;
        ClearQueue();
    }

    public Propagator PropagatorAt(int index) => propagators[index];

    /// <summary>Those that any of the variables' bounds wakes, in their order.</summary>
    public Propagator[] PropagatorsOn(ReadOnlySpan<int> variables)
    {
        var on = new SortedSet<int>();
        foreach (var variable in variables)
        {
            foreach (var key in (ReadOnlySpan<int>)[2 * variable, 2 * variable + 1])
            {
                foreach (var index in watchers.Of(key))
                {
                    on.Add(index);
                }
            }
        }

        var found = new Propagator[on.Count];
        var count = 0;
        foreach (var index in on)
        {
            found[count++] = propagators[index];
        }

        return found;
    }

    public long StepOf(int variable) => domains[variable].Step;

    /// <summary>The greatest member of the variable's domain that is not above the value.</summary>
    public long MemberAtMost(int variable, long value) => domains[variable].Floor(value);

    public bool IsFixed(int variable) => low[variable] == high[variable];

    public void Wake(int propagator)
    {
        if (queued[propagator] || !Enabled[propagator])
        {
            return;
        }

        queued[propagator] = true;
        var tail = queueHead + queueCount++;
        queue[tail < queue.Length ? tail : tail - queue.Length] = propagator;
    }

    /// <summary>Raises the lower bound to the next member of the domain; false where that leaves nothing.</summary>
    public bool AtLeast(int variable, long value, int reason)
    {
        if (value <= low[variable])
        {
            return true;
        }

        var rounded = domains[variable].Ceiling(value);
        if (rounded > high[variable])
        {
            return FailAt(variable, reason);
        }

        Record(variable, true, low[variable], rounded, reason);
        low[variable] = rounded;
        foreach (var watcher in watchers.Of(2 * variable + 1))
        {
            Wake(watcher);
        }

        return true;
    }

    /// <summary>Lowers the upper bound to the next member of the domain; false where that leaves nothing.</summary>
    public bool AtMost(int variable, long value, int reason)
    {
        if (value >= high[variable])
        {
            return true;
        }

        var rounded = domains[variable].Floor(value);
        if (rounded < low[variable])
        {
            return FailAt(variable, reason);
        }

        Record(variable, false, high[variable], rounded, reason);
        high[variable] = rounded;
        foreach (var watcher in watchers.Of(2 * variable))
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
        while (queueCount > 0 && Steps < StepLimit)
        {
            var index = queue[queueHead];
            queueHead = queueHead + 1 == queue.Length ? 0 : queueHead + 1;
            queueCount--;
            queued[index] = false;
            Steps++;
            if (!propagators[index].Propagate(this))
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
        if (TrailCount == trail.Length)
        {
            Array.Resize(ref trail, TrailCount * 2);
        }

        ref var last = ref latest[2 * variable + (isLow ? 1 : 0)];
        trail[TrailCount] = new Change(variable, isLow, before, after, last, reason);
        last = TrailCount++;
    }

    private void ClearQueue()
    {
        while (queueCount > 0)
        {
            queued[queue[queueHead]] = false;
            queueHead = queueHead + 1 == queue.Length ? 0 : queueHead + 1;
            queueCount--;
        }
    }

    /// <summary>One bound as it was before it moved and after, and what moved it.</summary>
    /// <param name="Previous">Place on the trail of the change before to the same bound; -1 where there is none.</param>
    internal readonly record struct Change(int Variable, bool IsLow, long Before, long After, int Previous, int Reason);
}
