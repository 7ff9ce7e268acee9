namespace DetailGen.Solver.Propagation;

/// <summary>Narrows bounds until what it stands for holds; complete once all its variables are fixed.</summary>
internal abstract class Propagator
{
    /// <summary>Its place in the problem.</summary>
    public int Index { get; set; }

    /// <summary>The tag it stands under; -1 where it cannot be given up.</summary>
    public int Tag { get; init; } = -1;

    /// <summary>Narrows; false where it cannot hold (the state then knows the reason).</summary>
    public abstract bool Propagate(State state);

    /// <summary>Says which bounds wake it.</summary>
    public abstract void Watch(Watchers watchers);

    /// <summary>Marks the bounds it used to move this bound, or to fail (variable -1).</summary>
    public abstract void Explain(int variable, Needed needed);
}

/// <summary>Bounds whose reasons are still to be found.</summary>
internal sealed class Needed(int variables)
{
    private readonly bool[] low = new bool[variables];
    private readonly bool[] high = new bool[variables];

    public void Clear()
    {
        Array.Clear(low);
        Array.Clear(high);
    }

    public void Low(int variable) => low[variable] = true;

    public void High(int variable) => high[variable] = true;

    public void Both(int variable) => low[variable] = high[variable] = true;

    public bool Any(int variable) => low[variable] || high[variable];

    /// <summary>True where the bound was needed; it no longer is.</summary>
    public bool Take(int variable, bool isLow)
    {
        ref var flag = ref isLow ? ref low[variable] : ref high[variable];
        var was = flag;
        flag = false;
        return was;
    }
}

/// <summary>Who is woken by which bound.</summary>
internal sealed class Watchers
{
    private readonly List<int>[] low;
    private readonly List<int>[] high;

    public Watchers(int variables)
    {
        low = new List<int>[variables];
        high = new List<int>[variables];
        for (var i = 0; i < variables; i++)
        {
            low[i] = [];
            high[i] = [];
        }
    }

    public void OnLow(int variable, int propagator) => Add(low[variable], propagator);

    public void OnHigh(int variable, int propagator) => Add(high[variable], propagator);

    public (int[][] Low, int[][] High) ToArrays() =>
        (Array.ConvertAll(low, list => list.ToArray()), Array.ConvertAll(high, list => list.ToArray()));

    private static void Add(List<int> list, int propagator)
    {
        if (list.Count == 0 || list[^1] != propagator)
        {
            list.Add(propagator);
        }
    }
}
