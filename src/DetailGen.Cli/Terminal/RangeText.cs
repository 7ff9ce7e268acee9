using System.Globalization;
using DetailGen.Library.Reports;
using Spectre.Console;

namespace DetailGen.Cli.Terminal;

/// <summary>Ranges as a table: a line for each key.</summary>
internal static class RangeText
{
    private const int MostPieces = 12;

    internal static void Write(TextWriter output, RangeReport report)
    {
        var table = new Table { Border = TableBorder.Simple };
        table.AddColumns("key", "can be", "step", "stopped below by", "stopped above by");
        foreach (var (key, range) in report.Ranges)
        {
            table.AddRow([.. Cells(key, range).Select(Markup.Escape)]);
        }

        Answers.Console(output).Write(table);
    }

    private static string[] Cells(string key, ValueRangeReport range)
    {
        var name = range.Given is { } given ? $"{key} (set to {given})" : key;
        if (range.Options is { } options)
        {
            var against = (range.Excluded ?? []).Select(word => $"{word.Key}: {string.Join(", ", word.Value)}");
            return [name, string.Join(", ", options), "", string.Join("; ", against), ""];
        }

        var pieces = range.Values!.Select(piece => piece[0] == piece[1] ? Text(piece[0]) : $"{Text(piece[0])} to {Text(piece[1])}").ToList();
        var shown = pieces.Count <= MostPieces ? string.Join(", ", pieces) : $"{string.Join(", ", pieces.Take(MostPieces - 1))} … {pieces[^1]}";
        var unit = range.Unit is "mm" ? " mm" : "";
        return
        [
            name, range.Unit is "1:n" ? $"1:n, n = {shown}" : shown + unit, range.Step is { } step ? Text(step) + unit : "listed",
            string.Join(", ", range.Min!.Stops), string.Join(", ", range.Max!.Stops) + (range.Proven ? "" : "not proven"),
        ];
    }

    private static string Text(double value) => value.ToString("0.###", CultureInfo.InvariantCulture);
}
