namespace DetailGen.Solver.Propagation;

/// <summary>Bounds whose reasons are still to be found; a bound's key is twice its variable, and one more for the lower.</summary>
internal sealed class Needed
{
    private bool[] _flags = [];

    /// <summary>All keys added since the clearing, some of them taken again; a key that was taken and added again stands twice.</summary>
    public List<int> Keys { get; } = [];

    /// <summary>Makes room for so many variables.</summary>
    public void Resize(int variables) => Array.Resize(ref _flags, 2 * variables);

    public void Clear()
    {
        foreach (var key in Keys)
        {
            _flags[key] = false;
        }

        Keys.Clear();
    }

    public void Add(int key)
    {
        if (!_flags[key])
        {
            _flags[key] = true;
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
        var was = _flags[key];
        _flags[key] = false;
        return was;
    }
}
