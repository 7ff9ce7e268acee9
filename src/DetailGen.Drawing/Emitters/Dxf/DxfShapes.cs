using System.Collections.Immutable;
using System.Runtime.InteropServices;
using DetailGen.Drawing.Scenes;
using DetailGen.Dxf;
using DetailGen.Dxf.Entities;

namespace DetailGen.Drawing.Emitters.Dxf;

/// <summary>Lines and areas of a scene as entities, without group or part.</summary>
internal static class DxfShapes
{
    public static Entity Line(string layer, IReadOnlyList<PaperPoint> points, bool closed, DxfPlace place) => points.Count == 2
        ? new Line(place.At(points[0]), place.At(points[1])) { Layer = layer }
        : new Polyline(Path(points, place)) { Layer = layer, IsClosed = closed };

    /// <summary>A triangle as such, since small readers know it; anything else as a solid fill.</summary>
    public static Entity Area(string layer, IReadOnlyList<PaperPoint> outline, IReadOnlyList<IReadOnlyList<PaperPoint>> holes, DxfPlace place) =>
        outline.Count == 3 && holes.Count == 0
            ? new DetailGen.Dxf.Entities.Solid(place.At(outline[0]), place.At(outline[1]), place.At(outline[2])) { Layer = layer }
            : new DetailGen.Dxf.Entities.Hatch(Path(outline, place), null) { Layer = layer, Holes = Holes(holes, place) };

    public static Entity Fill(string layer, Scenes.Hatch hatch, HatchPattern pattern, DxfPlace place) =>
        new DetailGen.Dxf.Entities.Hatch(Path(hatch.Outline, place), pattern) { Layer = layer, Holes = Holes(hatch.Holes, place) };

    /// <summary>A filled circle: two half circles as one path. A wide polyline would be a hairline in some readers.</summary>
    public static Entity Dot(string layer, PaperPoint centre, double diameter, DxfPlace place)
    {
        var (at, radius) = (place.At(centre), diameter / 2 * place.Scale);
        return new DetailGen.Dxf.Entities.Hatch([new(at.X - radius, at.Y, 1), new(at.X + radius, at.Y, 1)], null) { Layer = layer };
    }

    public static Entity Ring(string layer, PaperPoint centre, double diameter, DxfPlace place) =>
        new Circle(place.At(centre), diameter / 2 * place.Scale) { Layer = layer };

    private static ImmutableArray<ImmutableArray<Vertex>> Holes(IReadOnlyList<IReadOnlyList<PaperPoint>> holes, DxfPlace place) =>
        holes.Count == 0 ? [] : [.. holes.Select(hole => Path(hole, place))];

    private static ImmutableArray<Vertex> Path(IReadOnlyList<PaperPoint> points, DxfPlace place)
    {
        var path = new Vertex[points.Count];
        for (var i = 0; i < path.Length; i++)
        {
            path[i] = place.At(points[i]);
        }

        return ImmutableCollectionsMarshal.AsImmutableArray(path);
    }
}
