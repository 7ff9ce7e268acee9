namespace DetailGen.Solver.Propagation;

/// <summary>Who is woken by which bound; a bound's key is twice its variable, and one more for the lower.</summary>
internal sealed class Watchers(int variables)
{
    private int[][] _lists = new int[2 * variables][];
    private int[] _counts = new int[2 * variables];

    /// <summary>Makes room for so many variables.</summary>
    public void Resize(int variables)
    {
        Array.Resize(ref _lists, 2 * variables);
        Array.Resize(ref _counts, 2 * variables);
    }

    public ReadOnlySpan<int> Of(int key) => new(_lists[key], 0, _counts[key]);

    public void OnLow(int variable, int propagator) => Add(2 * variable + 1, propagator);

    public void OnHigh(int variable, int propagator) => Add(2 * variable, propagator);

    /// <summary>Forgets the propagators from this one on, which were the last to be added.</summary>
    public void DropFrom(int propagator)
    {
        for (var key = 0; key < _counts.Length; key++)
        {
            while (_counts[key] > 0 && _lists[key][_counts[key] - 1] >= propagator)
            {
                _counts[key]--;
            }
        }
    }

    private void Add(int key, int propagator)
    {
        var count = _counts[key];
        if (count > 0 && _lists[key][count - 1] == propagator)
        {
            return;
        }

        if (_lists[key] is null)
        {
            _lists[key] = new int[4];
        }
        else if (count == _lists[key].Length)
        {
            Array.Resize(ref _lists[key], 2 * count);
        }

        _lists[key][count] = propagator;
        _counts[key]++;
    }
}
