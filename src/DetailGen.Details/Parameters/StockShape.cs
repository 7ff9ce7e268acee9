using DetailGen.Details.Reading.Shapes;

namespace DetailGen.Details.Parameters;

/// <summary>The keys of a file of stock sizes: a list of classes.</summary>
public static class StockShape
{
    private static EitherShape Sizes => new(
        new ListShape(new EitherShape(new TextShape(), new ListShape(new TextShape(), 2)), 1),
        new TableShape(new TextShape(), "name of the size"));

    public static MapShape Class { get; } = new(
        new Field("id", ComponentShape.Id, "Name by which parameters ask for it.", Required: true),
        new Field("force", new WordShape("hard", "prefer"), "hard: sold so and no other way; prefer: a wish, given up last of all.", Required: true),
        new Field("unit", new WordShape("length", "ratio"), "What the sizes are measured in; length where it is left out."),
        new Field("sizes", Sizes, "Sizes with their unit; a list in the list for a format; named where the trade has a name for each.", Required: true),
        new Field("meaning", new TextShape(), "What is sold in these sizes.", Required: true),
        new Field("source", SourceShape.Shape, "Where the sizes come from.", Required: true),
        new Field("note", new TextShape(), "What else there is to say."));

    public static ListShape Shape { get; } = new(Class);
}
