using CsCheck;
using DetailGen.Drawing.Annotation;
using DetailGen.Drawing.Annotation.Dimensions;
using DetailGen.Drawing.Lettering;
using DetailGen.Drawing.Scenes;
using DetailGen.Sections;
using DetailGen.Testing;

namespace DetailGen.Drawing.Tests.Annotation;

public class FigureSpreadTests
{
    private static readonly Gen<(double[] Spans, double[] Widths, double[] Barred)> Crowded =
        from count in Gen.Int[1, 8]
        from spans in Gen.Double[0.5, 12].Array[count]
        from widths in Gen.Double[2, 9].Array[count]
        from ends in Gen.Bool
        select (spans, widths, ends ? new[] { 0, spans.Sum() } : []);

    [Fact]
    public void Figures_keep_their_order_their_distance_and_clear_of_barred_lines() => Crowded.Always(
        chain =>
        {
            var middles = Middles(chain.Spans);
            var along = FigureSpread.Along(middles, chain.Widths, 1, (chain.Barred, 0.5));
            for (var i = 1; i < along.Length; i++)
            {
                Assert.True(along[i] - along[i - 1] >= (chain.Widths[i] + chain.Widths[i - 1]) / 2 + 1 - 1e-6);
            }

            Assert.All(along.Zip(chain.Widths), one => Assert.All(chain.Barred, line => Assert.True(Math.Abs(line - one.First) >= one.Second / 2 + 0.5 - 1e-6)));
        });

    [Fact]
    public void What_has_room_stands_over_the_middle_of_its_span() =>
        Assert.Equal([5.0, 15, 25], FigureSpread.Along([5, 15, 25], [4, 4, 4], 1, ([], 0.5)));

    [Fact]
    public void Two_that_are_in_each_others_way_depart_no_more_than_they_must()
    {
        var along = FigureSpread.Along([5, 7], [4, 4], 1, ([], 0.5));
        Assert.Equal(3, Math.Abs(along[0] - 5) + Math.Abs(along[1] - 7), 6);
        Assert.Equal(5, along[1] - along[0], 6);
    }

    [Fact]
    public void No_two_figures_of_a_crowded_chain_overlap() => Gen.Select(Gen.Int[4, 225].Array[3, 8], Gen.Int[1, 3].Select(step => step == 3 ? 20.0 : 5 * step)).Always((spans, scale) =>
    {
        var measures = new List<Measure>();
        var at = 0.0;
        foreach (var span in spans)
        {
            measures.Add(new($"span.{measures.Count}", new(at, -600), new(at + span / 2.0, -600), Axis.Horizontal, Chains.WallFoot));
            at += span / 2.0;
        }

        measures.Add(new("whole", new(0, -600), new(at, -600), Axis.Horizontal, Chains.WallFoot, 1));
        var section = AnnotationSamples.Parapet() with { Measures = measures, Levels = [], Falls = [], Spaces = [], Buildups = [] };
        var bare = section with { Parts = [.. section.Parts.Select(part => part with { Words = new("", "", "") })] };
        var boxes = Annotator.Place(AnnotationSamples.Request(scale, section: bare)).Items.SelectMany(Flat).OfType<Dimension>()
            .Select(one => Typeface.Shipped.Box(DetailGen.Drawing.Scenes.Dimensions.Picture(one, Typeface.Shipped).Figure)).ToList();
        Assert.NotEmpty(boxes);
        for (var i = 0; i < boxes.Count; i++)
        {
            Assert.All(boxes.Take(i), other => Assert.False(boxes[i].Meets(other, -0.05)));
        }
    });

    private static IEnumerable<Item> Flat(Item item) => item is Group group ? group.Items.SelectMany(Flat) : [item];

    private static double[] Middles(double[] spans)
    {
        var middles = new double[spans.Length];
        var at = 0.0;
        for (var i = 0; i < spans.Length; i++)
        {
            middles[i] = at + spans[i] / 2;
            at += spans[i];
        }

        return middles;
    }
}
