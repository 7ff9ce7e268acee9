namespace DetailGen.Sections.Tests;

public class RegionMemoryTests
{
    private static readonly Region Other = Region.Box(5, -1, 20, 20);

    private readonly RegionMemory _memory = new();

    // In a rectangle of 10 by 10 each, of one number of corners, so that only the corners themselves tell them apart.
    private static Region Notched(double depth) => Region.Polygon(new(0, 0), new(10, 0), new(10, 10), new(5, 10 - depth), new(0, 10));

    [Fact]
    public void What_was_made_of_the_same_corners_before_is_given_again()
    {
        Assert.Same(_memory.Minus(Notched(3), Other), _memory.Minus(Notched(3), Region.Box(5, -1, 20, 20)));
        Assert.Same(_memory.Grow(Notched(3), 1), _memory.Grow(Notched(3), 1));
    }

    [Fact]
    public void Shapes_in_one_rectangle_are_told_apart_by_their_corners_and_so_are_operations()
    {
        Region[] made =
        [
            .. new double[] { 3, 4 }.SelectMany(depth => new[]
            {
                _memory.Minus(Notched(depth), Other), _memory.Intersect(Notched(depth), Other), _memory.Union(Notched(depth), Other), _memory.Grow(Notched(depth), 1), _memory.Grow(Notched(depth), -1),
            }),
        ];
        Region[] wanted =
        [
            .. new double[] { 3, 4 }.SelectMany(depth => new[]
            {
                Notched(depth).Minus(Other), Notched(depth).Intersect(Other), Notched(depth).Union(Other), Notched(depth).Grow(1), Notched(depth).Grow(-1),
            }),
        ];
        Assert.Equal(wanted.Select(Corners), made.Select(Corners));
        Assert.Equal(made.Length, made.Select(Corners).Distinct().Count());
    }

    [Fact]
    public void What_lies_apart_takes_nothing_and_shares_nothing()
    {
        var (here, far) = (Notched(3), Region.Box(50, 0, 60, 10));
        Assert.Same(here, _memory.Minus(here, far));
        Assert.True(_memory.Intersect(here, far).IsEmpty);
    }

    private static string Corners(Region region) => string.Join(" | ", region.Pieces.Select(piece => string.Join(' ', piece.Outline)));
}
