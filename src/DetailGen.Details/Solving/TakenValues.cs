using System.Globalization;

namespace DetailGen.Details.Solving;

/// <summary>What a detail takes for what its author leaves open.</summary>
public static class TakenValues
{
    /// <summary>Values by key, materials under <c>materials.SLOT</c>, U-values that it reaches under <c>target.KEY</c>, W/(m²·K) up to the next hundredth.</summary>
    /// <param name="catalogue">The one that it was solved with.</param>
    public static Dictionary<string, string> Of(Solution.Solved solved, Catalogue catalogue)
    {
        var taken = solved.Values.Where(value => !value.Derived).ToDictionary(value => value.Key, value => value.Text, StringComparer.Ordinal);
        foreach (var slot in new Situation(solved.Preset, catalogue).Slots)
        {
            taken["materials." + slot.Slot.Key] = slot.Material.Id;
        }

        foreach (var heat in solved.Heat)
        {
            taken[$"target.{heat.Element}.u-value"] = (decimal.Ceiling(heat.Transmittance * 100) / 100).ToString("0.00", CultureInfo.InvariantCulture);
        }

        return taken;
    }
}
