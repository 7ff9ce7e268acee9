using System.Globalization;
using System.Text.Json.Serialization;

namespace DetailGen.Library.Reports;

/// <summary>The temperatures along the surfaces of a junction, with the films of the heat flow.</summary>
/// <param name="Surfaces">In the order of the thermal model's outline.</param>
public sealed record SurfacesReport(ToolReport Tool, string Detail, string Preset, IReadOnlyList<SurfaceTemperatureReport> Surfaces)
{
    public string? Standard { get; init; }

    public string? Caution { get; init; }

    public IReadOnlyList<string> Warnings { get; init; } = [];

    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public ConflictReport? Conflict { get; init; }

    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public IReadOnlyList<ErrorReport>? Errors { get; init; }

    [JsonIgnore]
    public int Status { get; init; }

    /// <summary>A heading and a line for each place; decimal points, commas between, LF.</summary>
    public string ToCsv() => string.Concat(Surfaces.SelectMany(surface => surface.Places.Select(place => string.Join(',', Figures(surface, place)) + "\n"))
        .Prepend("environment,along_mm,x_mm,y_mm,theta_si_c\n"));

    private static IEnumerable<string> Figures(SurfaceTemperatureReport surface, SurfacePlaceReport place) =>
        new[] { place.Along, place.X, place.Y, place.Temperature }.Select(figure => figure.ToString("0.###", CultureInfo.InvariantCulture)).Prepend(surface.Environment);
}

/// <summary>The temperatures along one surface.</summary>
public sealed record SurfaceTemperatureReport(string Environment, [property: JsonPropertyName("t_c")] double Air, IReadOnlyList<SurfacePlaceReport> Places);

/// <summary>A place on a surface.</summary>
/// <param name="Along">From where the surface begins.</param>
public sealed record SurfacePlaceReport(
    [property: JsonPropertyName("along_mm")] double Along, [property: JsonPropertyName("x_mm")] double X, [property: JsonPropertyName("y_mm")] double Y,
    [property: JsonPropertyName("theta_si_c")] double Temperature);
