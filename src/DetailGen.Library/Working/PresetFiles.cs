using DetailGen.Details;
using DetailGen.Details.Presets;
using DetailGen.Details.Solving;

namespace DetailGen.Library.Working;

/// <summary>Presets as the user names them: files, or folders of them.</summary>
internal static class PresetFiles
{
    /// <summary>A folder stands for every preset below it that names a detail; a base that others extend names none.</summary>
    internal static IReadOnlyList<string> Of(IReadOnlyList<string> paths) => [.. paths.SelectMany(path => Directory.Exists(path) ? InFolder(path) : [path])];

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
        Directory.EnumerateFiles(folder, "*.yaml", SearchOption.AllDirectories).Concat(Directory.EnumerateFiles(folder, "*.yml", SearchOption.AllDirectories))
            .Order(StringComparer.Ordinal).Where(file => !PresetReader.IsOnlyBase(file));
}
