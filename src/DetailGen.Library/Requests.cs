namespace DetailGen.Library;

/// <summary>What <see cref="DetailLibrary.Draw"/> is to draw.</summary>
/// <param name="Presets">Paths as given.</param>
/// <param name="Overrides">Each <c>key=value</c>.</param>
/// <param name="Folder">Output folder; made if it is not there.</param>
/// <param name="Formats">Some of <see cref="AllFormats"/>.</param>
/// <param name="ViewOnly">The view without a sheet.</param>
/// <param name="Dpi">Resolution of PNG files.</param>
/// <param name="Practice">Folder with a practice's own materials, stock, rules, constructions and sheets; null for what ships.</param>
public sealed record DrawRequest(
    IReadOnlyList<string> Presets, IReadOnlyList<string> Overrides, string Folder, IReadOnlyList<string> Formats, bool ViewOnly = false, int Dpi = 300, string? Practice = null)
{
    /// <summary>Measure the finished sheets, and write a picture with every fault of layout ringed.</summary>
    public bool LayoutAudit { get; init; }

    /// <summary>The heat through the junction is simulated, whether or not the preset asks for it; that takes seconds.</summary>
    public bool Physics { get; init; }

    /// <summary>Reports (JSON) of an earlier issue: notes stay where they stood in it, as far as they can.</summary>
    public IReadOnlyList<string> Earlier { get; init; } = [];

    public static IReadOnlyList<string> AllFormats { get; } = ["dxf", "svg", "pdf", "png", "csv", "xlsx", "md", "json"];

    public static IReadOnlyList<string> DefaultFormats { get; } = ["dxf", "svg", "pdf", "png", "json"];
}

/// <summary>Presets for <see cref="DetailLibrary.Check"/>, <see cref="DetailLibrary.Heat(PresetsRequest)"/> and <see cref="DetailLibrary.Moisture(PresetsRequest)"/>.</summary>
/// <param name="Paths">Files, or folders whose presets are all taken.</param>
/// <param name="Overrides">Each <c>key=value</c>.</param>
public sealed record PresetsRequest(IReadOnlyList<string> Paths, IReadOnlyList<string> Overrides, string? Practice = null)
{
    /// <summary>The heat through the junction is simulated by <see cref="DetailLibrary.Check"/> too, whether or not the preset asks for it; that takes seconds.</summary>
    public bool Physics { get; init; }
}

/// <summary>What <see cref="DetailLibrary.Explain"/> is to explain.</summary>
/// <param name="Subject">A parameter key, a rule id, a part id or a value such as 150 mm; null for every value, or for what changes alone where something is tried.</param>
public sealed record ExplainRequest(string Preset, IReadOnlyList<string> Overrides, string? Subject, string? Practice = null)
{
    /// <summary>Each <c>key=value</c>, tried on top of the overrides.</summary>
    public IReadOnlyList<string> WhatIf { get; init; } = [];
}

/// <summary>What <see cref="DetailLibrary.Range"/> is to look at.</summary>
/// <param name="Keys">Parameter keys; none for every value that is not set.</param>
public sealed record RangeRequest(string Preset, IReadOnlyList<string> Overrides, IReadOnlyList<string> Keys, string? Practice = null);

/// <summary>What <see cref="DetailLibrary.New"/> is to write.</summary>
/// <param name="File">Null for standard output.</param>
public sealed record NewRequest(string Junction, string Wall, string Roof, string? File, string? Practice = null);

/// <summary>One size that <see cref="DetailLibrary.Sweep"/> is to go through.</summary>
/// <param name="Picture">File to draw the curve into, its format by its ending: one of <see cref="PictureFormats"/>; null for none.</param>
public sealed record SweepRequest(string Preset, IReadOnlyList<string> Overrides, string Key, string? Practice = null, string? Picture = null)
{
    public static IReadOnlyList<string> PictureFormats { get; } = ["svg", "png", "pdf"];
}

/// <summary>A preset of which <see cref="DetailLibrary.Surfaces"/> is to tell the temperatures along the surfaces.</summary>
public sealed record SurfacesRequest(string Preset, IReadOnlyList<string> Overrides, string? Practice = null);

/// <summary>A stand-alone case file for <see cref="DetailLibrary.Heat(CaseRequest)"/> or <see cref="DetailLibrary.Moisture(CaseRequest)"/>.</summary>
/// <param name="File">JSON.</param>
/// <param name="Only">Ids of the cases to answer; empty for all.</param>
public sealed record CaseRequest(string File, IReadOnlyList<string> Only);
