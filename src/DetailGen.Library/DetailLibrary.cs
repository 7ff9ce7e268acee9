using DetailGen.Library.Reports;

namespace DetailGen.Library;

/// <summary>The verbs, each one call that runs the whole pipeline and answers with a report.</summary>
public static class DetailLibrary
{
    public static IReadOnlyList<string> Topics { get; } = ["constructions", "details", "junctions", "layers", "materials", "parameters", "roofs", "rules", "stock", "walls"];

    public static IReadOnlyList<string> SchemaKinds { get; } = ["preset"];

    internal static ToolReport Tool { get; } = new("DetailGen", "0.1.0");

    public static DetailsReport Draw(DrawRequest request) => throw new InvalidOperationException(request.Folder);

    public static DetailsReport Check(CheckRequest request) => throw new InvalidOperationException(request.Paths[0]);

    public static ExplainReport Explain(ExplainRequest request) => throw new InvalidOperationException(request.Preset);

    public static ListReport List(string topic) => throw new InvalidOperationException(topic);

    public static TextReport Schema(string kind) => throw new InvalidOperationException(kind);

    public static TextReport New(NewRequest request) => throw new InvalidOperationException(request.Junction);
}
