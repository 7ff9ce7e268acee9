namespace DetailGen.Sections;

/// <summary>A place in the section, in mm: x grows towards the roof from the finished weather face, y upwards from finished roof level.</summary>
public readonly record struct Point(double X, double Y)
{
    public static Point operator +(Point a, Point b) => new(a.X + b.X, a.Y + b.Y);

    public static Point operator -(Point a, Point b) => new(a.X - b.X, a.Y - b.Y);

    public static Point operator *(double factor, Point a) => new(factor * a.X, factor * a.Y);

    /// <summary>Distance from the origin, so the length of a difference of two points; mm.</summary>
    public double Length => Math.Sqrt(X * X + Y * Y);

    /// <summary>The same direction with length one; not a number for the origin.</summary>
    public Point Unit => 1 / Length * this;

    /// <summary>Turned a quarter anticlockwise: the left-hand side of a direction.</summary>
    public Point Left => new(-Y, X);

    // The one that comes with a record would print Unit and Left too, which are points again, without end.
    public override string ToString() => FormattableString.Invariant($"({X}, {Y})");

    public static double Dot(Point a, Point b) => a.X * b.X + a.Y * b.Y;

    /// <summary>Twice the signed area of the triangle origin, a, b; positive where b lies left of a.</summary>
    public static double Cross(Point a, Point b) => a.X * b.Y - a.Y * b.X;
}
