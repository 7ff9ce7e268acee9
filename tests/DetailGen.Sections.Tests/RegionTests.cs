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
