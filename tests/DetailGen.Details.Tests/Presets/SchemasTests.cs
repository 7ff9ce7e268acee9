using System.Text.Json;
using DetailGen.Details.Parameters;
using DetailGen.Details.Presets;

namespace DetailGen.Details.Tests.Presets;

public class SchemasTests
{
    [Fact]
    public void The_schema_of_presets_names_every_parameter_with_its_form()
    {
        using var schema = JsonDocument.Parse(Schemas.Preset(SmallComponents.Context.Components));
        var properties = schema.RootElement.GetProperty("properties");
        Assert.Equal("https://json-schema.org/draft/2020-12/schema", schema.RootElement.GetProperty("$schema").GetString());
        Assert.Equal(["detail", "junction", "wall", "roof"], schema.RootElement.GetProperty("anyOf")[1].GetProperty("required").EnumerateArray().Select(item => item.GetString()!));
        var set = properties.GetProperty("set").GetProperty("properties");
        Assert.Equal(["coping.overhang", "flashing.lap", "roof.fall", "roof.insulation-layers", "wall.cavity", "wall.fill"], set.EnumerateObject().Select(item => item.Name));
        Assert.Equal(["full", "partial"], set.GetProperty("wall.fill").GetProperty("enum").EnumerateArray().Select(item => item.GetString()!));
        Assert.Matches(set.GetProperty("wall.cavity").GetProperty("pattern").GetString()!, "102.5 mm");
        Assert.DoesNotMatch(set.GetProperty("wall.cavity").GetProperty("pattern").GetString()!, "102.5");
        Assert.Equal(["abutment", "parapet"], properties.GetProperty("junction").GetProperty("enum").EnumerateArray().Select(item => item.GetString()!));
    }

    [Fact]
    public void Every_schema_is_json_and_closed() => Assert.All(
        (string[])[Schemas.Component, Schemas.Materials, Schemas.Stock, Schemas.Rules, Schemas.Layers, Schemas.Inks, Schemas.Formats, Schemas.TextSizes, Schemas.Preset(Components.Load())], text =>
        {
            using var schema = JsonDocument.Parse(text);
            Assert.Contains("\"additionalProperties\": false", text);
            Assert.DoesNotContain("\r", text);
        });
}
