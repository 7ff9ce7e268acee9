using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json.Nodes;

namespace DetailGen.Physics.Cases;

/// <summary>The key figures of an answer in words and rounded for reading.</summary>
internal static class CaseFigures
{
    private static readonly (string Kind, string Key, string Name, string Format, string Unit)[] Rows =
    [
        ("u-value", "u_w_m2k", "U", "0.000", "W/m²K"),
        ("u-value", "r_total_m2k_w", "resistance, surfaces included", "0.000", "m²K/W"),
        ("u-value", "r_upper_m2k_w", "upper limit", "0.000", "m²K/W"),
        ("u-value", "r_lower_m2k_w", "lower limit", "0.000", "m²K/W"),
        ("heat2d", "l2d_w_mk", "thermal coupling L2D", "0.0000", "W/mK"),
        ("heat2d", "error_estimate_w_mk", "its error at most", "0.000000", "W/mK"),
        ("heat2d", "psi_internal_w_mk", "psi, internal dimensions", "0.000", "W/mK"),
        ("heat2d", "psi_external_w_mk", "psi, external dimensions", "0.000", "W/mK"),
        ("heat2d", "f_rsi.value", "least temperature factor, estimated", "0.000", ""),
        ("heat2d", "f_rsi.change", "the last refinement changed it by (no bound)", "0.0E+0", ""),
        ("heat2d", "f_rsi_humidity.value", "the same with the film against mould, estimated", "0.000", ""),
        ("heat2d", "f_rsi_humidity.change", "the last refinement changed it by (no bound)", "0.0E+0", ""),
        ("moisture", "verdict", "condensation", "", ""),
        ("moisture", "start_month", "starts", "", ""),
        ("moisture", "peak_g_m2", "most water", "0.0", "g/m²"),
        ("moisture", "peak_month", "in", "", ""),
        ("moisture", "residual_g_m2", "left after a year", "0.0", "g/m²"),
        ("moisture", "f_rsi_min", "temperature factor needed against mould", "0.000", ""),
        ("moisture", "critical_month", "in", "", ""),
    ];

    internal static ImmutableArray<(string Name, string Text)> Of(string kind, JsonObject result) =>
    [
        .. Rows.Where(row => row.Kind == kind)
            .Select(row => (row, Value: row.Key.Split('.').Aggregate((JsonNode?)result, (node, key) => node?[key])))
            .Where(pair => pair.Value is not null)
            .Select(pair => (pair.row.Name, Text(pair.Value!, pair.row.Format, pair.row.Unit))),
    ];

    private static string Text(JsonNode value, string format, string unit) =>
        (value.AsValue().TryGetValue<double>(out var number) ? number.ToString(format, CultureInfo.InvariantCulture) : value.ToString()) + (unit.Length > 0 ? " " + unit : "");
}
