using CsCheck;
using DetailGen.Drawing.Annotation;
using DetailGen.Drawing.Scenes;
using DetailGen.Sections;
using DetailGen.Testing;

namespace DetailGen.Drawing.Tests.Annotation;

/// <summary>The quick answer against the slow one.</summary>
public sealed class WhiteTests
{
    private static readonly PaperBox Zone = new(-60.3, -40.7, 55.9, 61.2);

    private static readonly Gen<PaperPoint> Place = from x in Gen.Double[-70, 65] from y in Gen.Double[-50, 70] select new PaperPoint(x, y);

    private static readonly Gen<PaperBox> Box = from at in Place from width in Gen.Double[0, 40] from height in Gen.Double[0, 20] select new PaperBox(at.X, at.Y, at.X + width, at.Y + height);

    private static readonly Gen<Point[]> Triangle =
        from corners in Place.Array[3]
        select corners.Select(corner => new Point(corner.X, corner.Y)).ToArray();

    [Fact]
    public void Answers_are_those_of_the_paper_itself()
    {
        var (free, taken) = (0, 0);
        Gen.Select(Triangle.Array[0, 4], Place.Array[0, 6], Box.Array[0, 3], Box.Array[40], Gen.Bool).Always((triangles, line, texts, boxes, mirrored) =>
        {
            NotedPart[] parts = [.. triangles.Where(corners => Math.Abs(Area(corners)) > 1).Select((corners, i) => new NotedPart($"part {i}", Region.Polygon(corners), [], Look.Filled))];
            var view = new AnnotatedView(10, mirrored, parts, line.Length > 1 ? [new Stroke("section.break", line)] : [], Zone) { Taken = texts };
            var surface = new Surface(view);
            var white = new White(surface);
            foreach (var box in boxes)
            {
                var slow = surface.Free(box);
                Assert.Equal(slow, white.Free(box));
                (free, taken) = slow ? (free + 1, taken) : (free, taken + 1);
            }
        });
        Assert.True(free > 100 && taken > 100, $"{free} free, {taken} taken: the law was not put to the test.");
    }

    private static double Area(Point[] corners) =>
        ((corners[1].X - corners[0].X) * (corners[2].Y - corners[0].Y) - (corners[2].X - corners[0].X) * (corners[1].Y - corners[0].Y)) / 2;
}
