using DetailGen.Analysis.Heat;
using DetailGen.Analysis.Quantities;
using DetailGen.Details.Presets;
using DetailGen.Details.Solving;
using DetailGen.Library.Reports;
using DetailGen.Library.Wording;

namespace DetailGen.Library.Working;

/// <summary>Works one preset through: solve, build, check. What stands in the way becomes a report.</summary>
internal static class DetailWork
{
    /// <summary>The detail worked through, or the report that says why not.</summary>
    internal static (Worked? Worked, DetailReport Report) Do(Preset preset, Office office, Simulation when = Simulation.Asked)
    {
        var met = Targets.Meet(preset, office, when);
        if (met is not { Solution: Solution.Solved solved, Section: { } section })
        {
            var refused = Refused(preset, met.Solution);
            return (null, refused with { Warnings = [.. refused.Warnings, .. met.Warnings] });
        }

        IReadOnlyList<BuildupResistance> buildups = [.. section.Buildups.Select(BuildupResistance.Of)];
        var checks = SectionChecks.Of(section);
        var told = Reported.In(solved, buildups.ToDictionary(stack => stack.Buildup.Id, stack => (decimal)stack.UValue, StringComparer.Ordinal));
        var worked = new Worked(MaterialNames.In(told, office.Materials), section, buildups, PartQuantity.Of(section), checks) { Heat = met.Heat };
        return (worked, Told(worked, met.Warnings));
    }

    private static DetailReport Told(Worked worked, IReadOnlyList<string> warnings)
    {
        var failed = worked.Checks.Any(check => check.Verdict == VerdictWords.Fail) || worked.Solved.Verdicts.Any(verdict => verdict.Judgement == Judgement.Fail);
        return new(worked.Preset.Detail, worked.Preset.File, Solved: true)
        {
            Parameters = SolvedReporting.Parameters(worked.Solved),
            Packs = SolvedReporting.Packs(worked.Solved.Packs),
            Rules = SolvedReporting.Rules(worked.Solved),
            Checks = worked.Checks,
            Targets = worked.Preset.Targets.Count == 0 ? null : Targets.Told(worked),
            Physics = worked.Heat is { } heat ? HeatReporting.Of(heat, worked.Preset, SolvedReporting.Physics(worked.Buildups)) : SolvedReporting.Physics(worked.Buildups),
            Quantities = SolvedReporting.Quantities(worked.Quantities),
            Warnings = [.. worked.Preset.Warnings.Select(warning => $"{warning.At}: {warning.Reason}"), .. worked.Solved.Warnings, .. warnings],
            Status = failed ? ExitStatus.Fails : ExitStatus.Done,
        };
    }

    private static DetailReport Refused(Preset preset, Solution solution) => new(preset.Detail, preset.File, Solved: false)
    {
        Conflict = solution is Solution.Contradiction contradiction ? SolvedReporting.Conflict(contradiction) : null,
        Warnings = solution switch
        {
            Solution.NotProven => [Messages.NotProven],
            Solution.Contradiction { IsMinimal: false } => [Messages.ConflictNotMinimal],
            _ => [],
        },
        Status = ExitStatus.Fails,
    };
}
