using DetailGen.Details.Reading;

namespace DetailGen.Details;

/// <summary>Sentences on data files.</summary>
public static partial class Messages
{
    public static Diagnostic NoFolder(Mark at) => new("missing-folder", at, "This folder cannot be looked through.", "Look at the spelling and at its permissions.");

    public static Diagnostic OptionsForChoice(Mark at, string key) =>
        new("bad-parameter", at, $"{key} needs options if its unit is choice, and none otherwise.", "Write options: [first, second] for a choice.", key);

    public static Diagnostic EmptyDomain(Mark at, string key) =>
        new("bad-parameter", at, $"{key} goes from more to less, or in steps of nothing.", "Write from, to and step so that from is the least and step is above 0.", key);

    public static Diagnostic OneOf(Mark at, string key, string first, string second) =>
        new("bad-parameter", at, $"{key} needs either {first} or {second}.", $"Write one of {first} and {second}.", key);
}
