using System.Text.Json;
using DetailGen.Details;
using DetailGen.Details.Reading;
using DetailGen.Drawing.Annotation;
using DetailGen.Drawing.Sheets;
using DetailGen.Library.Reports;

namespace DetailGen.Library.Working;

/// <summary>Where the notes of details stood in an earlier issue, from the report (JSON) that was written with it.</summary>
internal static class EarlierIssues
{
    private const long Largest = 64L << 20;

    /// <summary>The sheets of all reports, by detail; where several tell of one the last counts.</summary>
    internal static Outcome<IReadOnlyDictionary<string, EarlierSheet>> Read(IReadOnlyList<string> files)
    {
        var sheets = new SortedDictionary<string, EarlierSheet>(StringComparer.Ordinal);
        foreach (var file in files)
        {
            var bytes = GivenFile.Read(file, Largest);
            if (!bytes.IsGood)
            {
                return Outcome.Bad<IReadOnlyDictionary<string, EarlierSheet>>(bytes.Faults);
            }

            if (Of(bytes.Value) is not { Count: > 0 } found)
            {
                return Outcome.Bad<IReadOnlyDictionary<string, EarlierSheet>>(NoIssue(file));
            }

            foreach (var (detail, sheet) in found)
            {
                sheets[detail] = sheet;
            }
        }

        return Outcome.Good<IReadOnlyDictionary<string, EarlierSheet>>(sheets);
    }

    private static Diagnostic NoIssue(string file)
    {
        Mark at = new(file, 1, 1);
        return new("no-issue", at, Messages.NoIssue, Messages.NoIssueHint);
    }

    /// <summary>Null where the text is no report.</summary>
    private static List<(string Detail, EarlierSheet Sheet)>? Of(byte[] text)
    {
        try
        {
            return JsonSerializer.Deserialize(text, ReportContext.Default.IssuedReport)?.Details?
                .Where(one => one is { Detail: not null, Layout: { Paper: not null, Places: not null } })
                .Select(one => (one.Detail!, new EarlierSheet(one.Layout!.Paper!, one.Layout.Scale, [.. one.Layout.Places!.Where(place => place is { Part: not null, Column: not null }).Select(Place)])))
                .ToList();
        }
        catch (JsonException)
        {
            return null;
        }
    }

    internal static IReadOnlyList<NotePlaceReport> Told(IEnumerable<EarlierPlace> places) =>
        [.. places.Select(place => new NotePlaceReport(place.PartId, place.Column, Figure(place.Y), Figure(place.Width), Figure(place.Tip.X), Figure(place.Tip.Y), Figure(place.Setback), place.Lines))];

    // As fine as places are compared.
    private static double Figure(double length) => Math.Round(length, 7, MidpointRounding.AwayFromZero);

    private static EarlierPlace Place(NotePlaceReport place) => new(place.Part, place.Column, place.YMm, place.WidthMm, new(place.TipXMm, place.TipYMm), place.SetbackMm, place.Lines);
}
