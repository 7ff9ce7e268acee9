using System.Text.Json.Nodes;
using DetailGen.Physics.Fields;

namespace DetailGen.Physics.Cases;

/// <summary>The <c>result</c> and <c>points</c> of a two-dimensional field.</summary>
internal static class FieldResult
{
    /// <param name="transmittances">U of the flanking elements in W/(m²·K), in their order.</param>
    internal static JsonObject Of(FieldCase asked, FieldAnswer found, IReadOnlyList<double> transmittances)
    {
        double? Psi(Func<FlankingElement, double> length) => asked.Flanking.Length == 0 || found.Coupling is not { } coupling
            ? null
            : coupling - asked.Flanking.Select((element, i) => transmittances[i] * length(element) / 1000).Sum();
        var flows = new JsonObject();
        foreach (var (environment, flow) in found.Flows)
        {
            flows[environment] = flow;
        }

        return new()
        {
            ["l2d_w_mk"] = found.Coupling,
            ["heat_flow_w_m"] = found.HeatFlow,
            ["flows_w_m"] = flows,
            ["error_estimate_w_mk"] = found.ErrorEstimate,
            ["l2d_bounds_w_mk"] = found.Bounds is { } bounds ? new JsonArray(bounds.Lower, bounds.Upper) : null,
            ["psi_internal_w_mk"] = Psi(element => element.LengthInternal),
            ["psi_external_w_mk"] = Psi(element => element.LengthExternal),
            ["flanking"] = asked.Flanking.Length == 0
                ? null
                : new JsonArray([.. asked.Flanking.Select((element, i) => new JsonObject { ["name"] = element.Name, ["u_w_m2k"] = transmittances[i] })]),
            ["f_rsi"] = Factor(found.Factor),
            ["f_rsi_humidity"] = Factor(found.HumidityFactor),
            ["subdivision"] = found.Subdivision is { } two
                ? new JsonObject { ["triangles"] = new JsonArray(two.Coarse, two.Fine), ["change"] = two.Change, ["limit"] = Subdivision.Limit, ["met"] = two.Met, ["proven"] = two.IsProven }
                : null,
            ["heat_balance"] = found.HeatBalance,
            ["unknowns"] = found.Unknowns,
        };
    }

    internal static JsonObject Points(FieldCase asked, FieldAnswer found)
    {
        var points = new JsonObject();
        foreach (var (point, temperature) in asked.Points.Zip(found.Temperatures))
        {
            points[point.Name] = new JsonObject { ["x_mm"] = point.At.X, ["y_mm"] = point.At.Y, ["t_c"] = temperature };
        }

        return points;
    }

    // no bound of a factor is proven, however little the last refinement changed it
    private static JsonObject? Factor(TemperatureFactor? factor) =>
        factor is null ? null : new() { ["value"] = factor.Value, ["x_mm"] = factor.At.X, ["y_mm"] = factor.At.Y, ["change"] = factor.Change, ["proven"] = false };
}
