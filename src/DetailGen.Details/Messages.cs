using System.Globalization;
using DetailGen.Details.Reading;

namespace DetailGen.Details;

/// <summary>Every sentence that this project says of what somebody wrote; here those on the form of a text.</summary>
public static partial class Messages
{
    public static Diagnostic NoSuchFile(Mark at) => new("missing-file", at, "There is no such file.", "Look at the spelling and at the folder you are in.");

    /// <param name="fault">Of the base itself.</param>
    public static Diagnostic BadBase(Mark at, string path, Diagnostic fault) => new(
        fault.Code.Replace("-file", "", StringComparison.Ordinal) + "-base", at,
        fault.Code == "missing-file" ? $"The base preset {path} does not exist." : $"The base preset {path} cannot be taken. {fault.Reason}",
        "The path under extends starts from the folder of this file.", "extends", path);

    public static Diagnostic IsFolder(Mark at) => new("folder", at, "This is a folder, not a file.", "Name a file in it.");

    public static Diagnostic Unreadable(Mark at) => new("unreadable", at, "The file cannot be read.", "Look at its permissions, and whether another program holds it.");

    public static Diagnostic FileTooLong(Mark at, long most) => new("too-long", at,
        Invariant($"The file has more than {most:#,0} bytes, the most that are read."), "A preset is a few hundred lines at most: is this the right file?");

    public static Diagnostic Empty(Mark at) => new("empty", at, "The file is empty.", "Start from what the verb new writes.");

    public static Diagnostic EmptyOrPipe(Mark at) => new("empty", at, "The file is empty, or it is a pipe or a device.",
        "Look whether it is the right file; what another program writes can be given as /dev/stdin.");

    public static Diagnostic Binary(Mark at) => new("binary", at, "The file is no text: it holds control characters.", "Is this the right file?");

    public static Diagnostic NotUtf8(Mark at) => new("not-utf8", at, "The text is not in UTF-8.", "Save it again with the encoding UTF-8.");

    public static Diagnostic Tab(Mark at) => new("tab", at, "A tab stands in the indentation; YAML allows blanks only.", "Put two blanks in its place.");

    public static Diagnostic SeveralDocuments(Mark at) =>
        new("several-documents", at, "A second document begins here; one file holds one.", "Take the line --- away, or make two files.");

    public static Diagnostic TooManyNodes(Mark at, int most) =>
        new("too-many", at, Invariant($"The text holds more than {most} keys and values."), "Split it into several files.");

    public static Diagnostic TooDeep(Mark at, int most) =>
        new("too-deep", at, Invariant($"Lists and maps stand more than {most} deep inside one another."), "Look for a bracket that is not closed.");

    public static Diagnostic NoAliases(Mark at) =>
        new("alias", at, "Anchors (&) and aliases (*) are not read.", "Write the value out, or put it in a base preset under extends; a text that starts with & or * goes in quotation marks.");

    public static Diagnostic NoTags(Mark at) =>
        new("tag", at, "Tags (!) are not read.", "Take it away; a text that starts with ! goes in quotation marks.");

    private const string SeeSchema = "The verb schema shows the keys of each kind of file.";
    private const string SeeParameters = "The verb list parameters shows every key.";
    internal const string SeeMaterials = "The verb list materials shows what there is of each kind.";
    private const string SeeRules = "The verb list rules shows every rule.";

    public static Diagnostic NoPlainKey(Mark at) => new("bad-key", at, "A key is one word.", "Write it as key: value.");

    public static Diagnostic DuplicateKey(Mark at, string key, Mark first) =>
        new("duplicate-key", at, Invariant($"{key} is given twice; the first is on line {first.Line}."), "Take one of the two away.", key);

    public static Diagnostic BadYaml(Mark at, string told) => new("bad-yaml", at,
        told.Length == 0 ? "This is not YAML." : $"This is not YAML: {told.Trim().TrimEnd('.')}.",
        "Write key: value with a blank after the colon, and the same indentation for keys of one map.");

    public static Diagnostic UnknownKey(Mark at, string key, string under, IReadOnlyList<string> known) => new("unknown-key", at,
        under.Length == 0 ? $"There is no key {key} here." : $"There is no key {key} under {under}.", NearestOf(key, known, under is "set" or "prefer" ? SeeParameters : SeeSchema), key);

    public static Diagnostic MissingKey(Mark at, string key, string under) =>
        new("missing-key", at, under.Length == 0 ? $"The key {key} is missing." : $"The key {key} is missing under {under}.", $"Add {key}: …", key);

    /// <summary>The same of a key that takes one of a few names.</summary>
    public static Diagnostic MissingChoice(Mark at, string key, IReadOnlyList<string> known) =>
        new("missing-key", at, $"The key {key} is missing.", known.Count is > 0 and <= 12 ? $"Add {key}: {List(known)}." : $"Add {key}: …", key);

    public static Diagnostic NoValue(Mark at, string key) => new("no-value", at, $"{Subject(key)} has no value.", "Write one after the colon, or take the key away.", key);

    public static Diagnostic NotMap(Mark at, string key, Node node) =>
        new("wrong-type", at, $"{Subject(key)} is {Kind(node)}; keys with values belong here.", "Write key: value on lines of their own, or { key: value }.", key, TextOf(node));

    public static Diagnostic NotList(Mark at, string key, Node node) =>
        new("wrong-type", at, $"{Subject(key)} is {Kind(node)}; a list belongs here.", "Write [first, second], or a line with - for each.", key, TextOf(node));

    public static Diagnostic NotWord(Mark at, string key, Node node) =>
        new("wrong-type", at, $"{Subject(key)} is {Kind(node)}; a single value belongs here.", "Write key: value.", key);

    public static Diagnostic TooFew(Mark at, string key, int least) =>
        new("too-few", at, Invariant($"{Subject(key)} needs at least {least} in its list."), "Add one.", key);

    public static Diagnostic NotFlag(Mark at, string key, string text) =>
        new("wrong-type", at, $"{Subject(key)} is {Short(text)}; it can only be true or false.", "Write true or false.", key, text);

    public static Diagnostic NotDate(Mark at, string key, string text) =>
        new("bad-date", at, $"{Subject(key)} is {Short(text)}; that is no date of the calendar as year-month-day.", "Write it like 2026-11-25.", key, text);

    public static Diagnostic TooLong(Mark at, string key, string text, int most) => new("too-long", at,
        Invariant($"{Subject(key)} has {text.Length} characters; at most {most} fit."), "Shorten it.", key, text.Length > 60 ? text[..60] + "…" : text);

    public static Diagnostic ControlInText(Mark at, string key) =>
        new("bad-text", at, $"{Subject(key)} holds a line break or another control character.", "Write it on one line.", key);

    public static Diagnostic BadText(Mark at, string key, string text, string asked) =>
        new("bad-text", at, $"{Subject(key)} is {Short(text)}; it can only be {asked}.", "Write that and nothing else.", key, text);

    public static Diagnostic UnknownChoice(Mark at, string key, string text, IReadOnlyList<string> options) => new("unknown-choice", at,
        $"{Subject(key)} is {Short(text)}; it can only be {List(options)}.", Nearest.To(text, options) is { } nearest ? $"Did you mean {nearest}?" : "Write one of these.", key, text);

    internal static string Invariant(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);

    internal static string Short(string text) => text.Length == 0 ? "empty" : text.Length > 60 ? text[..60] + "…" : text;

    /// <summary>"a, b or c".</summary>
    internal static string List(IReadOnlyList<string> names) => names.Count switch
    {
        0 => "nothing",
        1 => names[0],
        _ => $"{string.Join(", ", names.SkipLast(1))} or {names[^1]}",
    };

    /// <param name="seeElsewhere">What to look at where there are too many to name.</param>
    internal static string NearestOf(string written, IReadOnlyList<string> known, string seeElsewhere = SeeSchema) => Nearest.To(written, known) is { } nearest
        ? $"Did you mean {nearest}?"
        : known.Count is > 0 and <= 12 ? $"Write {List(known)}." : seeElsewhere;

    private static string Subject(string key) => key.Length == 0 ? "The text" : key;

    private static string Kind(Node node) => node switch
    {
        MapNode => "a map of keys",
        ListNode => "a list",
        ScalarNode { Text: "", Quoted: false } => "empty",
        _ => "a single value",
    };

    private static string? TextOf(Node node) => node is ScalarNode scalar ? Short(scalar.Text) : null;
}
