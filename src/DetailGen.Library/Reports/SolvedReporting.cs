using DetailGen.Analysis.Heat;
using DetailGen.Analysis.Quantities;
using DetailGen.Details.Quantities;
using DetailGen.Details.Reading;
using DetailGen.Details.Rules;
using DetailGen.Details.Solving;

namespace DetailGen.Library.Reports;

/// <summary>Turns what the lower projects know into the records that are printed.</summary>
internal static class SolvedReporting
{
    internal static SortedDictionary<string, ParameterReport> Parameters(Solution.Solved solved)
    {
        var all = new SortedDictionary<string, ParameterReport>(StringComparer.Ordinal);
        foreach (var value in solved.Values)
        {
            all[value.Key] = new(Number(value.Value), ReportUnits.Of(value.Value.Unit), value.Text, new(Kind(value.Why.Kind), value.Why.Rule, value.Why.Text)) { Told = value.Told };
        }

        return all;
    }

    internal static IReadOnlyList<RuleReport> Rules(Solution.Solved solved) => [.. solved.Verdicts.Select(verdict => new RuleReport(
        verdict.Rule.Id, verdict.Rule.Aliases, Word(verdict.Rule.Severity), Class(verdict.Rule.Class), Word(verdict.Judgement), (double?)verdict.Left?.Number, OfNumbers(verdict),
        (double?)verdict.Right?.Number, verdict.Unit, verdict.Text, verdict.Rule.SourceText, verdict.Rule.Source.Confidence)
    {
        Drawn = ComparisonWords.Drawn(verdict),
        Wanted = ComparisonWords.Wanted(verdict),
        Clause = verdict.Rule.Source.Clause,
        ReadKind = verdict.Rule.Source.ReadKind,
        Ask = verdict.Rule.Ask,
        Waiver = verdict.Judgement == Judgement.Waived && solved.Preset.Waivers.First(waiver => verdict.Rule.Names(waiver.Rule)) is { } waiver
            ? new(waiver.Reason, waiver.By, waiver.Reference)
            : null,
        Disagreements = verdict.Judgement == Judgement.NotApplicable ? [] : Disagreements(verdict.Rule, solved.Packs),
    })];

    // The steeper of two falls has the lesser n: between the numbers that are told the comparison is turned round.
    private static string? OfNumbers(Verdict verdict) => verdict.Unit != ReportUnits.Ratio ? verdict.Op : verdict.Op switch { ">=" => "<=", "<=" => ">=", ">" => "<", "<" => ">", var same => same };

    internal static IReadOnlyList<PackReport> Packs(IReadOnlyList<RulePack> packs) =>
        [.. packs.Where(pack => pack.Head is not null).Select(pack => new PackReport(pack.Name, pack.Head!.Title, pack.Head.Version, pack.Head.Date))];

    /// <summary>What sources say differently about a rule, one text each.</summary>
    internal static IReadOnlyList<string> Disagreements(Rule rule, IReadOnlyList<RulePack> packs) =>
        [.. packs.SelectMany(pack => pack.Head?.Disagreements ?? []).Where(one => one.Rules.Any(rule.Names)).Select(one => $"{one.Topic}: {one.Text}")];

    internal static ConflictReport Conflict(Solution.Contradiction contradiction) => new(
        Members(contradiction.Members),
        [.. contradiction.Repairs.Select(repair => new RepairReport(new(repair.Set.ToDictionary(set => set.Key, set => set.Value), StringComparer.Ordinal), repair.Text))],
        [.. contradiction.Further.Select(members => new FurtherConflictReport(Members(members)))],
        contradiction.MayBeMore);

    internal static PhysicsReport Physics(IReadOnlyList<BuildupResistance> buildups) => new([.. buildups.Select(Buildup)]);

    internal static IReadOnlyList<QuantityReport> Quantities(IReadOnlyList<PartQuantity> quantities) =>
        [.. quantities.Select(part => new QuantityReport(part.PartId, part.Material, Six(part.Area), Six(part.Volume), Six(part.Mass), part.SheetLength is { } length ? Six(length) : null))];

    internal static IReadOnlyList<ErrorReport> Errors(IReadOnlyList<Diagnostic> faults) =>
        [.. faults.Select(fault => new ErrorReport(fault.Code, fault.At.File, fault.At.Line, fault.At.Column, fault.Key, fault.Value, fault.Reason, fault.Hint))];

    internal static string Class(RuleClass rule) => rule switch { RuleClass.Enforced => "enforced", RuleClass.ToConfirm => "to-confirm", _ => "dormant" };

    internal static string Word(Severity severity) => severity switch { Severity.Must => "must", Severity.Should => "should", _ => "advise" };

    internal static IReadOnlyList<MemberReport> Members(IReadOnlyList<Member> members) => [.. members.Select(member => new MemberReport(Word(member.Kind), member.Id, member.Text))];

    private static BuildupReport Buildup(BuildupResistance stack) => new(
        stack.Buildup.Id, stack.Buildup.Title, Six(stack.Thickness), stack.Surfaces, Six(stack.Total), Six(stack.UValue),
        UValueWords.Remark(stack),
        [
            .. stack.Layers.Select(layer => new LayerReport(
                layer.Layer.Reference, layer.Layer.PartId, layer.Layer.Element, layer.Layer.Material.Id, Six(layer.Layer.Thickness), layer.Layer.Material.Conductivity,
                (layer.Bridged ?? layer.Resistance) is { } resistance ? Six(resistance) : null, layer.Layer.Function, layer.Layer.Material.Origin, layer.Layer.Remark)),
        ])
    {
        Upper = stack.Upper is { } upper ? Six(upper) : null,
        Lower = Six(stack.Lower),
        Uncorrected = Six(1 / stack.Total),
        Corrections = [.. stack.Corrections.Select(one => new CorrectionReport(
            one.Fixings.Name, one.Layer.Element, one.Fixings.Material.Id, Six(one.Fixings.PerArea), one.Fixings.Diameter, one.Fixings.Material.Conductivity, Six(one.Amount), stack.Corrected))],
    };

    private static object Number(Setting value) => value.Unit switch
    {
        Unit.Length => ReportUnits.Number(value.Unit, value.Number),
        Unit.Choice => value.Word!,
        _ => value.Number,
    };

    private static string Kind(WhyKind kind) => kind switch
    {
        WhyKind.Given => "given",
        WhyKind.Preferred => "preferred",
        WhyKind.Default => "default",
        WhyKind.Stock => "stock",
        WhyKind.Equation => "equation",
        WhyKind.Rule => "rule",
        _ => "target",
    };

    internal static string Word(Judgement judgement) => judgement switch
    {
        Judgement.Pass => VerdictWords.Pass,
        Judgement.Fail => VerdictWords.Fail,
        Judgement.Warn => VerdictWords.Warn,
        Judgement.Waived => VerdictWords.Waived,
        Judgement.ToConfirm => VerdictWords.ToConfirm,
        _ => VerdictWords.NotApplicable,
    };

    private static string Word(MemberKind kind) => kind switch
    {
        MemberKind.Given => "given",
        MemberKind.Target => "target",
        MemberKind.Rule => "rule",
        MemberKind.Claim => "claim",
        MemberKind.Domain => "domain",
        _ => "stock",
    };

    // Six decimals hold a micrometre, a microgram and a millionth of a resistance; more is noise of the arithmetic.
    private static double Six(double value) => Math.Round(value, 6, MidpointRounding.AwayFromZero);
}
