using System.Collections.Immutable;

namespace DetailGen.Dxf.Tables;

/// <summary>A dashed line. ByBlock, ByLayer and Continuous are always written and never listed.</summary>
/// <param name="Dashes">In mm of paper: positive for a dash, negative for a gap, 0 for a dot. It begins with a dash or a dot.</param>
public sealed record Linetype(string Name, string Description, ImmutableArray<double> Dashes)
{
    public const string Continuous = "Continuous";

    /// <summary>Length of one repeat, in mm of paper.</summary>
    public double Period => Dashes.Sum(Math.Abs);
}
