namespace DetailGen.Dxf;

/// <summary>A corner of a polyline or of a fill's path, and the way on from it.</summary>
/// <param name="Bulge">tan(sweep / 4) of the arc that begins here, positive counter-clockwise (the arc then lies to the right
/// of its chord); 0 for a straight line. A quarter circle is ±0.414213562373.</param>
public readonly record struct Vertex(double X, double Y, double Bulge = 0)
{
    public DxfPoint Point => new(X, Y);

    public static implicit operator Vertex(DxfPoint point) => new(point.X, point.Y);
}
