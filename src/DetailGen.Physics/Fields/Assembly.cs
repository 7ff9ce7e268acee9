namespace DetailGen.Physics.Fields;

/// <summary>A symmetric system under construction; unknowns with a held value are moved to the right side.</summary>
/// <param name="elements">For each triangle its unknowns, which alone have coefficients with each other.</param>
internal sealed class Assembly((double X, double Y)[] places, int[][] elements)
{
    private readonly Dictionary<int, double>[] rows = [.. places.Select(_ => new Dictionary<int, double>(8))];
    private readonly double[] right = new double[places.Length];

    internal int Size => rows.Length;

    internal void Add(int i, int j, double value) => rows[i][j] = rows[i].GetValueOrDefault(j) + value;

    internal void Load(int i, double value) => right[i] += value;

    /// <param name="held">Value by unknown, null where it is free.</param>
    internal double[] Solve(double?[] held)
    {
        var free = Enumerable.Range(0, Size).Where(i => held[i] is null).ToArray();
        var number = new int[Size];
        for (var k = 0; k < free.Length; k++)
        {
            number[free[k]] = k;
        }

        var inner = new Dictionary<int, double>[free.Length];
        var load = new double[free.Length];
        for (var k = 0; k < free.Length; k++)
        {
            inner[k] = [];
            load[k] = right[free[k]];
            foreach (var (j, value) in rows[free[k]])
            {
                if (held[j] is { } known)
                {
                    load[k] -= value * known;
                }
                else
                {
                    inner[k][number[j]] = value;
                }
            }
        }

        var x = SparseFactor.Solve(inner, load, [.. free.Select(i => places[i])], [.. elements.Select(element => element.Where(i => held[i] is null).Select(i => number[i]).ToArray()).Where(element => element.Length > 0)]);
        return [.. held.Select((known, i) => known ?? x[number[i]])];
    }

    /// <summary>What must be put into the unknown from outside to hold the field there.</summary>
    internal double Reaction(int i, double[] x) => rows[i].Sum(e => e.Value * x[e.Key]) - right[i];
}
