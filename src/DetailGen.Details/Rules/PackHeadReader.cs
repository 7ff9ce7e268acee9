using DetailGen.Details.Parameters;
using DetailGen.Details.Reading;
using DetailGen.Details.Reading.Shapes;

namespace DetailGen.Details.Rules;

/// <summary>Reads a pack's pack.yaml.</summary>
internal static class PackHeadReader
{
    public static Outcome<PackHead> Read(Node file)
    {
        var faults = ShapeCheck.Check(file, RuleShape.Head);
        if (faults.Count > 0)
        {
            return Outcome.Bad<PackHead>(faults);
        }

        var map = (MapNode)file;
        return Outcome.Good(new PackHead(
            map.Must("title"), map.Must("version"), map.Must("date"), map["extends"] is ScalarNode node ? new(node.Text, node.At) : null,
            [.. (map["foremost"] as ListNode)?.Items.OfType<ScalarNode>().Select(one => new NamedAt(one.Text, one.At)) ?? []],
            [.. map.Maps("steers").Select(Steer)],
            [.. map.Maps("disagreements").Select(one => new Disagreement(one.Must("id"), one.Must("topic"), one.Must("text"), one.Words("rules")))], map.At));
    }

    private static Steer Steer(MapNode node) => new(
        node.Must("id"), node.Must("role"), node.Must("text"), node.Words("rules"), node.Must("how"), SourceShape.Read((MapNode)node["source"]!));
}
