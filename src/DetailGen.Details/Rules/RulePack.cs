using DetailGen.Details.Parameters;
using DetailGen.Details.Reading;

namespace DetailGen.Details.Rules;

/// <summary>The rules of one pack, in the order of its files.</summary>
/// <param name="Head">What its pack.yaml says; null where there is none.</param>
public sealed record RulePack(string Name, PackHead? Head, IReadOnlyList<Rule> Rules)
{
    /// <summary>The rule of that id or alias; null where there is none.</summary>
    public Rule? Find(string id) => Rules.FirstOrDefault(rule => string.Equals(rule.Id, id, StringComparison.Ordinal)) ?? Rules.FirstOrDefault(rule => rule.Names(id));

    /// <summary>Name, version and date in one text, as sheets tell it.</summary>
    public string Stamp => Head is { } head ? $"{Name} {head.Version} of {head.Date}" : Name;
}

/// <summary>What a pack says of itself.</summary>
/// <param name="Version">As its authors count.</param>
/// <param name="Date">Year-month-day.</param>
/// <param name="Extends">The pack whose rules hold too, unless this one has a rule of the same id; null for none.</param>
/// <param name="Foremost">Rules, of this pack or of one that it extends, of which a first sheet tells before others that pass, in this order.</param>
/// <param name="Steers">Entries that say when or for what rules apply, and are not rules themselves.</param>
public sealed record PackHead(
    string Title, string Version, string Date, NamedAt? Extends, IReadOnlyList<NamedAt> Foremost, IReadOnlyList<Steer> Steers, IReadOnlyList<Disagreement> Disagreements, Mark At);

/// <summary>A pack or a rule as the head of a pack names it, and where.</summary>
public sealed record NamedAt(string Text, Mark At);

/// <summary>An entry that steers rules.</summary>
/// <param name="Role">condition, scope or definition.</param>
/// <param name="Rules">The rules that it steers.</param>
/// <param name="How">What the tool does about it.</param>
public sealed record Steer(string Id, string Role, string Text, IReadOnlyList<string> Rules, string How, Source Source);

/// <summary>Where sources do not agree.</summary>
/// <param name="Rules">Rules that it bears on; empty where it concerns materials only.</param>
public sealed record Disagreement(string Id, string Topic, string Text, IReadOnlyList<string> Rules);
