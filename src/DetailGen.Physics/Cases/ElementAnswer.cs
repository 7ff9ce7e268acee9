using System.Globalization;
using System.Text.Json.Nodes;
using DetailGen.Physics.Layers;

namespace DetailGen.Physics.Cases;

/// <summary>The <c>result</c> of a U-value.</summary>
internal static class ElementAnswer
{
    internal static JsonObject Of(Element element, ElementTransmittance found)
    {
        var corrections = new JsonObject();
        foreach (var (name, value) in new[] { ("air_gaps", found.AirGaps), ("fasteners", Fasteners(found)), ("rain", found.Rain) })
        {
            if (value is not null)
            {
                corrections[name] = value;
            }
        }

        return new()
        {
            ["u_w_m2k"] = found.Final,
            ["u_uncorrected_w_m2k"] = found.Uncorrected,
            ["r_total_m2k_w"] = found.Total,
            ["r_upper_m2k_w"] = found.Upper,
            ["r_lower_m2k_w"] = found.Lower,
            ["max_relative_error"] = found.MaximumRelativeError,
            ["paths"] = found.Paths.Length == 0 ? null : new JsonArray([.. found.Paths.Select(path => new JsonObject { ["fraction"] = path.Fraction, ["r_m2k_w"] = path.Resistance })]),
            ["layers"] = new JsonArray([.. element.Layers.Select((layer, i) => new JsonObject { ["name"] = layer.Name, ["r_m2k_w"] = found.Layers[i] })]),
            ["areas"] = found.Areas.Length == 0 ? null : new JsonArray([.. found.Areas.Select(area => new JsonObject { ["u_w_m2k"] = area })]),
            ["delta_u_w_m2k"] = corrections.Count == 0 ? null : corrections,
            ["corrections_applied"] = found.CorrectionsApplied,
            ["u_rounded"] = TwoFigures(found.Final),
        };
    }

    /// <summary>Two significant figures, as a U-value is stated; trailing zeros kept.</summary>
    internal static string TwoFigures(double value)
    {
        // Through the exponent form, which rounds once and counts figures right where rounding carries (0.0996 is 0.10).
        var rounded = double.Parse(value.ToString("E1", CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
        var decimals = Math.Max(0, 1 - (int)Math.Floor(Math.Log10(rounded) + 1e-9));
        return rounded.ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
    }

    internal static IEnumerable<string> Warnings(Element element, ElementTransmittance found)
    {
        for (var i = 0; i < element.Layers.Length; i++)
        {
            if (found.Layers[i] is null)
            {
                yield return Messages.LeftOut(element.Layers[i].Name);
            }
        }

        if (!found.CorrectionsApplied && (found.AirGaps ?? Fasteners(found) ?? found.Rain) is not null)
        {
            yield return Messages.CorrectionsSmall();
        }
    }

    private static double? Fasteners(ElementTransmittance found) => found.Fasteners.Length > 0 ? found.Fasteners.Sum() : null;
}
