using DetailGen.Details.Parameters;
using DetailGen.Details.Reading;
using DetailGen.Details.Reading.Shapes;

namespace DetailGen.Details.Presets;

/// <summary>Reads presets. All faults of a preset, its bases and the command line are told at once, in the order of the files.</summary>
public static class PresetReader
{
    /// <summary>What marks call the command line in place of a file.</summary>
    public const string OverridesFile = Overrides.File;

    /// <param name="path">Also what marks call the file.</param>
    /// <param name="overrides">Each <c>key=value</c>, as given with <c>--set</c>.</param>
    public static Outcome<Preset> Read(string path, IReadOnlyList<string> overrides, PresetContext context) =>
        Read(NodeReader.File(path, ReadingLimits.Usual), path, overrides, context);

    /// <summary>Reads a text that stands in no file; bases are looked for beside <paramref name="path"/>.</summary>
    public static Outcome<Preset> ReadText(string text, string path, IReadOnlyList<string> overrides, PresetContext context) =>
        Read(NodeReader.Bytes(System.Text.Encoding.UTF8.GetBytes(text), path, ReadingLimits.Usual), path, overrides, context);

    /// <summary>Whether a file only serves others as their base: it can be read, and names no detail, junction, wall or roof. A look through a folder passes it over.</summary>
    public static bool IsOnlyBase(string path) =>
        NodeReader.File(path, ReadingLimits.Usual) is { Faults.Count: 0, Root: MapNode map }
        && map["detail"] is null && map["junction"] is null && map["wall"] is null && map["roof"] is null;

    /// <summary>The id that a preset with faults gives its detail; null where it cannot be read or gives none that could be one.</summary>
    public static string? DetailOf(string path, IReadOnlyList<string> overrides) =>
        PresetLayers.Read(NodeReader.File(path, ReadingLimits.Usual), path, overrides).Merged?["detail"] is ScalarNode id && ShapeCheck.Holds(id, PresetShape.Name) ? id.Text : null;

    private static Outcome<Preset> Read(ReadText text, string path, IReadOnlyList<string> overrides, PresetContext context)
    {
        var layers = PresetLayers.Read(text, path, overrides);
        if (layers.Merged is not { } merged)
        {
            return Outcome.Bad<Preset>(InOrder(layers.Faults, layers.Files));
        }

        var reading = new PresetReading(layers, context);
        var preset = reading.Read(merged, path);
        IReadOnlyList<Diagnostic> faults =
        [
            .. context.Materials.Faults, .. context.Climates.Faults, .. layers.Faults,
            .. ShapeCheck.Check(merged, PresetShape.Shape).Where(fault => fault.Code == "missing-key")
                .Select(fault => Enum.TryParse<ComponentKind>(fault.Key, ignoreCase: true, out var kind) ? Messages.MissingChoice(fault.At, fault.Key!, context.Components.Ids(kind)) : fault),
            .. reading.Faults,
        ];
        return faults.Count == 0 ? Outcome.Good(preset!) : Outcome.Bad<Preset>(InOrder(faults, layers.Files));
    }

    private static IReadOnlyList<Diagnostic> InOrder(IReadOnlyList<Diagnostic> faults, IReadOnlyList<string> files)
    {
        int Rank(string file)
        {
            for (var i = 0; i < files.Count; i++)
            {
                if (files[i] == file)
                {
                    return i;
                }
            }

            return files.Count; // data files of a practice
        }

        return [.. faults.Distinct().OrderBy(fault => Rank(fault.At.File)).ThenBy(fault => fault.At.File, StringComparer.Ordinal)
            .ThenBy(fault => fault.At.Line).ThenBy(fault => fault.At.Column)];
    }
}
