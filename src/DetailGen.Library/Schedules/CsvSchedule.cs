using System.Text;
using DetailGen.Drawing.Sheets;

namespace DetailGen.Library.Schedules;

/// <summary>The schedule as comma-separated values (RFC 4180): UTF-8, a head row, CRLF.</summary>
internal static class CsvSchedule
{
    internal static readonly IReadOnlyList<string> Head =
        ["Stack", "Ref", "Element", "Material", "Thickness mm", "Lambda W/mK", "R m²K/W", "Function", "Source or remark"];

    internal static byte[] Write(IReadOnlyList<ScheduleBlock> stacks)
    {
        var text = new StringBuilder();
        Line(text, Head);
        foreach (var stack in stacks)
        {
            foreach (var row in stack.Rows)
            {
                Line(text, Cells(stack, row));
            }
        }

        return new UTF8Encoding(false).GetBytes(text.ToString());
    }

    internal static IReadOnlyList<string> Cells(ScheduleBlock stack, ScheduleRow row) =>
        [stack.Id, row.Reference, row.Element, row.Material, row.Thickness, row.Conductivity, row.Resistance, row.Function, row.Remark];

    private static void Line(StringBuilder text, IReadOnlyList<string> cells) => text.AppendJoin(',', cells.Select(Quoted)).Append("\r\n");

    private static string Quoted(string cell) =>
        cell.AsSpan().IndexOfAny(",\"\r\n") < 0 ? cell : $"\"{cell.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";
}
