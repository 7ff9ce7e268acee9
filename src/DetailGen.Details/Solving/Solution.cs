using DetailGen.Details.Presets;
using DetailGen.Details.Quantities;
using DetailGen.Details.Reading;
using DetailGen.Details.Rules;

namespace DetailGen.Details.Solving;

/// <summary>What came of solving a detail.</summary>
public abstract record Solution(Preset Preset)
{
    /// <summary>Every size, and why it is what it is.</summary>
    /// <param name="Values">In ordinal order of key: parameters, choices and derived lengths.</param>
    /// <param name="Holds">Whether a condition of some component, such as one beside its words, holds for these sizes.</param>
    /// <param name="Verdicts">Every rule of the packs, in their order.</param>
    public sealed record Solved(
        Preset Preset, Sizes Sizes, IReadOnlyList<SolvedValue> Values, IReadOnlyList<Verdict> Verdicts, IReadOnlyList<ElementHeat> Heat, IReadOnlyList<string> Warnings,
        Func<Written, bool> Holds)
        : Solution(Preset)
    {
        /// <summary>What it was checked against.</summary>
        public IReadOnlyList<RulePack> Packs { get; init; } = [];

        /// <summary>The value of that key; null where the detail lacks it.</summary>
        public SolvedValue? Find(string key) => Values.FirstOrDefault(value => string.Equals(value.Key, key, StringComparison.Ordinal));
    }

    /// <summary>What is asked cannot be had.</summary>
    /// <param name="Repairs">Every single change that mends it; where none does, the smallest sets of changes, the one first that costs the wishes least.</param>
    /// <param name="Further">Other minimal conflicts, none smaller than the first; each with its members.</param>
    /// <param name="MayBeMore">There are, or may be, further conflicts that are not told.</param>
    /// <param name="IsMinimal">Without any one of the members the others can hold together; false where that was not proven of each.</param>
    public sealed record Contradiction(
        Preset Preset, IReadOnlyList<Member> Members, IReadOnlyList<RepairProposal> Repairs, IReadOnlyList<IReadOnlyList<Member>> Further, bool MayBeMore, bool IsMinimal) : Solution(Preset);

    /// <summary>The step budget of the solver ran out before an answer.</summary>
    public sealed record NotProven(Preset Preset) : Solution(Preset);
}

/// <summary>Why a value is what it is.</summary>
public enum WhyKind
{
    Given,
    Preferred,
    Default,
    Stock,
    Equation,
    Rule,
    Target,
}

/// <summary>Why a value is what it is.</summary>
/// <param name="Rule">Id of the binding rule; null for every other kind.</param>
/// <param name="Text">One sentence.</param>
public sealed record Why(WhyKind Kind, string? Rule, string Text);

/// <summary>A parameter, choice or derived length with its value.</summary>
/// <param name="Derived">A length that follows from others and cannot be set.</param>
public sealed record SolvedValue(string Key, Setting Value, Why Why, string Meaning, bool Derived)
{
    /// <summary>With its unit: "102.5 mm".</summary>
    public string Text => Value.ToString();

    /// <summary>The same for people: what follows from others may have any number of decimals, and a tenth of a millimetre is all that anybody can use.</summary>
    public string Told => Derived && Value.Unit == Unit.Length ? new Length((long)Math.Round(Value.Number / 100m, MidpointRounding.AwayFromZero) * 100).ToString() : Text;
}

/// <summary>One side of a comparison.</summary>
/// <param name="Number">In the verdict's unit (mm for lengths, n for slopes); null for words and lists.</param>
public sealed record Side(decimal? Number, string Text);

/// <summary>What became of a rule.</summary>
public enum Judgement
{
    Pass,
    Fail,
    Warn,
    Waived,
    ToConfirm,
    NotApplicable,
}

/// <summary>A rule's verdict with both sides of the comparison that decided it; no sides where nothing was compared.</summary>
/// <param name="Op">As written between the sides: &gt;=, in …</param>
/// <param name="Unit">Of the sides; null where they have none.</param>
/// <param name="Text">One sentence for the check list.</param>
public sealed record Verdict(Rule Rule, Judgement Judgement, Side? Left, string? Op, Side? Right, string? Unit, string Text);

/// <summary>What is promised of wall or roof: dabs and fixings counted on the safe side, so that what is reported is never worse.</summary>
/// <param name="Element">wall or roof.</param>
/// <param name="Resistance">m²·K/W with surfaces.</param>
/// <param name="Transmittance">W/(m²·K).</param>
public sealed record ElementHeat(string Element, decimal Resistance, decimal Transmittance);

/// <summary>Part of a contradiction.</summary>
public enum MemberKind
{
    Given,
    Target,
    Rule,
    Claim,
    Domain,
    Stock,
}

/// <summary>One of the claims that cannot hold together.</summary>
/// <param name="Id"><c>given.KEY</c>, <c>target.KEY</c>, a rule's or a claim's id, <c>domain.KEY</c> or <c>stock.KEY</c>.</param>
/// <param name="Text">In trade words, the id in brackets.</param>
public sealed record Member(MemberKind Kind, string Id, string Text);

/// <summary>Changes that together make the detail possible.</summary>
/// <param name="Set">Key and value with its unit, as one would write them in the preset.</param>
public sealed record RepairProposal(IReadOnlyList<ProposedValue> Set, string Text);

/// <summary>One change: a key and what it should be.</summary>
public sealed record ProposedValue(string Key, string Value);
