using System.IO.Enumeration;
using DetailGen.Details;
using DetailGen.Details.Presets;
using DetailGen.Details.Reading;
using DetailGen.Details.Solving;
using DetailGen.Library.Reports;

namespace DetailGen.Library.Working;

/// <summary>Presets as the user names them: files, or folders of them.</summary>
internal static class PresetFiles
{
    /// <summary>A folder stands for every preset below it that names a detail; a base that others extend names none.</summary>
    internal static IReadOnlyList<string> Of(string path) => Directory.Exists(path) ? [.. InFolder(path)] : [path];

    /// <summary>A report for every preset; one that says so for a preset that is wrong, and for a folder without any.</summary>
    internal static DetailsReport Each(PresetsRequest request, Office office, Func<Preset, DetailReport> report)
    {
        return new(DetailLibrary.Tool, [.. request.Paths.SelectMany(path => Of(path) is { Count: > 0 } found ? found.Select(One) : [None(path)])]);

        DetailReport One(string path)
        {
            var read = Read(path, request.Overrides, office);
            return read.IsGood ? InternalFaults.Contained(read.Value, () => report(read.Value)) : Unread(path, request.Overrides, read.Faults);
        }
    }

    /// <summary>The report on a preset that is wrong.</summary>
    internal static DetailReport Unread(string path, IReadOnlyList<string> overrides, IReadOnlyList<Diagnostic> faults) =>
        DetailLibrary.Unread(path, SolvedReport.Errors(faults)) with { Detail = Detail(path, overrides) };

    /// <summary>What is known of the detail of a wrong preset; empty where that is nothing.</summary>
    internal static string Detail(string path, IReadOnlyList<string> overrides) => PresetReader.DetailOf(path, overrides) ?? "";

    internal static DetailReport None(string folder) =>
        DetailLibrary.Unread(folder, [new("no-presets", folder, 0, 0, null, null, Messages.NoPresets(folder), Messages.NoPresetsHint)]);

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

    private static IEnumerable<string> InFolder(string folder) =>
        new FileSystemEnumerable<string>(folder, (ref entry) => entry.ToSpecifiedFullPath(), new() { RecurseSubdirectories = true, AttributesToSkip = 0, IgnoreInaccessible = false })
        {
            ShouldIncludePredicate = (ref entry) => !entry.IsDirectory && (entry.FileName.EndsWith(".yaml", StringComparison.Ordinal) || entry.FileName.EndsWith(".yml", StringComparison.Ordinal)),
            ShouldRecursePredicate = (ref entry) => !entry.Attributes.HasFlag(FileAttributes.ReparsePoint), // a link may lead back to where it stands
        }
            .Order(StringComparer.Ordinal).Where(file => !PresetReader.IsOnlyBase(file));
}
