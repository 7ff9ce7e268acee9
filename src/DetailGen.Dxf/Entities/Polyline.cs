using System.Collections.Immutable;
using DetailGen.Dxf.Tags;

namespace DetailGen.Dxf.Entities;

/// <summary>A chain of lines and arcs. Vertices that coincide are written once; what has fewer than two left is left out.</summary>
/// <param name="Vertices">A closed one need not repeat its first vertex. At most 10 000.</param>
public sealed record Polyline(ImmutableArray<Vertex> Vertices) : Entity
{
    public bool IsClosed { get; init; }

    /// <summary>In drawing units; 0 for a line of the layer's weight. For sheet materials whose drawn thickness means something.</summary>
    public double Width { get; init; }

    internal static readonly AttributeTable<Polyline> Table = new("LWPOLYLINE")
    {
        "AcDbPolyline",
        { 90, polyline => polyline.Vertices.Length }, // first, or readers open a closed polyline
        { 70, polyline => polyline.IsClosed ? 129 : 128 }, // 128: dashes run through the corners
        { 43, polyline => polyline.Width },
        (polyline, sink) =>
        {
            foreach (var vertex in polyline.Vertices)
            {
                sink.FlatPoint(10, vertex.Point);
                if (vertex.Bulge != 0 || sink.ValuesOnly)
                {
                    sink.Number(42, vertex.Bulge, Grid.Ratio);
                }
            }
        },
    };

    internal override string Kind => Table.Kind;

    internal override Entity? Cleaned()
    {
        DemandNotNegative(Width, "polyline's width");
        var vertices = Paths.Cleaned(Vertices, IsClosed);
        return vertices.Length < 2 ? null : vertices == Vertices ? this : this with { Vertices = vertices };
    }

    internal override void Walk(ITagSink sink) => Table.Walk(this, sink);

    internal override void Extend(Bounds bounds) => bounds.AddPath(Vertices.AsSpan(), IsClosed);
}
