using System.Globalization;
using System.Text;
using DetailGen.Drawing.Sheets;
using DetailGen.Library.Wording;
using DetailGen.Library.Working;

namespace DetailGen.Library.Reports;

/// <summary>The report to read: every size with its reason, every rule with both sides and its source, schedule, quantities, cautions.</summary>
internal static class MarkdownReport
{
    internal static string Write(Worked worked, DetailReport report, SheetText text)
    {
        var page = new StringBuilder();
        var preset = worked.Preset;
        page.Append(CultureInfo.InvariantCulture, $"# {preset.Title}\n\n");
        page.Append(CultureInfo.InvariantCulture, $"Detail {preset.Detail}: {preset.Junction.Title.ToLowerInvariant()}, {preset.Wall.Title.ToLowerInvariant()}, {preset.Roof.Title.ToLowerInvariant()}. ");
        page.Append(CultureInfo.InvariantCulture, $"Drawing {text.Title.Number}, revision {Or(text.Title.Revision)}, status {Or(text.Title.StatusText)}, date {Or(text.Title.Date)}.\n");
        Cautions(page, worked);
        Warnings(page, report);
        Parameters(page, worked, report);
        Rules(page, report);
        Checks(page, report);
        Schedule(page, text);
        Heat(page, report);
        Moisture(page, report);
        Quantities(page, worked, report);
        // what an author writes is text, though it may look like a tag
        return page.Replace("<", "\\<").ToString();
    }

    private static void Cautions(StringBuilder page, Worked worked)
    {
        page.Append("\n## Cautions\n\n");
        foreach (var note in GeneralNotes.Cautions(worked.Solved))
        {
            page.Append(CultureInfo.InvariantCulture, $"- {note}\n");
        }
    }

    private static void Warnings(StringBuilder page, DetailReport report)
    {
        if (report.Warnings.Count == 0)
        {
            return;
        }

        page.Append("\n## Warnings\n\n");
        foreach (var warning in report.Warnings)
        {
            page.Append(CultureInfo.InvariantCulture, $"- {warning}\n");
        }
    }

    private static void Parameters(StringBuilder page, Worked worked, DetailReport report)
    {
        Head(page, "Sizes and choices", "##", "Key", "Value", "Meaning", "Why");
        var meanings = worked.Solved.Values.ToDictionary(value => value.Key, value => value.Meaning, StringComparer.Ordinal);
        foreach (var (key, value) in report.Parameters ?? [])
        {
            Row(page, key, value.Told, meanings.GetValueOrDefault(key, ""), value.Why.Text);
        }
    }

    // What needs a decision comes before what is in order.
    private static readonly (string Verdict, string Title)[] RuleGroups =
    [
        (VerdictWords.Fail, "Broken: the detail must not be issued"),
        (VerdictWords.Warn, "Not kept: justify or change"),
        (VerdictWords.ToConfirm, "To be confirmed by a competent person"),
        (VerdictWords.Waived, "Waived by the author"),
        (VerdictWords.Pass, "Kept"),
    ];

    private static void Rules(StringBuilder page, DetailReport report)
    {
        page.Append("\n## Rules\n");
        var rules = (report.Rules ?? []).ToLookup(rule => rule.Verdict, StringComparer.Ordinal);
        foreach (var (verdict, title) in RuleGroups.Where(group => rules.Contains(group.Verdict)))
        {
            Head(page, $"{title} ({Figures.Count(rules[verdict].Count())})", "###", "What it asks", "Drawn", "Required", "Source", "Confidence", "Rule");
            foreach (var rule in rules[verdict])
            {
                Row(page, rule.Text, rule.Drawn ?? "–", rule.Wanted ?? "–", rule.Source, rule.Confidence, rule.Id);
            }
        }

        Waivers(page, report);
        Disagreements(page, report);
        page.Append(CultureInfo.InvariantCulture, $"\nRules that do not apply to this detail: {Figures.Count(rules[VerdictWords.NotApplicable].Count())}.\n");
    }

    private static void Waivers(StringBuilder page, DetailReport report)
    {
        foreach (var rule in (report.Rules ?? []).Where(rule => rule.Waiver is not null))
        {
            page.Append(CultureInfo.InvariantCulture, $"\nWaived: {rule.Id}, because: {rule.Waiver!.Reason}");
            page.Append(rule.Waiver.By is { } by ? $"; by {by}" : "").Append(rule.Waiver.Reference is { } reference ? $"; {reference}" : "");
            page.Append(rule.Ask is { } whom ? $". Ask {whom}.\n" : ".\n");
        }
    }

    private static void Disagreements(StringBuilder page, DetailReport report)
    {
        var told = (report.Rules ?? []).SelectMany(rule => rule.Disagreements.Select(text => (text, rule.Id))).ToLookup(one => one.text, one => one.Id, StringComparer.Ordinal);
        if (told.Count > 0)
        {
            page.Append("\n### Where sources do not agree\n\n");
            foreach (var one in told)
            {
                page.Append(CultureInfo.InvariantCulture, $"- {one.Key} ({string.Join(", ", one)})\n");
            }
        }
    }

    private static void Checks(StringBuilder page, DetailReport report)
    {
        Head(page, "Checks on the section", "##", "Verdict", "Check", "Line", "Finding");
        foreach (var check in report.Checks ?? [])
        {
            Row(page, check.Verdict, check.Id, check.Line, check.Text);
        }
    }

    private static void Schedule(StringBuilder page, SheetText text)
    {
        Head(page, "Layer schedule", "##", "Ref", "Element", "Material", "Thickness mm", "λ W/mK", "R m²K/W", "Function", "Source or remark");
        foreach (var row in text.Schedule.SelectMany(stack => stack.Rows))
        {
            Row(page, row.Reference, row.Element, row.Material, row.Thickness, row.Conductivity, row.Resistance, row.Function, row.Remark);
        }
    }

    private static void Heat(StringBuilder page, DetailReport report)
    {
        if (report.Physics is not JunctionReport heat)
        {
            return;
        }

        string Between(IReadOnlyList<double> bounds) => $"{Number(bounds[0])} to {Number(bounds[1])}";
        string Estimated(FactorReport factor) => factor.Change is { } change
            ? $"estimated, not proven; the last refinement changed it by {change.ToString("0.0E+0", CultureInfo.InvariantCulture)}" : "estimated on one mesh, not proven";
        Head(page, "Heat through the junction", "##", "What", "Value", "Proven between");
        Row(page, "Thermal coupling L2D, W/mK", Number(heat.Coupling), Between(heat.Bounds));
        Row(page, "Ψ, inside dimensions, W/mK", Number(heat.PsiInternal), Between(heat.PsiInternalBounds));
        Row(page, "Ψ, outside dimensions, W/mK", Number(heat.PsiExternal), Between(heat.PsiExternalBounds));
        foreach (var flank in heat.Flanking)
        {
            Row(page, $"U of the {flank.Name} in the model, W/m²K", Number(flank.UValue), Between(flank.Bounds));
        }

        foreach (var pair in heat.Pairs.Where(pair => pair.Flank is not null))
        {
            var name = string.Join(" to ", pair.Between);
            Row(page, $"L2D {name}, W/(m·K)", Number(pair.Coupling), Between(pair.Bounds));
            Row(page, $"Ψ {name}, inside dimensions, W/(m·K)", Number(pair.PsiInternal), Between(pair.PsiInternalBounds));
            Row(page, $"Ψ {name}, outside dimensions, W/(m·K)", Number(pair.PsiExternal), Between(pair.PsiExternalBounds));
        }

        foreach (var buildup in heat.Buildups)
        {
            Row(page, $"U of the {buildup.Id} away from the junction, W/(m²·K): {buildup.Remark}", Number(buildup.UValue), "–");
        }

        Row(page, "Temperature factor, film of the mould criterion", Figures.Fixed(heat.MouldFactor.Value, 3), Estimated(heat.MouldFactor));
        Row(page, "Temperature factor, films of the heat flow", Figures.Fixed(heat.Factor.Value, 3), Estimated(heat.Factor));
        Row(page, "Coldest inside surface, °C", Figures.Fixed(heat.Coldest, 1), "estimated, not proven");
        page.Append("\nFrom the section to the model:\n\n");
        foreach (var step in heat.Steps)
        {
            page.Append(CultureInfo.InvariantCulture, $"- {step}\n");
        }

        Head(page, "Conductivities", "###", "Material", "λ in the model", "λ of its own", "Known", "Confidence", "Parts");
        foreach (var one in heat.Conductivities)
        {
            Row(page, one.Material, Figures.Fixed(one.Conductivity, 3), one.Own is { } own ? Figures.Fixed(own, 3) : "–", one.Origin, one.Confidence, string.Join(", ", one.Parts));
        }

        page.Append(CultureInfo.InvariantCulture, $"\nStandard: {heat.Standard}. {heat.Caution}\n");
    }

    private static void Moisture(StringBuilder page, DetailReport report)
    {
        if (report.Physics?.Moisture is not { } moisture)
        {
            return;
        }

        page.Append("\n## Condensation and mould\n\n");
        foreach (var element in moisture.Elements)
        {
            page.Append(CultureInfo.InvariantCulture, $"- {element.Text} {element.MouldText}\n");
        }

        page.Append(CultureInfo.InvariantCulture, $"\nOutside: {moisture.Climate.Title} ({moisture.Climate.Id}), {moisture.Climate.Origin}. ");
        page.Append(CultureInfo.InvariantCulture, $"Inside: {Figures.Short(moisture.Internal.Temperature)} °C, humidity class {Figures.Count(moisture.Internal.HumidityClass)} ({moisture.Internal.HumidityClassSource}). ");
        page.Append(CultureInfo.InvariantCulture, $"Standard: {moisture.Standard}. {moisture.Caution}\n");
    }

    private static void Quantities(StringBuilder page, Worked worked, DetailReport report)
    {
        Head(page, "Quantities per metre run", "##", "Part", "Material", "Area in section m²", "Volume m³", "Mass kg", "Sheet length m");

        // Pieces of one thing, such as boards on both sides of a joint, are bought as one; JSON has each.
        foreach (var alike in (report.Quantities ?? []).GroupBy(part => (worked.Section[part.Part].Name, part.Material)))
        {
            var sheets = alike.Any(part => part.SheetLength is not null) ? Figures.Fixed(alike.Sum(part => part.SheetLength ?? 0), 3) : "–";
            Row(page, alike.Key.Name, alike.Key.Material, Number(alike.Sum(part => part.Area)), Number(alike.Sum(part => part.Volume)), Figures.Fixed(alike.Sum(part => part.Mass), 1), sheets);
        }

        page.Append("\nCounted within the modelled section, which runs on beyond the drawing.\n");
    }

    private static void Head(StringBuilder page, string title, string level, params ReadOnlySpan<string> columns)
    {
        page.Append(CultureInfo.InvariantCulture, $"\n{level} {title}\n\n");
        Row(page, columns);
        page.Append('|');
        foreach (var _ in columns)
        {
            page.Append(" --- |");
        }

        page.Append('\n');
    }

    private static void Row(StringBuilder page, params ReadOnlySpan<string> cells)
    {
        page.Append('|');
        foreach (var cell in cells)
        {
            page.Append(CultureInfo.InvariantCulture, $" {cell.Replace("|", "\\|", StringComparison.Ordinal)} |");
        }

        page.Append('\n');
    }

    private static string Number(double value) => Figures.Fixed(value, 4);

    private static string Or(string words) => words.Length == 0 ? "–" : words;
}
