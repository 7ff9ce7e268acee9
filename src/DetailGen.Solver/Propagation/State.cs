namespace DetailGen.Solver.Propagation;

/// <summary>The bounds of all variables, with a trail to take changes back, and the queue of propagators to run.</summary>
internal sealed class State
{
    /// <summary>Reason of a bound that the caller supposes.</summary>
    public const int Supposed = -1;

    private readonly Propagator[] propagators;
    private readonly Domain[] domains;
    private readonly long[] low;
    private readonly long[] high;
    private readonly int[][] onLow;
    private readonly int[][] onHigh;
    private readonly bool[] queued;
    private readonly int[] queue;
    private int count;
    private int queueHead;
    private int queueCount;
    private Change[] trail = new Change[256];
    private int[] levelStart = new int[64];
    private readonly int[] latest;

    /// <param name="reserve">How many propagators may be added later.</param>
    public State(Propagator[] propagators, Domain[] domains, int reserve)
    {
        this.propagators = new Propagator[propagators.Length + reserve];
        propagators.CopyTo(this.propagators, 0);
        count = propagators.Length;
        this.domains = domains;
        low = new long[domains.Length];
        high = new long[domains.Length];
        latest = new int[2 * domains.Length];
        queued = new bool[this.propagators.Length];
        queue = new int[Math.Max(this.propagators.Length, 1)];
        Enabled = new bool[this.propagators.Length];
        var watchers = new Watchers(domains.Length);
        for (var i = 0; i < propagators.Length; i++)
        {
            propagators[i].Index = i;
            propagators[i].Watch(watchers);
        }

        (onLow, onHigh) = watchers.ToArrays();
    }

    public ReadOnlySpan<long> Lows => low;

    public ReadOnlySpan<long> Highs => high;

    public bool[] Enabled { get; }

    /// <summary>Levels pushed since the reset.</summary>
    public int Level { get; private set; }

    public int TrailCount { get; private set; }

    /// <summary>Propagator runs since the start: the unit of the step budget.</summary>
    public long Steps { get; private set; }

    /// <summary>The steps at which propagation stops, unfinished.</summary>
    public long StepLimit { get; set; } = long.MaxValue;

    public int PropagatorCount => propagators.Length;

    public int FailedReason { get; private set; }

    /// <summary>The variable that ran out of values, or -1 where a propagator failed by itself.</summary>
    public int FailedVariable { get; private set; }

    public ref readonly Change TrailAt(int index) => ref trail[index];

    /// <summary>Place on the trail of the last change to a bound (key: twice the variable, and one more for the lower); -1 where there is none.</summary>
    public int LatestChange(int key) => latest[key];

    public int TrailStart(int level) => levelStart[level];

    /// <summary>Adds a propagator for good; only at level 0.</summary>
    public void Add(Propagator propagator)
    {
        var index = propagator.Index = count++;
        propagators[index] = propagator;
        Enabled[index] = true;
        var watchers = new Watchers(domains.Length);
        propagator.Watch(watchers);
        var (lows, highs) = watchers.ToArrays();
        for (var i = 0; i < domains.Length; i++)
        {
            if (lows[i].Length > 0)
            {
                onLow[i] = [.. onLow[i], index];
            }

            if (highs[i].Length > 0)
            {
                onHigh[i] = [.. onHigh[i], index];
            }
        }
    }

    /// <summary>Back to whole domains, all enabled propagators waiting.</summary>
    public void Reset()
    {
        TrailCount = 0;
        Level = 0;
        Array.Fill(latest, -1);
        ClearQueue();
        for (var i = 0; i < domains.Length; i++)
        {
            low[i] = domains[i].Low;
            high[i] = domains[i].High;
        }

        for (var i = 0; i < count; i++)
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
        foreach (var watcher in onLow[variable])
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
        foreach (var watcher in onHigh[variable])
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
