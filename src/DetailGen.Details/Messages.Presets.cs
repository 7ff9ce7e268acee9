using DetailGen.Details.Parameters;
using DetailGen.Details.Reading;
using DetailGen.Sections;

namespace DetailGen.Details;

/// <summary>Sentences on presets.</summary>
public static partial class Messages
{
    public static Diagnostic ExtendsCycle(Mark at, IReadOnlyList<string> files) =>
        new("extends-cycle", at, $"The presets extend one another in a ring: {string.Join(" → ", files)}.", "Take extends out of one of them.", "extends");

    public static Diagnostic TooManyBases(Mark at, int most) =>
        new("too-deep", at, Invariant($"More than {most} presets extend one another."), "Put what they share into fewer bases.", "extends");

    public static Diagnostic BadOverride(Mark at, string text) =>
        new("bad-override", at, $"{Short(text)} is no key=value.", "Write it like --set wall.cavity=\"150 mm\".", null, text);

    public static Diagnostic UnknownComponent(Mark at, string key, string id, IReadOnlyList<string> known) =>
        new("unknown-" + key, at, $"There is no {key} {Short(id)}.", NearestOf(id, known), key, id);

    public static Diagnostic KeyNotHere(Mark at, string key, IReadOnlyList<string> components) => new("key-not-here", at,
        $"{key} is known, but this detail has no such thing: it is made of {string.Join(", ", components)}.", "Take it away, or put it into a base preset, where it is passed over.", key);

    /// <summary>A parameter that the choices of the detail switch off.</summary>
    public static Diagnostic KeySwitchedOff(Mark at, string key, string when) => new("key-not-here", at,
        $"{key} is there only when {when}.", "Take it away, or change that choice.", key);

    public static Diagnostic DerivedKey(Mark at, string key) =>
        new("derived-key", at, $"{key} follows from other sizes and cannot be given.", "Give the sizes that make it up; the verb explain shows them.", key);

    public static Diagnostic UnknownMaterial(Mark at, string slot, string id, IReadOnlyList<string> known) =>
        new("unknown-material", at, $"There is no material {Short(id)} for {slot}.", NearestOf(id, known, SeeMaterials), slot, id);

    public static Diagnostic WrongMaterialKind(Mark at, Slot slot, Material material) => new("wrong-material", at,
        $"{slot.Key} takes {List(slot.Kinds)}; {material.Id} is {material.Kind}.", SeeMaterials, slot.Key, material.Id);

    public static Diagnostic UnknownPack(Mark at, string name, IReadOnlyList<string> known) =>
        new("unknown-rules", at, $"There is no rule pack {Short(name)}.", NearestOf(name, known), "rules", name);

    public static Diagnostic PackTwice(Mark at, string name, Mark first) =>
        new("rules-twice", at, $"The rule pack {Short(name)} is named at {first} already.", "Name it once.", "rules", name);

    public static Diagnostic UnknownClimate(Mark at, string name, IReadOnlyList<string> known) =>
        new("unknown-climate", at, $"There is no climate {Short(name)}.", NearestOf(name, known), "site.climate", name);

    public static Diagnostic UnknownRule(Mark at, string id, IReadOnlyCollection<string> known) =>
        new("unknown-rule", at, $"There is no rule {Short(id)} to waive.", NearestOf(id, [.. known], SeeRules), id);

    public static Diagnostic RevisionAndStatus(Mark at, string revision, string status) => new("revision-status", at,
        $"Revision {revision} does not go with status {status}: P goes with S codes, C with A and B codes.",
        revision[0] == 'P' ? "Write a status S0 to S5, or a revision such as C01." : "Write a status such as A1, or a revision such as P01.", "revision", revision);

    public static Diagnostic WorkingVersion(Mark at, string revision, string status) => new("revision-status", at,
        $"Revision {revision} is a working version, which only S0 has; the status is {status}.", $"Write {revision[..3]}, or status S0.", "revision", revision);

    public static Diagnostic WithdrawnStatus(Mark at, string status, string edition) => new("withdrawn-status", at,
        $"Status {status} is withdrawn in the {edition} edition.", "Set status-edition under sheet, or write another status.", "status", status);
}
