using DetailGen.Dxf.Tags;

namespace DetailGen.Dxf.Entities;

/// <summary>A filled triangle, as for the head of an arrow. One with next to no area is left out.</summary>
public sealed record Solid(DxfPoint A, DxfPoint B, DxfPoint C) : Entity
{
    internal static readonly AttributeTable<Solid> Table = new("SOLID")
    {
        "AcDbTrace",
        { 10, solid => solid.A },
        { 11, solid => solid.B },
        { 12, solid => solid.C },
        { 13, solid => solid.C }, // the fourth corner of a triangle is its third
    };

    internal override string Kind => Table.Kind;

    internal override Entity? Cleaned()
    {
        var (u, v) = (B - A, C - A);
        return Math.Abs((u.X * v.Y) - (u.Y * v.X)) / 2 < LeastArea ? null : this;
    }

    internal override void Walk(ITagSink sink) => Table.Walk(this, sink);

    internal override void Extend(Bounds bounds)
    {
        bounds.Add(A);
        bounds.Add(B);
        bounds.Add(C);
    }
}
