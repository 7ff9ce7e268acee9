using DetailGen.Details.Parameters;
using DetailGen.Details.Reading;
using DetailGen.Details.Reading.Shapes;
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
    public static Outcome<IReadOnlyList<ResistanceLayer>> Read(ListNode list, Vocabulary vocabulary)
    {
        var layers = new List<ResistanceLayer>();
        var faults = new List<Diagnostic>();
        foreach (var map in list.Items.Cast<MapNode>().Where(map => map.Text("kind") != "sheet")) // a sheet counts for nothing in the sum
        {
            var slot = (ScalarNode)map["slot"]!;
            var thickness = ExpressionReader.Length(map.Expression("thickness") ?? new Written(slot.Text, slot.At), vocabulary);
            var when = map.Expression("when") is { } written ? ExpressionReader.Condition(written, vocabulary) : null;
            faults.AddRange(thickness.Faults);
            faults.AddRange(when?.Faults ?? []);
            if (thickness.IsGood && when is null or { IsGood: true })
            {
                LayerKind? kind = map.Text("kind") switch { "air" => LayerKind.Air, "bridged" => LayerKind.Bridged, "solid" => LayerKind.Solid, _ => null };
                layers.Add(new ResistanceLayer(slot.Text, thickness.Value, kind, when?.Value, AirBetween: map.Text("between") == "air")
                {
                    Members = (map.Text("width"), map.Text("centres")) is ({ } width, { } centres) ? (width, centres) : null,
                    Fixings = LayerFixings.Of(map),
                });
            }
        }

        return faults.Count == 0 ? Outcome.Good<IReadOnlyList<ResistanceLayer>>(layers) : Outcome.Bad<IReadOnlyList<ResistanceLayer>>(faults);
    }
}
