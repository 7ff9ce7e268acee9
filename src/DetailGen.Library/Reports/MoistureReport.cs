using System.Text.Json.Nodes;
using System.Text.Json.Serialization;

namespace DetailGen.Library.Reports;

/// <summary>Condensation and mould of the plain build-ups.</summary>
/// <param name="Standard">What it is calculated to.</param>
/// <param name="Surface">What the air asks of inside surfaces.</param>
/// <param name="Elements">Wall and roof.</param>
/// <param name="Steps">How the layers were taken from the section.</param>
public sealed record MoistureReport(
    string Standard, ClimateReport Climate, InsideAirReport Internal, MouldReport Surface, IReadOnlyList<MoistureElementReport> Elements, IReadOnlyList<string> Steps, string Caution);

/// <summary>Air outside.</summary>
/// <param name="Named">Whether the preset names it; else it is the usual one of the nation.</param>
/// <param name="Origin">measured, tabulated, assumed or invented.</param>
public sealed record ClimateReport(
    string Id, string Title, bool Named, string Origin, string Source, string Confidence,
    [property: JsonPropertyName("external_t_c")] IReadOnlyList<double> Temperature,
    [property: JsonPropertyName("external_rh")] IReadOnlyList<double> Humidity);

/// <summary>Air inside.</summary>
public sealed record InsideAirReport(
    [property: JsonPropertyName("internal_t_c")] double Temperature, string TemperatureSource, int HumidityClass, string HumidityClassSource,
    [property: JsonPropertyName("vapour_excess_pa")] double VapourExcess,
    [property: JsonPropertyName("internal_rh")] IReadOnlyList<double> Humidity);

/// <summary>What the air asks of inside surfaces, so that mould does not grow.</summary>
/// <param name="FactorNeeded">The design temperature factor; null where no month is colder outside than inside.</param>
public sealed record MouldReport(
    [property: JsonPropertyName("surface_rh_max")] double HumidityAllowed, [property: JsonPropertyName("rsi_m2k_w")] double Film,
    [property: JsonPropertyName("f_rsi_min")] double? FactorNeeded, string? CriticalMonth);

/// <summary>A plain build-up.</summary>
/// <param name="Factor">Of its inside face, away from corners.</param>
/// <param name="Text">What condenses, in a sentence.</param>
/// <param name="MouldText">What mould asks of the inside face, in a sentence.</param>
/// <param name="Layers">From the room outwards.</param>
/// <param name="LeftOut">References of layers that are not calculated.</param>
/// <param name="Result">As a case file of that kind is answered.</param>
public sealed record MoistureElementReport(
    string Id, string Title, [property: JsonPropertyName("rsi_m2k_w")] double Rsi, [property: JsonPropertyName("rse_m2k_w")] double Rse,
    [property: JsonPropertyName("f_rsi")] double Factor, string Text, string MouldText, IReadOnlyList<MoistureLayerReport> Layers, IReadOnlyList<string> LeftOut, JsonObject Result);

/// <summary>A layer with what it counts with.</summary>
/// <param name="VapourFactor">lesser, greater, or only where both are one.</param>
/// <param name="Confidence">How the vapour figure is known: read, memory or common-practice; null for air.</param>
/// <param name="Origin">How the conductivity is known: declared, tabulated or assumed.</param>
public sealed record MoistureLayerReport(
    string Ref, string Part, string Element, string Material, [property: JsonPropertyName("d_mm")] double Thickness, [property: JsonPropertyName("r_m2k_w")] double Resistance,
    [property: JsonPropertyName("sd_m")] double Sd, string VapourFactor, string? Confidence, string Origin);
