using DetailGen.Details.Quantities;
using DetailGen.Details.Reading.Shapes;

namespace DetailGen.Details.Parameters;

/// <summary>The keys of a file of materials: a list of materials.</summary>
public static class MaterialShape
{
    public static IReadOnlyList<string> Kinds { get; } =
        ["masonry", "insulation", "board", "timber", "metal", "polymer", "membrane", "sealant", "finish", "fill", "air"];

    /// <summary>Section fills and line signs.</summary>
    public static IReadOnlyList<string> Fills { get; } =
    [
        "brick", "dense-block", "lightweight-block", "aircrete-block", "concrete", "precast-concrete", "natural-stone", "cast-stone", "clay-tile", "mortar-bed", "screed",
        "render", "plaster", "plasterboard", "adhesive-dab", "plywood", "strand-board", "fibre-cement", "sawn-timber", "timber-grain", "rigid-insulation",
        "fibrous-insulation", "gravel", "metal", "asphalt", "membrane", "damp-proof-course", "vapour-control", "separating-sheet", "metal-flashing", "sealant",
        "moulded-plastic",
    ];

    /// <summary>Two letters of the layer map.</summary>
    public static IReadOnlyList<string> Layers { get; } =
        ["BK", "BL", "CO", "ST", "TS", "TB", "MO", "BD", "IR", "IF", "LF", "ME", "WP", "DP", "VC", "SM", "SE", "FX"];

    public static MapShape Material { get; } = new(
        new Field("id", ComponentShape.Id, "Name by which presets and slots pick it.", Required: true),
        new Field("name", new TextShape(80), "In words.", Required: true),
        new Field("kind", new WordShape(Kinds), "Which slots it may stand in.", Required: true),
        new Field("fill", new WordShape(Fills), "Section fill, or line sign of a sheet; none for air."),
        new Field("layer", new WordShape(Layers), "Two letters of the layer map; none for air."),
        new Field("conductivity", Conductivity, "Design value; none for air."),
        new Field("density", Density, "None for air."),
        new Field("specific-heat", new NumberShape(1, 10_000), "J/(kg·K).", Required: true),
        new Field("mu", new MapShape(
            new Field("dry", new NumberShape(1, 1_000_000), "Dry.", Required: true),
            new Field("wet", new NumberShape(1, 1_000_000), "Wet.", Required: true)), "Diffusion resistance factors; 1000000 stands for tight.", Required: true),
        new Field("sd", Sd, "Equivalent air layer of a sheet, in m."),
        new Field("fire", new TextShape(20), "Typical class of reaction to fire."),
        new Field("origin", new WordShape("declared", "tabulated", "assumed"), "How the conductivity is known.", Required: true),
        new Field("confidence", new MapShape(
            [.. ValuesKnown.Select(key => new Field(key, SourceShape.Confidence, "Whether it was read, is recalled, or is a habit of the trade; needed where the value stands.", Required: AlwaysKnown.Contains(key)))]),
            "How far each value is known.", Required: true),
        new Field("source", SourceShape.Shape, "Where the thermal values come from.", Required: true),
        new Field("note", new TextShape(), "What else there is to say."));

    public static ListShape Shape { get; } = new(Material);

    // wider than anything that is built with: evacuated panels to silver, gels to the heaviest metals
    private static QuantityShape Conductivity => new(QuantityKind.Conductivity) { Least = 0.002m, Most = 500 };

    private static QuantityShape Density => new(QuantityKind.Density) { Least = 0.1m, Most = 25_000 };

    private static QuantityShape Sd => new(QuantityKind.Length) { Least = 0, Most = 1_000_000_000 }; // mu at its most, a metre thick

    /// <summary>The values whose confidence is told, vapour for both factors.</summary>
    internal static IReadOnlyList<string> ValuesKnown => ["conductivity", "density", "specific-heat", "vapour", "fire"];

    private static IReadOnlyList<string> AlwaysKnown => ["specific-heat", "vapour"];
}
