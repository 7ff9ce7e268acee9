using DetailGen.Details.Climates;
using DetailGen.Details.Presets;
using DetailGen.Library.Reports;
using DetailGen.Library.Working;
using DetailGen.Physics.Moisture;

namespace DetailGen.Library.Verbs;

/// <summary>Condensation and mould of details, from the sections that are drawn.</summary>
internal static class MoistureChecking
{
    internal static DetailsReport Run(PresetsRequest request, Office office) => PresetFiles.Each(request, office, preset => One(preset, office));

    private static DetailReport One(Preset preset, Office office)
    {
        var (climate, error) = ClimateOf(preset, office.Context.Climates);
        if (climate is null)
        {
            return DetailLibrary.Unread(preset.File, [error!]) with { Detail = preset.Detail };
        }

        var (worked, report) = DetailWork.Do(preset, office);
        if (worked is null)
        {
            return report;
        }

        var work = MoistureWork.Of(preset, worked.Section, climate);
        IReadOnlyList<CheckReport> checks = [.. MoistureReporting.Checks(work)];
        return report with
        {
            Physics = report.Physics! with { Moisture = MoistureReporting.Report(work) },
            Checks = [.. report.Checks!, .. checks],
            Warnings = [.. report.Warnings, .. MoistureReporting.Warnings(work)],
            Status = checks.Any(check => check.Verdict == VerdictWords.Fail) ? ExitStatus.Fails : report.Status,
        };
    }

    /// <summary>The same figures in the report of a detail that is drawn or checked, without judging it by them; where there is no sound climate, null and a warning.</summary>
    internal static (DetailReport Report, MoistureWork? Work) WithFigures(DetailReport report, Worked worked, Office office)
    {
        var (climate, error) = ClimateOf(worked.Preset, office.Context.Climates);
        if (climate is null)
        {
            return (report with { Warnings = [.. report.Warnings, Messages.NoCondensation(error!.Reason)] }, null);
        }

        var work = MoistureWork.Of(worked.Preset, worked.Section, climate);
        return (report with { Physics = report.Physics! with { Moisture = MoistureReporting.Report(work) } }, work);
    }

    // the climate, or what is wrong with it
    private static (DesignClimate? Climate, ErrorReport? Error) ClimateOf(Preset preset, ClimateLibrary climates)
    {
        if (MoistureWork.ClimateOf(preset, climates) is not { } climate)
        {
            var nation = preset.Condition(PresetShape.Nation);
            return (null, new("no-climate", preset.File, nation.At?.Line ?? 1, nation.At?.Column ?? 1, "site.climate", null, Messages.NoUsualClimate(nation.Word), Messages.NameClimate(climates.Ids)));
        }

        return Oversaturated(climate) is { } month
            ? (null, new("bad-climate", month.At.File, month.At.Line, month.At.Column, "vapour-pressure", null, Messages.Oversaturated(climate.Id, month, Saturation.Pressure(month.Temperature)), Messages.OversaturatedHint))
            : (climate, null);
    }

    // air that holds more vapour than saturates it; a figure a little above is rounding
    private static ClimateMonth? Oversaturated(DesignClimate climate) =>
        climate.Months.FirstOrDefault(month => month.VapourPressure > Saturation.Pressure(month.Temperature) * 1.005);
}
