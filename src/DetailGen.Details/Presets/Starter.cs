using System.Text;
using DetailGen.Details.Parameters;
using DetailGen.Details.Quantities;

namespace DetailGen.Details.Presets;

/// <summary>Writes a commented preset to start from: what must be there stands, what may be there is commented out with its meaning, range and usual value.</summary>
public static class Starter
{
    /// <param name="detail">Id of the detail to be.</param>
    /// <returns>YAML that reads without a fault as it is.</returns>
    public static string Write(Component junction, Component wall, Component roof, string detail)
    {
        var text = new StringBuilder();
        Line(text, $"# {junction.Title}, {wall.Title}, {roof.Title}");
        Line(text, "# Fix what matters under set; everything else is solved. Take the # away from a line to use it.");
        Line(text, $"detail: {detail}");
        Line(text, $"junction: {junction.Id}");
        Line(text, $"wall: {wall.Id}");
        Line(text, $"roof: {roof.Id}");
        foreach (var group in PresetShape.Conditions.GroupBy(item => item.Key[..item.Key.IndexOf('.')], StringComparer.Ordinal))
        {
            Line(text, $"{group.Key}:");
            foreach (var item in group)
            {
                Line(text, $"  {item.Key[(group.Key.Length + 1)..]}: {item.Words[0]}  # {string.Join(", ", item.Words)}");
            }
        }

        Line(text, "set:");
        foreach (var component in new[] { wall, roof, junction })
        {
            Line(text, $"  # {component.Title}");
            foreach (var parameter in component.Parameters)
            {
                Line(text, $"  # {parameter.Key}: {Example(parameter)}  # {About(parameter)}");
            }
        }

        Line(text, "# prefer: {}  # wishes, with the same keys; given up before a rule is broken");
        Line(text, "# target:");
        foreach (var target in PresetShape.Targets)
        {
            Line(text, $"#   {target.Key}: {(target.Key.EndsWith("u-value", StringComparison.Ordinal) ? "0.15" : target.Key == "junction.frsi" ? "0.75" : "0.10")}  # {target.Meaning}");
        }

        Line(text, "# materials:  # swaps the material of a slot");
        foreach (var slot in new[] { wall, roof, junction }.SelectMany(component => component.Slots))
        {
            Line(text, $"#   {slot.Key}: {slot.Default}  # {slot.Name}; takes {string.Join(", ", slot.Kinds)}");
        }

        Line(text, "rules: [uk]");
        Line(text, "# sheet: { paper: A3, scale: 1:10 }  # leave out what the tool shall choose");
        Line(text, "# title-block: { owner: , project: , number: , revision: P01, status: S0, date: 2026-11-25, drawn: , checked: , approved: }");
        return text.ToString();
    }

    private static string Example(Parameter parameter) => (parameter.Default
        ?? (parameter.Domain is { } domain ? Setting.Numeric(parameter.Unit, domain.From) : Setting.Choice(parameter.Options[0]))).ToString();

    private static string About(Parameter parameter)
    {
        var range = parameter.Domain is { } domain
            ? $"{Setting.Numeric(parameter.Unit, domain.From)} to {Setting.Numeric(parameter.Unit, domain.To)}"
            : string.Join(", ", parameter.Options);
        return $"{range}{(parameter.When is { } when ? $", only when {when}" : "")}. {parameter.Meaning}";
    }

    private static void Line(StringBuilder text, string line) => text.Append(line).Append('\n');
}
