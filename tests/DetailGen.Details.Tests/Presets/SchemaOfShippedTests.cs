using System.Globalization;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using DetailGen.Details.Parameters;
using DetailGen.Details.Presets;
using DetailGen.Testing;
using YamlDotNet.RepresentationModel;

namespace DetailGen.Details.Tests.Presets;

/// <summary>The schemas that editors get, held against presets by the rules of JSON schema, as far as the schemas use them.</summary>
public class SchemaOfShippedTests
{
    private const string Rest = "junction: abutment\nwall: cavity-masonry\nroof: warm-timber-deck\n";
    private static readonly JsonNode Preset = JsonNode.Parse(Schemas.Preset(Components.Load()))!;
    private static readonly JsonNode Base = JsonNode.Parse(Schemas.Base(Components.Load()))!;

    public static TheoryData<string> Shipped => [.. Directory.GetFiles(Repository.Path("presets", "details"), "*.yaml").Select(file => Path.GetFileName(file)).Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Shipped))]
    public void Every_shipped_detail_and_base_is_valid(string file)
    {
        var path = Repository.Path("presets", "details", file);
        Assert.Empty(Faults(PresetReader.IsOnlyBase(path) ? Base : Preset, File.ReadAllText(path)));
    }

    [Theory]
    [InlineData("detail: d\n" + Rest, true)]
    [InlineData(Rest, false)]
    [InlineData("detail: d\n", false)]
    [InlineData("detail: d\nextends: base.yaml\n", true)]
    [InlineData("extends: base.yaml\n", true)]
    [InlineData("detail: d\nextends: base.yaml\nwal: x\n", false)]
    [InlineData("detail: d\n" + Rest + "set: { wall.cavity: 150 }\n", false)]
    public void What_is_required_may_come_from_what_is_extended(string yaml, bool valid) => Assert.Equal(valid, Faults(Preset, yaml).Count == 0);

    [Theory]
    [InlineData("detail: d\n" + Rest + "title-block: { number: \"\", revision: \"\" }\n", true)]
    [InlineData("detail: d\n" + Rest + "title: \"\"\n", false)]
    [InlineData("detail: d\n" + Rest + "waive: { upstand-min: { reason: \"\" } }\n", false)]
    [InlineData("detail: d\n" + Rest + "target: { roof.u-value: 0.15 W/m²K, junction.psi: -0.05 }\n", true)]
    [InlineData("detail: d\n" + Rest + "target: { roof.u-value: good }\n", false)]
    [InlineData("detail: d\n" + Rest + "target: { roof.u-value: 15 }\n", false)]
    [InlineData("detail: d\n" + Rest + "target: { junction.frsi: 1.2 }\n", false)]
    public void What_the_reader_takes_is_valid_and_what_it_refuses_by_its_form_is_not(string yaml, bool valid) => Assert.Equal(valid, Faults(Preset, yaml).Count == 0);

    [Fact]
    public void A_base_needs_nothing_and_takes_no_unknown_key()
    {
        Assert.Empty(Faults(Base, "wall: cavity-masonry\n"));
        Assert.NotEmpty(Faults(Base, "wal: cavity-masonry\n"));
    }

    [Fact]
    public void Every_choice_of_every_component_is_in_the_schema()
    {
        var choices = Components.Load().All.SelectMany(component => component.Parameters).Where(parameter => parameter.Options.Count > 0).ToList();
        Assert.Contains(choices.GroupBy(parameter => parameter.Key), group => group.Select(one => string.Join(' ', one.Options)).Distinct().Count() > 1);
        Assert.All(choices, parameter => Assert.All(parameter.Options, word => Assert.Empty(Faults(Preset, $"detail: d\n{Rest}set:\n  {parameter.Key}: {word}\n"))));
        Assert.NotEmpty(Faults(Preset, $"detail: d\n{Rest}set: {{ roof.tied-to-wall: maybe }}\n"));
    }

    private static List<string> Faults(JsonNode schema, string yaml)
    {
        var stream = new YamlStream();
        stream.Load(new StringReader(yaml));
        return [.. Faults(schema, stream.Documents[0].RootNode, "")];
    }

    private static IEnumerable<string> Faults(JsonNode schema, YamlNode node, string at)
    {
        var types = schema["type"] is JsonArray several ? [.. several.Select(one => one!.GetValue<string>())] : schema["type"] is { } one ? (string[])[one.GetValue<string>()] : [];
        if (types.Length > 0 && !types.Any(type => Is(type, node)))
        {
            yield return $"{at}: not {string.Join(" or ", types)}";
        }

        if (schema["anyOf"] is JsonArray any && any.All(way => Faults(way!, node, at).Any()))
        {
            yield return $"{at}: none of anyOf";
        }

        switch (node)
        {
            case YamlMappingNode map:
                foreach (var missing in (schema["required"] as JsonArray ?? []).Select(key => key!.GetValue<string>()).Where(key => !map.Children.ContainsKey(new YamlScalarNode(key))))
                {
                    yield return $"{at}: {missing} is missing";
                }

                foreach (var (key, value) in map.Children)
                {
                    var name = ((YamlScalarNode)key).Value!;
                    var under = schema["properties"]?[name] ?? (schema["additionalProperties"] is JsonObject others ? others : null);
                    if (under is null && schema["additionalProperties"] is JsonValue)
                    {
                        yield return $"{at}: no key {name}";
                    }

                    foreach (var fault in under is null ? [] : Faults(under, value, $"{at}.{name}"))
                    {
                        yield return fault;
                    }
                }

                break;
            case YamlSequenceNode list:
                foreach (var fault in schema["items"] is { } items ? list.Children.SelectMany(item => Faults(items, item, at + "[]")) : [])
                {
                    yield return fault;
                }

                break;
            case YamlScalarNode scalar:
                var text = scalar.Value ?? "";
                if (schema["enum"] is JsonArray words && !words.Any(word => word!.ToString() == text || (word is JsonValue flag && flag.TryGetValue<bool>(out var set) && Is("boolean", node) && text == (set ? "true" : "false"))))
                {
                    yield return $"{at}: {text} is none of the words";
                }

                if (Is("string", node) && schema["pattern"] is { } pattern && !Regex.IsMatch(text, pattern.GetValue<string>()))
                {
                    yield return $"{at}: {text} is not {pattern}";
                }

                if (Is("string", node) && schema["maxLength"] is { } most && text.Length > most.GetValue<int>())
                {
                    yield return $"{at}: too long";
                }

                if (Is("string", node) && schema["minLength"] is { } least && text.Length < least.GetValue<int>())
                {
                    yield return $"{at}: too short";
                }

                if (Is("number", node) && decimal.Parse(text, CultureInfo.InvariantCulture) is var number
                    && ((schema["minimum"] is { } from && number < from.GetValue<decimal>()) || (schema["maximum"] is { } to && number > to.GetValue<decimal>())))
                {
                    yield return $"{at}: out of bounds";
                }

                break;
        }
    }

    // plain scalars as YAML 1.2 reads them
    private static bool Is(string type, YamlNode node)
    {
        var plain = node is YamlScalarNode { Style: YamlDotNet.Core.ScalarStyle.Plain } scalar ? scalar.Value ?? "" : null;
        var isNumber = plain is { Length: > 0 } && decimal.TryParse(plain, NumberStyles.Float, CultureInfo.InvariantCulture, out _);
        return type switch
        {
            "object" => node is YamlMappingNode,
            "array" => node is YamlSequenceNode,
            "null" => plain is "" or "null" or "~",
            "boolean" => plain is "true" or "false",
            "number" => isNumber,
            "integer" => isNumber && !plain!.Contains('.', StringComparison.Ordinal),
            _ => node is YamlScalarNode && !isNumber && plain is not ("" or "null" or "~" or "true" or "false"),
        };
    }
}
