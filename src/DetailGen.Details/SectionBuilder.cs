using DetailGen.Details.Constructions;
using DetailGen.Details.Junctions;
using DetailGen.Details.Junctions.Abutment;
using DetailGen.Details.Junctions.Parapet;
using DetailGen.Details.Parameters;
using DetailGen.Details.Parts;
using DetailGen.Details.Reading;
using DetailGen.Details.Solving;
using DetailGen.Sections;

namespace DetailGen.Details;

/// <summary>Sizes to parts in place: a junction sets the stacks of a wall and a roof together and adds its own parts.</summary>
public static class SectionBuilder
{
    private static readonly IReadOnlyList<IJunction> Builders = [new Abutment(), new Parapet()];

    /// <summary>Ids of the junctions that can be built, in ordinal order.</summary>
    public static IReadOnlyList<string> Junctions { get; } = [.. Builders.Select(builder => builder.Id)];

    /// <summary>The section of a solved detail.</summary>
    /// <exception cref="ArgumentException">No builder knows the junction.</exception>
    public static Section Build(Solution.Solved solved) =>
        Build(solved.Sizes, solved.Preset.Junction, solved.Preset.Wall, solved.Preset.Roof, solved.Holds);

    /// <summary>The section of given sizes.</summary>
    /// <param name="sizes">All sizes that the three descriptions name, solved.</param>
    /// <param name="holds">Whether a condition over choices holds, as written in a description.</param>
    /// <exception cref="ArgumentException">No builder knows the junction.</exception>
    public static Section Build(Sizes sizes, Component junction, Component wall, Component roof, Func<Written, bool> holds)
    {
        var builder = Builders.FirstOrDefault(builder => builder.Id == junction.Id)
            ?? throw new ArgumentException($"No builder knows the junction {junction.Id}.", nameof(junction));
        var site = new Site(sizes);
        var placed = PlacedWall.Place(site, LayerReader.Wall(wall), builder.Turned);
        var plan = builder.Build(site, placed, LayerReader.Roof(roof));
        var parts = Assembly.Join(site, new(sizes, [junction, wall, roof], holds));
        return new(junction.Id, parts, plan.Levels, plan.Buildups, plan.Measures, plan.Spaces, plan.Runs, plan.Falls);
    }
}
