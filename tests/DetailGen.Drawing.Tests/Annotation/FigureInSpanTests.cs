using CsCheck;
using DetailGen.Drawing.Annotation.Dimensions;
using DetailGen.Testing;

namespace DetailGen.Drawing.Tests.Annotation;

public class FigureInSpanTests
{
    /// <summary>Half the oblique stroke's reach along the line, and half its width, mm.</summary>
    private static readonly double Stroke = Drawing.Scenes.Dimensions.StrokeLength / 2 * Math.Sqrt(0.5) + 0.35 / 2;

    [Fact]
    public void A_figure_over_its_line_keeps_off_the_stroke_at_its_beginning_and_off_the_witness_line_at_its_end()
    {
        Gen.Select(Gen.Double[2, 12], Gen.Double[0, 20], Gen.Double[-300, 300], Gen.Bool).Always((width, more, low, turned) =>
        {
            var high = low + width + more;
            if (!FigureInSpan.Fits(width, high - low))
            {
                return;
            }

            var middles = FigureInSpan.Middles(low, high, width, turned).ToArray();
            Assert.All(middles, middle =>
            {
                var (first, last) = turned ? (high - (middle + width / 2), middle - width / 2 - low) : (middle - width / 2 - low, high - (middle + width / 2));
                Assert.True(first > Stroke && last > 0.25, $"{first} and {last}");
            });
            Assert.Equal(Math.Abs(middles[0] - (low + high) / 2), middles.Min(middle => Math.Abs(middle - (low + high) / 2)), 9);
        });
    }

    [Fact]
    public void A_figure_with_room_stands_in_the_middle() => Assert.Equal(50, FigureInSpan.Middles(40, 60, 6, turned: false).First());

    // 150 mm at 1:20, in letters 2.5 high
    [Fact]
    public void A_figure_that_hardly_fits_gives_way_to_the_stroke_on_whichever_side_it_is_read_first()
    {
        Assert.InRange(FigureInSpan.Middles(0, 7.5, 5.8, turned: false).First(), 3.76, 4.4);
        Assert.InRange(FigureInSpan.Middles(0, 7.5, 5.8, turned: true).First(), 3.1, 3.74);
    }
}
