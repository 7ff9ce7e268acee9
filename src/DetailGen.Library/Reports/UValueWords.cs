using DetailGen.Analysis.Heat;
using DetailGen.Library.Wording;

namespace DetailGen.Library.Reports;

/// <summary>What a U-value counts, in words.</summary>
internal static class UValueWords
{
    /// <summary>Half a sentence, without a stop.</summary>
    internal static string Remark(BuildupResistance stack)
    {
        var bridging = !stack.IsBridged ? "ISO 6946, homogeneous layers"
            : stack.Upper is { } upper ? $"ISO 6946, combined method: R between {Figures.Fixed(stack.Lower, 3)} and {Figures.Fixed(upper, 3)} m²·K/W, their mean"
            : $"R {Figures.Fixed(stack.Lower, 3)} m²·K/W, the lower limit of ISO 6946, as its combined method does not cover these layers";
        return $"{bridging}; {Fixings(stack)}; insulation laid without gaps that count";
    }

    private static string Fixings(BuildupResistance stack)
    {
        if (stack.Corrections.Count == 0)
        {
            return stack.Upper is null ? "fixings left out" : "no fixings through insulation";
        }

        var each = string.Join(", ", stack.Corrections.Select(one => $"{one.Fixings.Name.ToLowerInvariant()} {Figures.Fixed(one.Amount, 4)}"));
        return stack.Corrected ? $"added for fixings: {each} W/(m²·K)" : $"not added, as below 3 % of U together: {each} W/(m²·K)";
    }
}
