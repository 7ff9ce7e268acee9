using DetailGen.Details.Reading;
using DetailGen.Details.Reading.Shapes;

namespace DetailGen.Details.Parameters;

/// <summary>How a source is written, in every data file alike.</summary>
public static class SourceShape
{
    public static WordShape Confidence { get; } = new("read", "memory", "common-practice");

    public static MapShape Shape { get; } = new(
        new Field("document", new TextShape(), "Title with year, or: common practice, no source.", Required: true),
        new Field("clause", new TextShape(), "Clause or table."),
        new Field("confidence", Confidence, "Whether it was read, is recalled, or is a habit of the trade.", Required: true),
        new Field("read-kind", new WordShape("primary", "secondary", "trade", "weak"), "Who says so, where it was read."));

    /// <param name="node">Checked.</param>
    public static Source Read(MapNode node) => new(node.Must("document"), node.Text("clause"), node.Must("confidence"), node.Text("read-kind"));
}
