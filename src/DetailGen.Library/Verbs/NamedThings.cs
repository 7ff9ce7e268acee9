using System.Globalization;
using DetailGen.Details.Parameters;
using DetailGen.Details.Presets;
using DetailGen.Details.Quantities;
using DetailGen.Details.Solving;
using DetailGen.Library.Reports;
using DetailGen.Library.Working;

namespace DetailGen.Library.Verbs;

/// <summary>
/// Explains the other names that reports print: what stops a range or clashes (equations, <c>domain.KEY</c>, <c>stock.KEY</c>), targets, conditions that switch rules, slots of materials.
/// None of them needs sizes that hold together.
/// </summary>
internal static class NamedThings
{
    /// <summary>The key behind the word by which a conflict or a stop tells its kind: <c>given.wall.cavity</c> is of <c>wall.cavity</c>.</summary>
    internal static string Key(string subject) => subject.Split('.', 2) is ["given", var key] ? key : subject;

    /// <returns>Kind and explanation; null where nothing of this detail has the name.</returns>
    internal static (string Kind, ExplainedReport Told)? Find(string subject, Preset preset, Worked? worked, Office office)
    {
        var key = Key(subject);
        if (preset.Components.SelectMany(component => component.Claims).FirstOrDefault(claim => claim.Id == key) is { } claim)
        {
            return ("equation", Equation(claim));
        }

        switch (key.Split('.', 2))
        {
            case ["domain", var limited] when Parameter(preset, limited) is { } parameter:
                return ("domain", new(subject, $"{subject}: how far {limited} goes", [parameter.Meaning, Extent(parameter)], [Source(parameter.Source)]));
            case ["stock", var sold] when Parameter(preset, sold) is { } parameter && DetailSolver.Stock(preset, office.Catalogue, sold) is { Count: > 0 } sizes:
                return ("stock", new(subject, $"{subject}: what {sold} is sold in", [parameter.Meaning, $"It is sold in {Listed(sizes.Select(size => Setting.Numeric(parameter.Unit, size)))}."], []));
        }

        var target = key.StartsWith("target.", StringComparison.Ordinal) ? key["target.".Length..] : key;
        if (PresetShape.Targets.FirstOrDefault(one => one.Key == target) is { } known)
        {
            return ("target", Target(known, preset, worked));
        }

        if (preset.Conditions.FirstOrDefault(condition => condition.Key == key) is { } condition)
        {
            return ("condition", new(key, $"{key} = {condition.Word}",
                [condition.At is null ? "The usual word; the preset says nothing else." : "Written in the preset.", "It decides which rules apply.", $"It can be {Listed(PresetShape.Conditions.First(one => one.Key == key).Words)}."], []));
        }

        var slot = key.StartsWith("materials.", StringComparison.Ordinal) ? key["materials.".Length..] : key;
        return slot == key && Parameter(preset, key) is { } unsolved ? ("parameter", new(key, key, Unsolved(unsolved), [Source(unsolved.Source)]))
            : preset.Slots.FirstOrDefault(one => one.Slot.Key == slot) is { } filled ? ("material", Material(filled))
            : preset.Components.SelectMany(component => component.Derived).FirstOrDefault(one => one.Key == key) is { } derived ? ("parameter", Equation(derived))
            : null;
    }

    private static List<string> Unsolved(Parameter parameter) =>
        [parameter.Meaning, Extent(parameter), .. parameter.When is { } when ? [$"It is there only when {when}."] : Array.Empty<string>()];

    private static ExplainedReport Equation(Derived derived) => new(
        derived.Key, derived.Key, [derived.Meaning, .. derived.Cases.Select(one => $"It follows from {one.As}{(one.When is { } when ? $" when {when}" : "")}.")], []);

    private static Parameter? Parameter(Preset preset, string key) =>
        preset.Components.SelectMany(component => component.Parameters).FirstOrDefault(parameter => parameter.Key == key);

    private static ExplainedReport Equation(Claim claim) => new(
        claim.Id, $"{claim.Id}: how the parts fit",
        [claim.Reason, $"It asks: {claim.Require}.", claim.When is { } when ? $"Only when {when}." : "Always.", "No rule of the trade: without it the parts could not be made or placed."], []);

    private static string Extent(Parameter parameter) => parameter.Domain is { } domain
        ? $"The tool takes {Setting.Numeric(parameter.Unit, domain.From)} to {Setting.Numeric(parameter.Unit, domain.To)}{(parameter.Unit == Unit.Length ? $", in steps of {Setting.Numeric(parameter.Unit, domain.Step)}" : "")}."
        : $"It can be {Listed(parameter.Options)}.";

    private static ExplainedReport Target(TargetKey known, Preset preset, Worked? worked)
    {
        List<string> text = [known.Meaning];
        text.Add(preset.Targets.FirstOrDefault(target => target.Key == known.Key) is { } asked ? $"Asked for: {asked.Value.ToString(CultureInfo.InvariantCulture)}." : "The preset asks for none; write it under target: to have it met.");
        var element = worked?.Buildups.FirstOrDefault(one => one.Buildup.Id + ".u-value" == known.Key);
        if (element is not null)
        {
            text.Add($"Here: {element.UValue.ToString("0.000", CultureInfo.InvariantCulture)} W/m²K, of plain layers without bridging (ISO 6946).");
        }
        else if (known.IsSimulated)
        {
            text.Add("The verb heat simulates it.");
        }

        return new(known.Key, known.Key, text, []);
    }

    private static ExplainedReport Material(FilledSlot filled)
    {
        var material = filled.Material;
        List<string> text =
        [
            $"{filled.Slot.Name}: {material.Name}{(filled.At is null ? ", the usual one" : ", named in the preset")}.",
            material.Conductivity is { } conductivity ? $"Conductivity {conductivity.ToString("0.####", CultureInfo.InvariantCulture)} W/mK, {material.Origin}; density {material.Density.ToString("0.##", CultureInfo.InvariantCulture)} kg/m³." : "Air: what it conducts hangs on its thickness.",
            $"The slot takes {Listed(filled.Slot.Kinds)}; write another under materials:.",
            .. filled.Slot.When is { } when ? [$"It is there only when {when}."] : Array.Empty<string>(),
        ];
        return new(filled.Slot.Key, $"{filled.Slot.Key} of {material.Id}", text, [Source(filled.Filling.Source)]);
    }

    private static string Listed<T>(IEnumerable<T> items) => string.Join(", ", items);

    private static string Source(Source source) => $"{source.Document}{(source.Clause is { } clause ? $", {clause}" : "")}{(source.Confidence == "memory" ? " (from memory)" : "")}";
}
