namespace DetailGen.Physics.Fields;

/// <summary>A symmetric positive definite system as the sum of small matrices: one for each triangle over its six unknowns, and a few with further unknowns.</summary>
internal sealed class Elements(int triangles, int unknowns)
{
    internal const int Nodes = 6;
    internal const int Square = Nodes * Nodes;

    internal int Unknowns => unknowns;

    /// <summary>Six unknowns for each triangle; -1 where the value is held.</summary>
    internal int[] Unknown { get; } = new int[Nodes * triangles];

    /// <summary>Thirty-six coefficients for each triangle.</summary>
    internal double[] Matrix { get; } = new double[Square * triangles];

    /// <summary>Triangle → a further matrix over unknowns of its own.</summary>
    internal Dictionary<int, (int[] Unknown, double[] Matrix)> Further { get; } = [];

    internal double[] Load { get; } = new double[unknowns];
}
