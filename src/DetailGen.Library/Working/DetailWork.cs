using DetailGen.Analysis.Heat;
using DetailGen.Analysis.Quantities;
using DetailGen.Details;
using DetailGen.Details.Presets;
using DetailGen.Details.Solving;
using DetailGen.Library.Reports;

namespace DetailGen.Library.Working;

/// <summary>Works one preset through: solve, build, check. What stands in the way becomes a report.</summary>
internal static class DetailWork
{
    /// <summary>The detail worked through, or the report that says why not.</summary>
    internal static (Worked? Worked, DetailReport Report) Do(Preset preset, Office office)
    {
        var solution = DetailSolver.Solve(preset, office.Catalogue);
        if (solution is not Solution.Solved solved)
        {
            return (null, Refused(preset, solution));
        }

        var section = SectionBuilder.Build(solved);
        IReadOnlyList<BuildupResistance> buildups = [.. section.Buildups.Select(BuildupResistance.Of)];
        var checks = SectionChecks.Of(section);
        var worked = new Worked(solved, section, buildups, PartQuantity.Of(section), checks);
        return (worked, Told(worked));
    }

    private static DetailReport Told(Worked worked)
    {
        var failed = worked.Checks.Any(check => check.Verdict == "fail") || worked.Solved.Verdicts.Any(verdict => verdict.Judgement == Judgement.Fail);
        return new(worked.Preset.Detail, worked.Preset.File, Solved: true)
        {
            Parameters = SolvedReport.Parameters(worked.Solved),
            Packs = SolvedReport.Packs(worked.Solved.Packs),
            Rules = SolvedReport.Rules(worked.Solved),
            Checks = worked.Checks,
            Physics = SolvedReport.Physics(worked.Buildups),
            Quantities = SolvedReport.Quantities(worked.Quantities),
            Warnings = [.. worked.Preset.Warnings.Select(warning => $"{warning.At}: {warning.Reason}"), .. worked.Solved.Warnings],
            Status = failed ? 1 : 0,
        };
    }

    private static DetailReport Refused(Preset preset, Solution solution) => new(preset.Detail, preset.File, Solved: false)
    {
        Conflict = solution is Solution.Contradiction contradiction ? SolvedReport.Conflict(contradiction) : null,
        Warnings = solution is Solution.NotProven ? [Messages.NotProven] : [],
        Status = 1,
    };
}
