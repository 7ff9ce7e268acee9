using DetailGen.Details.Parameters;
using DetailGen.Details.Reading;
using DetailGen.Details.Rules;
using DetailGen.Details.Rules.Language;
using DetailGen.Sections;

namespace DetailGen.Details.Solving;

/// <summary>A layer of a construction as the calculation of resistance sees it.</summary>
/// <param name="When">Null for always.</param>
/// <param name="AirBetween">The slot holds the members of a bridged layer; between them is air, which conducts more, and that is what counts.</param>
internal sealed record ResistanceLayer(string Slot, Expression Thickness, LayerKind? Kind, Expression? When, bool AirBetween = false)
{
    /// <summary>Keys of width and centres of what stands in an air layer all over, such as dabs; null for nothing.</summary>
    public (string Width, string Centres)? Members { get; init; }

    public LayerFixings? Fixings { get; init; }
}

/// <summary>Reads the layers of a construction for their thickness; what else stands there is the builder's affair.</summary>
internal static class ResistanceLayers
{
    private static readonly string[] Kinds = ["solid", "sheet", "air", "bridged"];

    public static Outcome<IReadOnlyList<ResistanceLayer>> Read(Node node, Vocabulary vocabulary)
    {
        var layers = new List<ResistanceLayer>();
        var faults = new List<Diagnostic>();
        if (node is not ListNode list)
        {
            return Outcome.Bad<IReadOnlyList<ResistanceLayer>>(RuleMessages.NotAList(node.At));
        }

        foreach (var map in list.Items.OfType<MapNode>())
        {
            if (map["slot"] is not ScalarNode slot)
            {
                faults.Add(RuleMessages.MissingField(map.At, "of a layer", "slot"));
                continue;
            }

            var kind = (map["kind"] as ScalarNode)?.Text;
            if (kind is not null && !Kinds.Contains(kind, StringComparer.Ordinal))
            {
                faults.Add(RuleMessages.BadWord(map["kind"]!.At, "kind", kind, Kinds));
                continue;
            }

            if (kind == "sheet")
            {
                continue; // a sheet counts for nothing in the sum
            }

            var thickness = ExpressionReader.Length(Of(map["thickness"]) ?? new Written(slot.Text, slot.At), vocabulary);
            var when = Of(map["when"]) is { } written ? ExpressionReader.Condition(written, vocabulary) : null;
            var fixings = LayerFixings.Read(map);
            faults.AddRange(thickness.Faults);
            faults.AddRange(fixings.Faults);
            faults.AddRange(when?.Faults ?? []);
            if (thickness.IsGood && fixings.IsGood && when is null or { IsGood: true })
            {
                LayerKind? how = kind switch { "air" => LayerKind.Air, "bridged" => LayerKind.Bridged, "solid" => LayerKind.Solid, _ => null };
                layers.Add(new ResistanceLayer(slot.Text, thickness.Value, how, when?.Value, AirBetween: (map["between"] as ScalarNode)?.Text == "air")
                {
                    Members = (map["width"], map["centres"]) is (ScalarNode width, ScalarNode centres) ? (width.Text, centres.Text) : null,
                    Fixings = fixings.Value,
                });
            }
        }

        return faults.Count == 0 ? Outcome.Good<IReadOnlyList<ResistanceLayer>>(layers) : Outcome.Bad<IReadOnlyList<ResistanceLayer>>(faults);
    }

    private static Written? Of(Node? node) =>
        node is ScalarNode scalar ? new Written(scalar.Text, scalar.Quoted ? ExpressionReader.Shift(scalar.At, 1) : scalar.At) : null;
}
