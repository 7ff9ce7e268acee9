using DetailGen.Details.Parameters;
using DetailGen.Details.Presets;
using DetailGen.Details.Quantities;
using DetailGen.Details.Rules;
using DetailGen.Details.Rules.Language;

namespace DetailGen.Details.Solving;

/// <summary>What is said of values, verdicts and contradictions, in trade words.</summary>
internal static class SolvingWords
{
    public static string Given => "Fixed by the author.";

    public static string GivenAtCommand => "Fixed on the command line.";

    public static string Preferred => "Wished for by the author.";

    public static string Usual => "The usual value.";

    public static string NearUsual(string usual) => $"The nearest to the usual {usual} that can be had.";

    public static string NearWished(string wished) => $"The nearest to the {wished} wished for that can be had.";

    /// <summary>A wish that was given up, with the reason that the value has.</summary>
    public static string Unmet(Given wish, SolvedValue got) => $"prefer {wish.Key}: wished for {wish.Value}, got {got.Text}. {got.Why.Text}";

    /// <summary>A size that the plan gives, which what is fixed leaves no room for.</summary>
    public static string NotAsPlanned(string key, Setting usual, SolvedValue got) =>
        $"{key}: {got.Text} is taken, for what is fixed leaves no room for the usual {usual}. The plan of the building gives it: set it, and what else must change is told.";

    public static string KeptAnyway(Rule rule) => $"{Bare(rule.Text)}; the waiver is not needed.";

    public static string WaiverNotNeeded(string rule) => $"waive {rule}: the rule is kept; the waiver is not needed.";

    public static string WaiverOfNothing(string rule) => $"waive {rule}: the rule does not apply to this detail; the waiver sets nothing aside.";

    public static string LeastThereIs => "The least that works; no rule asks for more.";

    public static string Sold(string meaning) => $"A size that is sold: {Small(Bare(meaning))}.";

    public static string Equation(Expression equation) => $"Follows from {equation}.";

    public static string Claim(Parameters.Claim claim) => $"{Bare(claim.Reason)} ({claim.Id}).";

    public static string BoundBy(Rule rule) => $"{Bare(rule.Text)} ({rule.Id}; {rule.SourceText}).";

    public static string Target(Target target) => $"Needed for {target.Key} at most {Printing.Amount(target.Value, Kind.UValue)}.";

    public static string Tightened(IEnumerable<string> targets) => $"Made as thick as the simulated heat through the junction needs: {string.Join(", ", targets)}.";

    public static string SimulatedMember(string key, string wanted) => $"You asked for a {Figure(key)} of {wanted} [target.{key}]";

    /// <summary>What a simulated figure is called in a sentence.</summary>
    public static string Figure(string key) => key == SimulatedFigures.TemperatureFactor ? "temperature factor" : "Ψ with inside dimensions";

    public static string Waived(Rule rule, Waiver waiver) => $"{Bare(rule.Text)}: waived{(waiver.By is { } by ? " by " + by : "")}, {Bare(waiver.Reason)}{(waiver.Reference is { } reference ? $" ({reference})" : "")}.{(rule.Ask is { } whom ? $" Ask {whom}." : "")}";

    public static string GivenMember(Given given) =>
        $"{(given.FromBase ? "The base preset fixes" : "You fixed")} {RequirementWords.Name(given.Key)} {(given.Value.Unit == Unit.Choice ? "as" : "at")} {given.Value} [given.{given.Key}]";

    /// <summary>What is given for a key that goes with another choice.</summary>
    public static string GoneMember(string key) => $"You give {RequirementWords.Name(key)}, which is not there then [given.{key}]";

    public static string MaterialMember(FilledSlot slot) => $"You asked for {Small(slot.Material.Name)} in {RequirementWords.Name(slot.Slot.Key)} [given.{slot.Slot.Key}]";

    public static string TargetMember(Target target) =>
        $"You asked for a {RequirementWords.Name(target.Key)["the ".Length..]} of at most {Printing.Amount(target.Value, Kind.UValue)} [target.{target.Key}]";

    /// <summary>What is required, why, and who says so.</summary>
    public static string RuleMember(Rule rule) =>
        $"{Large(RequirementWords.Of(rule))}: {Small(FirstSentence(rule.Reason))} ({rule.SourceText}{(rule.Source.Confidence == "memory" ? ", from memory" : "")}) [{rule.Id}]";

    public static string ClaimMember(Parameters.Claim claim) => $"{Bare(claim.Reason)} [{claim.Id}]";

    public static string DomainMember(Parameter parameter, string from, string to) =>
        $"{Large(RequirementWords.Name(parameter.Key))} can only be {from} to {to} [domain.{parameter.Key}]";

    public static string StockMember(Parameter parameter, string sizes) => $"{Large(RequirementWords.Name(parameter.Key))} is sold in {sizes} [stock.{parameter.Key}]";

    /// <summary>One change, or several to be made together.</summary>
    public static string Change(IReadOnlyList<ProposedValue> values) => Large(string.Join(" and ", values.Select(Change))) + ".";

    public static string BestFound(IReadOnlyList<ProposedValue> targets) =>
        $"Ask for {string.Join(" and ", targets.Select(target => $"{target.Key["target.".Length..]} {target.Value}"))}, the best that was found.";

    private static string Change(ProposedValue value) =>
        value.Key.StartsWith("target.", StringComparison.Ordinal) ? $"ask for {value.Key["target.".Length..]} {value.Value}, the best that the rest allows"
        : value.Key.StartsWith("materials.", StringComparison.Ordinal) ? $"make {value.Key["materials.".Length..]} of {value.Value}"
        : $"set {value.Key} to {value.Value}";

    public static string BrokenWish(Rule rule, Verdict verdict) =>
        $"{rule.Id}: {Bare(rule.Text)}{(verdict.Left is null ? "" : $" (here {ComparisonWords.Drawn(verdict)}, wanted {ComparisonWords.Wanted(verdict)})")}; {Confidence(rule)}.";

    public static string Unproven(string target) => $"{target} needs the heat through the junction and is still to be confirmed.";

    public static string NotTheBest => "These sizes keep every hard rule, but the search ended before it was proven that none are nearer to the usual ones.";

    public static string Bridged(string element, IEnumerable<string> slots) =>
        $"{element}.u-value: sizes were found as if {string.Join(", ", slots)} were all air, which keeps them on the safe side; the U-value reported counts members and air.";

    public static string AfterSolving(string rule) => $"{rule} cannot be told to the solver and was checked afterwards only.";

    private static string Confidence(Rule rule) => rule.Source.Confidence switch
    {
        "memory" => "from memory, check the source",
        "common-practice" => "common practice",
        _ => rule.Source.ReadKind is "trade" or "weak" ? $"read in a {rule.Source.ReadKind} text" : rule.SourceText,
    };

    private static string Bare(string sentence) => sentence.TrimEnd('.', ' ');

    private static string FirstSentence(string text) => Bare(text.Split(". ")[0]);

    // U-value, EPDM, A1: a capital that is no beginning of a sentence stays
    private static string Small(string sentence) => sentence.Length > 1 && char.IsLower(sentence[1]) ? char.ToLowerInvariant(sentence[0]) + sentence[1..] : sentence;

    private static string Large(string sentence) => char.ToUpperInvariant(sentence[0]) + sentence[1..];
}
