using DetailGen.Details.Climates;
using DetailGen.Details.Parameters;
using DetailGen.Details.Reading;

namespace DetailGen.Details.Presets;

/// <summary>What there is to pick from when a preset is read.</summary>
/// <param name="Packs">Names of rule packs.</param>
/// <param name="RuleIds">Ids and aliases of the rules that can be waived; null where they are not to be checked.</param>
public sealed record PresetContext(Components Components, MaterialLibrary Materials, ClimateLibrary Climates, IReadOnlyList<string> Packs, IReadOnlyCollection<string>? RuleIds)
{
    public static PresetContext Load(Shelf shelf, IReadOnlyCollection<string>? ruleIds = null) =>
        new(Components.Load(shelf), MaterialLibrary.Load(shelf), ClimateLibrary.Load(shelf), shelf.Folders("presets/rules/"), ruleIds);

    /// <summary>What ships.</summary>
    public static PresetContext Load(IReadOnlyCollection<string>? ruleIds = null) => Load(Shelf.Shipped, ruleIds);
}
