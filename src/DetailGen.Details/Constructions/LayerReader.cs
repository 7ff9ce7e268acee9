using DetailGen.Details.Parameters;
using DetailGen.Details.Reading;
using DetailGen.Details.Reading.Shapes;
using DetailGen.Sections;

namespace DetailGen.Details.Constructions;

/// <summary>The layers of a wall or roof description, which passed its <see cref="LayerShape"/> when it was read.</summary>
internal static class LayerReader
{
    public static IReadOnlyList<WallLayer> Wall(Component wall) => [.. Maps(wall).Select(map =>
        new WallLayer(map.Must("slot"), Word<WallBehaviour>(map.Must("as")), Thickness(map), map.Must("name"), map.Text("function") ?? "", RolesOf(map))
        {
            Course = Millimetres(map, "course", Courses.Block),
            HeadSlot = map.Text("head-slot"),
            HeadCourse = Millimetres(map, "head-course", Courses.Brick),
            Kind = KindOf(map),
            Repeat = (map.Text("centres"), map.Text("width")) is ({ } centres, { } width) ? (centres, width) : null,
            Ribbon = Millimetres(map, "ribbon", 0),
            Fixings = LayerFixings.Of(map),
            Remark = map.Text("remark") ?? "",
            Told = map.Text("told") ?? "",
        })];

    public static IReadOnlyList<RoofLayer> Roof(Component roof) => [.. Maps(roof).Select(map =>
        new RoofLayer(map.Must("slot"), Word<RoofBehaviour>(map.Must("as")), Thickness(map), map.Must("name"), map.Text("function") ?? "", RolesOf(map))
        {
            Kind = KindOf(map),
            Fixings = LayerFixings.Of(map),
            Remark = map.Text("remark") ?? "",
            Told = map.Text("told") ?? "",
        })];

    private static IEnumerable<MapNode> Maps(Component component) => (component.Layers?.Items ?? []).Cast<MapNode>();

    private static string Thickness(MapNode map) => map.Text("thickness") ?? map.Must("slot");

    private static LayerKind KindOf(MapNode map) => map.Text("kind") is { } word ? Word<LayerKind>(word) : LayerKind.Solid;

    private static double Millimetres(MapNode map, string key, double otherwise) => (double?)map.Number(key) ?? otherwise;

    private static Roles RolesOf(MapNode map) => map.Words("roles").Aggregate(Roles.None, (all, word) => all | Word<Roles>(word));

    private static T Word<T>(string word)
        where T : struct, Enum => Enum.Parse<T>(word.Replace("-", "", StringComparison.Ordinal), ignoreCase: true);
}
