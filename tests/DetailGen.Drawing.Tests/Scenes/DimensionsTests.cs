using CsCheck;
using DetailGen.Drawing.Lettering;
using DetailGen.Drawing.Scenes;
using DetailGen.Testing;

namespace DetailGen.Drawing.Tests.Scenes;

public class DimensionsTests
{
    private static readonly Dimension Level = new("dim.chain", "dim.stroke", new(10, 40), new(60, 45), Vertical: false, 20, "500", new(35, 20.6), 500, 2.5);

    [Fact]
    public void Witness_lines_start_1_0_off_the_point_and_run_1_5_past_the_line()
    {
        var witnesses = Dimensions.Picture(Level, Typeface.Shipped).Witnesses;
        Assert.Equal([new(10, 39), new(10, 18.5)], witnesses[0].Points);
        Assert.Equal([new(60, 44), new(60, 18.5)], witnesses[1].Points);
    }

    [Fact]
    public void Above_its_points_the_witness_lines_run_upwards() =>
        Assert.Equal([new(10, 41), new(10, 61.5)], Dimensions.Picture(Level with { Line = 60 }, Typeface.Shipped).Witnesses[0].Points);

    [Fact]
    public void A_point_on_the_line_has_no_witness_line() => Assert.Single(Dimensions.Picture(Level with { Line = 40 }, Typeface.Shipped).Witnesses);

    [Fact]
    public void The_line_runs_from_end_to_end() => Assert.Equal([new(10, 20), new(60, 20)], Dimensions.Picture(Level, Typeface.Shipped).Line.Points);

    [Fact]
    public void Strokes_are_2_5_long_and_rise_to_the_right_on_their_own_row()
    {
        var stroke = Assert.IsType<Stroke>(Dimensions.Picture(Level, Typeface.Shipped).Ends[0]);
        var way = stroke.Points[1] - stroke.Points[0];
        Assert.Equal("dim.stroke", stroke.Row);
        Assert.Equal(2.5, way.Length, 12);
        Assert.True(way.X > 0 && Math.Abs(way.X - way.Y) < 1e-12);
        Assert.Equal(new(10, 20), 0.5 * (stroke.Points[0] + stroke.Points[1]));
    }

    [Fact]
    public void A_short_span_ends_in_dots_of_0_8() =>
        Assert.Equal(new Dot("dim.stroke", new(60, 20), 0.8), Dimensions.Picture(Level with { ToEnd = Terminator.Dot }, Typeface.Shipped).Ends[1]);

    [Fact]
    public void A_figure_outside_its_span_stands_on_the_line_drawn_on()
    {
        var half = Typeface.Shipped.Width("500", 2.5) / 2;
        Assert.Equal([new(10, 20), new(64 + half, 20)], Dimensions.Picture(Level with { FigureAt = new(64, 20.6) }, Typeface.Shipped).Line.Points);
        Assert.Equal([new(5 - half, 20), new(60, 20)], Dimensions.Picture(Level with { FigureAt = new(5, 20.6) }, Typeface.Shipped).Line.Points);
    }

    [Fact]
    public void A_figure_off_its_line_has_a_tick_from_the_middle_of_the_line_wherever_it_stands()
    {
        foreach (var (figureAt, end) in new (PaperPoint, PaperPoint)[] { (new(35, 24.6), new(35, 23.9)), (new(48, 24.6), new(48, 23.9)), (new(70, 14.8), new(70, 18)) })
        {
            var tick = Dimensions.Picture(Level with { FigureAt = figureAt }, Typeface.Shipped).Tick!.Points;
            Assert.Equal(new(35, 20), tick[0]);
            Assert.Equal(0, (end - tick[1]).Length, 1e-9);
        }

        Assert.Null(Dimensions.Picture(Level, Typeface.Shipped).Tick);
    }

    // Read from the right, an upright dimension looks as a level one looks from the foot.
    [Fact]
    public void An_upright_dimension_is_the_level_one_turned_by_90_degrees() => Gen.Double[-50, 50].Array[6].Always(at =>
    {
        var level = Level with { From = new(at[0], at[1]), To = new(at[2], at[3]), Line = at[4], FigureAt = new(at[5], at[4] + 0.6), ToEnd = Terminator.Dot };
        var upright = level with { From = Turn(level.From), To = Turn(level.To), Vertical = true, Line = -level.Line, FigureAt = Turn(level.FigureAt) };
        var (a, b) = (Dimensions.Picture(level, Typeface.Shipped), Dimensions.Picture(upright, Typeface.Shipped));
        Assert.Equal(Strokes(a).Select(stroke => stroke.Points.Select(Turn).ToArray()), Strokes(b).Select(stroke => stroke.Points.ToArray()));
        Assert.Equal((0, 90), (a.Figure.Rotation, b.Figure.Rotation));
    });

    private static IEnumerable<Stroke> Strokes(DimensionPicture picture) => picture.Items.OfType<Stroke>();

    private static PaperPoint Turn(PaperPoint point) => new(-point.Y, point.X);
}
