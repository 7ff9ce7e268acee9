using DetailGen.Sections.Shapes;
using NetTopologySuite.Geometries;

namespace DetailGen.Sections;

/// <summary>One closed outline with its holes; corner points in mm, anticlockwise outside and clockwise in holes, the first not repeated.</summary>
public sealed record Piece(IReadOnlyList<Point> Outline, IReadOnlyList<IReadOnlyList<Point>> Holes);

/// <summary>
/// An area of the section: none, one or several pieces with holes, on a grid of 0.001 mm. Operations make new regions.
/// Touching is not overlapping: an intersection along a line is empty.
/// </summary>
public sealed class Region
{
    private readonly Geometry _geometry;
    private IReadOnlyList<Piece>? _pieces;

    internal Region(Geometry geometry)
    {
        _geometry = geometry;
        var box = geometry.EnvelopeInternal; // made anew each time that it is asked for
        Bounds = box.IsNull ? new(0, 0, -1, -1) : new(box.MinX, box.MinY, box.MaxX, box.MaxY);
    }

    public static Region Empty { get; } = new(Planar.Factory.CreatePolygon());

    /// <summary>An upright rectangle; empty where it has no width or height.</summary>
    public static Region Box(double left, double bottom, double right, double top) =>
        right - left < Planar.Grid || top - bottom < Planar.Grid
            ? Empty
            : Polygon(new(left, bottom), new(right, bottom), new(right, top), new(left, top));

    public static Region Box(Bounds bounds) => Box(bounds.Left, bounds.Bottom, bounds.Right, bounds.Top);

    /// <summary>A simple polygon of three or more corners, in either direction; a repeated first corner is dropped.</summary>
    /// <exception cref="ArgumentException">Fewer than three corners, or the outline crosses itself.</exception>
    public static Region Polygon(params ReadOnlySpan<Point> corners) => new(Planar.Outline(corners));

    /// <summary>The smallest convex area round some points; empty where they lie on a line.</summary>
    public static Region Hull(params ReadOnlySpan<Point> points) => new(Planar.Hull(points));

    public static Region Union(IEnumerable<Region> regions) => new(Planar.Union(regions.Select(region => region._geometry)));

    public bool IsEmpty => _geometry.IsEmpty;

    /// <summary>mm².</summary>
    public double Area => _geometry.Area;

    /// <summary>All corners lie within; a rectangle with right left of left for an empty region.</summary>
    public Bounds Bounds { get; }

    public IReadOnlyList<Piece> Pieces => _pieces ??= Planar.Pieces(_geometry);

    public Region Union(Region other) => IsEmpty ? other : other.IsEmpty ? this : new(Planar.Union(_geometry, other._geometry));

    public Region Minus(Region other) => IsApart(other) ? this : new(Planar.Difference(_geometry, other._geometry));

    public Region Intersect(Region other) => IsApart(other) ? Empty : new(Planar.Intersection(_geometry, other._geometry));

    /// <summary>True where the two share an area, however small; quicker than to make the intersection.</summary>
    public bool Overlaps(Region other) => !IsApart(other) && Planar.Overlap(_geometry, other._geometry);

    /// <summary>Grown outwards with mitred corners, or shrunk where <paramref name="by"/> is negative; mm.</summary>
    public Region Grow(double by) => IsEmpty ? this : new(Planar.Buffer(_geometry, by));

    public Region Shift(double x, double y) => Bend(point => new(point.X + x, point.Y + y));

    /// <summary>Reflected in the y axis.</summary>
    public Region Mirror() => Bend(point => new(-point.X, point.Y));

    /// <summary>Drawn larger or smaller about the origin; a positive factor.</summary>
    public Region Scale(double factor) => Bend(point => factor * point);

    /// <summary>Every corner moved, with straight edges between them as before; the caller sees to it that no outline comes to cross itself.</summary>
    public Region Bend(Func<Point, Point> move) => IsEmpty ? this : new(Planar.Map(_geometry, move));

    /// <summary>Inside or on the edge.</summary>
    public bool Contains(Point point) => Bounds.Contains(point) && _geometry.Intersects(Planar.Dot(point));

    /// <summary>Distance in mm from the point to the nearest place of the region, 0 inside.</summary>
    public double Distance(Point point) => _geometry.Distance(Planar.Dot(point));

    public double Distance(Region other) => _geometry.Distance(other._geometry);

    /// <summary>Distance in mm from the point to the nearest edge, inside or out.</summary>
    public double DistanceToEdge(Point point) => _geometry.Boundary.Distance(Planar.Dot(point));

    /// <summary>The same corners in the same order.</summary>
    internal bool HasCornersOf(Region other) => ReferenceEquals(this, other) || (Bounds == other.Bounds && _geometry.EqualsExact(other._geometry));

    /// <summary>A point well inside the largest piece: the centre of about the largest circle that fits.</summary>
    /// <exception cref="InvalidOperationException">The region is empty.</exception>
    public Point Heart() => IsEmpty ? throw new InvalidOperationException("An empty region has no inside.") : Planar.Heart(_geometry);

    /// <summary>The parts of a line that lie inside, each as its two ends in the direction of the line.</summary>
    public IReadOnlyList<(Point From, Point To)> Cut(Point from, Point to) =>
        _geometry.EnvelopeInternal.Intersects(new Envelope(from.X, to.X, from.Y, to.Y)) ? Planar.Cut(_geometry, from, to) : [];

    /// <summary>True where one is empty or the rectangles around them do not even touch: then neither takes anything from the other.</summary>
    internal bool IsApart(Region other) => IsEmpty || other.IsEmpty || !Bounds.Meets(other.Bounds);
}
