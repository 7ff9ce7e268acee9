using System.Text.Json.Serialization;

namespace DetailGen.Library.Reports;

/// <summary>What each free value can be, given the rest, and what stops it.</summary>
/// <param name="Ranges">By key; empty where the detail contradicts itself or could not be read.</param>
public sealed record RangeReport(ToolReport Tool, string Detail, string Preset, SortedDictionary<string, ValueRangeReport> Ranges)
{
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public ConflictReport? Conflict { get; init; }

    public IReadOnlyList<string> Warnings { get; init; } = [];

    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public IReadOnlyList<ErrorReport>? Errors { get; init; }

    [JsonIgnore]
    public int Status { get; init; }
}

/// <summary>A size has step, values, min and max; a choice has options.</summary>
/// <param name="Unit">mm, 1:n, or null.</param>
public sealed record ValueRangeReport(string? Unit)
{
    /// <summary>What the values of each interval differ by; null for listed sizes.</summary>
    public double? Step { get; init; }

    /// <summary>Intervals of low and high, rising.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public IReadOnlyList<IReadOnlyList<double>>? Values { get; init; }

    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public EndReport? Min { get; init; }

    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public EndReport? Max { get; init; }

    /// <summary>Words with which the rest can hold, in the order of the list.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public IReadOnlyList<string>? Options { get; init; }

    /// <summary>What stands against the other words, by word; null where nothing does.</summary>
    [JsonIgnore]
    public SortedDictionary<string, IReadOnlyList<MemberReport>>? Against { get; init; }

    /// <summary>The ids of what stands against the other words, by word.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public SortedDictionary<string, IReadOnlyList<string>>? Excluded =>
        Against is null ? null : new(Against.ToDictionary(word => word.Key, word => EndReport.Ids(word.Value)), StringComparer.Ordinal);

    /// <summary>The value that is set, where a key was asked for that is.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Given { get; init; }

    /// <summary>False where the search was cut short: the values are then the whole domain, and words of which it is not known are not told.</summary>
    public bool Proven { get; init; } = true;
}

/// <summary>An end of a range.</summary>
/// <param name="Members">What stops it, with a sentence each.</param>
public sealed record EndReport(double Value, [property: JsonIgnore] IReadOnlyList<MemberReport> Members)
{
    /// <summary>Rule ids, domain, stock (of another size with its key behind it), given.KEY, target.KEY or names of equations.</summary>
    public IReadOnlyList<string> Stops => Ids(Members);

    internal static IReadOnlyList<string> Ids(IReadOnlyList<MemberReport> members) => [.. members.Select(member => member.Id)];
}
