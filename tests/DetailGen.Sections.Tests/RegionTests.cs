namespace DetailGen.Sections.Tests;

public class RegionTests
{
    [Fact]
    public void A_region_with_a_tip_of_a_few_micrometres_can_be_brought_to_paper_and_worked_with_there()
    {
        // Tips as cuts leave them, finer than the grid once they are drawn to scale: some of them fold over there.
        var random = new Random(5);
        for (var i = 0; i < 3000; i++)
        {
            Point Near(double x, double y) => new(x + random.Next(-9, 10) * 0.001, y + random.Next(-9, 10) * 0.001);
            Point[] corners = [new(0, 0), new(100, 0), new(100, 50), Near(60, 50), Near(60 + random.Next(1, 40), 50 + random.Next(-1, 2)), Near(60, 50), new(0, 50)];
            if (!Can(corners, out var region))
            {
                continue;
            }

            foreach (var scale in (double[])[5, 10, 20])
            {
                var paper = region.Scale(1 / scale);
                var half = paper.Intersect(Region.Box(-1, -1, 50 / scale, 99));
                Assert.Equal(50 * 50 / (scale * scale), half.Area, 0.05);
                Assert.Equal(region.Area / (scale * scale), paper.Area, 0.05);
            }
        }
    }

    [Fact]
    public void A_shape_with_teeth_finer_than_it_is_grown_by_can_be_taken_from_another()
    {
        // A sheet over the edge of a roof at 1:50: grown, its pieces came out one over the other, and the overlay failed.
        var jagged = Region.Polygon(
            new(-1.07, 1.365), new(-0.895, 0.236), new(-0.72, 2.225), new(-0.828, 1.959), new(-0.72, 4.76), new(0.85, 4.76), new(0.85, 5.11), new(-1.07, 5.11), new(-0.946, 1.669));
        var grown = jagged.Grow(0.36);
        var band = Region.Polygon(new(-37.162, -0.486), new(-37.15, -0.986), new(0.13, -0.054), new(0.118, 0.446));
        Assert.Equal(band.Area, band.Minus(grown).Area + band.Intersect(grown).Area, 0.01);
        Assert.True(jagged.Minus(grown).IsEmpty);
    }

    [Fact]
    public void Shapes_that_lie_apart_are_all_there_in_their_union_those_of_several_pieces_too()
    {
        var two = Region.Box(0, 0, 1, 1).Union(Region.Box(2, 0, 3, 1));
        var all = Region.Union([two, Region.Empty, Region.Box(10, 0, 12, 1)]);
        Assert.Equal(3, all.Pieces.Count);
        Assert.Equal(4, all.Area, 1e-9);
    }

    [Fact]
    public void Shapes_that_only_touch_become_one_piece() => Assert.Single(Region.Union([Region.Box(0, 0, 1, 1), Region.Box(1, 0, 2, 1)]).Pieces);

    [Theory]
    [InlineData(0.5, 1)]
    [InlineData(1, 1)]
    [InlineData(1.5, 0)]
    public void A_line_is_cut_by_what_it_passes_or_runs_along(double level, int pieces) => Assert.Equal(pieces, Region.Box(0, 0, 1, 1).Cut(new(-1, level), new(2, level)).Count);

    private static bool Can(Point[] corners, out Region region)
    {
        try
        {
            region = Region.Polygon(corners);
            return true;
        }
        catch (ArgumentException)
        {
            region = Region.Empty; // it crosses itself already
            return false;
        }
    }
}
