using DetailGen.Details.Presets;
using DetailGen.Details.Rules;
using DetailGen.Details.Rules.Language;
using DetailGen.Details.Solving;

namespace DetailGen.Library.Wording;

/// <summary>The notes and cautions that every sheet and report carries.</summary>
internal static class GeneralNotes
{
    internal const string Caution =
        "Starting point for a competent person: local regulations, the manufacturer's instructions and the project's designers decide.";

    internal const string Engineer = "Stability of the masonry, wind uplift, fire and guarding: for the engineer or fire consultant to confirm.";

    internal const string Height = "Work at height: plan edge protection before the roof is opened.";

    internal static IReadOnlyList<string> Of(Solution.Solved solved) =>
    [
        "Dimensions in millimetres, levels in metres. Use figured dimensions; do not scale. Chains leave out sheets under 5 mm.",
        "Sheet materials are drawn thicker than true, for clarity.",
        .. Cautions(solved),
    ];

    /// <summary>Those that hold for any reader, whether or not there is a drawing before him.</summary>
    internal static IReadOnlyList<string> Cautions(Solution.Solved solved) =>
    [
        Caution,
        Engineer,
        Height,
        "Values marked tabulated or assumed are to be replaced by declared values.",
        Checked(solved),
    ];

    /// <summary>What a sheet without room for the notes says.</summary>
    internal static string Brief => $"{Caution} {Height} General notes: see the further sheets.";

    // Of where it stands and what it is for, what some rule looks at: rules of another country ask for no nation.
    private static string Checked(Solution.Solved solved)
    {
        var asked = solved.Packs.SelectMany(pack => pack.Rules).SelectMany(rule => new[] { rule.When, rule.Require }).OfType<Expression>().SelectMany(asks => asks.Keys()).ToHashSet(StringComparer.Ordinal);
        string[] known = [.. solved.Preset.Conditions.Where(condition => asked.Contains(condition.Key)).Select(condition => Told(condition.Key, condition.Word.Replace('-', ' ')))];
        return $"Checked against rules {Stamps(solved.Packs)}{(known.Length > 0 ? " for " : "")}{string.Join(", ", known)}.";
    }

    private static string Told(string key, string word) => key switch
    {
        PresetShape.Nation => Capital(word),
        "site.exposure" => word + " exposure",
        "building.work" => word + " work",
        "building.roof-access" => "roof access: " + word,
        _ => word,
    };

    // a detail may be held to no rules at all
    private static string Stamps(IReadOnlyList<RulePack> packs) => packs.Count == 0 ? "of no pack" : string.Join(", ", packs.Select(pack => pack.Stamp));

    // a nation is a name, each word of it
    private static string Capital(string words) => string.Join(' ', words.Split(' ').Select(word => char.ToUpperInvariant(word[0]) + word[1..]));
}
