using System.Text;
using DetailGen.Details.Presets;
using DetailGen.Drawing.Auditing;
using DetailGen.Drawing.Emitters;
using DetailGen.Drawing.Scenes;
using DetailGen.Drawing.Sheets;
using DetailGen.Library.Files;
using DetailGen.Library.Reports;
using DetailGen.Library.Schedules;
using DetailGen.Library.Wording;
using DetailGen.Library.Working;

namespace DetailGen.Library.Verbs;

/// <summary>The main job: each preset is read, worked through, drawn and written on its own; names are checked for all before anything is written.</summary>
internal static class PresetDrawing
{
    internal static DetailsReport Run(DrawRequest request, Office office)
    {
        var earlier = EarlierIssues.Read(request.Earlier);
        if (!earlier.IsGood)
        {
            return new(DetailLibrary.Tool, [DetailLibrary.Unread(earlier.Faults[0].At.File, SolvedReporting.Errors(earlier.Faults))]);
        }

        List<GivenPreset> given = [.. request.Presets.Select(path => PresetFiles.OpenFile(path, file => PresetFiles.Read(file, request.Overrides, office), request.Overrides))];
        // Neither of two presets of one name is written: which of them stands under it is the author's to say.
        var names = new SameNames(given, request.ViewOnly ? "-view" : "");
        return new(DetailLibrary.Tool,
        [
            .. given.Select((one, place) => names.Fault(place) is { } fault
                ? DetailLibrary.Unread(one.Path, [fault]) with { Detail = one.Preset!.Detail }
                : one.Told(preset => One(preset, names[place], request, office, earlier.Value))),
        ]);
    }

    private static DetailReport One(Preset preset, string name, DrawRequest request, Office office, IReadOnlyDictionary<string, EarlierSheet> earlier)
    {
        var (worked, report) = DetailWork.Do(preset, office, request.Physics ? Simulation.Always : Simulation.Asked);
        if (worked is null)
        {
            return report;
        }

        (report, var moisture) = MoistureChecking.WithFigures(report, worked, office);
        var asked = SheetSetup.Asked(preset, request.ViewOnly).After(earlier.GetValueOrDefault(preset.Detail));
        var text = SheetWords.Of(worked, moisture);
        var sheet = SheetComposer.Compose(
            worked.Section, text, asked, SheetSetup.Formats(office.Sheets, office.Typeface, SheetSetup.Has(preset, "reduced-print", "true")), SheetSetup.Layers(office.Sheets),
            Identity(preset, report));
        var audit = request.LayoutAudit ? LayoutAudit.Of(sheet.Scene, sheet.Format, sheet.Parts) : null;
        string[] anew = request.Earlier.Count > 0 && sheet.Moved is null ? [Messages.LaidAnew(preset.Detail, asked.Earlier is { } before ? FormattableString.Invariant($"{before.Paper} at 1:{before.Scale}") : null)] : [];
        report = report with
        {
            Layout = LayoutMeasures.Of(sheet) with { Audit = audit is null ? null : [.. audit.Select((fault, i) => LayoutMeasures.Of(fault, i + 1))] },
            Warnings = [.. report.Warnings, .. anew, .. sheet.Warnings, .. UnknownLetters.Warning(sheet.Scene)],
        };

        List<OutputFile> files = [.. request.Formats.Where(format => format != "json").Distinct(StringComparer.Ordinal).SelectMany(format => Files(format, name, worked, text, sheet, report, request.Dpi))];
        if (audit is not null)
        {
            files.AddRange(SceneFiles.Emit(AuditPicture.Of(sheet.Scene, audit), ["png"], new(request.Dpi)).Select(file => new OutputFile($"{name}-audit{file.Suffix}.png", "png", file.Bytes)));
        }

        var described = report with { Files = [.. files.Select(OutputFolder.Describe)] };
        if (request.Formats.Contains("json", StringComparer.Ordinal))
        {
            files.Add(new($"{name}.json", "json", Encoding.UTF8.GetBytes(ReportJson.Write(new DetailsReport(DetailLibrary.Tool, [described])))));
        }

        OutputFolder.Write(request.Folder, files, out var fault);
        return fault is null
            ? described with { Document = files.Find(file => file.Format == "json") is { } document ? OutputFolder.Describe(document) : null }
            : report with { Files = [], Errors = [ErrorReport.Of("cannot-write", request.Folder, fault.Reason, fault.Hint)], Status = ExitStatus.NotWritten };
    }

    private static IEnumerable<OutputFile> Files(string format, string name, Worked worked, SheetText text, ComposedSheet sheet, DetailReport report, int dpi) => format switch
    {
        "csv" => [new($"{name}.csv", format, CsvSchedule.Write(text.Schedule.WithWaivers(report)))],
        "xlsx" => [new($"{name}.xlsx", format, SpreadsheetSchedule.Write(text.Schedule.WithWaivers(report)))],
        "md" => [new($"{name}.md", format, Encoding.UTF8.GetBytes(MarkdownReport.Write(worked, report, text)))],
        // A drawing file keeps its colours for the screen; a print is black unless the author asks for colour.
        _ => SceneFiles.Emit(format == "dxf" || InColour(worked.Preset) ? sheet.Scene : sheet.Scene.InBlack(), [format], new(dpi)).Select(file => new OutputFile($"{name}{file.Suffix}.{file.Format}", format, file.Bytes)),
    };

    private static bool InColour(Preset preset) => SheetSetup.Has(preset, "plot", "colour");

    private static Identity Identity(Preset preset, DetailReport report)
    {
        var block = preset.TitleBlock;
        return new(
            block.Number ?? preset.Detail, block.Revision ?? "", preset.Title, block["drawn"] ?? "", block["project"] ?? "",
            DateOnly.TryParseExact(block["date"], "yyyy-MM-dd", out var date) ? date : null, ParameterJson.Write(preset, report));
    }
}
