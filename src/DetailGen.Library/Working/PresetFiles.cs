using DetailGen.Details;
using DetailGen.Details.Presets;
using DetailGen.Details.Reading;
using DetailGen.Details.Solving;
using DetailGen.Library.Reports;

namespace DetailGen.Library.Working;

/// <summary>Presets as the user names them: files, or folders of them.</summary>
internal static class PresetFiles
{
    /// <summary>
    /// Every preset that is named, in that order; a folder stands for those below it. A fault of our own in reading one is the answer for that one alone.
    /// </summary>
    internal static IReadOnlyList<GivenPreset> Open(PresetsRequest request, Office office) => Open(request.Paths, path => Read(path, request.Overrides, office), request.Overrides);

    /// <param name="read">Of one file.</param>
    internal static IReadOnlyList<GivenPreset> Open(IReadOnlyList<string> paths, Func<string, Outcome<Preset>> read, IReadOnlyList<string> overrides) =>
        [.. paths.SelectMany(path => Directory.Exists(path) ? InFolder(path, read, overrides) : [OpenFile(path, read, overrides)])];

    internal static GivenPreset OpenFile(string path, Func<string, Outcome<Preset>> read, IReadOnlyList<string> overrides) => InternalFaults.Contained(
        () => read(path) is var found && found.IsGood ? new GivenPreset(path, found.Value, null) : new(path, null, Unread(path, overrides, found.Faults)),
        fault => new(path, null, InternalFaults.Unread("", path, fault)));

    /// <summary>A report for every preset; one that says so for a preset that is wrong, and for a folder without any.</summary>
    internal static DetailsReport Each(PresetsRequest request, Office office, Func<Preset, DetailReport> report) =>
        new(DetailLibrary.Tool, [.. Open(request, office).Select(one => one.Told(report))]);

    /// <summary>The report on a preset that is wrong.</summary>
    private static DetailReport Unread(string path, IReadOnlyList<string> overrides, IReadOnlyList<Diagnostic> faults) =>
        DetailLibrary.Unread(path, SolvedReporting.Errors(faults)) with { Detail = Detail(path, overrides) };

    /// <summary>What is known of the detail of a wrong preset; empty where that is nothing.</summary>
    internal static string Detail(string path, IReadOnlyList<string> overrides) => PresetReader.DetailOf(path, overrides) ?? "";

    private static DetailReport None(string folder) =>
        DetailLibrary.Unread(folder, [ErrorReport.Of("no-presets", folder, Messages.NoPresets(folder), Messages.NoPresetsHint)]);

    /// <summary>Read and settled: also what shows only when the choices are made is told here.</summary>
    internal static Outcome<Preset> Read(string path, IReadOnlyList<string> overrides, Office office) =>
        PresetReader.Read(path, overrides, office.Context).SelectMany(preset => DetailSolver.Check(preset, office.Catalogue));

    /// <summary>The name of the files: NUMBER-REVISION, NUMBER, or the detail's id.</summary>
    internal static string FileName(Preset preset) => (preset.TitleBlock.Number, preset.TitleBlock.Revision) switch
    {
        ({ Length: > 0 } number, { Length: > 0 } revision) => $"{number}-{revision}",
        ({ Length: > 0 } number, _) => number,
        _ => preset.Detail,
    };

    private static IReadOnlyList<GivenPreset> InFolder(string folder, Func<string, Outcome<Preset>> read, IReadOnlyList<string> overrides)
    {
        var files = new List<string>();
        var shut = new List<string>();
        Look(folder, files, shut);
        IReadOnlyList<GivenPreset> all =
        [
            .. files.Order(StringComparer.Ordinal).Where(file => !IsOnlyBase(file)).Select(file => OpenFile(file, read, overrides)),
            .. shut.Order(StringComparer.Ordinal).Select(one => new GivenPreset(one, null, DetailLibrary.Unread(one, SolvedReporting.Errors([Details.Messages.NoFolder(new(one, 1, 1))])))),
        ];
        return all.Count > 0 ? all : [new(folder, null, None(folder))];
    }

    // one that trips us up is no base: it is opened like the others, and what is wrong is told there
    private static bool IsOnlyBase(string file) => InternalFaults.Contained(() => PresetReader.IsOnlyBase(file), _ => false);

    /// <summary>Gathers the presets below a folder, and the folders that may not be looked into.</summary>
    private static void Look(string folder, List<string> files, List<string> shut)
    {
        try
        {
            foreach (var entry in new DirectoryInfo(folder).EnumerateFileSystemInfos())
            {
                var path = Path.Combine(folder, entry.Name);
                if (!entry.Attributes.HasFlag(FileAttributes.Directory))
                {
                    files.AddRange(Path.GetExtension(path) is ".yaml" or ".yml" ? [path] : (string[])[]);
                }
                else if (!entry.Attributes.HasFlag(FileAttributes.ReparsePoint)) // a link may lead back to where it stands
                {
                    Look(path, files, shut);
                }
            }
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            shut.Add(folder);
        }
    }
}

/// <summary>A preset that was named: read, or refused with the report that says why.</summary>
/// <param name="Path">As given, or as found in a folder.</param>
internal sealed record GivenPreset(string Path, Preset? Preset, DetailReport? Refused)
{
    /// <summary>What the work makes of it; a fault of our own is told as this preset's answer.</summary>
    internal DetailReport Told(Func<Preset, DetailReport> work) =>
        Preset is { } preset ? InternalFaults.Contained(() => work(preset), fault => InternalFaults.Unread(preset.Detail, Path, fault)) : Refused!;
}
