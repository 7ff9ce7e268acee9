using System.Globalization;
using System.IO.Compression;
using DetailGen.Drawing.Sheets;
using MiniExcelLibs;

namespace DetailGen.Library.Schedules;

/// <summary>The schedule as a spreadsheet. Numbers are numbers there, so that they can be added up.</summary>
internal static class SpreadsheetSchedule
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

    private static byte[] Normalised(MemoryStream written)
    {
        using var result = new MemoryStream();
        using (var from = new ZipArchive(written, ZipArchiveMode.Read))
        using (var to = new ZipArchive(result, ZipArchiveMode.Create, leaveOpen: true))
        {
            foreach (var entry in from.Entries.OrderBy(entry => entry.FullName, StringComparer.Ordinal))
            {
                var copy = to.CreateEntry(entry.FullName, CompressionLevel.Optimal);
                copy.LastWriteTime = NoTime;
                using var source = entry.Open();
                using var target = copy.Open();
                source.CopyTo(target);
            }
        }

        return result.ToArray();
    }
}
