using DetailGen.Details.Reading;
using DetailGen.Details.Reading.Shapes;

namespace DetailGen.Details.Presets;

/// <summary>A preset laid over its bases: one tree in which every value still knows its file.</summary>
/// <param name="Files">The preset first, then its base, the base of that, and the command line last: the order in which faults are told.</param>
internal sealed record PresetLayers(MapNode? Merged, IReadOnlyList<string> Files, IReadOnlyList<Diagnostic> Faults)
{
    /// <summary>A base of a base of a base … at most.</summary>
    public const int MostBases = 8;

    /// <summary>Whether a value comes from a base, not from the preset itself or the command line.</summary>
    public bool IsFromBase(Mark at) => at.File != Files[0] && at.File != Overrides.File;

    public static PresetLayers Read(ReadText own, string path, IReadOnlyList<string> overrides)
    {
        var faults = new List<Diagnostic>();
        var files = new List<string> { path };
        var maps = new List<MapNode>();
        var seen = new HashSet<string>(StringComparer.Ordinal) { FullName(path) };
        var (text, here) = (own, path);
        while (true)
        {
            faults.AddRange(text.Faults);
            if (text.Root is { } root)
            {
                faults.AddRange(ShapeCheck.Check(root, PresetShape.Shape, required: false));
            }

            if (text.Root is not MapNode map)
            {
                break;
            }

            maps.Add(FilmBesideTarget(map, faults));
            if (map["extends"] is not ScalarNode { Text.Length: > 0 } extends || !ShapeCheck.Holds(extends, new TextShape(400)))
            {
                break;
            }

            var next = Path.Combine(Path.GetDirectoryName(here) ?? "", extends.Text).Replace('\\', '/');
            if (!seen.Add(FullName(next)))
            {
                faults.Add(Messages.ExtendsCycle(extends.At, [.. files, next]));
                break;
            }

            if (files.Count > MostBases)
            {
                faults.Add(Messages.TooManyBases(extends.At, MostBases));
                break;
            }

            text = NodeReader.File(next, ReadingLimits.Usual);
            if (text is { Root: null, Faults: [{ Code: "missing-file" or "folder" or "unreadable" or "empty" } unread] })
            {
                faults.Add(Messages.BadBase(extends.At, next, unread)); // no text to point into
                break;
            }

            files.Add(next);
            here = next;
        }

        var set = Overrides.Read(overrides);
        faults.AddRange(set.Faults);
        faults.AddRange(ShapeCheck.Check(set.Root!, PresetShape.Shape, required: false));
        files.Add(Overrides.File);
        if (maps.Count == 0)
        {
            return new(null, files, faults);
        }

        var given = FilmBesideTarget((MapNode)set.Root!, faults);
        var merged = maps[^1];
        for (var i = maps.Count - 2; i >= 0; i--)
        {
            merged = Over(merged, maps[i]);
        }

        return new(Over(merged, given) with { At = maps[0].At }, files, faults);
    }

    // the film may stand under target too; in each file for itself, so that what goes before still goes before
    private static MapNode FilmBesideTarget(MapNode map, List<Diagnostic> faults)
    {
        if ((map["target"] as MapNode)?.Find(PresetShape.FrsiFilm) is not { } film)
        {
            return map;
        }

        if (map.Find(PresetShape.FrsiFilm) is { } first)
        {
            faults.Add(Messages.DuplicateKey(film.KeyAt, film.Key, first.KeyAt));
        }

        return new(map.At, [.. map.Entries, film]);
    }

    /// <summary>Maps merge key by key, everything else is replaced.</summary>
    private static MapNode Over(MapNode below, MapNode above)
    {
        var entries = below.Entries.ToList();
        foreach (var entry in above.Entries)
        {
            var index = entries.FindIndex(item => item.Key == entry.Key);
            if (index < 0)
            {
                entries.Add(entry);
                continue;
            }

            entries[index] = (entries[index].Value, entry.Value) switch
            {
                (MapNode lower, MapNode upper) => entry with { Value = Over(lower, upper) },
                (MapNode, ScalarNode { Text: "", Quoted: false }) => entries[index], // "set:" and nothing under it takes nothing away
                _ => entry,
            };
        }

        return new(above.At, entries);
    }

    private static string FullName(string path)
    {
        try
        {
            return Path.GetFullPath(path);
        }
        catch (Exception fault) when (fault is ArgumentException or IOException or NotSupportedException)
        {
            return path;
        }
    }
}
