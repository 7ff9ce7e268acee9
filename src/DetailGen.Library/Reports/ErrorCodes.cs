namespace DetailGen.Library.Reports;

/// <summary>What each <c>code</c> of an error means, for scripts that act on it; a test finds every code of the sources here.</summary>
internal static class ErrorCodes
{
    private const string Files = "files";
    private const string Text = "form of a text";
    private const string Values = "values";
    private const string Presets = "presets";
    private const string Practice = "practice's files";
    private const string Expressions = "expressions of rules";
    private const string Asked = "what was asked for";

    internal static IReadOnlyList<(string Code, string Of, string Meaning)> All { get; } =
    [
        ("missing-file", Files, "There is no file of that name."),
        ("folder", Files, "A folder stands where a file belongs."),
        ("unreadable", Files, "The file is there and cannot be read."),
        ("empty", Files, "The file holds nothing, or is a pipe or a device."),
        ("too-long", Files, "A file, a text or a length is longer than what is taken."),
        ("binary", Files, "The file holds control characters, so it is no text."),
        ("not-utf8", Files, "The text is not in UTF-8."),
        ("missing-folder", Files, "The folder is not there, or cannot be looked through."),
        ("no-presets", Files, "The folder holds no preset that names a detail."),
        ("unreadable-drawing", Files, "The file is no drawing, or none that this tool made."),
        ("no-issue", Files, "The file is no report of drawn details, by which notes could keep their places."),
        ("cannot-write", Files, "The output could not be written; nothing was left behind (exit status 3)."),
        ("file-exists", Files, "The file to be made is there already."),
        ("no-file", Files, "No file is named."),

        ("bad-yaml", Text, "The text is not YAML."),
        ("tab", Text, "A tab stands in the indentation."),
        ("several-documents", Text, "One file holds more than one document."),
        ("too-many", Text, "The text has more keys and values than are read."),
        ("too-deep", Text, "Lists, maps or bases go deeper than is read."),
        ("alias", Text, "Anchors and aliases are not read."),
        ("tag", Text, "Tags are not read."),
        ("bad-key", Text, "A key is no single word."),
        ("duplicate-key", Text, "A key is given twice."),
        ("unknown-key", Text, "There is no such key at that place."),
        ("missing-key", Text, "A key is required and missing."),
        ("no-value", Text, "A key has no value."),
        ("wrong-type", Text, "A map, a list or a single value stands where another belongs."),
        ("too-few", Text, "A list has too few items."),

        ("no-number", Values, "A number belongs there, written out plainly."),
        ("decimal-comma", Values, "A comma stands in a number."),
        ("unknown-unit", Values, "The unit is not known."),
        ("missing-unit", Values, "The number needs a unit."),
        ("wrong-unit", Values, "The unit measures something else."),
        ("bad-ratio", Values, "A fall is not 1:n with a whole n."),
        ("too-fine", Values, "A length is finer than a micrometre."),
        ("out-of-domain", Values, "The value lies outside what the key can have."),
        ("off-step", Values, "The value lies between two steps of what the key can have."),
        ("unknown-choice", Values, "The word is none of those that the key can have."),
        ("bad-date", Values, "That is no date of the calendar."),
        ("bad-text", Values, "The text holds letters that it may not hold."),
        ("bad-override", Values, "What follows --set is no key=value."),

        ("unknown-junction", Presets, "There is no such junction."),
        ("unknown-wall", Presets, "There is no such wall construction."),
        ("unknown-roof", Presets, "There is no such roof construction."),
        ("unknown-material", Presets, "There is no such material."),
        ("wrong-material", Presets, "The material is of a kind that the slot does not take."),
        ("unknown-rules", Presets, "There is no such rule pack."),
        ("unknown-rule", Presets, "There is no such rule to waive, or to steer."),
        ("unknown-climate", Presets, "There is no such climate."),
        ("no-climate", Presets, "No climate is usual for the nation, and none is named."),
        ("bad-climate", Presets, "A month of the climate has more vapour than air can hold."),
        ("key-not-here", Presets, "The key is known, but this detail has no such thing."),
        ("derived-key", Presets, "The length follows from others and cannot be given."),
        ("extends-cycle", Presets, "Presets extend one another in a ring."),
        ("missing-base", Presets, "The base preset is not there."),
        ("folder-base", Presets, "A folder is named as base preset."),
        ("unreadable-base", Presets, "The base preset cannot be read."),
        ("empty-base", Presets, "The base preset holds nothing, or is a pipe or a device."),
        ("revision-status", Presets, "Revision and status do not go together."),
        ("withdrawn-status", Presets, "The status is withdrawn in that edition."),
        ("same-name", Presets, "Two presets of a run would write files of one name."),

        ("unread-file", Practice, "Nothing reads a file of that name."),
        ("bad-parameter", Practice, "The description of a parameter contradicts itself."),
        ("no-pack-head", Practice, "A rule pack has no pack.yaml."),
        ("pack-ring", Practice, "Rule packs extend one another in a ring."),
        ("unknown-pack", Practice, "A pack extends one that is not there."),
        ("duplicate-rule", Practice, "Two rules have one id."),
        ("relaxed-without-reason", Practice, "A rule asks less than the one it stands in for and does not say why."),
        ("relaxes-nothing", Practice, "A rule says that it relaxes another and does not."),
        ("missing-field", Practice, "A rule lacks something that its class needs."),
        ("unknown-field", Practice, "A rule has no such field."),
        ("wrong-class", Practice, "A field does not go with the class of the rule."),
        ("bad-simulate", Practice, "What a rule would have simulated cannot be."),
        ("bad-word", Practice, "A word of a rule is none of those that can stand there."),
        ("not-a-list", Practice, "A list belongs there."),
        ("not-a-text", Practice, "A text belongs there."),

        ("expression-too-long", Expressions, "The expression is longer than is read."),
        ("expression-too-deep", Expressions, "Its brackets are nested deeper than is read."),
        ("expression-syntax", Expressions, "It cannot be read."),
        ("bad-figure", Expressions, "A figure in it cannot be read."),
        ("unknown-word", Expressions, "There is no such key or word."),
        ("unknown-slot", Expressions, "There is no such slot."),
        ("unknown-function", Expressions, "There is no such function."),
        ("kinds-differ", Expressions, "Two kinds of quantity are compared or summed."),
        ("wrong-kind", Expressions, "A quantity of another kind belongs there."),
        ("not-comparable", Expressions, "These cannot be compared in that way."),
        ("no-arithmetic", Expressions, "These cannot be reckoned with."),
        ("not-linear", Expressions, "The solver cannot be told of it."),

        ("wrong-argument", Asked, "The command line cannot be understood."),
        ("unknown-topic", Asked, "There is no such list."),
        ("unknown-kind", Asked, "There is no schema of that kind of file."),
        ("unknown-format", Asked, "There is no such format."),
        ("unknown-subject", Asked, "The detail has nothing of that name."),
        ("not-a-size", Asked, "The key is no number that could be gone through."),
        ("wrong-case", Asked, "A case file, or what is asked of it, is wrong; reason and hint say how."),
        ("internal-fault", Asked, "A fault of the tool itself (exit status 4)."),
    ];
}
