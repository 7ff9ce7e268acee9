using DetailGen.Details.Quantities;
using DetailGen.Details.Reading;

namespace DetailGen.Details.Parameters;

/// <summary>What a component describes.</summary>
public enum ComponentKind
{
    Wall,
    Roof,
    Junction,
}

/// <summary>One of the three descriptions a detail is composed of: a wall, a roof or a junction.</summary>
/// <param name="Id">Such as <c>cavity-masonry</c>.</param>
/// <param name="Title">Noun phrase for a title that the preset leaves out.</param>
/// <param name="Layers">As written, each of <see cref="LayerShape"/>; null where the file has none.</param>
public sealed record Component(
    string Id, ComponentKind Kind, string Title, IReadOnlyList<Parameter> Parameters, IReadOnlyList<Derived> Derived, IReadOnlyList<Claim> Claims,
    IReadOnlyList<Slot> Slots, ListNode? Layers, IReadOnlyList<PartWords> Words, Mark At);

/// <summary>Something with a value that the author may set, or the solver finds.</summary>
/// <param name="Domain">Null for a choice.</param>
/// <param name="Options">Words of a choice, the default first; empty for every other unit.</param>
/// <param name="Stock">Stock class; null where any size of the domain is to be had.</param>
/// <param name="StockByMaterial">Stock class by material id of the slot of the same name; empty where the material does not matter.</param>
/// <param name="Default">Null where nothing is usual.</param>
/// <param name="DefaultWhen">The first that holds goes before <paramref name="Default"/>.</param>
/// <param name="When">The parameter exists only where this holds; null for always.</param>
public sealed record Parameter(
    string Key, Unit Unit, Domain? Domain, IReadOnlyList<string> Options, string? Stock, IReadOnlyList<MaterialStock> StockByMaterial, Setting? Default,
    IReadOnlyList<DefaultCase> DefaultWhen, Written? When, string Meaning, Source Source, Mark At)
{
    /// <summary>Slot whose material decides the stock class.</summary>
    public string Slot { get; init; } = Key;

    /// <summary>The usual value is looked for after those of all others: no one makes a part unusual for a total that follows from the parts.</summary>
    public bool IsDefaultLast { get; init; }

    /// <summary>The plan of the building gives it: no softer rule makes a span or a run shorter than usual so that what is drawn would do.</summary>
    public bool IsDefaultFirst { get; init; }
}

/// <summary>Whole steps from least to most, both included; micrometres for a length, n for a ratio.</summary>
public sealed record Domain(long From, long To, long Step)
{
    public bool Holds(long number) => number >= From && number <= To && (number - From) % Step == 0;

    /// <summary>The nearest value of the domain, the smaller of two that are equally near.</summary>
    public long Nearest(long number)
    {
        var last = From + ((To - From) / Step * Step);
        if (number <= From || number >= last)
        {
            return number <= From ? From : last;
        }

        var below = From + ((number - From) / Step * Step);
        return number - below <= below + Step - number ? below : below + Step;
    }
}

/// <summary>The stock class where the slot holds that material.</summary>
public sealed record MaterialStock(string Material, string Stock);

/// <summary>What is usual where a condition holds.</summary>
public sealed record DefaultCase(Written When, Setting Value);

/// <summary>A length that follows from others.</summary>
/// <param name="Cases">The first whose condition holds; a lone case without condition always holds.</param>
public sealed record Derived(string Key, IReadOnlyList<DerivedCase> Cases, string Meaning, Mark At);

/// <summary>What a derived length is where a condition holds.</summary>
/// <param name="When">Null for otherwise.</param>
public sealed record DerivedCase(Written? When, Written As);

/// <summary>Geometry that must hold for the parts to be made at all.</summary>
/// <param name="When">Null for always.</param>
public sealed record Claim(string Id, Written? When, Written Require, string Reason, Mark At);

/// <summary>A place for a material.</summary>
/// <param name="Key">Such as <c>wall.outer-leaf</c>.</param>
/// <param name="Default">Material id.</param>
/// <param name="Kinds">Kinds of material that may stand in.</param>
/// <param name="When">The slot exists only where this holds; null for always.</param>
public sealed record Slot(string Key, string Default, IReadOnlyList<string> Kinds, string Name, Written? When, Mark At)
{
    /// <summary>Slot whose material, where the author gives one, goes before the default; null for none.</summary>
    public string? Follows { get; init; }
}

/// <summary>What is said of a part on the sheet and in explanations; <c>{key}</c> stands for a size, <c>{material}</c> for the material's name.</summary>
/// <param name="Part">Part id, or the beginning of it followed by <c>*</c>.</param>
/// <param name="When">The words hold only then; null for always.</param>
public sealed record PartWords(string Part, string? Note, string? Purpose, string? Without, Written? When, Mark At);

/// <summary>Where a fact comes from.</summary>
/// <param name="Document">Title with year, or "common practice, no source".</param>
/// <param name="Clause">Null where none is known.</param>
/// <param name="Confidence">read, memory or common-practice.</param>
/// <param name="ReadKind">primary, secondary, trade or weak; null where it was not read.</param>
public sealed record Source(string Document, string? Clause, string Confidence, string? ReadKind);
