using System.Globalization;
using System.Text.Json.Serialization;

namespace DetailGen.Library.Reports;

/// <summary>The heat through a junction against one size.</summary>
/// <param name="Unit">Of the size: mm, 1:n, or null for a count.</param>
/// <param name="Rows">By rising value; values that no other sizes go with are left out.</param>
public sealed record SweepReport(ToolReport Tool, string Detail, string Preset, string Key, string? Unit, IReadOnlyList<SweepRow> Rows)
{
    /// <summary>What the detail has as it is drawn; null where it has no sizes that hold together.</summary>
    public double? Drawn { get; init; }

    /// <summary>How many values there are; of many only some are gone through.</summary>
    public int Values { get; init; }

    public IReadOnlyList<string> Warnings { get; init; } = [];

    /// <summary>The curve as it was drawn; null where no picture was asked for.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public FileReport? Picture { get; init; }

    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public ConflictReport? Conflict { get; init; }

    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public IReadOnlyList<ErrorReport>? Errors { get; init; }

    [JsonIgnore]
    public int Status { get; init; }

    /// <summary>A heading and a line for each row; decimal points, commas between, LF. Six decimals, far below what the bounds leave open.</summary>
    public string ToCsv() => string.Concat(Rows.Select(row => string.Join(',', row.Figures.Select(figure => figure.ToString("0.######", CultureInfo.InvariantCulture))) + "\n")
        .Prepend($"{Key}{(Unit is { } unit ? $" ({unit})" : "")},l2d_w_mk,psi_internal_w_mk,psi_internal_lower_w_mk,psi_internal_upper_w_mk,psi_external_w_mk,f_rsi,f_rsi_humidity\n"));
}

/// <summary>One point of the curve.</summary>
/// <param name="Value">Of the size, in its unit.</param>
public sealed record SweepRow(
    double Value,
    [property: JsonPropertyName("l2d_w_mk")] double Coupling,
    [property: JsonPropertyName("psi_internal_w_mk")] double PsiInternal,
    [property: JsonPropertyName("psi_internal_lower_w_mk")] double Lower,
    [property: JsonPropertyName("psi_internal_upper_w_mk")] double Upper,
    [property: JsonPropertyName("psi_external_w_mk")] double PsiExternal,
    [property: JsonPropertyName("f_rsi")] double Factor,
    [property: JsonPropertyName("f_rsi_humidity")] double MouldFactor)
{
    /// <summary>Every value between the row before and this one can be chosen too.</summary>
    internal bool GoesOn { get; init; }

    internal IEnumerable<double> Figures => [Value, Coupling, PsiInternal, Lower, Upper, PsiExternal, Factor, MouldFactor];
}
