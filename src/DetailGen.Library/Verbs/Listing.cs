using System.Globalization;
using DetailGen.Details.Climates;
using DetailGen.Details.Parameters;
using DetailGen.Details.Quantities;
using DetailGen.Details.Reading;
using DetailGen.Details.Reading.Shapes;
using DetailGen.Details.Rules;
using DetailGen.Library.Reports;
using DetailGen.Library.Working;

namespace DetailGen.Library.Verbs;

/// <summary>What there is, topic by topic.</summary>
internal static class Listing
{
    private static readonly SortedDictionary<string, (string[] Columns, Func<Office, IEnumerable<Dictionary<string, object?>>> Rows)> All = new(StringComparer.Ordinal)
    {
        ["climates"] = (["id", "title", "origin", "usual_for", "source"], Climates),
        ["constructions"] = (["id", "kind", "title"], office => Components(office, ComponentKind.Wall).Concat(Components(office, ComponentKind.Roof))),
        ["details"] = (["file", "detail", "title"], _ => ShippedDetails()),
        ["faults"] = (["code", "of", "meaning"], _ => ErrorCodes.All.Select(one => new Dictionary<string, object?> { ["code"] = one.Code, ["of"] = one.Of, ["meaning"] = one.Meaning })),
        ["junctions"] = (["id", "title"], office => Components(office, ComponentKind.Junction)),
        ["layers"] = (["row", "name", "width", "line_type", "ink"], Layers),
        ["materials"] = (["id", "name", "kind", "lambda_w_mk", "origin", "fill"], Materials),
        ["parameters"] = (["key", "unit", "from", "to", "default", "meaning"], Parameters),
        ["roofs"] = (["id", "title"], office => Components(office, ComponentKind.Roof)),
        ["rules"] = (["id", "class", "severity", "confidence", "text"], Rules),
        ["stock"] = (["id", "force", "sizes", "meaning"], Stock),
        ["walls"] = (["id", "title"], office => Components(office, ComponentKind.Wall)),
    };

    internal static IReadOnlyList<string> Topics { get; } = [.. All.Keys];

    internal static ListReport Of(string topic, Office office) =>
        All.TryGetValue(topic, out var list)
            ? new(topic, list.Columns, [.. list.Rows(office)]) { Further = [.. Further(topic, office)] }
            : new(topic, [], []) { Errors = [ErrorReport.Of("unknown-topic", "", Messages.UnknownTopic(topic), Messages.Meant(topic, Topics), value: topic)], Status = ExitStatus.WrongInput };

    private static IEnumerable<Dictionary<string, object?>> Components(Office office, ComponentKind kind) =>
        office.Context.Components.All.Where(component => component.Kind == kind)
            .Select(component => new Dictionary<string, object?> { ["id"] = component.Id, ["kind"] = kind.ToString().ToLowerInvariant(), ["title"] = component.Title });

    // those of a practice lie where it keeps them; a base names no detail
    private static IEnumerable<Dictionary<string, object?>> ShippedDetails() =>
        from file in Shelf.Shipped.Under("presets/details/")
        let preset = file.Read().Root as MapNode
        where preset?.Text("detail") is not null
        select new Dictionary<string, object?>
        {
            ["file"] = file.Name,
            ["detail"] = preset.Text("detail"),
            ["title"] = preset.Text("title"),
            ["junction"] = preset.Text("junction"),
            ["wall"] = preset.Text("wall"),
            ["roof"] = preset.Text("roof"),
        };

    private static IEnumerable<Dictionary<string, object?>> Climates(Office office) => office.Context.Climates.All.Select(climate => new Dictionary<string, object?>
    {
        ["id"] = climate.Id,
        ["title"] = climate.Title,
        ["origin"] = climate.Origin,
        ["usual_for"] = climate.UsualFor,
        ["months"] = climate.Months.Select((month, at) => new Dictionary<string, object?>
        {
            ["month"] = ClimateShape.Months[at],
            ["temperature_c"] = month.Temperature,
            ["humidity"] = month.Humidity,
            ["vapour_pressure_pa"] = month.VapourPressure,
        }).ToList(),
        ["source"] = climate.Source.Document,
        ["confidence"] = climate.Source.Confidence,
    });

    private static IEnumerable<Dictionary<string, object?>> Layers(Office office) => office.Sheets.Layers.Select(layer => new Dictionary<string, object?>
    {
        ["row"] = layer.Row,
        ["name"] = layer.Name,
        ["width"] = layer.Width,
        ["width_on_a1"] = layer.WidthOnA1,
        ["line_type"] = layer.LineType,
        ["ink"] = layer.Ink,
        ["plotted"] = layer.Plotted,
        ["holds"] = layer.Holds,
    });

    private static IEnumerable<Dictionary<string, object?>> Materials(Office office) => office.Materials.All.Select(material => new Dictionary<string, object?>
    {
        ["id"] = material.Id,
        ["name"] = material.Material.Name,
        ["kind"] = material.Material.Kind,
        ["lambda_w_mk"] = material.Material.Conductivity,
        ["density_kg_m3"] = material.Material.Density,
        ["origin"] = material.Material.Origin,
        ["fill"] = material.Material.Fill,
        ["layer"] = material.Material.LayerCode,
        ["mu_dry"] = material.Material.Vapour!.MuDry,
        ["mu_wet"] = material.Material.Vapour.MuWet,
        ["sd_m"] = material.Material.Vapour.Sd,
        ["vapour_confidence"] = material.Material.Vapour.Confidence,
        ["specific_heat_j_kgk"] = material.SpecificHeat,
        ["fire"] = material.Fire,
        ["lambda_confidence"] = material.Confidence.Conductivity,
        ["density_confidence"] = material.Confidence.Density,
        ["specific_heat_confidence"] = material.Confidence.SpecificHeat,
        ["fire_confidence"] = material.Confidence.Fire,
    });

    private static IEnumerable<Dictionary<string, object?>> Parameters(Office office) =>
        from component in office.Context.Components.All
        from parameter in component.Parameters
        select new Dictionary<string, object?>
        {
            ["key"] = parameter.Key,
            ["component"] = component.Id,
            ["unit"] = parameter.Unit.ToString().ToLowerInvariant(),
            ["from"] = Size(parameter, parameter.Domain?.From),
            ["to"] = Size(parameter, parameter.Domain?.To),
            ["step"] = parameter.Unit is Unit.Ratio ? Number(parameter.Domain?.Step) : Size(parameter, parameter.Domain?.Step), // of the n in 1:n
            ["options"] = parameter.Options,
            ["stock"] = StockOf(parameter),
            ["default"] = parameter.Default?.ToString(),
            ["when"] = parameter.When?.Text,
            ["meaning"] = parameter.Meaning,
            ["source"] = parameter.Source.Clause is { } clause ? $"{parameter.Source.Document}, {clause}" : parameter.Source.Document,
            ["confidence"] = parameter.Source.Confidence,
        };

    private static IEnumerable<Dictionary<string, object?>> Rules(Office office) =>
        from pack in office.Catalogue.Packs
        from rule in pack.Rules
        select new Dictionary<string, object?>
        {
            ["id"] = rule.Id,
            ["name"] = rule.Heading,
            ["aliases"] = rule.Aliases,
            ["pack"] = pack.Name,
            ["class"] = SolvedReporting.Class(rule.Class),
            ["severity"] = SolvedReporting.Word(rule.Severity),
            ["blocks"] = rule.Blocks,
            ["confidence"] = rule.Source.Confidence,
            ["read_kind"] = rule.Source.ReadKind,
            ["document"] = rule.Source.Document,
            ["clause"] = rule.Source.Clause,
            ["source"] = rule.SourceText,
            ["when"] = rule.When?.ToString(),
            ["require"] = rule.Require?.ToString(),
            ["confirm"] = rule.Confirm,
            ["awaits"] = rule.Awaits,
            ["text"] = rule.Text,
            ["reason"] = rule.Reason,
            ["ask"] = rule.Ask,
            ["breakable"] = rule.Class == RuleClass.Enforced && rule.Unbreakable is null,
            ["unbreakable"] = rule.Unbreakable,
            ["corrected"] = rule.Corrected,
            ["relaxes"] = rule.Relaxes,
            ["disagreements"] = SolvedReporting.Disagreements(rule, office.Catalogue.Packs),
        };

    private static IEnumerable<(string Key, object? Value)> Further(string topic, Office office)
    {
        if (topic != "rules")
        {
            yield break;
        }

        var packs = office.Catalogue.Packs;
        List<Rule> rules = [.. packs.SelectMany(pack => pack.Rules)];
        yield return ("counts", new Dictionary<string, object?>
        {
            ["total"] = rules.Count,
            ["enforced"] = rules.Count(rule => rule.Class == RuleClass.Enforced),
            ["to-confirm"] = rules.Count(rule => rule.Class == RuleClass.ToConfirm),
            ["dormant"] = rules.Count(rule => rule.Class == RuleClass.Dormant),
            ["breakable"] = rules.Count(rule => rule.Class == RuleClass.Enforced && rule.Unbreakable is null),
            ["aliases"] = rules.Sum(rule => rule.Aliases.Count),
            ["steers"] = packs.Sum(pack => pack.Head!.Steers.Count),
        });
        yield return ("packs", packs.Select(pack => new Dictionary<string, object?>
        {
            ["name"] = pack.Name,
            ["title"] = pack.Head!.Title,
            ["version"] = pack.Head.Version,
            ["date"] = pack.Head.Date,
            ["extends"] = pack.Head.Extends?.Text,
            ["foremost"] = pack.Head.Foremost.Select(named => named.Text).ToList(),
            ["rules"] = pack.Rules.Count,
        }).ToList());
        yield return ("steers", packs.SelectMany(pack => pack.Head!.Steers, (pack, steer) => new Dictionary<string, object?>
        {
            ["id"] = steer.Id,
            ["pack"] = pack.Name,
            ["role"] = steer.Role,
            ["text"] = steer.Text,
            ["rules"] = steer.Rules,
            ["how"] = steer.How,
            ["source"] = steer.Source.Clause is { } clause ? $"{steer.Source.Document}, {clause}" : steer.Source.Document,
            ["confidence"] = steer.Source.Confidence,
        }).ToList());
        yield return ("disagreements", packs.SelectMany(pack => pack.Head!.Disagreements, (pack, one) => new Dictionary<string, object?>
        {
            ["id"] = one.Id,
            ["pack"] = pack.Name,
            ["topic"] = one.Topic,
            ["text"] = one.Text,
            ["rules"] = one.Rules,
        }).ToList());
    }

    private static IEnumerable<Dictionary<string, object?>> Stock(Office office) => office.Stock.All.Select(stock => new Dictionary<string, object?>
    {
        ["id"] = stock.Id,
        ["force"] = stock.Force.ToString().ToLowerInvariant(),
        ["sizes"] = stock.Sizes.Select(size => string.Join(" × ", size.Measures.Select(measure => Setting.Numeric(stock.Unit, measure).ToString()))).ToList(),
        ["meaning"] = stock.Meaning,
        ["confidence"] = stock.Source.Confidence,
    });

    // one class, or one for each material of the slot
    private static IReadOnlyList<string> StockOf(Parameter parameter) =>
        [.. new[] { parameter.Stock }.OfType<string>().Concat(parameter.StockByMaterial.Select(one => one.Stock)).Distinct(StringComparer.Ordinal)];

    private static string? Number(long? number) => number?.ToString(CultureInfo.InvariantCulture);

    private static string? Size(Parameter parameter, long? number) => number is { } some ? Setting.Numeric(parameter.Unit, some).ToString() : null;
}
