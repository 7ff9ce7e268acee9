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

    // Between names of which one has a comma of its own, commas would be read as parts of a name.
    private static Side? Named(Side? side, MaterialLibrary materials)
    {
        if (side is null)
        {
            return null;
        }

        string[] names = [.. side.Text.Split(", ").Select(word => materials.Find(word)?.Material.Name is { Length: > 1 } name ? Lowered(name) : word)];
        return side with { Text = string.Join(names.Any(name => name.Contains(',', StringComparison.Ordinal)) ? "; " : ", ", names) };
    }

    private static string Lowered(string name) => char.IsLower(name[1]) ? char.ToLowerInvariant(name[0]) + name[1..] : name;
}
