using DetailGen.Drawing.Fills;
using DetailGen.Drawing.Scenes;
using DetailGen.Sections;

namespace DetailGen.Drawing.Views;

/// <summary>The solid parts that the section plane cuts, on paper.</summary>
internal sealed class CutParts(IReadOnlyList<(Part Part, Region Region)> parts)
{
    private IReadOnlyList<Edge>? _edges;

    public IReadOnlyList<(Part Part, Region Region)> Parts => parts;

    public IReadOnlyList<Edge> Edges => _edges ??= [.. parts.SelectMany(entry => EdgesOf(entry.Region, Rows.Cut(entry.Part), Rows.Width(entry.Part), entry.Part))];

    public static IEnumerable<Edge> EdgesOf(Region region, string row, double width, Part part) => region.Pieces.SelectMany(piece => EdgesOf(piece, row, width, part));

    public static IEnumerable<Edge> EdgesOf(Piece piece, string row, double width, Part part)
    {
        foreach (var ring in piece.Holes.Prepend(piece.Outline))
        {
            for (int i = 0, j = ring.Count - 1; i < ring.Count; j = i++)
            {
                if ((ring[i] - ring[j]).Length > 0.002)
                {
                    yield return new(new(ring[j].X, ring[j].Y), new(ring[i].X, ring[i].Y), row, width, part.BuildOrder, part.Id);
                }
            }
        }
    }

    /// <summary>Half the width of the heaviest outline that a face lies on.</summary>
    public double OutlineHalf(FacePath face)
    {
        double most = 0;
        for (var piece = 0; piece < face.Pieces; piece++)
        {
            var (along, start) = (face.Direction(piece), face.Points[piece]);
            var length = face.Start(piece + 1) - face.Start(piece);
            foreach (var edge in Edges)
            {
                var (a, b) = (edge.A - start, edge.B - start);
                if (edge.Width > most && Math.Abs(Planes.Cross(along, a)) < 0.05 && Math.Abs(Planes.Cross(along, b)) < 0.05
                    && Math.Min(length, Math.Max(Planes.Dot(a, along), Planes.Dot(b, along))) - Math.Max(0, Math.Min(Planes.Dot(a, along), Planes.Dot(b, along))) > 1)
                {
                    most = edge.Width;
                }
            }
        }

        return most / 2;
    }

    /// <summary>A dashed sheet leaves no gap of its own: the part built on it is drawn down to the face.</summary>
    public CutParts Joined(IEnumerable<LaidSheet> lines, OnPaper paper, RegionMemory memory)
    {
        var joined = parts.ToArray();
        foreach (var sheet in lines)
        {
            var thick = sheet.Part.Sheet!.Thickness / paper.Scale;
            for (var piece = 0; piece < sheet.Face.Pieces; piece++)
            {
                var (a, b) = (sheet.Face.Points[piece], sheet.Face.Points[piece + 1]);
                var by = thick * Planes.Left(sheet.Face.Direction(piece));
                // A hair more than the sheet, so that no sliver of the grid stays open between what is added and the part.
                var over = (1 + 0.01 / thick) * by;
                var slot = Region.Polygon(P(a), P(b), P(b + over), P(a + over));
                for (var i = 0; i < joined.Length; i++)
                {
                    if (joined[i].Part.BuildOrder > sheet.Part.BuildOrder && joined[i].Region.Bounds.Meets(slot.Bounds, 0.002))
                    {
                        var part = memory.Intersect(joined[i].Region.Shift(-by.X, -by.Y), slot);
                        if (!part.IsEmpty)
                        {
                            joined[i].Region = memory.Union(joined[i].Region, part);
                        }
                    }
                }
            }
        }

        return new(joined);
    }

    private static Point P(PaperPoint point) => new(point.X, point.Y);
}
