using System.Globalization;
using DetailGen.Details.Parameters;
using DetailGen.Details.Reading;
using DetailGen.Sections;

namespace DetailGen.Details.Constructions;

/// <summary>
/// Reads the layers of a wall or roof description. A fault in them is told with its place by an exception: descriptions are checked when they are
/// read, so that no user's preset leads here.
/// </summary>
internal static class LayerReader
{
    /// <exception cref="FormatException">A layer cannot be read; the message says where and why.</exception>
    public static IReadOnlyList<WallLayer> Wall(Component wall) => [.. Maps(wall).Select(map =>
        new WallLayer(Must(map, "slot"), Word<WallBehaviour>(map, "as"), Thickness(map), Must(map, "name"), Text(map, "function"), RolesOf(map))
        {
            Course = Millimetres(map, "course", Courses.Block),
            HeadSlot = map["head-slot"] is null ? null : Must(map, "head-slot"),
            HeadCourse = Millimetres(map, "head-course", Courses.Brick),
            Kind = map["kind"] is null ? LayerKind.Solid : Word<LayerKind>(map, "kind"),
            Repeat = map["centres"] is null ? null : (Must(map, "centres"), Must(map, "width")),
            Ribbon = Millimetres(map, "ribbon", 0),
            Fixings = LayerFixings.Read(map).Value,
            Remark = Text(map, "remark"),
            Told = Text(map, "told"),
        })];

    /// <exception cref="FormatException">A layer cannot be read; the message says where and why.</exception>
    public static IReadOnlyList<RoofLayer> Roof(Component roof) => [.. Maps(roof).Select(map =>
        new RoofLayer(Must(map, "slot"), Word<RoofBehaviour>(map, "as"), Thickness(map), Must(map, "name"), Text(map, "function"), RolesOf(map))
        {
            Kind = map["kind"] is null ? LayerKind.Solid : Word<LayerKind>(map, "kind"),
            Fixings = LayerFixings.Read(map).Value,
            Remark = Text(map, "remark"),
            Told = Text(map, "told"),
        })];

    private static IEnumerable<MapNode> Maps(Component component) =>
        component.Layers is ListNode list
            ? list.Items.Select(item => item as MapNode ?? throw new FormatException($"{item.At}: a layer is a map of keys."))
            : throw new FormatException($"{component.At}: {component.Id} has no list of layers.");

    private static string Thickness(MapNode map) => map["thickness"] is null ? Must(map, "slot") : Must(map, "thickness");

    private static string Text(MapNode map, string key) => map[key] is null ? "" : Must(map, key);

    private static string Must(MapNode map, string key) =>
        map[key] is ScalarNode scalar ? scalar.Text : throw new FormatException($"{map.At}: the layer has no {key}.");

    private static double Millimetres(MapNode map, string key, double otherwise) =>
        map[key] is not ScalarNode scalar
            ? otherwise
            : double.TryParse(scalar.Text.Replace(" mm", "", StringComparison.Ordinal), NumberStyles.Float, CultureInfo.InvariantCulture, out var value)
                ? value
                : throw new FormatException($"{scalar.At}: {scalar.Text} is no size in mm.");

    private static T Word<T>(MapNode map, string key)
        where T : struct, Enum => Named<T>(Must(map, key), map[key]!.At);

    private static Roles RolesOf(MapNode map) => map["roles"] is ListNode list
        ? list.Items.Aggregate(Roles.None, (all, item) => all | Named<Roles>(((ScalarNode)item).Text, item.At))
        : Roles.None;

    private static T Named<T>(string word, Mark at)
        where T : struct, Enum =>
        Enum.TryParse<T>(word.Replace("-", "", StringComparison.Ordinal), ignoreCase: true, out var value)
            ? value
            : throw new FormatException($"{at}: {word} is none of {string.Join(", ", Enum.GetNames<T>())}.");
}
