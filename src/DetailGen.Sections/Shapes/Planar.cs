using NetTopologySuite.Algorithm.Construct;
using NetTopologySuite.Geometries;
using NetTopologySuite.Operation.Buffer;
using NetTopologySuite.Operation.Overlay;
using NetTopologySuite.Operation.OverlayNG;
using NetTopologySuite.Operation.RelateNG;

namespace DetailGen.Sections.Shapes;

/// <summary>The only door to the polygon library: everything on one fixed grid, so that results do not depend on the order of work.</summary>
internal static class Planar
{
    /// <summary>mm; a thousandth, which is the solver's micrometre.</summary>
    internal const double Grid = 0.001;

    private static readonly PrecisionModel Precision = new(1 / Grid);
    private static readonly BufferParameters Mitred = new() { JoinStyle = JoinStyle.Mitre, MitreLimit = 5, EndCapStyle = EndCapStyle.Flat };

    internal static GeometryFactory Factory { get; } = new(Precision);

    internal static Geometry Outline(ReadOnlySpan<Point> corners)
    {
        var ring = new List<Coordinate>(corners.Length + 1);
        foreach (var corner in corners)
        {
            var snapped = Snap(corner);
            if (ring.Count == 0 || !ring[^1].Equals2D(snapped))
            {
                ring.Add(snapped);
            }
        }

        if (ring.Count > 1 && ring[0].Equals2D(ring[^1]))
        {
            ring.RemoveAt(ring.Count - 1);
        }

        if (ring.Count < 3)
        {
            throw new ArgumentException("A polygon needs three corners that differ.", nameof(corners));
        }

        ring.Add(ring[0].Copy());
        var polygon = Factory.CreatePolygon([.. ring]);
        return polygon.IsValid ? polygon : throw new ArgumentException($"The outline crosses itself: {polygon}.", nameof(corners));
    }

    internal static Geometry Hull(ReadOnlySpan<Point> points)
    {
        var snapped = new Coordinate[points.Length];
        for (var i = 0; i < points.Length; i++)
        {
            snapped[i] = Snap(points[i]);
        }

        return Areas(Factory.CreateMultiPointFromCoords(snapped).ConvexHull());
    }

    internal static Geometry Union(IEnumerable<Geometry> all)
    {
        var some = all.Where(geometry => !geometry.IsEmpty).ToArray();
        return Apart(some) ? Together([.. some.SelectMany(Polygons)]) : Areas(UnaryUnionNG.Union(some, Factory, Precision));
    }

    // So far that no corner of one can be drawn to another.
    private static bool Apart(Geometry[] some)
    {
        for (var i = 0; i < some.Length; i++)
        {
            for (var j = 0; j < i; j++)
            {
                if (some[i].EnvelopeInternal.Distance(some[j].EnvelopeInternal) <= Grid)
                {
                    return false;
                }
            }
        }

        return true;
    }

    internal static Geometry Union(Geometry a, Geometry b) => Overlay(a, b, OverlayNG.UNION);

    internal static Geometry Difference(Geometry a, Geometry b) => Overlay(a, b, OverlayNG.DIFFERENCE);

    internal static Geometry Intersection(Geometry a, Geometry b) => Overlay(a, b, OverlayNG.INTERSECTION);

    /// <summary>Interiors meet, by the signs of orientation alone.</summary>
    internal static bool Overlap(Geometry a, Geometry b) => RelateNG.Relate(a, b, "T********");

    internal static Geometry Buffer(Geometry geometry, double by)
    {
        var grown = Areas(GeometryOf(BufferOp.Buffer(geometry, by, Mitred)));

        // Of a shape with teeth finer than it is grown by, pieces may come to lie over each other.
        return grown is MultiPolygon && !grown.IsValid ? Union(Polygons(grown)) : grown;
    }

    internal static NetTopologySuite.Geometries.Point Dot(Point point) => Factory.CreatePoint(new Coordinate(point.X, point.Y));

    internal static Point Heart(Geometry geometry)
    {
        var largest = Polygons(geometry).MaxBy(polygon => polygon.Area)!;
        var tolerance = Math.Max(0.1, Math.Sqrt(largest.Area) / 200);
        var centre = MaximumInscribedCircle.GetCenter(largest, tolerance);
        return new(centre.X, centre.Y);
    }

    internal static IReadOnlyList<(Point From, Point To)> Cut(Geometry geometry, Point from, Point to)
    {
        var line = Factory.CreateLineString([new(from.X, from.Y), new(to.X, to.Y)]);
        var inside = geometry.Intersection(line);
        var along = to - from;
        var pieces = new List<(Point From, Point To)>();
        for (var i = 0; i < inside.NumGeometries; i++)
        {
            if (inside.GetGeometryN(i) is LineString { NumPoints: > 1 } piece)
            {
                var (a, b) = (At(piece.GetCoordinateN(0)), At(piece.GetCoordinateN(piece.NumPoints - 1)));
                pieces.Add(Point.Dot(b - a, along) >= 0 ? (a, b) : (b, a));
            }
        }

        return [.. pieces.OrderBy(piece => Point.Dot(piece.From - from, along))];
    }

    internal static IReadOnlyList<Piece> Pieces(Geometry geometry) =>
    [
        .. Polygons(geometry)
            .OrderBy(polygon => polygon.EnvelopeInternal.MinX).ThenBy(polygon => polygon.EnvelopeInternal.MinY)
            .Select(polygon => new Piece(
                Corners(polygon.ExteriorRing, anticlockwise: true),
                [.. polygon.InteriorRings.Select(hole => Corners(hole, anticlockwise: false))])),
    ];

    internal static Geometry Map(Geometry geometry, Func<Point, Point> move)
    {
        var moved = Moved(geometry, corner => Snap(move(At(corner))));

        // Where corners that come to lie beside each other fall on one place of the grid, a tip may fold over: then the shape is brought to the grid as a whole.
        return moved.IsValid ? moved : Areas(GeometryOf(Moved(geometry, Unsnapped)));

        Coordinate Unsnapped(Coordinate corner)
        {
            var to = move(At(corner));
            return new Corner(to.X, to.Y);
        }
    }

    private static Geometry Moved(Geometry geometry, Func<Coordinate, Coordinate> move)
    {
        var moved = Polygons(geometry).Select(polygon => Factory.CreatePolygon(Ring(polygon.ExteriorRing), [.. polygon.InteriorRings.Select(Ring)])).ToArray();
        return moved.Length == 1 ? moved[0] : Factory.CreateMultiPolygon(moved);

        LinearRing Ring(LineString ring) => Factory.CreateLinearRing([.. ring.Coordinates.Select(move)]);
    }

    private static Geometry Overlay(Geometry a, Geometry b, SpatialFunction what) =>
        Areas(OverlayNG.Overlay(a, b, what, Precision));

    // Overlays may leave lines and points where areas only touch; a region is area alone.
    private static Geometry Areas(Geometry geometry) => geometry is Polygon or MultiPolygon ? geometry : Together([.. Polygons(geometry)]);

    private static Geometry Together(Polygon[] apart) => apart.Length == 1 ? apart[0] : apart.Length == 0 ? Factory.CreatePolygon() : Factory.CreateMultiPolygon(apart);

    private static Geometry GeometryOf(Geometry geometry) =>
        NetTopologySuite.Precision.GeometryPrecisionReducer.Reduce(geometry, Precision);

    private static IEnumerable<Polygon> Polygons(Geometry geometry)
    {
        for (var i = 0; i < geometry.NumGeometries; i++)
        {
            if (geometry.GetGeometryN(i) is Polygon { IsEmpty: false } polygon)
            {
                yield return polygon;
            }
        }
    }

    private static IReadOnlyList<Point> Corners(LineString ring, bool anticlockwise)
    {
        var corners = ring.Coordinates[..^1].Select(At).ToArray();
        if (NetTopologySuite.Algorithm.Orientation.IsCCW(ring.Coordinates) != anticlockwise)
        {
            Array.Reverse(corners);
        }

        // One corner decides where the ring starts, whatever operation made it.
        var first = 0;
        for (var i = 1; i < corners.Length; i++)
        {
            if (corners[i].X < corners[first].X || (corners[i].X == corners[first].X && corners[i].Y < corners[first].Y))
            {
                first = i;
            }
        }

        return [.. corners[first..], .. corners[..first]];
    }

    private static Corner Snap(Point point) => new(Precision.MakePrecise(point.X), Precision.MakePrecise(point.Y));

    private static Point At(Coordinate corner) => new(corner.X, corner.Y);

    /// <summary>Overlays copy the corners that they are given many times over: to make one anew takes a quarter of the time of the library's own way.</summary>
    private sealed class Corner(double x, double y) : Coordinate(x, y)
    {
        public override Coordinate Copy() => new Corner(X, Y);
    }
}
