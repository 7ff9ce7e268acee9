using System.Globalization;
using DetailGen.Details.Parameters;
using DetailGen.Details.Reading;
using DetailGen.Details.Rules.Language;

namespace DetailGen.Details.Rules;

/// <summary>How strongly the trade holds to a rule.</summary>
public enum Severity
{
    Must,
    Should,
    Advise,
}

/// <summary>What is done about a rule; every rule is in exactly one class.</summary>
public enum RuleClass
{
    /// <summary>Its expression is worked out, and the solver keeps it where it can.</summary>
    Enforced,

    /// <summary>A person must check it; it goes on the check list.</summary>
    ToConfirm,

    /// <summary>Its junction or feature does not exist.</summary>
    Dormant,
}

/// <summary>A requirement of the trade.</summary>
/// <param name="Id">Such as <c>upstand-min</c>.</param>
/// <param name="Aliases">Ids of entries that say the same.</param>
/// <param name="Blocks">Enforcement is error: nothing is drawn that breaks it.</param>
/// <param name="When">Null for always.</param>
/// <param name="Require">Only of an enforced rule.</param>
/// <param name="Text">The requirement in one sentence.</param>
/// <param name="Confirm">What a person must check; only of a rule to confirm.</param>
/// <param name="Awaits">What does not exist yet; only of a dormant rule.</param>
/// <param name="Ask">Whom to ask, where lives hang on it; else null.</param>
public sealed record Rule(
    string Id, IReadOnlyList<string> Aliases, RuleClass Class, Severity Severity, bool Blocks, Expression? When, Expression? Require, string Text,
    string? Confirm, string? Awaits, string Reason, string? Hint, string? Ask, Source Source, Mark At)
{
    /// <summary>What it is about in a few words, as its author says; null where nobody does.</summary>
    public string? Name { get; init; }

    /// <summary>Its name, or else its id as words: <c>stair-width</c> is "Stair width".</summary>
    public string Heading => Name ?? char.ToUpperInvariant(Id[0]) + Id[1..].Replace('-', ' ');

    /// <summary>Where and how the entry departs from the catalogue; null where it does not.</summary>
    public string? Corrected { get; init; }

    /// <summary>What a simulation of the section can say of a rule to confirm; null where a person must look.</summary>
    public SimulatedLimit? Simulate { get; init; }

    /// <summary>It is missed as much by little as by a lot: no size gives way to miss it by less.</summary>
    public bool IsWhole { get; init; }

    /// <summary>What is usual comes first: no size leaves its usual value for it, since what it asks for is another design, which nobody should be given unasked.</summary>
    public bool Yields { get; init; }

    /// <summary>Why no preset can break an enforced rule; null where one can.</summary>
    public string? Unbreakable { get; init; }

    /// <summary>Rules that a breach breaks too; null where it can be broken alone.</summary>
    public Companions? BrokenWith { get; init; }

    /// <summary>Why it asks less than the rule of the same id in the pack that its pack extends.</summary>
    public string? Relaxes { get; init; }

    /// <summary>Its id or one of its aliases.</summary>
    public bool Names(string id) => string.Equals(Id, id, StringComparison.Ordinal) || Aliases.Contains(id, StringComparer.Ordinal);

    /// <summary>A must whose figure was read in a primary or secondary text.</summary>
    public bool IsHard => Class == RuleClass.Enforced && Severity == Severity.Must && Blocks;

    /// <summary>Document and clause in one text.</summary>
    public string SourceText => Source.Clause is { } clause ? $"{Source.Document}, {clause}" : Source.Document;
}

/// <summary>A limit on a figure that only a simulation gives.</summary>
/// <param name="Key">One of <see cref="SimulatedFigures.Keys"/>.</param>
/// <param name="AtLeast">The figure must not be less; else it must not be more.</param>
public sealed record SimulatedLimit(string Key, bool AtLeast, decimal Limit)
{
    public bool Holds(decimal figure) => AtLeast ? figure >= Limit : figure <= Limit;

    /// <summary>From <c>KEY &gt;= FIGURE</c> or <c>KEY &lt;= FIGURE</c>; null where it is neither.</summary>
    public static SimulatedLimit? Read(string text) =>
        text.Split(' ', StringSplitOptions.RemoveEmptyEntries) is [var key, ">=" or "<=", var figure] words && SimulatedFigures.Keys.Contains(key, StringComparer.Ordinal)
            && decimal.TryParse(figure, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var limit)
            ? new(key, words[1] == ">=", limit)
            : null;
}

/// <summary>Rules that cannot but be broken together with another, and why.</summary>
public sealed record Companions(IReadOnlyList<string> Rules, string Why);
