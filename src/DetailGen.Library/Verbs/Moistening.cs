using DetailGen.Details.Climates;
using DetailGen.Details.Presets;
using DetailGen.Library.Reports;
using DetailGen.Library.Working;
using DetailGen.Physics.Moisture;

namespace DetailGen.Library.Verbs;

/// <summary>Condensation and mould of details, from the sections that are drawn.</summary>
internal static class Moistening
{
    internal static DetailsReport Run(MoistureRequest request, Office office) => new(DetailLibrary.Tool, [.. PresetFiles.Of(request.Paths).Select(path => One(path, request, office))]);

    private static DetailReport One(string path, MoistureRequest request, Office office)
    {
        var read = PresetFiles.Read(path, request.Overrides, office);
        if (!read.IsGood)
        {
            return DetailLibrary.Unread(path, SolvedReport.Errors(read.Faults));
        }

        var preset = read.Value;
        if (MoistureWork.ClimateOf(preset, office.Context.Climates) is not { } climate)
        {
            var nation = preset.Conditions.First(condition => condition.Key == "site.nation");
            return Refused(preset, new("no-climate", path, nation.At?.Line ?? 1, nation.At?.Column ?? 1, "site.climate", null, Messages.NoUsualClimate(nation.Word), Messages.NameClimate(office.Context.Climates.Ids)));
        }

        if (Oversaturated(climate) is { } month)
        {
            return Refused(preset, new("bad-climate", month.At.File, month.At.Line, month.At.Column, "vapour-pressure", null, Messages.Oversaturated(climate.Id, month, Saturation.Pressure(month.Temperature)), Messages.OversaturatedHint));
        }

        var (worked, report) = DetailWork.Do(preset, office);
        if (worked is null)
        {
            return report;
        }

        var work = MoistureWork.Of(preset, worked.Section, climate);
        IReadOnlyList<CheckReport> checks = [.. MoistureTelling.Checks(work)];
        return report with
        {
            Physics = report.Physics! with { Moisture = MoistureTelling.Report(work) },
            Checks = [.. report.Checks!, .. checks],
            Warnings = [.. report.Warnings, .. MoistureTelling.Warnings(work)],
            Status = checks.Any(check => check.Verdict == "fail") ? 1 : report.Status,
        };
    }

    private static DetailReport Refused(Preset preset, ErrorReport error) => DetailLibrary.Unread(preset.File, [error]) with { Detail = preset.Detail };

    // air that holds more vapour than saturates it; a figure a little above is rounding
    private static ClimateMonth? Oversaturated(DesignClimate climate) =>
        climate.Months.FirstOrDefault(month => month.VapourPressure > Saturation.Pressure(month.Temperature) * 1.005);
}
