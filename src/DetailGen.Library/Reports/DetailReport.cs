using System.Text.Json.Serialization;

namespace DetailGen.Library.Reports;

/// <summary>Name and version of the tool that answered.</summary>
public sealed record ToolReport(string Name, string Version);

/// <summary>The answer about one or several presets, and the document that <c>--json</c> prints.</summary>
public sealed record DetailsReport(ToolReport Tool, IReadOnlyList<DetailReport> Details)
{
    /// <summary>Exit status: the worst of all details.</summary>
    [JsonIgnore]
    public int Status => Details.Count == 0 ? ExitStatus.Done : Details.Max(detail => detail.Status);
}

/// <summary>All that is known of one detail.</summary>
/// <param name="Detail">Id; empty where the preset could not be read so far.</param>
/// <param name="Preset">Path as given.</param>
/// <param name="Solved">Whether sizes were found.</param>
public sealed record DetailReport(string Detail, string Preset, bool Solved)
{
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public SortedDictionary<string, ParameterReport>? Parameters { get; init; }

    /// <summary>What it was checked against.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public IReadOnlyList<PackReport>? Packs { get; init; }

    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public IReadOnlyList<RuleReport>? Rules { get; init; }

    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public IReadOnlyList<CheckReport>? Checks { get; init; }

    /// <summary>What the preset asks to be reached; null where it asks for nothing.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public IReadOnlyList<TargetReport>? Targets { get; init; }

    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public PhysicsReport? Physics { get; init; }

    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public LayoutReport? Layout { get; init; }

    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public IReadOnlyList<QuantityReport>? Quantities { get; init; }

    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public ConflictReport? Conflict { get; init; }

    public IReadOnlyList<string> Warnings { get; init; } = [];

    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public IReadOnlyList<FileReport>? Files { get; init; }

    /// <summary>The JSON file beside <see cref="Files"/>, which cannot list itself; null where none was written.</summary>
    [JsonIgnore]
    public FileReport? Document { get; init; }

    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public IReadOnlyList<ErrorReport>? Errors { get; init; }

    /// <summary>Exit status of this detail alone.</summary>
    [JsonIgnore]
    public int Status { get; init; }
}

/// <summary>Where a value comes from.</summary>
/// <param name="Kind">given, preferred, default, stock, equation, rule or target.</param>
/// <param name="Rule">Id of the rule that binds, with kind rule.</param>
public sealed record WhyReport(string Kind, [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] string? Rule, string Text);

/// <summary>A solved parameter.</summary>
/// <param name="Value">A number (mm, the n of 1:n, or a count) or a word.</param>
/// <param name="Unit">mm, 1:n, or null.</param>
/// <param name="Text">With its unit, as a person writes it.</param>
public sealed record ParameterReport(object Value, string? Unit, string Text, WhyReport Why)
{
    /// <summary>The same rounded as people use it.</summary>
    [JsonIgnore]
    public string Told { get; init; } = Text;
}

/// <summary>A rule's verdict with both sides of its comparison.</summary>
public sealed record RuleReport(
    string Id, IReadOnlyList<string> Aliases, string Severity, string Class, string Verdict, double? Left, string? Op, double? Right, string? Unit, string Text,
    string Source, string Confidence)
{
    /// <summary>The left side as a person writes it, of words too, which have no number; null where nothing was compared.</summary>
    public string? Drawn { get; init; }

    /// <summary>What was wanted, in words: "at least 150 mm", "1:80 or steeper", "one of stone, concrete".</summary>
    public string? Wanted { get; init; }

    /// <summary>Clause or table of the source; null where none is known.</summary>
    public string? Clause { get; init; }

    /// <summary>primary, secondary, trade or weak; null where nothing was read.</summary>
    public string? ReadKind { get; init; }

    /// <summary>Whom to ask, where lives hang on it.</summary>
    public string? Ask { get; init; }

    /// <summary>With verdict waived: why, by whom, on what paper.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public WaiverReport? Waiver { get; init; }

    /// <summary>Where sources do not agree on it.</summary>
    public IReadOnlyList<string> Disagreements { get; init; } = [];
}

/// <summary>How a rule came to be set aside.</summary>
public sealed record WaiverReport(string Reason, string? By, string? Reference);

/// <summary>A rule pack that a detail was checked against.</summary>
public sealed record PackReport(string Name, string Title, string Version, string Date);

/// <summary>A target and what is reached.</summary>
/// <param name="Op">Reached OP wanted.</param>
/// <param name="Wanted">In the unit of the target: W/(m²·K) for U-values, W/(m·K) for psi, none for the temperature factor.</param>
/// <param name="Reached">The same; of psi the upper bound; null where it was not calculated.</param>
/// <param name="Verdict">pass, fail or to-confirm.</param>
public sealed record TargetReport(string Key, string Op, double Wanted, double? Reached, string Verdict);

/// <summary>A place in the section, mm.</summary>
public sealed record PlaceReport(double X, double Y);

/// <summary>A check on the section.</summary>
/// <param name="Line">water, air, vapour, heat or fit.</param>
public sealed record CheckReport(string Id, string Line, string Verdict, string Text, IReadOnlyList<string> Parts, PlaceReport? At, double? GapMm);

/// <summary>Results of physics, as far as they are computed.</summary>
[JsonDerivedType(typeof(JunctionReport))]
public record PhysicsReport(IReadOnlyList<BuildupReport> Buildups)
{
    /// <summary>Condensation and mould, where they were asked for.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public MoistureReport? Moisture { get; init; }
}

/// <summary>A build-up with its layers. A layer that members cross has the resistance of both side by side.</summary>
public sealed record BuildupReport(
    string Id, string Title, double ThicknessMm, [property: JsonPropertyName("r_surfaces_m2k_w")] double Surfaces,
    [property: JsonPropertyName("r_total_m2k_w")] double Total, [property: JsonPropertyName("u_w_m2k")] double UValue, string Remark, IReadOnlyList<LayerReport> Layers)
{
    /// <summary>Upper limit of R by the combined method; null where the method does not cover the layers, and R is the lower limit.</summary>
    [JsonPropertyName("r_upper_m2k_w")]
    public double? Upper { get; init; }

    [JsonPropertyName("r_lower_m2k_w")]
    public double Lower { get; init; }

    /// <summary>1/R, bridging counted, fixings not.</summary>
    [JsonPropertyName("u_uncorrected_w_m2k")]
    public double Uncorrected { get; init; }

    /// <summary>What fixings add to U, whether it is added or not.</summary>
    public IReadOnlyList<CorrectionReport> Corrections { get; init; } = [];
}

/// <summary>Fixings through a layer.</summary>
/// <param name="Diameter">Of a round bar with the metal of one.</param>
/// <param name="DeltaU">What they add to U.</param>
/// <param name="Applied">False where the corrections of the element are below 3 % of its U together, and left out.</param>
public sealed record CorrectionReport(
    string Name, string Through, string Material, [property: JsonPropertyName("per_m2")] double PerArea, [property: JsonPropertyName("diameter_mm")] double Diameter,
    [property: JsonPropertyName("lambda_w_mk")] double? Conductivity, [property: JsonPropertyName("delta_u_w_m2k")] double DeltaU, bool Applied);

/// <summary>A layer of a build-up.</summary>
public sealed record LayerReport(
    string Ref, string Part, string Element, string Material, double ThicknessMm, [property: JsonPropertyName("lambda_w_mk")] double? Conductivity,
    [property: JsonPropertyName("r_m2k_w")] double? Resistance, string Function, string Origin, string Remark);

/// <summary>Measures of the annotation layout; lengths in mm on paper.</summary>
public sealed record LayoutReport(string Paper, double Scale, int Sheets, SortedDictionary<string, double> Measures)
{
    /// <summary>Faults measured on the finished sheets; null where no audit was asked for.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public IReadOnlyList<LayoutFaultReport>? Audit { get; init; }

    /// <summary>Where the notes stand, for the next issue to keep them there.</summary>
    public IReadOnlyList<NotePlaceReport> Places { get; init; } = [];
}

/// <summary>The place of a note; lengths in mm on paper from the view's origin, as if the outside were on the left.</summary>
/// <param name="Part">Id of the part that it names.</param>
/// <param name="Column">Id of the column in which it stands.</param>
/// <param name="YMm">Of the bend of its leader.</param>
/// <param name="WidthMm">Of the widest block of the column.</param>
/// <param name="TipXMm">Where the leader ends.</param>
/// <param name="TipYMm">The same.</param>
/// <param name="SetbackMm">How far before the column's bend line it bends.</param>
/// <param name="Lines">In how many lines the words stand.</param>
public sealed record NotePlaceReport(string Part, string Column, double YMm, double WidthMm, double TipXMm, double TipYMm, double SetbackMm, int Lines);

/// <summary>What is read back of a report; all of it may be missing, for anybody may have written the file.</summary>
internal sealed record IssuedReport(IReadOnlyList<IssuedDetail>? Details);

/// <summary>A detail of such a report.</summary>
internal sealed record IssuedDetail(string? Detail, IssuedLayout? Layout);

/// <summary>Its layout.</summary>
internal sealed record IssuedLayout(string? Paper, double Scale, IReadOnlyList<NotePlaceReport>? Places);

/// <summary>A fault of a finished sheet.</summary>
/// <param name="Number">As in the picture.</param>
/// <param name="X">From the left edge of the trimmed sheet, mm.</param>
/// <param name="Y">From its lower edge, mm.</param>
/// <param name="Kind">text-over-text, text-over-line, leader-through, tip-off-part, outside-zone, leader-too-long or crowded.</param>
/// <param name="AmountMm">Depth of an overlap, white that is left, length over the bound, or how far outside.</param>
public sealed record LayoutFaultReport(int Number, int Sheet, double X, double Y, string Kind, string First, string Second, double AmountMm);

/// <summary>What a part takes per metre run.</summary>
public sealed record QuantityReport(
    string Part, string Material, [property: JsonPropertyName("area_m2")] double Area, [property: JsonPropertyName("volume_m3_per_m")] double Volume,
    [property: JsonPropertyName("mass_kg_per_m")] double Mass, [property: JsonPropertyName("sheet_length_m")] double? SheetLength);

/// <summary>Why no sizes exist: a minimal set of members that cannot hold together, and what to change.</summary>
/// <param name="Further">Other minimal sets, none smaller than the first.</param>
/// <param name="MayBeMore">There are, or may be, others that are not listed.</param>
public sealed record ConflictReport(
    IReadOnlyList<MemberReport> Members, IReadOnlyList<RepairReport> Repairs, IReadOnlyList<FurtherConflictReport> Further, bool MayBeMore);

/// <summary>Another set of members that cannot hold together.</summary>
public sealed record FurtherConflictReport(IReadOnlyList<MemberReport> Members);

/// <summary>A member of a conflict.</summary>
public sealed record MemberReport(string Kind, string Id, string Text);

/// <summary>A change that makes the detail possible.</summary>
/// <param name="Set">Key to value with its unit, as <c>--set</c> takes it.</param>
public sealed record RepairReport(SortedDictionary<string, string> Set, string Text);

/// <summary>A written file.</summary>
/// <param name="Path">Relative to the output folder, with forward slashes.</param>
public sealed record FileReport(string Path, string Format, long Bytes, string Sha256);

/// <summary>A fault in what was written.</summary>
/// <param name="Line">From 1; null where the fault has no place in a text, as the column then is.</param>
public sealed record ErrorReport(string Code, string File, int? Line, int? Column, string? Key, string? Value, string Reason, string? Hint)
{
    /// <summary>A fault that has no place in a text.</summary>
    /// <param name="file">File or folder; empty where the fault is of none.</param>
    public static ErrorReport Of(string code, string file, string reason, string? hint, string? key = null, string? value = null) =>
        new(code, file, null, null, key, value, reason, hint);

    /// <summary>Id of the case in a case file.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Case { get; init; }
}

/// <summary>An answer that concerns no preset.</summary>
public sealed record ErrorsReport(IReadOnlyList<ErrorReport> Errors);
