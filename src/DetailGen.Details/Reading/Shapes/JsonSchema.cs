using System.Text;
using System.Text.Json;
using DetailGen.Details.Quantities;

namespace DetailGen.Details.Reading.Shapes;

/// <summary>Writes a shape as JSON schema, draft 2020-12, so that an editor tells faults while one writes.</summary>
public static class JsonSchema
{
    private const string Decimal = @"-?[0-9]+(\.[0-9]+)?";

    public static string Of(string title, Shape shape)
    {
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream, new JsonWriterOptions { Indented = true, NewLine = "\n", Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping }))
        {
            json.WriteStartObject();
            json.WriteString("$schema", "https://json-schema.org/draft/2020-12/schema");
            json.WriteString("title", title);
            Write(json, shape);
            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(stream.ToArray()) + "\n";
    }

    // writes the members of an object that is already open
    private static void Write(Utf8JsonWriter json, Shape shape)
    {
        switch (shape)
        {
            case MapShape map:
                Map(json, map.Fields, closed: true, null, map.Instead);
                break;
            case TableShape { Known: { } known }:
                Map(json, known, closed: true, null);
                break;
            case TableShape table:
                Map(json, [], closed: false, table.Value);
                break;
            case ListShape list:
                json.WriteString("type", "array");
                if (list.Least > 0)
                {
                    json.WriteNumber("minItems", list.Least);
                }

                Under(json, "items", list.Item);
                break;
            case EitherShape either:
                json.WriteStartArray("anyOf");
                foreach (var one in either.Shapes)
                {
                    json.WriteStartObject();
                    Write(json, one);
                    json.WriteEndObject();
                }

                json.WriteEndArray();
                break;
            default:
                Scalar(json, shape);
                break;
        }
    }

    private static void Map(Utf8JsonWriter json, IReadOnlyList<Field> fields, bool closed, Shape? others, string? instead = null)
    {
        Types(json, "object", "null"); // "set:" with nothing under it is no fault
        if (fields.Count > 0)
        {
            json.WriteStartObject("properties");
            foreach (var field in fields)
            {
                json.WriteStartObject(field.Key);
                json.WriteString("description", field.Meaning);
                Write(json, field.Shape);
                json.WriteEndObject();
            }

            json.WriteEndObject();
        }

        if (closed)
        {
            json.WriteBoolean("additionalProperties", false);
        }
        else if (others is not null)
        {
            Under(json, "additionalProperties", others);
        }

        List<string> required = [.. fields.Where(field => field.Required).Select(field => field.Key)];
        if (required.Count > 0 && instead is not null)
        {
            json.WriteStartArray("anyOf");
            foreach (var keys in (List<string>[])[[instead], required])
            {
                json.WriteStartObject();
                Required(json, keys);
                json.WriteEndObject();
            }

            json.WriteEndArray();
        }
        else if (required.Count > 0)
        {
            Required(json, required);
        }
    }

    private static void Required(Utf8JsonWriter json, List<string> keys)
    {
        json.WriteStartArray("required");
        foreach (var key in keys)
        {
            json.WriteStringValue(key);
        }

        json.WriteEndArray();
    }

    private static void Scalar(Utf8JsonWriter json, Shape shape)
    {
        switch (shape)
        {
            case TextShape text:
                // an editor reads 0101 or 2026 as a number; the reader takes every scalar as its text
                Types(json, "string", "number", "boolean");
                json.WriteNumber("maxLength", text.MaxLength);
                if (text.Pattern is { } pattern)
                {
                    var plain = pattern.ToString().Replace("\\z", "$", StringComparison.Ordinal);
                    json.WriteString("pattern", text.Blank ? $"^$|{plain}" : plain);
                }
                else if (!text.Blank)
                {
                    json.WriteString("pattern", "\\S"); // blanks alone say nothing
                }

                break;
            case WordShape words:
                Words(json, words.Words);
                break;
            case SettingShape { Unit: Unit.Choice } choice:
                Words(json, choice.Options);
                break;
            case SettingShape { Unit: Unit.Count }:
                json.WriteString("type", "integer");
                break;
            case SettingShape { Unit: Unit.Length }:
                Pattern(json, $@"^{Decimal} *(mm|cm|m|µm|um)$");
                break;
            case SettingShape:
                Pattern(json, $@"^(1 *: *[0-9]+|{Decimal} *(°|deg|degrees))$");
                break;
            case NumberShape number:
                json.WriteString("type", number.Whole ? "integer" : "number");
                json.WriteNumber("minimum", number.Least);
                json.WriteNumber("maximum", number.Most);
                break;
            case FlagShape:
                json.WriteString("type", "boolean");
                break;
            case DateShape:
                Pattern(json, "^[0-9]{4}-[0-9]{2}-[0-9]{2}$");
                break;
            case QuantityShape quantity:
                Quantity(json, quantity);
                break;
            default:
                Types(json, "string", "number");
                break;
        }
    }

    // the bounds of a written unit are told by the reader alone: a pattern cannot compare
    private static void Quantity(Utf8JsonWriter json, QuantityShape quantity)
    {
        if (!quantity.BareToo)
        {
            Pattern(json, $@"^{Decimal} *[^0-9 ].*$");
            return;
        }

        Types(json, "string", "number");
        json.WriteString("pattern", $@"^{Decimal}( *[^0-9 ].*)?$");
        if (quantity is { Least: { } least, Most: { } most })
        {
            json.WriteNumber("minimum", least);
            json.WriteNumber("maximum", most);
        }
    }

    private static void Words(Utf8JsonWriter json, IReadOnlyList<string> words)
    {
        json.WriteStartArray("enum");
        foreach (var word in words)
        {
            json.WriteStringValue(word);
            if (int.TryParse(word, System.Globalization.CultureInfo.InvariantCulture, out var number))
            {
                json.WriteNumberValue(number); // 2021 without quotation marks
            }
            else if (word is "yes" or "no")
            {
                json.WriteBooleanValue(word == "yes"); // an editor of the older YAML takes the word as true or false
            }
        }

        json.WriteEndArray();
    }

    private static void Pattern(Utf8JsonWriter json, string pattern)
    {
        json.WriteString("type", "string");
        json.WriteString("pattern", pattern);
    }

    private static void Types(Utf8JsonWriter json, params IReadOnlyList<string> types)
    {
        json.WriteStartArray("type");
        foreach (var type in types)
        {
            json.WriteStringValue(type);
        }

        json.WriteEndArray();
    }

    private static void Under(Utf8JsonWriter json, string key, Shape shape)
    {
        json.WriteStartObject(key);
        Write(json, shape);
        json.WriteEndObject();
    }
}
