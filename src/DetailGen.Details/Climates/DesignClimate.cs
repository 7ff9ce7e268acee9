using DetailGen.Details.Parameters;
using DetailGen.Details.Reading;

namespace DetailGen.Details.Climates;

/// <summary>Twelve months of outside air for calculations of condensation.</summary>
/// <param name="Months">January first.</param>
/// <param name="UsualFor">Nations whose details are calculated in it where the preset names none.</param>
/// <param name="Origin">measured, tabulated, assumed or invented.</param>
public sealed record DesignClimate(
    string Id, string Title, IReadOnlyList<ClimateMonth> Months, IReadOnlyList<string> UsualFor, string Origin, Source Source, string? Note, Mark At);

/// <summary>A month's mean air outside; one of humidity and vapour pressure.</summary>
/// <param name="Temperature">°C.</param>
/// <param name="Humidity">Relative, above 0 to 1.</param>
/// <param name="VapourPressure">Pa.</param>
public sealed record ClimateMonth(double Temperature, double? Humidity, double? VapourPressure, Mark At);
