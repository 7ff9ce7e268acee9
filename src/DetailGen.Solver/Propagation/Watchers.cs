namespace DetailGen.Solver.Propagation;

/// <summary>Who is woken by which bound; a bound's key is twice its variable, and one more for the lower.</summary>
internal sealed class Watchers(int variables)
{
    private int[][] lists = new int[2 * variables][];
    private int[] counts = new int[2 * variables];

    /// <summary>Makes room for so many variables.</summary>
    public void Resize(int variables)
    {
        Array.Resize(ref lists, 2 * variables);
        Array.Resize(ref counts, 2 * variables);
    }

    public ReadOnlySpan<int> Of(int key) => new(lists[key], 0, counts[key]);

    public void OnLow(int variable, int propagator) => Add(2 * variable + 1, propagator);

    public void OnHigh(int variable, int propagator) => Add(2 * variable, propagator);

    /// <summary>Forgets the propagators from this one on, which were the last to be added.</summary>
    public void DropFrom(int propagator)
    {
        for (var key = 0; key < counts.Length; key++)
        {
            while (counts[key] > 0 && lists[key][counts[key] - 1] >= propagator)
            {
                counts[key]--;
            }
        }
    }

    private void Add(int key, int propagator)
    {
        var count = counts[key];
        if (count > 0 && lists[key][count - 1] == propagator)
        {
            return;
        }

        if (lists[key] is null)
        {
            lists[key] = new int[4];
        }
        else if (count == lists[key].Length)
        {
            Array.Resize(ref lists[key], 2 * count);
        }

        lists[key][count] = propagator;
        counts[key]++;
    }
}
