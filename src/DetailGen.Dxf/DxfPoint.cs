namespace DetailGen.Dxf;

/// <summary>A point or a vector of the drawing; mm in model space, mm of paper on a sheet; y upwards.</summary>
public readonly record struct DxfPoint(double X, double Y)
{
    public static DxfPoint operator +(DxfPoint a, DxfPoint b) => new(a.X + b.X, a.Y + b.Y);

    public static DxfPoint operator -(DxfPoint a, DxfPoint b) => new(a.X - b.X, a.Y - b.Y);

    public static DxfPoint operator *(double factor, DxfPoint a) => new(factor * a.X, factor * a.Y);

    /// <summary>A vector of length 1 in a direction; degrees, counter-clockwise from the x axis. Right angles are exact.</summary>
    public static DxfPoint Direction(double degrees)
    {
        var (sine, cosine) = (((degrees % 360) + 360) % 360) switch
        {
            0 => (0.0, 1.0),
            90 => (1.0, 0.0),
            180 => (0.0, -1.0),
            270 => (-1.0, 0.0),
            var other => Math.SinCos(other * Math.PI / 180),
        };
        return new(cosine, sine);
    }

    public double DistanceTo(DxfPoint other) => Math.Sqrt(((X - other.X) * (X - other.X)) + ((Y - other.Y) * (Y - other.Y)));

    /// <summary>The point turned about the origin by an angle in degrees, counter-clockwise.</summary>
    public DxfPoint Turned(double degrees)
    {
        var along = Direction(degrees);
        return new((X * along.X) - (Y * along.Y), (X * along.Y) + (Y * along.X));
    }
}
