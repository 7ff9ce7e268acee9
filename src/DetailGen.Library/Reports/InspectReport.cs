using System.Text.Json.Serialization;

namespace DetailGen.Library.Reports;

/// <summary>What a drawing says of itself, and whether it is as it was issued.</summary>
/// <param name="File">Path as given.</param>
/// <param name="Edited">Null where the drawing does not say what was issued.</param>
/// <param name="Findings">Departures from the format that did not stop reading.</param>
public sealed record InspectReport(ToolReport Tool, string File, bool? Edited, IReadOnlyList<EditReport> Edits, IReadOnlyList<FindingReport> Findings)
{
    public string Detail { get; init; } = "";

    public string? Junction { get; init; }

    public string? Wall { get; init; }

    public string? Roof { get; init; }

    public bool? Mirror { get; init; }

    /// <summary>By key, as they were solved when the drawing was issued.</summary>
    public SortedDictionary<string, DrawnValueReport> Parameters { get; init; } = new(StringComparer.Ordinal);

    /// <summary>By slot.</summary>
    public SortedDictionary<string, string> Materials { get; init; } = new(StringComparer.Ordinal);

    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public IReadOnlyList<ErrorReport>? Errors { get; init; }

    [JsonIgnore]
    public int Status { get; init; }
}

/// <summary>A value as the drawing carries it.</summary>
/// <param name="Value">A number of mm, the n of 1:n, a count, or a word.</param>
/// <param name="Unit">mm, 1:n, or null.</param>
public sealed record DrawnValueReport(object Value, string? Unit, string Text);

/// <summary>An edit since issue.</summary>
/// <param name="Kind">changed, moved, doubled, missing, added or hidden.</param>
/// <param name="Part">Id of the part, or <c>layer:</c> and a name for what belongs to none.</param>
/// <param name="ByMm">How far a part was moved, x and y; null otherwise.</param>
/// <param name="Entities">Those that are there now.</param>
public sealed record EditReport(string Kind, string Part, int Count, IReadOnlyList<double>? ByMm, IReadOnlyList<DrawnEntityReport> Entities);

/// <summary>Something drawn.</summary>
/// <param name="Place">model, sheet, or block and its name.</param>
/// <param name="Line">Of the file.</param>
/// <param name="Words">What it says, or the length that it measures.</param>
public sealed record DrawnEntityReport(string Kind, string Layer, string Place, int Line, string? Words);

/// <summary>A departure from the format.</summary>
public sealed record FindingReport(int Line, string Text);
