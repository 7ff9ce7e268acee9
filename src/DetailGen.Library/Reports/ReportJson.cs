using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace DetailGen.Library.Reports;

/// <summary>Reports as JSON: snake_case keys, two blanks of indent, LF, one line feed at the end.</summary>
public static class ReportJson
{
    public static string Write(DetailsReport report) => Text(report, ReportContext.Default.DetailsReport);

    public static string Write(ErrorsReport report) => Text(report, ReportContext.Default.ErrorsReport);

    public static string Write(ExplainReport report) => Text(report, ReportContext.Default.ExplainReport);

    public static string Write(InspectReport report) => Text(report, ReportContext.Default.InspectReport);

    public static string Write(RangeReport report) => Text(report, ReportContext.Default.RangeReport);

    public static string Write(SweepReport report) => Text(report, ReportContext.Default.SweepReport);

    public static string Write(SurfacesReport report) => Text(report, ReportContext.Default.SurfacesReport);

    public static string Write(TextReport report) => Text(report, ReportContext.Default.TextReport);

    internal static JsonWriterOptions WriterOptions { get; } = new() { Indented = true, NewLine = "\n", Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    private static string Text<T>(T report, System.Text.Json.Serialization.Metadata.JsonTypeInfo<T> type) => JsonSerializer.Serialize(report, type) + "\n";
}

/// <summary>How reports are written, made when the program is built: no types are looked through when it runs.</summary>
[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.SnakeCaseLower, WriteIndented = true, NewLine = "\n")]
[JsonSerializable(typeof(DetailsReport))]
[JsonSerializable(typeof(ErrorsReport))]
[JsonSerializable(typeof(ExplainReport))]
[JsonSerializable(typeof(InspectReport))]
[JsonSerializable(typeof(IssuedReport))]
[JsonSerializable(typeof(RangeReport))]
[JsonSerializable(typeof(SweepReport))]
[JsonSerializable(typeof(SurfacesReport))]
[JsonSerializable(typeof(TextReport))]
[JsonSerializable(typeof(double))]
[JsonSerializable(typeof(long))]
[JsonSerializable(typeof(string))]
internal sealed partial class ReportContext : JsonSerializerContext
{
    static ReportContext() => Default = new(new JsonSerializerOptions(Default.GeneratedSerializerOptions!) { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping });
}
