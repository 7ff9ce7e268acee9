using DetailGen.Details.Reading;

namespace DetailGen.Details.Presets;

/// <summary>A practice's own folder. What lies in it and is read by nobody is told, for it may be a slip in a name; presets may lie in it too.</summary>
public static class PracticeFolder
{
    private const string Root = "presets/";
    private const string Usual = "defaults.yaml";

    private static readonly string[] Folders = ["climates", "constructions", "materials", "rules", "sheets", "stock"];
    private static readonly string[] Sheets = ["sheets/formats.yaml", "sheets/inks.yaml", "sheets/layers.yaml", "sheets/logo.yaml", "sheets/text-sizes.yaml", "sheets/typeface.yaml"];

    // a construction or a pack has a title too
    private static readonly string[] OnlyOfPresets = ["detail", "junction", "wall", "roof", "site", "building", "set", "prefer", "target", "waive", "sheet", "title-block", "revisions"];

    /// <summary>What ships, with the folder over it.</summary>
    public static Outcome<Shelf> Open(string folder)
    {
        var shelf = Shelf.Shipped.With(folder);
        if (!shelf.IsGood)
        {
            return shelf;
        }

        List<ShelfFile> own = [.. shelf.Value.Under(Root).Where(file => !file.Shipped)];
        var isPractice = own.Exists(file => IsPlace(NameOf(file).Split('/')));
        IReadOnlyList<Diagnostic> faults =
        [
            .. own.Select(file => Another(NameOf(file)) is not { } other ? Unread(file, NameOf(file), folder)
                : isPractice ? null // such as the example in the folder of all that ships
                : Messages.ReadByNobody(new(Path.Combine(folder, NameOf(file)), 1, 1), $"It belongs to the practice in a folder below: give --practice {Path.Combine(folder, other)}.")).OfType<Diagnostic>(),
        ];
        return faults.Count > 0 ? Outcome.Bad<Shelf>(faults) : shelf;
    }

    private static string NameOf(ShelfFile file) => file.Name[Root.Length..];

    private static bool IsPlace(string[] parts) => parts is [Usual] || (parts.Length > 1 && Folders.Contains(parts[0], StringComparer.Ordinal));

    /// <summary>The folder below whose own practice the file belongs to; null where it belongs to this one.</summary>
    private static string? Another(string name) => name.Split('/') is [var first, .. var rest] && !Folders.Contains(first, StringComparer.Ordinal) && IsPlace(rest) ? first : null;

    private static Diagnostic? Unread(ShelfFile file, string name, string folder)
    {
        Mark start = new(Path.Combine(folder, name), 1, 1);
        return name.Split('/') switch
        {
            ["sheets", ..] => Sheets.Contains(name, StringComparer.Ordinal) ? null : Messages.ReadByNobody(start, Messages.NearestOf(name, Sheets)),
            ["rules", _] => Messages.LooseRule(start),
            [var first, _, ..] when Folders.Contains(first, StringComparer.Ordinal) => null,
            [Usual] => null,
            [var first, _, ..] when Nearest.To(first, Folders) is { } meant => Messages.ReadByNobody(start, $"Did you mean {meant}{name[first.Length..]}?"),
            _ => IsPreset(file) ? null : Messages.ReadByNobody(start, Messages.PlacesInPractice(Usual, Folders)),
        };
    }

    // of one that cannot be read nobody knows, and who names it as a preset is told why
    private static bool IsPreset(ShelfFile file) =>
        file.Read() is { Root: var root, Faults: var faults } && (faults.Any(fault => fault.Code != "empty") || (root is MapNode map && Array.Exists(OnlyOfPresets, key => map[key] is not null)));
}
