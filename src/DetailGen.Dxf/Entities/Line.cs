using DetailGen.Dxf.Tags;

namespace DetailGen.Dxf.Entities;

/// <summary>A straight line. One shorter than <see cref="Entity.LeastLength"/> is left out.</summary>
public sealed record Line(DxfPoint From, DxfPoint To) : Entity
{
    internal static readonly AttributeTable<Line> Table = new("LINE")
    {
        "AcDbLine",
        { 10, line => line.From },
        { 11, line => line.To },
    };

    internal override string Kind => Table.Kind;

    internal override Entity? Cleaned() => From.DistanceTo(To) < LeastLength ? null : this;

    internal override void Walk(ITagSink sink) => Table.Walk(this, sink);

    internal override void Extend(Bounds bounds)
    {
        bounds.Add(From);
        bounds.Add(To);
    }
}
