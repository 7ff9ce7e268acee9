using DetailGen.Details.Parameters;
using DetailGen.Details.Quantities;
using DetailGen.Details.Reading;
using DetailGen.Sections;

namespace DetailGen.Details.Presets;

/// <summary>What an author asks for, read and checked; nothing is solved yet.</summary>
/// <param name="Detail">Id of the detail.</param>
/// <param name="Title">Composed from the three components where the author gave none.</param>
/// <param name="File">As the user gave it.</param>
/// <param name="Conditions">site.* and building.*, always all of them, in a fixed order.</param>
/// <param name="Set">Fixed by the author. Known keys of this detail, inside their domains.</param>
/// <param name="Prefer">Wishes of the author; no key that is also set.</param>
/// <param name="Slots">Every slot of the three components with the material that fills it.</param>
/// <param name="Rules">Names of rule packs.</param>
/// <param name="FrsiFilm">mould or heat-flow.</param>
/// <param name="Mirror">Flips the drawing, never the model.</param>
/// <param name="Warnings">What is not wrong, and worth a look.</param>
public sealed record Preset(
    string Detail, string Title, string File, Component Junction, Component Wall, Component Roof, IReadOnlyList<Condition> Conditions,
    IReadOnlyList<Given> Set, IReadOnlyList<Given> Prefer, IReadOnlyList<Target> Targets, IReadOnlyList<FilledSlot> Slots,
    IReadOnlyList<NamedPack> Rules, IReadOnlyList<Waiver> Waivers, IReadOnlyList<GivenLevel> Levels, SheetWishes Sheet, TitleBlock TitleBlock,
    IReadOnlyList<Revision> Revisions, string FrsiFilm, bool Mirror, IReadOnlyList<Diagnostic> Warnings)
{
    /// <summary>Climate that condensation is calculated in; null for the usual one of the nation.</summary>
    public NamedClimate? Climate { get; init; }

    /// <summary>Humidity class of the air inside, 1 to 5; null for that of the use.</summary>
    public int? HumidityClass { get; init; }

    /// <summary>Temperature of the air inside in °C; null for that of the use.</summary>
    public double? AirTemperature { get; init; }

    /// <summary>The circumstance of that key, written or usual.</summary>
    /// <exception cref="InvalidOperationException">There is no such circumstance.</exception>
    public Condition Condition(string key) => Conditions.First(condition => condition.Key == key);

    /// <summary>Wall, roof, junction: the order in which equations and parameters are told.</summary>
    public IEnumerable<Component> Components => [Wall, Roof, Junction];
}

/// <summary>A word that switches rules.</summary>
/// <param name="Key">Such as <c>site.exposure</c>.</param>
/// <param name="At">Null where it is the default.</param>
public sealed record Condition(string Key, string Word, Mark? At);

/// <summary>A value that the author wrote.</summary>
/// <param name="Text">As written.</param>
/// <param name="FromBase">It comes from a base preset: where it turns out that this detail has no such key, it is passed over.</param>
public sealed record Given(string Key, Setting Value, string Text, Mark At, bool FromBase);

/// <summary>What must be reached.</summary>
/// <param name="Key">That of one of <see cref="PresetShape.Targets"/>.</param>
/// <param name="Value">In the unit of <see cref="Kind"/>.</param>
public sealed record Target(string Key, decimal Value, Mark At)
{
    /// <summary>What there is to know of targets of this key.</summary>
    public TargetKey Kind => PresetShape.Targets.First(kind => kind.Key == Key);

    public bool IsMetBy(decimal figure) => Kind.AtLeast ? figure >= Value : figure <= Value;
}

/// <summary>A slot with the material in it.</summary>
/// <param name="At">Where the author swapped it; null for the default.</param>
public sealed record FilledSlot(Slot Slot, DesignMaterial Filling, Mark? At)
{
    public Material Material => Filling.Material;

    /// <summary>The author's material comes from a base preset: where this detail has no use for it, it is passed over.</summary>
    public bool FromBase { get; init; }

    /// <summary>What fills it where the author says nothing.</summary>
    public DesignMaterial Usual { get; init; } = Filling;
}

/// <summary>A rule pack that the author names.</summary>
public sealed record NamedPack(string Name, Mark At);

/// <summary>A climate that the author names.</summary>
public sealed record NamedClimate(string Name, Mark At);

/// <summary>A rule that the author sets aside, and answers for.</summary>
public sealed record Waiver(string Rule, string Reason, string? By, string? Reference, Mark At);

/// <summary>Height of a datum level above the project's zero.</summary>
public sealed record GivenLevel(string Name, Length Height, Mark At);

/// <summary>What the author wants of the sheet; null where the tool shall choose.</summary>
/// <param name="Paper">A4 to A1, or ANSI-A to ANSI-D.</param>
/// <param name="Scale">The n of 1:n.</param>
/// <param name="Options">Every further key of <c>sheet</c> that was given, as written.</param>
/// <param name="Companions">Further sheets: exploded, control-lines, sequence, blank, thermal; each once, in this order.</param>
public sealed record SheetWishes(string? Paper, int? Scale, IReadOnlyList<string> Companions, IReadOnlyList<SheetOption> Options);

/// <summary>A key of <c>sheet</c> with its word.</summary>
public sealed record SheetOption(string Key, string Value, Mark At);

/// <summary>Title block as written; null where nothing was given.</summary>
/// <param name="Fields">Key and text, in the order of the file.</param>
public sealed record TitleBlock(IReadOnlyList<TitleField> Fields)
{
    public string? this[string key] => Fields.FirstOrDefault(field => string.Equals(field.Key, key, StringComparison.Ordinal))?.Text;

    public string? Number => this["number"];

    public string? Revision => this["revision"];

    public string? Status => this["status"];
}

/// <summary>A field of the title block.</summary>
public sealed record TitleField(string Key, string Text, Mark At);

/// <summary>A row of the revision table.</summary>
/// <param name="Date">Year, month, day.</param>
public sealed record Revision(string Rev, DateOnly Date, string Text, string? Drawn, string? Checked, Mark At);
