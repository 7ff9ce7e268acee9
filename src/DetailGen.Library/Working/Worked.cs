using DetailGen.Analysis.Heat;
using DetailGen.Analysis.Quantities;
using DetailGen.Details.Presets;
using DetailGen.Details.Solving;
using DetailGen.Library.Reports;
using DetailGen.Sections;

namespace DetailGen.Library.Working;

/// <summary>A detail worked through as far as it goes without drawing.</summary>
/// <param name="Checks">On the section.</param>
internal sealed record Worked(
    Solution.Solved Solved, Section Section, IReadOnlyList<BuildupResistance> Buildups, IReadOnlyList<PartQuantity> Quantities, IReadOnlyList<CheckReport> Checks)
{
    /// <summary>Through the junction in two dimensions; null where nothing was simulated.</summary>
    internal JunctionHeat? Heat { get; init; }

    internal Preset Preset => Solved.Preset;
}
