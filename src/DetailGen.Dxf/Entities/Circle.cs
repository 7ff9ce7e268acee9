using DetailGen.Dxf.Tags;

namespace DetailGen.Dxf.Entities;

/// <summary>A circle. One with a radius below <see cref="Entity.LeastLength"/> is left out.</summary>
public sealed record Circle(DxfPoint Centre, double Radius) : Entity
{
    internal static readonly AttributeTable<Circle> Table = new("CIRCLE")
    {
        "AcDbCircle",
        { 10, circle => circle.Centre },
        { 40, circle => circle.Radius },
    };

    internal override string Kind => Table.Kind;

    internal override Entity? Cleaned()
    {
        DemandNotNegative(Radius, "circle's radius");
        return Radius < LeastLength ? null : this;
    }

    internal override void Walk(ITagSink sink) => Table.Walk(this, sink);

    internal override void Extend(Bounds bounds)
    {
        bounds.Add(Centre - new DxfPoint(Radius, Radius));
        bounds.Add(Centre + new DxfPoint(Radius, Radius));
    }
}
