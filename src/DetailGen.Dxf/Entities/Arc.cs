using DetailGen.Dxf.Tags;

namespace DetailGen.Dxf.Entities;

/// <summary>An arc, always counter-clockwise. One with a radius or a length below <see cref="Entity.LeastLength"/> is left out.</summary>
/// <param name="Start">Degrees from the x axis, counter-clockwise.</param>
/// <param name="End">Degrees; equal angles are no arc, a whole turn is a <see cref="Circle"/>.</param>
public sealed record Arc(DxfPoint Centre, double Radius, double Start, double End) : Entity
{
    internal static readonly AttributeTable<Arc> Table = new("ARC")
    {
        "AcDbCircle",
        { 10, arc => arc.Centre },
        { 40, arc => arc.Radius },
        "AcDbArc",
        { 50, arc => arc.Start, Grid.Angle },
        { 51, arc => arc.End, Grid.Angle },
    };

    internal override string Kind => Table.Kind;

    // Angles are written from 0 up to 360, so that arcs drawn alike are written alike.
    internal override Entity? Cleaned()
    {
        DemandNotNegative(Radius, "arc's radius");
        var sweep = Turn(End - Start);
        return Radius < LeastLength || Radius * sweep * Math.PI / 180 < LeastLength ? null : this with { Start = Turn(Start), End = Turn(End) };
    }

    internal override void Walk(ITagSink sink) => Table.Walk(this, sink);

    internal override void Extend(Bounds bounds) => bounds.AddArc(Centre, Radius, Start, End);

    private static double Turn(double degrees) => degrees is >= 0 and < 360 ? degrees : ((degrees % 360) + 360) % 360;
}
