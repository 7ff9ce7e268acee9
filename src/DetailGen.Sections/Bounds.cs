namespace DetailGen.Sections;

/// <summary>An upright rectangle in mm; empty where right lies left of left.</summary>
public readonly record struct Bounds(double Left, double Bottom, double Right, double Top)
{
    public double Width => Right - Left;

    public double Height => Top - Bottom;

    public Point Middle => new((Left + Right) / 2, (Bottom + Top) / 2);

    /// <summary>True where the two share a point, allowing for a gap of up to <paramref name="slack"/> mm.</summary>
    public bool Meets(Bounds other, double slack = 0) =>
        Left <= other.Right + slack && other.Left <= Right + slack && Bottom <= other.Top + slack && other.Bottom <= Top + slack;

    public bool Contains(Point point) => point.X >= Left && point.X <= Right && point.Y >= Bottom && point.Y <= Top;

    /// <summary>The least rectangle around both.</summary>
    public Bounds With(Bounds other) =>
        new(Math.Min(Left, other.Left), Math.Min(Bottom, other.Bottom), Math.Max(Right, other.Right), Math.Max(Top, other.Top));

    public Bounds Grow(double by) => new(Left - by, Bottom - by, Right + by, Top + by);
}
