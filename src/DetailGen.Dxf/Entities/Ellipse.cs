using DetailGen.Dxf.Tags;

namespace DetailGen.Dxf.Entities;

/// <summary>A whole ellipse. One with a half axis below <see cref="Entity.LeastLength"/> is left out.</summary>
/// <param name="MajorAxis">From the centre to the end of the longer half axis.</param>
/// <param name="Ratio">Shorter to longer half axis, above 0 and at most 1.</param>
public sealed record Ellipse(DxfPoint Centre, DxfPoint MajorAxis, double Ratio) : Entity
{
    internal static readonly AttributeTable<Ellipse> Table = new("ELLIPSE")
    {
        "AcDbEllipse",
        { 10, ellipse => ellipse.Centre },
        { 11, ellipse => ellipse.MajorAxis.X }, // an arrow, not a place
        { 21, ellipse => ellipse.MajorAxis.Y },
        { 31, 0 },
        { 40, ellipse => ellipse.Ratio, Grid.Ratio },
        { 41, _ => 0.0, Grid.Ratio },
        { 42, _ => 2 * Math.PI, Grid.Ratio },
    };

    internal override string Kind => Table.Kind;

    internal override Entity? Cleaned()
    {
        if (!(Ratio is > 0 and <= 1))
        {
            throw new ArgumentException("The ratio of an ellipse's axes must be above 0 and at most 1.");
        }

        return MajorAxis.DistanceTo(default) * Ratio < LeastLength ? null : this;
    }

    internal override void Walk(ITagSink sink) => Table.Walk(this, sink);

    internal override void Extend(Bounds bounds)
    {
        var (x, y) = (MajorAxis.X, MajorAxis.Y);
        var half = new DxfPoint(Math.Sqrt((x * x) + (Ratio * Ratio * y * y)), Math.Sqrt((y * y) + (Ratio * Ratio * x * x)));
        bounds.Add(Centre - half);
        bounds.Add(Centre + half);
    }
}
