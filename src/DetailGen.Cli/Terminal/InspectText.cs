using System.Globalization;
using DetailGen.Library.Reports;

namespace DetailGen.Cli.Terminal;

/// <summary>What a drawing says of itself.</summary>
internal static class InspectText
{
    private const int MostEntities = 8; // of one edit; all of them stand in the JSON

    internal static int Tell(Screen screen, InspectReport report, bool json)
    {
        if (json)
        {
            screen.Output.Write(ReportJson.Write(report));
        }

        foreach (var error in report.Errors ?? [])
        {
            Answers.Tell(screen.Messages, error);
        }

        foreach (var finding in report.Findings)
        {
            screen.Messages.WriteLine($"{report.File}:{finding.Line.ToString(CultureInfo.InvariantCulture)}: {finding.Text}");
        }

        if (!json && report.Errors is null)
        {
            Write(screen.Output, report);
        }

        return report.Status;
    }

    private static void Write(TextWriter output, InspectReport report)
    {
        output.WriteLine($"{report.Detail}: {report.Junction}, {report.Wall}, {report.Roof}{(report.Mirror == true ? ", mirrored" : "")}");
        output.WriteLine(report.Edited switch
        {
            null => "  The drawing does not say what was issued, so edits cannot be told.",
            false => "  As it was issued: nothing was edited.",
            true => "  Edited since it was issued:",
        });
        foreach (var edit in report.Edits)
        {
            var by = edit.ByMm is [var x, var y] ? string.Create(CultureInfo.InvariantCulture, $" by {x:0.###} mm, {y:0.###} mm") : "";
            output.WriteLine($"    {Place(edit.Part)}: {edit.Count.ToString(CultureInfo.InvariantCulture)} {edit.Kind}{by}");
            foreach (var entity in edit.Entities.Take(MostEntities))
            {
                output.WriteLine($"      {entity.Kind} ({entity.Place}, line {entity.Line.ToString(CultureInfo.InvariantCulture)}){(entity.Words is { Length: > 0 } words ? $": {words}" : "")}");
            }

            if (edit.Entities.Count > MostEntities)
            {
                output.WriteLine($"      and {(edit.Entities.Count - MostEntities).ToString(CultureInfo.InvariantCulture)} more");
            }
        }

        output.WriteLine();
        foreach (var (key, value) in report.Parameters)
        {
            output.WriteLine($"  {key} = {value.Text}");
        }
    }

    private static string Place(string part) => part.StartsWith("layer:", StringComparison.Ordinal) ? "on layer " + part["layer:".Length..] : part;
}
