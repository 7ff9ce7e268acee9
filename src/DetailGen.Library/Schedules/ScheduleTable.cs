using System.Globalization;
using DetailGen.Analysis.Heat;
using DetailGen.Drawing.Sheets;
using DetailGen.Library.Reports;

namespace DetailGen.Library.Schedules;

/// <summary>The schedule of layers as rows of text: the same on the sheet, in the spreadsheet and in the report.</summary>
internal static class ScheduleTable
{
    private const string None = "–";

    internal static IReadOnlyList<ScheduleBlock> Of(IReadOnlyList<BuildupResistance> buildups) => [.. buildups.Select(Of)];

    /// <summary>With the rules that are waived behind the layers: a list of layers that travels alone must not hide what was set aside.</summary>
    internal static IReadOnlyList<ScheduleBlock> WithWaivers(this IReadOnlyList<ScheduleBlock> stacks, DetailReport report)
    {
        List<ScheduleRow> waived = [.. (report.Rules ?? []).Where(rule => rule.Waiver is not null).Select(rule => new ScheduleRow(rule.Id, "Rule", rule.Text, None, None, None, "waived", rule.Source))];
        return waived.Count > 0 ? [.. stacks, new("waived", waived)] : stacks;
    }

    private static ScheduleBlock Of(BuildupResistance stack)
    {
        var rows = new List<ScheduleRow> { new("", "Surfaces", "outside and inside", None, None, Number(stack.Surfaces, "0.000"), "surface resistance", "tabulated") };
        foreach (var (layer, between, bridged) in stack.Layers)
        {
            var resistance = bridged ?? between;
            // What repeats in a layer is told with what it is of.
            var (of, said) = layer.Kind == Sections.LayerKind.Bridged ? ($"{layer.Material.Name}, {layer.Remark}", layer.Tapers ? "at upstand" : "") : (layer.Material.Name, layer.Remark);
            var remark = layer.Kind == Sections.LayerKind.Air || layer.Material.Conductivity is null ? "tabulated" : layer.Material.Origin;
            rows.Add(new(
                layer.Reference, layer.Element, of, Number(layer.Thickness, "0.0"),
                resistance is null || layer.Kind == Sections.LayerKind.Air || layer.Material.Conductivity is null ? None : Number(layer.Material.Conductivity.Value, "0.000"),
                resistance is null ? None : Number(resistance.Value, "0.000"), layer.Function, said.Length > 0 ? $"{remark}; {said}" : remark));
        }

        rows.Add(new(
            "", $"{stack.Buildup.Title}, sum", $"U-value {UValue(stack.UValue)} W/m²K", Number(stack.Thickness, "0.0"), None, Number(stack.Total, "0.000"),
            stack.IsBridged ? "combined method" : "", Fixings(stack), Sum: true));
        return new(stack.Buildup.Id, rows);
    }

    /// <summary>A U-value in W/(m²·K) to two significant figures, from 1 on to one decimal, rounded to the nearest as EN ISO 6946:2017, 6.5.2 asks (read in a secondary text).</summary>
    /// <remarks>For the eye alone: 0.154 reads 0.15. Verdicts and targets go by the whole figure.</remarks>
    internal static string UValue(double value)
    {
        static int Decimals(double figure) => figure >= 1 ? 1 : figure >= 0.1 ? 2 : 3;
        var rounded = Math.Round(value, Decimals(value), MidpointRounding.AwayFromZero); // 0.0998 becomes 0.10
        return rounded.ToString("F" + Decimals(rounded).ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
    }

    private static string Fixings(BuildupResistance stack) => stack.Corrections.Count == 0 ? "" : stack.Corrected
        ? $"fixings +{Number(stack.Corrections.Sum(one => one.Amount), "0.000")} W/(m²K)"
        : "small fixings left out";

    private static string Number(double value, string format) => value.ToString(format, CultureInfo.InvariantCulture);
}
