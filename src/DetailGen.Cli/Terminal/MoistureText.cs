using System.Globalization;
using DetailGen.Library.Reports;
using Spectre.Console;

namespace DetailGen.Cli.Terminal;

/// <summary>Condensation and mould of a detail in words.</summary>
internal static class MoistureText
{
    internal static void Write(TextWriter output, DetailReport detail)
    {
        if (detail.Physics?.Moisture is not { } moisture)
        {
            DetailsText.CheckedAmongOthers(output, detail);
            return;
        }

        output.WriteLine($"{detail.Detail}: condensation and mould");
        output.WriteLine($"  Outside: {moisture.Climate.Title} [{moisture.Climate.Id}], {moisture.Climate.Origin}; {moisture.Climate.Source}{(moisture.Climate.Named ? "" : "; usual for the nation, none is named")}");
        var inside = moisture.Internal;
        output.WriteLine($"  Inside: {Number(inside.Temperature)} °C ({inside.TemperatureSource}), humidity class {inside.HumidityClass} ({inside.HumidityClassSource}): "
            + $"{Number(inside.VapourExcess)} Pa over the air outside at 0 °C, none at 20 °C");
        foreach (var rule in (detail.Rules ?? []).Where(rule => rule.Verdict == VerdictWords.Fail))
        {
            output.WriteLine($"  fail: {rule.Text.TrimEnd('.')}. {rule.Source} ({rule.Confidence}) [{rule.Id}]");
        }

        foreach (var check in (detail.Checks ?? []).Where(check => check.Line != "fit" || check.Verdict == VerdictWords.Fail))
        {
            output.WriteLine($"  {check.Verdict}: {check.Text}");
        }

        foreach (var element in moisture.Elements)
        {
            Layers(output, element);
        }

        foreach (var step in moisture.Steps)
        {
            output.WriteLine($"  - {step}");
        }

        output.WriteLine($"  Standard: {moisture.Standard}.");
        output.WriteLine($"  {moisture.Caution}");
        output.WriteLine();
    }

    private static void Layers(TextWriter output, MoistureElementReport element)
    {
        var table = new Table { Border = TableBorder.Simple, Title = new(Markup.Escape($"{element.Title}, from the room")) };
        table.AddColumns("", "layer", "mm", "R m²K/W", "sd m", "factor", "vapour figure");
        foreach (var layer in element.Layers)
        {
            table.AddRow([.. new[]
            {
                layer.Ref, layer.Element, Number(layer.Thickness), Number(layer.Resistance), Number(layer.Sd), layer.VapourFactor, layer.Confidence ?? "–",
            }.Select(Markup.Escape)]);
        }

        Answers.Console(output).Write(table);
        foreach (var wet in element.Result["interfaces"]!.AsArray())
        {
            var between = wet!["between"]!.AsArray().Select(name => name!.GetValue<string>()).Distinct(StringComparer.Ordinal);
            var water = element.Result["months"]!.AsArray().Zip(wet["accumulated_g_m2"]!.AsArray(), (month, mass) => $"{month!["month"]} {Number(Math.Round(mass!.GetValue<double>(), 2))}");
            output.WriteLine($"  Water at {string.Join(" / ", between)} at the end of the month, g/m²: {string.Join(", ", water)}");
        }
    }

    private static string Number(double value) => value.ToString("0.###", CultureInfo.InvariantCulture);
}
