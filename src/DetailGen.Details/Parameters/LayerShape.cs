using System.Text.RegularExpressions;
using DetailGen.Details.Quantities;
using DetailGen.Details.Reading.Shapes;
using DetailGen.Sections;

namespace DetailGen.Details.Parameters;

/// <summary>The keys of a layer: of a wall from weather to room, of a roof from top to bottom.</summary>
public static partial class LayerShape
{
    /// <summary>How a layer of a wall behaves where the wall meets a roof.</summary>
    public static IReadOnlyList<string> OfWall { get; } = ["cladding", "leaf", "cavity", "cavity-fill", "lining"];

    /// <summary>How a layer of a roof behaves.</summary>
    public static IReadOnlyList<string> OfRoof { get; } =
        ["finish", "membrane", "insulation", "vapour-control", "deck", "firring", "screed", "joists", "slab", "ceiling"];

    /// <summary>What a part is there for.</summary>
    public static IReadOnlyList<string> Roles { get; } = [.. Enum.GetNames<Roles>().Where(name => name != nameof(Sections.Roles.None)).Select(Hyphened)];

    public static MapShape Shape => new(
        new Field("slot", ComponentShape.Key, "Slot of its material; its part is called so too.", Required: true),
        new Field("as", new WordShape([.. OfWall, .. OfRoof]), $"How it behaves: of a wall {string.Join(", ", OfWall)}; of a roof {string.Join(", ", OfRoof)}.", Required: true),
        new Field("thickness", ComponentShape.Key, "Key of its thickness; that of the slot's name where it is left out."),
        new Field("kind", new WordShape([.. Enum.GetNames<LayerKind>().Select(Hyphened)]), "How it resists heat: bridged where members cross it, not at all as a sheet; solid where it is left out."),
        new Field("between", new WordShape("air"), "The slot holds the members of a bridged layer, and air lies between them."),
        new Field("when", new ExpressionShape(), "It counts for resistance only then; it is drawn where the detail has its size."),
        new Field("name", new TextShape(60), "In trade words, such as Outer leaf.", Required: true),
        new Field("told", new TextShape(200), "What a stack note says after the thickness; {material} stands for the material's name."),
        new Field("function", new TextShape(200), "In a few words, for the schedule."),
        new Field("remark", new TextShape(200), "For the schedule."),
        new Field("roles", new ListShape(new WordShape(Roles)), "What it is there for."),
        new Field("course", Size, "Height of its courses."),
        new Field("head-slot", ComponentShape.Key, "Slot of the units above the tray, where those of the leaf do not suit."),
        new Field("head-course", Size, "Height of their courses."),
        new Field("centres", ComponentShape.Key, "Key of the centres of what stands in it all over, such as dabs."),
        new Field("width", ComponentShape.Key, "Key of their width."),
        new Field("ribbon", Size, "Height of a continuous ribbon of the same at its upper end."),
        new Field("fixings", Fixings, "Ties or fixings that go through it."));

    private static MapShape Fixings => new(
        new Field("name", new TextShape(60), "Such as Wall ties.", Required: true),
        new Field("slot", ComponentShape.Key, "Slot of their material.", Required: true),
        new Field("count", ComponentShape.Key, "Key of how many there are over the area; one where it is left out."),
        new Field("over", new ListShape(KeyOrSize, 2), "The two sides of that area: keys, or sizes in mm.", Required: true),
        new Field("diameter", KeyOrSize, "Of a round bar with the metal of one: a key, or a size in mm.", Required: true),
        new Field("into", ComponentShape.Key, "Key of how far they go into the leaf behind the layer."));

    private static QuantityShape Size => new(QuantityKind.Length) { Least = 1, Most = 1000 };

    private static TextShape KeyOrSize => new(80, KeyOrSizePattern(), "a key, or a size such as 5 mm");

    internal static string Hyphened(string name) => Capitals().Replace(name, "-$0").ToLowerInvariant();

    [GeneratedRegex("(?<!^)[A-Z]")]
    private static partial Regex Capitals();

    [GeneratedRegex("^([a-z][a-z0-9-]*(\\.[a-z0-9][a-z0-9-]*)*|[0-9]{1,5}(\\.[0-9]{1,3})? mm)\\z")]
    private static partial Regex KeyOrSizePattern();
}
