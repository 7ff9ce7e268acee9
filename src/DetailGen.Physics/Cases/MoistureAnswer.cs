using System.Text.Json.Nodes;
using DetailGen.Physics.Moisture;

namespace DetailGen.Physics.Cases;

/// <summary>The <c>result</c> of a moisture calculation, as case files are answered and details told.</summary>
public static class MoistureAnswer
{
    /// <param name="year">Null where only the surface is looked at.</param>
    public static JsonObject Of(Climate climate, SurfaceCriterion surface, CondensationYear? year)
    {
        var months = new JsonArray();
        for (var month = 0; month < 12; month++)
        {
            var entry = new JsonObject
            {
                ["month"] = Month.Names[month],
                ["p_internal_pa"] = climate.InternalPressure[month],
                ["p_external_pa"] = climate.ExternalPressure[month],
                ["theta_si_min_c"] = surface.Months[month].LeastTemperature,
                ["f_rsi_min"] = surface.Months[month].Factor,
            };
            if (year is not null)
            {
                entry["change_g_m2"] = year.Interfaces.Sum(wet => wet.Change[month]);
                entry["accumulated_g_m2"] = year.Interfaces.Sum(wet => wet.Accumulated[month]);
            }

            months.Add((JsonNode)entry);
        }

        var result = new JsonObject
        {
            ["f_rsi_min"] = surface.Factor,
            ["critical_month"] = surface.CriticalMonth is { } critical ? Month.Names[critical] : null,
        };
        if (year is not null)
        {
            result["verdict"] = Word(year.Verdict);
            result["start_month"] = year.StartMonth is { } start ? Month.Names[start] : null;
            result["peak_g_m2"] = year.Peak;
            result["peak_month"] = year.PeakMonth is { } peak ? Month.Names[peak] : null;
            result["residual_g_m2"] = year.Residual;
            result["dry_after_months"] = year.DryAfter;
            result["interfaces"] = new JsonArray([.. year.Interfaces.Select(Interface)]);
        }

        result["months"] = months;
        return result;
    }

    /// <summary>dry, dries or stays.</summary>
    public static string Word(MoistureVerdict verdict) => verdict switch
    {
        MoistureVerdict.Dry => "dry",
        MoistureVerdict.Dries => "dries",
        _ => "stays",
    };

    private static JsonObject Interface(WetInterface wet) => new()
    {
        ["after_layer"] = wet.AfterLayer,
        ["sd_m"] = wet.AirEquivalent,
        ["between"] = new JsonArray(wet.Inside, wet.Outside),
        ["change_g_m2"] = new JsonArray([.. wet.Change.Select(value => JsonValue.Create(value))]),
        ["accumulated_g_m2"] = new JsonArray([.. wet.Accumulated.Select(value => JsonValue.Create(value))]),
    };

    /// <summary>Whether the surface can meet the criterion at all.</summary>
    public static IEnumerable<string> Warnings(SurfaceCriterion surface) => surface is { Factor: > 1, CriticalMonth: { } month } ? [Messages.SurfaceCannotMeet(Month.Names[month])] : [];

    /// <summary>What else there is to say, a sentence each, with all the months that it is true of.</summary>
    /// <param name="build">Null where only the surface is looked at.</param>
    public static IEnumerable<string> Warnings(Climate climate, CondensationCase? build, CondensationYear? year)
    {
        if (Which(Saturated) is { Length: > 0 } saturated)
        {
            yield return Messages.PressureAboveSaturation(saturated);
        }

        if (build is not null && Which(month => !Saturated(month) && climate.InternalPressure[month] > Saturation.Pressure(Surface(build, month))) is { Length: > 0 } wet)
        {
            yield return Messages.SurfaceDew(wet);
        }

        if (year is { StartsAmidWet: true })
        {
            yield return Messages.StartsAmidWet();
        }

        bool Saturated(int month) => climate.InternalPressure[month] > Saturation.Pressure(climate.InternalTemperature[month]) * (1 + 1e-9);

        static string[] Which(Func<int, bool> holds) => [.. Enumerable.Range(0, 12).Where(holds).Select(month => Month.Names[month])];
    }

    /// <summary>Temperature of the inside surface in °C.</summary>
    private static double Surface(CondensationCase build, int month)
    {
        var (inside, outside) = (build.Climate.InternalTemperature[month], build.Climate.ExternalTemperature[month]);
        return inside + (outside - inside) * build.Rsi / (build.Rsi + build.Layers.Sum(layer => layer.Resistance) + build.Rse);
    }
}
