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
    /// <param name="isLow">True where it moved the lower bound; of no account where it failed.</param>
    public abstract void Explain(int variable, bool isLow, Needed needed);
}

/// <summary>Bounds whose reasons are still to be found; a bound's key is twice its variable, and one more for the lower.</summary>
internal sealed class Needed(int variables)
{
    private readonly bool[] flags = new bool[2 * variables];

    /// <summary>All keys added since the clearing, some of them taken again; a key that was taken and added again stands twice.</summary>
    public List<int> Keys { get; } = [];

    public void Clear()
    {
        foreach (var key in Keys)
        {
            flags[key] = false;
        }

        Keys.Clear();
    }

    public void Add(int key)
    {
        if (!flags[key])
        {
            flags[key] = true;
            Keys.Add(key);
        }
    }

    public void Low(int variable) => Add(2 * variable + 1);

    public void High(int variable) => Add(2 * variable);

    public void Both(int variable)
    {
        Low(variable);
        High(variable);
    }

    /// <summary>True where the bound was needed; it no longer is.</summary>
    public bool Take(int key)
    {
        var was = flags[key];
        flags[key] = false;
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
