using System.Collections.Immutable;
using CsCheck;
using DetailGen.Dxf.Document;
using DetailGen.Dxf.Entities;
using DetailGen.Testing;

namespace DetailGen.Dxf.Tests.Writing;

public sealed class CleaningTests
{
    public static TheoryData<Entity> Invisible =>
    [
        new Line(new(5, 5), new(5, 5.00005)) { Layer = "0" },
        new Circle(new(0, 0), 0) { Layer = "0" },
        new Arc(new(0, 0), 10, 90, 450) { Layer = "0" },
        new Ellipse(new(0, 0), new(0, 0), 0.5) { Layer = "0" },
        new Solid(new(0, 0), new(1, 1), new(2, 2)) { Layer = "0" },
        new Text(" ", new(0, 0), 2.5, 0) { Layer = "0" },
        new Mtext(["", " "], new(0, 0), 2.5, 0) { Layer = "0" },
        new Polyline([new(1, 1), new(1, 1), new(1, 1)]) { Layer = "0", IsClosed = true },
        new Hatch([new(0, 0), new(10, 0), new(5, 0)], null) { Layer = "0" },
        new Hatch([new(0, 0), new(10, 0), new(10, 5)], new("wide", [PatternLine.Of(45, 50)])) { Layer = "0" },
    ];

    [Theory]
    [MemberData(nameof(Invisible), DisableDiscoveryEnumeration = true)]
    public void What_would_not_be_seen_is_left_out(Entity entity)
    {
        var file = new TagFile(SampleDrawing.Bytes(new DxfDocument { Model = [entity with { Group = "G" }] }));

        Assert.Empty(file.Of(entity.Kind));
        Assert.Empty(file.Of("GROUP"));
    }

    [Fact]
    public void Repeated_vertices_are_written_once_and_arcs_stay_where_they_begin()
    {
        var polyline = new Polyline([new(0, 0), new(10, 0, 9), new(10, 0, 1), new(10, 10), new(0, 0)]) { Layer = "0", IsClosed = true };

        var clean = (Polyline)polyline.Cleaned()!;

        Assert.Equal([new(0, 0), new(10, 0, 1), new(10, 10)], clean.Vertices.AsEnumerable());
    }

    [Fact]
    public void No_path_keeps_two_vertices_in_one_place() =>
        Gen.Select(Gen.Int[0, 2], Gen.Int[0, 2], (x, y) => new Vertex(x, y)).Array[2, 12].Always(vertices =>
        {
            var clean = Paths.Cleaned(ImmutableArray.Create(vertices), closed: true);
            return clean.Length < 2 || clean.Zip(clean.Skip(1).Append(clean[0])).All(pair => pair.First.Point != pair.Second.Point);
        });

    [Fact]
    public void A_hole_of_no_area_is_left_out_of_its_fill()
    {
        var hatch = new Hatch([new(0, 0), new(10, 0), new(10, 10)], null) { Layer = "0", Holes = [[new(5, 1), new(6, 1)], [new(7, 1), new(8, 1, 1), new(8, 2)]] };

        Assert.Single(((Hatch)hatch.Cleaned()!).Holes);
    }

    [Theory]
    [InlineData(1, 78.53981633974483)] // two half circles of radius 5: 25 π
    [InlineData(-1, -78.53981633974483)]
    public void The_area_of_a_path_counts_its_arcs(double bulge, double area) =>
        Assert.Equal(area, Paths.Area([new(0, 0, bulge), new(10, 0, bulge)]), 1e-9);
}
