using System.Collections.Immutable;
using System.Text.Json.Nodes;

namespace DetailGen.Physics.Cases;

/// <summary>What a case says about its own answer.</summary>
/// <param name="Path">Into the answer: keys with dots between; a number picks from a list, <c>*</c> collects over one.</param>
/// <param name="Value">Number, text, flag, or a list of them; null with <paramref name="IsNull"/>.</param>
/// <param name="Bounds">Rigorous limits of the true value.</param>
/// <param name="CoveredBy">Path of a stated error that must cover the difference.</param>
internal sealed record Expectation(string Path, JsonNode? Value, (double Lower, double Upper)? Bounds, double? Tolerance, string? CoveredBy, bool IsNull)
{
    private static readonly string[] Roots = ["id", "kind", "title", "result", "points", "warnings"];

    /// <summary>Reads the <c>expected</c> of a case.</summary>
    internal static ImmutableArray<Expectation> Read(Fields fields) => [.. fields.List("expected").Select(item => Read(fields, item.Item, item.Path)).OfType<Expectation>()];

    private static Expectation? Read(Fields owner, Written written, string at)
    {
        if (owner.MapOf(written, at, "path", "value", "bounds", "tolerance", "covered_by", "equals_null", "published") is not { } fields)
        {
            return null;
        }

        var path = PathOf(fields, "path") ?? (fields.Has("path") ? null : fields.Missing<string?>("path", null));
        var value = fields.At.Get("value");
        var isNull = fields.Flag("equals_null") ?? value is Written.Null;
        if (value is null && !isNull)
        {
            fields.Fault(Messages.NoCheck(at));
        }

        double[] bounds = [.. fields.List("bounds").Select(item => fields.NumberOf(item.Item, item.Path))];
        if (fields.Has("bounds") && bounds.Length != 2)
        {
            fields.Fault("bounds", Messages.Coordinates(fields.Path("bounds"), bounds.Length, "2: [lower, upper]"));
        }

        return path is null ? null : new(
            path, isNull ? null : Node(fields, value), bounds.Length == 2 ? (bounds[0], bounds[1]) : null, fields.Number("tolerance", Bound.ZeroOrMore), PathOf(fields, "covered_by"), isNull);
    }

    private static string? PathOf(Fields fields, string key)
    {
        if (fields.Words(key) is not { } path)
        {
            return null;
        }

        var steps = path.Split('.');
        if (!Roots.Contains(steps[0], StringComparer.Ordinal) || steps.Contains("", StringComparer.Ordinal))
        {
            fields.Fault(key, Messages.UnreadablePath(fields.Path(key), path));
            return null;
        }

        return path;
    }

    private static JsonNode? Node(Fields fields, Written? written) => written switch
    {
        Written.Number => JsonValue.Create(fields.NumberOf(written, fields.Path("value"))),
        Written.Words words => JsonValue.Create(words.Value),
        Written.Flag flag => JsonValue.Create(flag.Value),
        Written.List list => new JsonArray([.. list.Items.Select(item => Node(fields, item))]),
        _ => null,
    };

    /// <summary>Compares with an answer. The entry of <c>checks</c>: path, ok, got, value, bounds, tolerance.</summary>
    internal (JsonObject Entry, bool Holds) Check(JsonObject answer)
    {
        var got = Find(answer, Path.Split('.'));
        var holds = IsNull ? got is null : Holds(got, Value, answer);
        return (new()
        {
            ["path"] = Path,
            ["ok"] = holds,
            ["got"] = got?.DeepClone(),
            ["value"] = Value?.DeepClone(),
            ["bounds"] = Bounds is { } bounds ? new JsonArray(bounds.Lower, bounds.Upper) : null,
            ["tolerance"] = Tolerance,
        }, holds);
    }

    private bool Holds(JsonNode? got, JsonNode? value, JsonObject answer)
    {
        if (got is JsonArray list)
        {
            return value is JsonArray wanted && wanted.Count == list.Count && list.Zip(wanted).All(pair => Holds(pair.First, pair.Second, answer));
        }

        if (Figure(got) is not { } number || Figure(value) is not { } target)
        {
            return got is null ? value is null : JsonNode.DeepEquals(got, value);
        }

        var compared = Tolerance is not null || Bounds is not null || CoveredBy is not null;
        return compared
            ? (CoveredBy is null || Figure(Find(answer, CoveredBy.Split('.'))) is { } cover && Math.Abs(number - target) <= cover + HalfWidth)
              && (Bounds is { } bounds
                  ? number >= bounds.Lower - (Tolerance ?? 0) && number <= bounds.Upper + (Tolerance ?? 0) || Tolerance is null && CoveredBy is not null
                  : Tolerance is null || Math.Abs(number - target) <= Tolerance)
            : number == target;
    }

    private double HalfWidth => Bounds is { } bounds ? (bounds.Upper - bounds.Lower) / 2 : 0;

    private static double? Figure(JsonNode? node) => node is JsonValue value ? value.TryGetValue<double>(out var number) ? number : value.TryGetValue<int>(out var whole) ? whole : null : null;

    private static JsonNode? Find(JsonNode? node, ReadOnlySpan<string> steps)
    {
        if (steps.Length == 0 || node is null)
        {
            return node;
        }

        switch (node)
        {
            case JsonObject map:
                // A name may hold dots itself (a point called a.b), so the longest key that fits goes first.
                for (var length = steps.Length; length >= 1; length--)
                {
                    if (map.TryGetPropertyValue(string.Join('.', steps[..length]!), out var inner))
                    {
                        return Find(inner, steps[length..]);
                    }
                }

                return null;
            case JsonArray list when steps[0] == "*":
                var found = new JsonArray();
                foreach (var item in list)
                {
                    found.Add(Find(item, steps[1..])?.DeepClone());
                }

                return found;
            case JsonArray list:
                return int.TryParse(steps[0], System.Globalization.NumberStyles.None, System.Globalization.CultureInfo.InvariantCulture, out var index) && index < list.Count
                    ? Find(list[index], steps[1..])
                    : null;
            default:
                return null;
        }
    }
}
