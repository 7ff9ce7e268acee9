using System.Globalization;
using System.Text;
using DetailGen.Details.Parameters;
using DetailGen.Details.Quantities;
using DetailGen.Details.Reading;

namespace DetailGen.Details.Presets;

/// <summary>
/// Writes a commented preset to start from: what must be there stands, what may be there is commented out with its meaning, range and the value that it has anyway,
/// so that every line can be used alone. What is there only with other choices has a second # before it.
/// </summary>
public static class Starter
{
    /// <param name="detail">Id of the detail to be.</param>
    /// <param name="taken">What the detail takes where nothing is said: values by key, materials under <c>materials.SLOT</c>, U-values under <c>target.KEY</c>; null where it is not known.</param>
    /// <returns>YAML that reads without a fault as it is.</returns>
    public static string Write(Component junction, Component wall, Component roof, string detail, IReadOnlyDictionary<string, string>? taken = null)
    {
        var text = new StringBuilder();
        Line(text, $"# {junction.Title}, {wall.Title}, {roof.Title}");
        Line(text, "# Fix what matters under set; everything else is solved. Take the # away from a line to use it: it says what the tool would take anyway.");
        Line(text, "# A line with ## needs another choice first, which it names.");
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
                Line(text, $"  {Mark(parameter.Key, taken)} {parameter.Key}: {taken?.GetValueOrDefault(parameter.Key) ?? Example(parameter)}  # {About(parameter)}");
            }
        }

        Line(text, "prefer:  # wishes, with the same keys; given up before a must or should rule is broken");
        Line(text, "target:");
        foreach (var target in PresetShape.Targets)
        {
            var value = taken?.GetValueOrDefault("target." + target.Key) ?? target.Example.ToString(CultureInfo.InvariantCulture);
            Line(text, $"  # {target.Key}: {value}  # {target.Meaning}");
        }

        Line(text, "materials:  # swaps the material of a slot");
        foreach (var slots in new[] { wall, roof, junction }.SelectMany(component => component.Slots).GroupBy(slot => slot.Key, StringComparer.Ordinal))
        {
            // a slot may stand there several times, each under its own condition
            var (key, slot) = ("materials." + slots.Key, slots.First());
            var kinds = string.Join(", ", slots.SelectMany(one => one.Kinds).Distinct(StringComparer.Ordinal));
            Line(text, $"  {Mark(key, taken)} {slots.Key}: {taken?.GetValueOrDefault(key) ?? slot.Default}  # {slot.Name}; takes {kinds}{Only(slots.Count() == 1 ? slot.When : null)}");
        }

        Line(text, "rules: [uk]");
        Line(text, "# sheet: { paper: A3, scale: \"1:10\" }  # leave out what the tool shall choose");
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
        return $"{range}{Only(parameter.When)}. {parameter.Meaning}";
    }

    private static string Only(Written? when) => when is null ? "" : $", only when {when}";

    private static string Mark(string key, IReadOnlyDictionary<string, string>? taken) => taken is null || taken.ContainsKey(key) ? "#" : "##";

    private static void Line(StringBuilder text, string line) => text.Append(line).Append('\n');
}
