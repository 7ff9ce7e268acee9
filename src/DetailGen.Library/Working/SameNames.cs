using DetailGen.Library.Reports;

namespace DetailGen.Library.Working;

/// <summary>Presets of one call whose files would be called the same.</summary>
internal sealed class SameNames
{
    private readonly List<(string Path, string Name, bool Numbered)> _presets;

    /// <param name="given">Those that could not be read have no name.</param>
    internal SameNames(IEnumerable<GivenPreset> given, string suffix = "") =>
        _presets = [.. given.Select(one => one.Preset is { } preset ? (one.Path, PresetFiles.FileName(preset) + suffix, preset.TitleBlock.Number is { Length: > 0 }) : (one.Path, "", false))];

    internal string this[int place] => _presets[place].Name;

    /// <summary>What is wrong with the name of the preset at that place; null where no other has it.</summary>
    internal ErrorReport? Fault(int place)
    {
        var (path, name, numbered) = _presets[place];
        var found = _presets.FindIndex(other => other.Name.Length > 0 && string.Equals(other.Name, name, StringComparison.OrdinalIgnoreCase));
        var twin = found == place ? _presets.FindIndex(place + 1, other => string.Equals(other.Name, name, StringComparison.OrdinalIgnoreCase)) : found;
        if (name.Length == 0 || twin < 0)
        {
            return null;
        }

        var other = _presets[twin];
        return Path.GetFullPath(other.Path) == Path.GetFullPath(path)
            ? new("same-name", path, 1, 1, null, name, Messages.SameFile, Messages.SameFileHint)
            : new("same-name", path, 1, 1, numbered || other.Numbered ? "title-block.number" : "detail", name, Messages.SameName(name, other.Path), Messages.SameNameHint(numbered || other.Numbered));
    }
}
