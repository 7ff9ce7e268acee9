namespace DetailGen.Details.Parts;

/// <summary>Named faces of the wall at which builders meet; x in mm.</summary>
public static class Faces
{
    /// <summary>The finished face that looks at the weather.</summary>
    public const string Weather = "weather";

    /// <summary>The finished face that looks at the room.</summary>
    public const string Room = "room";

    /// <summary>The wall face that the roof meets.</summary>
    public const string RoofSide = "roof-side";

    /// <summary>That face, or the face of the upstand where it runs up to the coping.</summary>
    public const string HeadRoofSide = "head-roof-side";

    /// <summary>The far face of the leaf that the roof meets and bears on.</summary>
    public const string BearingEnd = "bearing-end";

    /// <summary>The two sides of the cavity, where there is one: lesser x first.</summary>
    public const string CavityLeft = "cavity-left";
    public const string CavityRight = "cavity-right";

    /// <summary>The same of what insulation leaves clear of it; of all of it where nothing is left.</summary>
    public const string ClearLeft = "clear-left";
    public const string ClearRight = "clear-right";
}

/// <summary>Named levels at which builders meet; y in mm from finished roof level.</summary>
public static class Levels
{
    public const string FinishedRoof = "finished-roof";
    public const string DeckTop = "deck-top";
    public const string StructureTop = "structure-top";
    public const string Ceiling = "ceiling";
    public const string UpstandTop = "upstand-top";
    public const string TrayOutlet = "tray-outlet";
    public const string WallHead = "wall-head";
    public const string CopingTop = "coping-top";
}

/// <summary>Where builders work: sizes to read, faces and levels to meet at, and the blanks brought so far. Short-lived; one for each section.</summary>
public sealed class Site(Sizes sizes)
{
    private readonly Dictionary<string, double> _faces = new(StringComparer.Ordinal);
    private readonly Dictionary<string, double> _levels = new(StringComparer.Ordinal);
    private readonly List<Blank> _blanks = [];

    public Sizes Sizes => sizes;

    public IReadOnlyList<Blank> Blanks => _blanks;

    /// <summary>mm.</summary>
    public double Length(string key) => sizes.Length(key);

    public double Face(string name) =>
        _faces.TryGetValue(name, out var x) ? x : throw new KeyNotFoundException($"No builder has set the face {name}.");

    public double Level(string name) =>
        _levels.TryGetValue(name, out var y) ? y : throw new KeyNotFoundException($"No builder has set the level {name}.");

    public bool HasFace(string name) => _faces.ContainsKey(name);

    public bool HasLevel(string name) => _levels.ContainsKey(name);

    public void SetFace(string name, double x) => _faces[name] = x;

    public void SetLevel(string name, double y) => _levels[name] = y;

    /// <summary>Brings a blank; one without area is passed over.</summary>
    public void Add(Blank blank)
    {
        if (!blank.Region.IsEmpty)
        {
            _blanks.Add(blank);
        }
    }

    /// <summary>Brings a blank that is built before another of its stage; with null it is the last.</summary>
    public void AddBefore(Blank? later, Blank blank) => _blanks.Insert(later is null ? _blanks.Count : _blanks.IndexOf(later), blank);

    /// <summary>A leaf's course is cut and made up, so that a bed joint lies at that level; mm.</summary>
    public void MakeUpBed(Blank leaf, double level) =>
        _blanks[_blanks.IndexOf(leaf)] = leaf with { Coursing = leaf.Coursing! with { MadeUp = [.. leaf.Coursing.MadeUp, level] } };

    /// <summary>Lays a sheet on a face, over the sheets that it names where they lie there too.</summary>
    public void Lay(LaidSheet sheet) => Add(sheet.Laid([.. _blanks.Where(blank => sheet.Over.Contains(blank.Id, StringComparer.Ordinal))]));
}
