using DetailGen.Details.Constructions;
using DetailGen.Details.Parts;
using DetailGen.Sections;

namespace DetailGen.Details.Junctions;

/// <summary>What a junction tells of itself besides its blanks.</summary>
internal sealed record Plan(
    IReadOnlyList<Level> Levels, IReadOnlyList<Buildup> Buildups, IReadOnlyList<Measure> Measures, IReadOnlyList<Space> Spaces, IReadOnlyList<Run> Runs,
    IReadOnlyList<Fall> Falls);

/// <summary>A way in which a wall and a roof meet.</summary>
internal interface IJunction
{
    /// <summary>As in presets.</summary>
    string Id { get; }

    /// <summary>The wall's weather face looks at the roof.</summary>
    bool Turned { get; }

    /// <summary>Brings all blanks to the site.</summary>
    Plan Build(Site site, PlacedWall wall, IReadOnlyList<RoofLayer> roof);
}
