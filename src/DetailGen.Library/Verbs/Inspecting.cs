using System.Globalization;
using System.Text.Json;
using DetailGen.Details.Reading;
using DetailGen.Drawing.Inspecting;
using DetailGen.Library.Reports;

namespace DetailGen.Library.Verbs;

/// <summary>Reads a drawing back.</summary>
internal static class Inspecting
{
    private const string Lengths = " mm";
    private const string Ratios = "1:";

    internal static InspectReport Run(string file)
    {
        var read = GivenFile.Read(file, DrawnFile.Largest);
        if (!read.IsGood)
        {
            return Refused(file, SolvedReporting.Errors(read.Faults)[0]);
        }

        try
        {
            using var input = new MemoryStream(read.Value);
            var drawn = DrawnFile.Read(input);
            return drawn.Parameters is null && drawn.Edits is null ? Refused(file, 1, Messages.NotOurs, Messages.NotOursHint) : Told(file, drawn);
        }
        catch (NotADrawingException fault)
        {
            return Refused(file, fault.Line, fault.Message, Messages.NotADrawingHint);
        }
    }

    private static InspectReport Told(string file, DrawnFile drawn)
    {
        var report = new InspectReport(
            DetailLibrary.Tool, file, drawn.Edits is { } edits ? edits.Count > 0 : null,
            [.. (drawn.Edits ?? []).Select(edit => new EditReport(
                edit.Kind, edit.Part, edit.Count, edit.By is var (x, y) ? [Math.Round(x, 6), Math.Round(y, 6)] : null,
                [.. edit.Entities.Select(entity => new DrawnEntityReport(entity.Kind, entity.Layer, entity.Place, entity.Line, entity.Words))]))],
            [.. drawn.Findings.Select(finding => new FindingReport(finding.Line, finding.Text))]);
        if (drawn.Parameters is null)
        {
            return report;
        }

        try
        {
            using var json = JsonDocument.Parse(drawn.Parameters);
            var root = json.RootElement;
            string? Word(string key) => root.TryGetProperty(key, out var word) ? word.GetString() : null;
            return report with
            {
                Detail = Word("detail") ?? "",
                Junction = Word("junction"),
                Wall = Word("wall"),
                Roof = Word("roof"),
                Mirror = root.TryGetProperty("mirror", out var mirror) ? mirror.GetBoolean() : null,
                Parameters = Map(root, "parameters", Value),
                Materials = Map(root, "materials", text => text),
            };
        }
        catch (Exception fault) when (fault is JsonException or InvalidOperationException)
        {
            return report with { Findings = [.. report.Findings, new(1, Messages.DamagedPreset)] };
        }
    }

    private static SortedDictionary<string, T> Map<T>(JsonElement root, string key, Func<string, T> of)
    {
        var map = new SortedDictionary<string, T>(StringComparer.Ordinal);
        foreach (var property in root.TryGetProperty(key, out var values) ? values.EnumerateObject() : default)
        {
            map[property.Name] = of(property.Value.GetString() ?? "");
        }

        return map;
    }

    private static DrawnValueReport Value(string text)
    {
        if (text.EndsWith(Lengths, StringComparison.Ordinal) && double.TryParse(text.AsSpan(0, text.Length - Lengths.Length), NumberStyles.Float, CultureInfo.InvariantCulture, out var length))
        {
            return new(length, ReportUnits.Millimetres, text);
        }

        if (text.StartsWith(Ratios, StringComparison.Ordinal) && long.TryParse(text.AsSpan(Ratios.Length), NumberStyles.None, CultureInfo.InvariantCulture, out var ratio))
        {
            return new(ratio, ReportUnits.Ratio, text);
        }

        return long.TryParse(text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var count) ? new(count, null, text) : new(text, null, text);
    }

    private static InspectReport Refused(string file, int line, string reason, string? hint) => Refused(file, new("unreadable-drawing", file, line, 1, null, null, reason, hint));

    private static InspectReport Refused(string file, ErrorReport error) => new(DetailLibrary.Tool, file, null, [], []) { Errors = [error], Status = ExitStatus.WrongInput };
}
