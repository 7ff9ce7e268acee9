using CsCheck;
using DetailGen.Drawing.Fills;
using DetailGen.Drawing.Scenes;
using DetailGen.Sections;
using DetailGen.Testing;

namespace DetailGen.Drawing.Tests.Fills;

public class FillerTests
{
    /// <summary>Boards on any slope with a tapered face, so that no corner is special; mm on paper.</summary>
    private static readonly Gen<(Region Region, PaperPoint Axis)> Boards =
        Gen.Select(Gen.Double[-80, 80], Gen.Double[3, 60], Gen.Double[0.6, 30], Gen.Double[0.6, 30], Gen.Double[-40, 40], Gen.Double[-40, 40]).Select((slope, length, w0, w1, x, y) =>
        {
            var along = Planes.Along(slope);
            Point P(double u, double v) => new(x + u * along.X - v * along.Y, y + u * along.Y + v * along.X);
            return (Region.Polygon(P(0, 0), P(length, 0), P(length, w1), P(0, w0)), along);
        });

    [Fact]
    public void No_stroke_leaves_its_part() =>
        Gen.Select(Boards, Gen.OneOf(FillTable.Names.ToArray()), Gen.Int[0, 3], Gen.OneOf(5.0, 10, 20)).Always((board, fill, variant, scale) =>
        {
            foreach (var point in Items(board, fill, variant, scale).SelectMany(Points))
            {
                Assert.True(board.Region.Distance(new Point(point.X, point.Y)) <= 0.05, $"{fill} leaves its part at {point}.");
            }
        });

    [Fact]
    public void Lines_run_clear_of_the_long_edge_unless_they_follow_the_axis() =>
        Gen.Select(Boards, Gen.OneOf("brick", "dense-block", "natural-stone"), Gen.Int[0, 3]).Always((board, fill, variant) =>
        {
            foreach (var family in Items(board, fill, variant, 10).OfType<Hatch>().SelectMany(hatch => hatch.Families))
            {
                var apart = Math.Abs(Planes.Turned(family.Angle - Planes.Angle(board.Axis) + 90) - 90);
                Assert.True(apart >= 10 - 1e-6, $"{fill} runs {apart}° from the edge.");
            }
        });

    [Theory]
    [InlineData("fibrous-insulation")]
    [InlineData("rigid-insulation")]
    public void Waves_touch_both_faces_less_three_tenths(string fill) =>
        Gen.Select(Gen.Double[2.5, 30], Gen.Double[15, 120], Gen.Int[0, 3]).Always((width, length, variant) =>
        {
            var points = Items((Region.Box(0, 0, length, width), new(1, 0)), fill, variant, 10).SelectMany(Points).ToArray();
            Assert.InRange(points.Min(point => point.Y), 0.28, 0.32);
            Assert.InRange(points.Max(point => point.Y), width - 0.32, width - 0.28);
        });

    /// <summary>Legs of the fillet on paper, mm: in the small one hardly two loops would stand, of unlike size.</summary>
    [Theory]
    [InlineData(5, false)]
    [InlineData(12, true)]
    public void A_small_fillet_stays_white_instead_of_a_scrawl(double leg, bool isFilled) =>
        Assert.Equal(isFilled, Items((Region.Polygon(new(0, 0), new(leg, 0), new(0, leg)), new(1, 0)), "fibrous-insulation", 0, 10).OfType<Stroke>().Any());

    [Fact]
    public void A_loop_does_not_touch_itself() =>
        Gen.Select(Gen.Double[2.5, 30], Gen.Double[20, 80]).Always((width, length) =>
        {
            // Points more than a half wave apart along the line keep a white between them; 1.1 is computed for the narrowest pitch.
            var line = Assert.Single(Items((Region.Box(0, 0, length, width), new(1, 0)), "fibrous-insulation", 0, 10).OfType<Stroke>()).Points;
            for (var i = 0; i + 1 < line.Count; i++)
            {
                for (var j = i + 2; j + 1 < line.Count; j++)
                {
                    Assert.False(Cross(line[i], line[i + 1], line[j], line[j + 1]), $"The loop crosses itself near {line[i]}.");
                }
            }
        }, cases: 60);

    [Fact]
    public void A_part_that_grows_keeps_the_marks_it_had()
    {
        var small = Items((Region.Box(0, 0, 20, 15), new(1, 0)), "concrete", 0, 10).OfType<Grains>().SelectMany(grains => grains.Centres).Where(point => point is { X: < 18, Y: < 13 }).ToArray();
        var large = Items((Region.Box(0, 0, 40, 30), new(1, 0)), "concrete", 0, 10).OfType<Grains>().SelectMany(grains => grains.Centres).Where(point => point is { X: < 18, Y: < 13 }).ToArray();
        Assert.NotEmpty(small);
        Assert.Equal(small, large);
    }

    [Fact]
    public void The_same_part_is_filled_alike_every_time() =>
        Gen.Select(Boards, Gen.OneOf(FillTable.Names.ToArray())).Always((board, fill) =>
            Assert.Equal(Items(board, fill, 1, 10).SelectMany(Points), Items(board, fill, 1, 10).SelectMany(Points)), cases: 100);

    [Theory]
    [InlineData("rigid-insulation")]
    [InlineData("fibrous-insulation")]
    [InlineData("plasterboard")]
    [InlineData("plywood")]
    public void Insulation_and_boards_never_go_solid(string fill) =>
        Assert.Empty(Items((Region.Box(0, 0, 30, 0.4), new(1, 0)), fill, 0, 20).OfType<Solid>());

    /// <summary>The limits of ink per fill are our own, section 10.5 of the conventions: 2 to 15 %, at most 16.</summary>
    [Theory]
    [MemberData(nameof(Filled))]
    public void Ink_stays_between_bounds(string fill)
    {
        const double Width = 60, Height = 40;
        var ink = Items((Region.Box(0, 0, Width, Height), new(1, 0)), fill, 0, 10).Sum(Ink) / (Width * Height);
        Assert.InRange(ink, 0.001, 0.16);
    }

    public static TheoryData<string> Filled => [.. FillTable.Names.Where(name => name is not ("plaster" or "moulded-plastic" or "sealant"))];

    internal static IEnumerable<PaperPoint> Points(Item item) => item switch
    {
        Stroke stroke => stroke.Points,
        Hatch hatch => HatchStrokes.Of(hatch).SelectMany(stroke => new[] { stroke.From, stroke.To }),
        Grains grains => grains.Centres,
        Ring ring => Enumerable.Range(0, 8).Select(k => ring.Centre + ring.Diameter / 2 * Planes.Along(45 * k)),
        Solid solid => solid.Outline,
        _ => [],
    };

    private static double Ink(Item item) => item switch
    {
        Stroke stroke => 0.13 * (Planes.Length(stroke.Points) + (stroke.Closed ? (stroke.Points[0] - stroke.Points[^1]).Length : 0)),
        Hatch hatch => 0.13 * HatchStrokes.Of(hatch).Sum(stroke => (stroke.To - stroke.From).Length),
        Grains grains => grains.Centres.Count * Math.PI * grains.Diameter * grains.Diameter / 4,
        Ring ring => 0.13 * Math.PI * ring.Diameter,
        _ => 0,
    };

    private static IReadOnlyList<Item> Items((Region Region, PaperPoint Axis) board, string fill, int variant, double scale)
    {
        var corner = board.Region.Bounds;
        return Filler.Fill(new("part", fill, "fill.XX.wall", "solid.XX.wall", board.Region, board.Region, board.Region, board.Axis, new(corner.Left, corner.Bottom), variant, scale)).Items;
    }

    private static bool Cross(PaperPoint a, PaperPoint b, PaperPoint c, PaperPoint d) =>
        Planes.Cross(b - a, c - a) * Planes.Cross(b - a, d - a) < 0 && Planes.Cross(d - c, a - c) * Planes.Cross(d - c, b - c) < 0;
}
