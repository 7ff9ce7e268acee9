using System.Globalization;
using System.IO.Compression;
using System.Text;
using System.Text.RegularExpressions;
using DetailGen.Drawing.Sheets;
using MiniExcelLibs;

namespace DetailGen.Library.Schedules;

/// <summary>The schedule as a spreadsheet. Numbers are numbers there, so that they can be added up.</summary>
internal static partial class SpreadsheetSchedule
{
    // Zip entries carry a clock time; the earliest that the format knows stands in for none.
    private static readonly DateTimeOffset NoTime = new(1980, 1, 1, 0, 0, 0, TimeSpan.Zero);

    internal static byte[] Write(IReadOnlyList<ScheduleBlock> stacks)
    {
        var rows = stacks.SelectMany(stack => stack.Rows.Select(row => CsvSchedule.Head.Zip(CsvSchedule.Cells(stack, row))
            .ToDictionary(cell => cell.First, cell => Value(cell.Second), StringComparer.Ordinal))).ToList();
        using var written = new MemoryStream();
        written.SaveAs(rows, sheetName: "Layer schedule");
        return Normalised(written);
    }

    private static object Value(string cell) =>
        double.TryParse(cell, NumberStyles.Float, CultureInfo.InvariantCulture, out var number) ? number : cell;

    // The library names its relationships at random; here they are numbered in the order in which they are met.
    private static byte[] Normalised(MemoryStream written)
    {
        var names = new List<string>();
        using var result = new MemoryStream();
        using (var from = new ZipArchive(written, ZipArchiveMode.Read))
        using (var to = new ZipArchive(result, ZipArchiveMode.Create, leaveOpen: true))
        {
            foreach (var entry in from.Entries.OrderBy(entry => entry.FullName, StringComparer.Ordinal))
            {
                var copy = to.CreateEntry(entry.FullName, CompressionLevel.Optimal);
                copy.LastWriteTime = NoTime;
                using var source = new StreamReader(entry.Open(), Encoding.UTF8);
                using var target = new StreamWriter(copy.Open(), new UTF8Encoding(false));
                target.Write(RandomName().Replace(source.ReadToEnd(), name => $"R{Number(names, name.Value).ToString(CultureInfo.InvariantCulture)}"));
            }
        }

        return result.ToArray();
    }

    private static int Number(List<string> names, string name)
    {
        if (!names.Contains(name))
        {
            names.Add(name);
        }

        return names.IndexOf(name) + 1;
    }

    [GeneratedRegex("R[0-9a-f]{32}")]
    private static partial Regex RandomName();
}
