using System.Text.RegularExpressions;
using DetailGen.Details.Reading.Shapes;

namespace DetailGen.Details.Parameters;

/// <summary>The keys of a wall, roof or junction file.</summary>
public static partial class ComponentShape
{
    public static TextShape Id { get; } = new(60, IdPattern(), "small letters, digits and hyphens");

    public static TextShape Key { get; } = new(80, KeyPattern(), "small letters, digits, hyphens and dots");

    public static MapShape Shape { get; } = new(
        new Field("id", Id, "Name by which presets pick it; the file has the same name.", Required: true),
        new Field("kind", new WordShape("wall", "roof", "junction"), "What it is.", Required: true),
        new Field("title", new TextShape(60), "Noun phrase for titles.", Required: true),
        new Field("parameters", new ListShape(Parameter), "What an author may set, or the solver finds."),
        new Field("derived", new ListShape(Derived), "Lengths that follow from others."),
        new Field("claims", new ListShape(Claim), "Geometry that must hold for the parts to be made at all."),
        new Field("materials", new ListShape(Slot), "Slots for materials."),
        new Field("layers", new ListShape(LayerShape.Shape, 1), "The layers: a wall from weather to room, a roof from top to bottom."),
        new Field("words", new ListShape(Words), "What is said of each part."));

    private static MapShape Parameter => new(
        new Field("key", Key, "Such as wall.cavity.", Required: true),
        new Field("unit", new WordShape("length", "ratio", "count", "choice"), "What it is measured in.", Required: true),
        new Field("from", new TextShape(), "The least there is, with its unit; a ratio by its 1:n."),
        new Field("to", new TextShape(), "The most there is."),
        new Field("step", new TextShape(), "From one value to the next; 1 for ratios and counts."),
        new Field("options", new ListShape(new TextShape(60), 1), "Words of a choice, the default first."),
        new Field("stock", Id, "Stock class."),
        new Field("stock-by-material", new TableShape(Id, "material id"), "Stock class by the material of the slot."),
        new Field("slot", Key, "Slot whose material decides the stock class; the one of the same name where it is left out."),
        new Field("default", new TextShape(), "The usual value."),
        new Field("default-when", new ListShape(new MapShape(
            new Field("when", new ExpressionShape(), "Condition.", Required: true),
            new Field("value", new TextShape(), "The usual value then.", Required: true))), "Usual values that go before the default; the first that holds."),
        new Field("default-last", new FlagShape(), "Whether the usual value counts after those of all others, as that of a total."),
        new Field("default-first", new FlagShape(), "Whether the usual value counts before all rules that may be broken, as that of a size which the plan of the building or the units chosen for it give."),
        new Field("when", new ExpressionShape(), "The parameter exists only then."),
        new Field("meaning", new TextShape(), "One sentence.", Required: true),
        new Field("source", SourceShape.Shape, "Where domain and default come from.", Required: true));

    private static MapShape Derived => new(
        new Field("key", Key, "Such as wall.thickness.", Required: true),
        new Field("as", new ExpressionShape(), "The equation, where there is only one."),
        new Field("cases", new ListShape(new MapShape(
            new Field("when", new ExpressionShape(), "Condition; left out for otherwise."),
            new Field("as", new ExpressionShape(), "The equation.", Required: true)), 1), "Equations; the first that holds."),
        new Field("meaning", new TextShape(), "One sentence."));

    private static MapShape Claim => new(
        new Field("id", Id, "Told in conflicts and range stops.", Required: true),
        new Field("when", new ExpressionShape(), "It holds only then."),
        new Field("require", new ExpressionShape(), "What must hold.", Required: true),
        new Field("reason", new TextShape(), "One sentence in plain words.", Required: true));

    private static MapShape Slot => new(
        new Field("slot", Key, "Such as wall.outer-leaf.", Required: true),
        new Field("default", Id, "Material id.", Required: true),
        new Field("follows", Key, "Slot whose material, where the author gives one, is this slot's too unless it has its own: sheets that are welded to each other."),
        new Field("kinds", new ListShape(new WordShape(MaterialShape.Kinds), 1), "Kinds of material that may stand in.", Required: true),
        new Field("name", new TextShape(60), "In words.", Required: true),
        new Field("when", new ExpressionShape(), "The slot exists only then."));

    private static MapShape Words => new(
        new Field("part", new TextShape(80), "Part id, or its beginning and *.", Required: true),
        new Field("when", new ExpressionShape(), "The words hold only then."),
        new Field("note", new TextShape(200), "Note on the sheet; {key} stands for a size, {material} for the material's name."),
        new Field("purpose", new TextShape(), "What the part is for."),
        new Field("without", new TextShape(), "What goes wrong without it."));

    [GeneratedRegex("^[a-z0-9][a-z0-9-]*\\z")]
    private static partial Regex IdPattern();

    [GeneratedRegex("^[a-z][a-z0-9-]*(\\.[a-z0-9][a-z0-9-]*)*\\z")]
    private static partial Regex KeyPattern();
}
