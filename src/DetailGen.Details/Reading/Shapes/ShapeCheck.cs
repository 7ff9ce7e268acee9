using System.Globalization;
using DetailGen.Details.Quantities;

namespace DetailGen.Details.Reading.Shapes;

/// <summary>Checks a tree against its shape and tells every fault. What passes can be read without asking again.</summary>
public static class ShapeCheck
{
    /// <param name="required">False for a text that others complete.</param>
    /// <returns>In the order of the text; empty where all is well.</returns>
    public static IReadOnlyList<Diagnostic> Check(Node node, Shape shape, bool required = true)
    {
        var faults = new List<Diagnostic>();
        Check(node, shape, "", required, faults);
        return faults;
    }

    /// <summary>True where that very value has its shape.</summary>
    public static bool Holds(Node node, Shape shape) => Check(node, shape).Count == 0;

    private static void Check(Node node, Shape shape, string key, bool required, List<Diagnostic> faults)
    {
        switch (shape)
        {
            case EitherShape either:
                Either(node, either, key, required, faults);
                return;
            case MapShape or TableShape:
                if (node is MapNode map)
                {
                    Map(map, shape, key, required, faults);
                }
                else if (node is not ScalarNode { Text: "", Quoted: false } || key.Length == 0)
                {
                    faults.Add(Messages.NotMap(node.At, key, node));
                }
                else if (required && shape is MapShape { Fields: var fields })
                {
                    faults.AddRange(fields.Where(field => field.Required).Select(field => Messages.MissingKey(node.At, field.Key, key)));
                }

                return;
            case ListShape list:
                List(node, list, key, required, faults);
                return;
            default:
                if (node is not ScalarNode scalar)
                {
                    faults.Add(Messages.NotWord(node.At, key, node));
                }
                else if (ScalarFault(scalar, shape, key) is { } fault)
                {
                    faults.Add(fault);
                }

                return;
        }
    }

    private static void Map(MapNode map, Shape shape, string path, bool required, List<Diagnostic> faults)
    {
        var fields = (shape as MapShape)?.Fields;
        foreach (var entry in map.Entries)
        {
            var key = path.Length == 0 ? entry.Key : $"{path}.{entry.Key}";
            var inner = shape is TableShape table ? table.Value : fields!.FirstOrDefault(field => string.Equals(field.Key, entry.Key, StringComparison.Ordinal))?.Shape;
            if (inner is null)
            {
                faults.Add(Messages.UnknownKey(entry.KeyAt, entry.Key, path, [.. fields!.Select(field => field.Key)]));
            }
            else
            {
                Check(entry.Value, inner, shape is TableShape ? entry.Key : key, required, faults);
            }
        }

        foreach (var field in required && fields is not null ? fields.Where(field => field.Required && map[field.Key] is null) : [])
        {
            faults.Add(Messages.MissingKey(map.At, field.Key, path));
        }
    }

    private static void List(Node node, ListShape shape, string key, bool required, List<Diagnostic> faults)
    {
        if (node is not ListNode list)
        {
            faults.Add(Messages.NotList(node.At, key, node));
            return;
        }

        if (list.Items.Count < shape.Least)
        {
            faults.Add(Messages.TooFew(list.At, key, shape.Least));
        }

        foreach (var item in list.Items)
        {
            Check(item, shape.Item, key, required, faults);
        }
    }

    private static void Either(Node node, EitherShape either, string key, bool required, List<Diagnostic> faults)
    {
        var fitting = either.Shapes.FirstOrDefault(shape => shape switch
        {
            MapShape or TableShape => node is MapNode,
            ListShape => node is ListNode,
            _ => node is ScalarNode,
        });
        Check(node, fitting ?? either.Shapes[0], key, required, faults);
    }

    private static Diagnostic? ScalarFault(ScalarNode node, Shape shape, string key)
    {
        var (text, at) = (node.Text, node.At);
        return shape switch
        {
            TextShape { Blank: true } when text.Length == 0 => null,
            _ when string.IsNullOrWhiteSpace(text) => Messages.NoValue(at, key),
            WordShape words => words.Words.Contains(text, StringComparer.Ordinal) ? null : Messages.UnknownChoice(at, key, text, words.Words),
            FlagShape => text is "true" or "false" ? null : Messages.NotFlag(at, key, text),
            DateShape => DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out _) ? null : Messages.NotDate(at, key, text),
            TextShape limits => TextFault(limits, text, at, key),
            NumberShape number => NumberFault(number, text, at, key),
            QuantityShape quantity => QuantityFaultOf(quantity, text, at, key),
            SettingShape setting => SettingReader.Read(text, at, key, setting.Unit, setting.Options) is { IsGood: false } bad ? bad.Faults[0] : null,
            _ => text.Length > 2000 ? Messages.TooLong(at, key, text, 2000) : null,
        };
    }

    private static Diagnostic? TextFault(TextShape shape, string text, Mark at, string key) =>
        text.Length > shape.MaxLength ? Messages.TooLong(at, key, text, shape.MaxLength)
        : text.Any(char.IsControl) ? Messages.ControlInText(at, key)
        : shape.Pattern is { } pattern && !pattern.IsMatch(text) ? Messages.BadText(at, key, text, shape.Asked!)
        : null;

    private static Diagnostic? NumberFault(NumberShape shape, string text, Mark at, string key)
    {
        if (QuantityReader.Read(text, out var fault) is not { } quantity)
        {
            return Messages.NotNumber(at, key, text, fault);
        }

        return quantity.Kind != QuantityKind.Bare || (shape.Whole && !decimal.IsInteger(quantity.Number)) ? Messages.NotNumber(at, key, text, QuantityFault.Unit)
            : quantity.Number < shape.Least || quantity.Number > shape.Most ? Messages.NumberOutside(at, key, text, shape.Least, shape.Most)
            : null;
    }

    private static Diagnostic? QuantityFaultOf(QuantityShape shape, string text, Mark at, string key)
    {
        if (QuantityReader.Read(text, out var fault) is not { } quantity)
        {
            return Messages.BadQuantity(at, key, text, shape.Kind, fault);
        }

        return quantity.Kind != shape.Kind && !(shape.BareToo && quantity.Kind == QuantityKind.Bare) ? Messages.WrongKind(at, key, text, shape.Kind, quantity, shape.Shown)
            : shape is { Least: { } least, Most: { } most } && (quantity.Number < least || quantity.Number > most)
                ? shape.BareToo ? Messages.NumberOutside(at, key, text, least, most) : Messages.QuantityOutside(at, key, text, shape.Kind, least, most)
            : null;
    }
}
