using DetailGen.Details.Parameters;
using DetailGen.Details.Rules.Language;
using DetailGen.Details.Solving;

namespace DetailGen.Library.Wording;

/// <summary>Both sides of a verdict on a material by the names that the trade has, in place of the words of presets.</summary>
internal static class MaterialNames
{
    internal static Solution.Solved In(Solution.Solved solved, MaterialLibrary materials) =>
        solved with { Verdicts = [.. solved.Verdicts.Select(verdict => IsOfMaterial(verdict) ? verdict with { Left = Named(verdict.Left, materials), Right = Named(verdict.Right, materials) } : verdict)] };

    private static bool IsOfMaterial(Verdict verdict) =>
        verdict is { Left.Number: null, Rule.Require: { } require } && require.All().OfType<Property>().Any(property => property.Name == "id");

    private static Side? Named(Side? side, MaterialLibrary materials) => side is null ? null : side with
    {
        Text = string.Join(", ", side.Text.Split(", ").Select(word => materials.Find(word)?.Material.Name is { Length: > 1 } name ? (char.IsLower(name[1]) ? char.ToLowerInvariant(name[0]) + name[1..] : name) : word)),
    };
}
