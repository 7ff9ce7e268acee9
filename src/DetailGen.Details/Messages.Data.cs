using DetailGen.Details.Reading;

namespace DetailGen.Details;

/// <summary>Sentences on data files.</summary>
public static partial class Messages
{
    public static Diagnostic NoFolder(Mark at) => new("missing-folder", at, "This folder cannot be looked through.", "Look at the spelling and at its permissions.");

    public static Diagnostic EmptyOfPractice(Diagnostic empty) => empty with { Hint = "Write entries into it as those that ship have them, or take it out of the practice's folder." };

    public static Diagnostic ReadByNobody(Mark at, string hint) => new("unread-file", at, "Nothing in a practice's folder is read from a file of this name.", hint);

    public static string PlacesInPractice(string file, IReadOnlyList<string> folders) => $"It can be {file}, or lie in {List(folders)}; else take it out of the practice's folder.";

    public static Diagnostic LooseRule(Mark at) => new("unread-file", at, "A rule file lies in the folder of its pack.", "Move it into rules/NAME/, and name the pack under rules: in the preset.");

    public static Diagnostic UnreadStock(Mark at, string id, IReadOnlyList<string> known) =>
        new("unread-stock", at, $"Nothing is sold in the stock class {Short(id)}.", NearestOf(id, known), "id", id);

    /// <summary>Two materials, stock classes, climates or constructions of one id in a practice's folder.</summary>
    public static Diagnostic EntryTwice(Mark at, string id, Mark first) =>
        new("duplicate-entry", at, $"{id} stands at {first} already.", "Give it an id of its own, or leave one of the two out.", "id", id);

    public static Diagnostic NoSuchSize(Mark at, string text) => new("out-of-domain", at, $"sizes holds {Short(text)}; nothing is sold thinner than nothing.", "Write 0 mm or more.", "sizes", text);

    public static Diagnostic OptionsForChoice(Mark at, string key) =>
        new("bad-parameter", at, $"{key} needs options if its unit is choice, and none otherwise.", "Write options: [first, second] for a choice.", key);

    public static Diagnostic EmptyDomain(Mark at, string key) =>
        new("bad-parameter", at, $"{key} goes from more to less, or in steps of nothing.", "Write from, to and step so that from is the least and step is above 0.", key);

    public static Diagnostic OneOf(Mark at, string key, string first, string second) =>
        new("bad-parameter", at, $"{key} needs either {first} or {second}.", $"Write one of {first} and {second}.", key);

    public static Diagnostic LacksSize(Mark at, string component, string key, string layer) => new("unfinished-construction", at,
        $"{component} has a layer as {layer}, and no {key}, which goes with it.", "Add it to its parameters or under derived, as the constructions that ship have it.", key);

    public static Diagnostic LacksLayer(Mark at, string component, string word) => new("unfinished-construction", at,
        $"{component} has no layer as {word}.", $"Add the layer that behaves as {word}, as the constructions that ship have it.", "layers");

    public static Diagnostic NoBuilder(Mark at, string id, IReadOnlyList<string> known) => new("no-builder", at,
        $"No builder draws a junction {id}; a description alone is enough for walls and roofs only.", $"Describe {List(known)} anew under its own id, or take the file away.", "id", id);

    public static Diagnostic UnknownSlot(Mark at, string slot, IReadOnlyList<string> slots) => new("unknown-slot", at,
        $"There is no slot {Short(slot)} under materials.", NearestOf(slot, slots, "Add it under materials, with its usual material."), "slot", slot);

    public static Diagnostic UnknownSize(Mark at, string key, string size, IReadOnlyList<string> sizes) => new("unknown-size", at,
        $"{key} names {Short(size)}, which is none of this construction's sizes.", NearestOf(size, sizes, "Add it to its parameters or under derived."), key, size);

    public static Diagnostic SmallerText(Mark at, string key, decimal given, string than, decimal least) => new("text-size", at,
        Invariant($"{key} is {given} mm, and {than} is {least}: what stands over other text is no smaller."), Invariant($"Write {key}: {least}, or more."), key, Invariant($"{given}"));

    public static Diagnostic SmallInReducedPrint(Mark at, decimal given, decimal least) => new("text-size", at,
        Invariant($"notes is {given} mm for a print that is made smaller; it can only be {least} mm or more."), Invariant($"Write notes: {least}."), "notes", Invariant($"{given}"));

    public static Diagnostic LogoPoints(Mark at, string shape, int numbers, int least) => new("logo", at,
        Invariant($"The {shape} has {numbers} numbers; x and y in turn make at least {least} points."), "Write points: [x, y, x, y, …] in mm.", "points");

    public static Diagnostic LogoWithoutSize(Mark at) => new("logo", at, "All points of the logo lie in its corner: it has no size.", "Write its shapes in mm, or take the file away.");

    public static Diagnostic FontUnread(Mark at, string key, string path, string reason) => new("typeface", at,
        $"{key} names {Short(path)}. {reason}", "The path starts from the practice's folder.", key, path);

    public static Diagnostic FontTooLong(Mark at, string key, string path, long most) => new("typeface", at,
        Invariant($"{key} names {Short(path)}. The file has more than {most:#,0} bytes, the most that are read of a font."), "Take a font with fewer letters: sheets need Latin, Greek and a few signs.", key, path);

    public static Diagnostic NoTextSizes(Mark at, string use) =>
        new("missing-key", at, $"No heights of letters are given for {use}.", Invariant($"Add - {{ use: {use}, notes: …, titles: …, numbers: …, field-labels: … }}."), use);
}
