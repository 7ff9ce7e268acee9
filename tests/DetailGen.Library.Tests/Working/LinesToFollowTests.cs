using DetailGen.Drawing.Auditing;
using DetailGen.Drawing.Lettering;
using DetailGen.Drawing.Scenes;

namespace DetailGen.Library.Tests.Working;

/// <summary>The small picture of where water, air, vapour and heat are stopped.</summary>
public class LinesToFollowTests
{
    private const string Id = "lines", Title = "Lines to follow";

    [Theory]
    [InlineData("parapet-01", "A2", "1:5", "false", 1)]
    [InlineData("parapet-01", "A2", "1:5", "true", 1)]
    [InlineData("abutment-02", "A1", "1:5", "false", 1)]
    [InlineData("parapet-05", "A1", "1:10", "true", 1)]
    [InlineData("abutment-01", "A3", "1:10", "false", 3)] // no room beside the view: with the tables
    public void It_stands_in_the_white_and_moves_nothing(string detail, string paper, string scale, string mirror, int page)
    {
        string[] settings = ["sheet.paper=" + paper, "sheet.scale=" + scale, "mirror=" + mirror, "sheet.heat-figures=none"];
        var (with, without) = (InsetTests.Whole(detail, settings), InsetTests.Whole(detail, [.. settings, "sheet.control-lines=none"]));
        Assert.Empty(LayoutAudit.Of(with.Scene, with.Format, with.Parts));
        Assert.DoesNotContain(without.Scene.Views, view => view.Id == Id);
        Assert.Equal(without.Scene.Views.Count + 1, with.Scene.Views.Count);

        var view = with.Scene.Views.Single(view => view.Id == Id);
        var on = with.Scene.Pages.Single(sheet => sheet.Placements.Any(placement => placement.ViewId == Id));
        Assert.Equal((20, page), (view.Scale, on.Number));
        var before = without.Scene.Pages.Single(sheet => sheet.Number == page);
        Assert.Equal(before.Placements, on.Placements.Take(on.Placements.Count - 1));
        Assert.Equal(before.Items.Count, on.Items.Count - Added(before, on).Length);

        // Nothing that was there lies in what the picture or its legend takes.
        var placed = on.Placements[^1];
        Assert.True(placed.Window.Grow(1e-9).Holds(view.Bounds.Shift(placed.Origin)));
        var there = before.Items.Concat(before.Placements.SelectMany(other => without.Scene.Views.Single(one => one.Id == other.ViewId).Items.Select(item => Moving.By(item, other.Origin)))).SelectMany(Leaves).ToArray();
        PaperBox[] taken = [view.Bounds.Shift(placed.Origin), .. Added(before, on).OfType<Text>().Select(text => Typeface.Shipped.Box(text))];
        Assert.All(taken, box =>
        {
            Assert.True(with.Format!.Space.Holds(box));
            Assert.DoesNotContain(there.OfType<Text>(), text => Typeface.Shipped.Box(text).Meets(box));
            Assert.DoesNotContain(there.OfType<Stroke>().SelectMany(stroke => stroke.Points), point => box.Holds(new(point.X, point.Y, point.X, point.Y)));
            Assert.DoesNotContain(there.OfType<Solid>().SelectMany(solid => solid.Outline), point => box.Holds(new(point.X, point.Y, point.X, point.Y)));
        });
        Assert.Contains(Added(before, on).OfType<Text>(), text => text.Words == Title);
        Assert.Equal(["control.air", "control.vapour", "control.water"], view.Items.Select(item => item.Row).Where(row => row.StartsWith("control.", StringComparison.Ordinal)).Distinct().Order(StringComparer.Ordinal));
    }

    [Theory]
    [InlineData("A1", "sheet.line-group=usual")]
    [InlineData("A1", "sheet.line-group=copy")]
    [InlineData("A2", "sheet.line-group=usual")]
    [InlineData("A1", "sheet.companions=[control-lines]", "sheet.line-group=copy")]
    public void In_black_print_the_signs_of_air_and_vapour_are_told_apart_by_their_dashes(string paper, params string[] settings)
    {
        var scene = InsetTests.Whole("parapet-01", ["sheet.paper=" + paper, "sheet.scale=1:5", .. settings]).Scene;
        foreach (var (row, gap) in ((string, double)[])[("control.air", 6.5), ("control.vapour", 3)])
        {
            var sign = scene.Pages.SelectMany(page => page.Items).OfType<Stroke>().Single(stroke => stroke.Row == row);

            // two dashes of 12 widths and what lies between (ISO 128-2:2022, from memory), pressed by no more than a quarter
            Assert.True(sign.Points[1].X - sign.Points[0].X >= 0.75 * (12 + gap + 12) * scene.Layer(row).Width, $"{row} is drawn as one dash.");
        }
    }

    [Theory]
    [InlineData("sheet.companions=[control-lines]")] // it has a sheet of its own
    [InlineData("sheet.scale=1:20")] // the view is as small
    public void It_is_left_out_where_it_would_say_nothing_more(string setting) =>
        Assert.DoesNotContain(InsetTests.Whole("parapet-01", ["sheet.paper=A2", setting]).Scene.Views, view => view.Id == Id);

    [Fact]
    public void A_mirrored_detail_has_it_mirrored()
    {
        var (plain, mirrored) = (Seen("false"), Seen("true"));
        double[] Across(View view, int side) => [.. view.Items.OfType<Stroke>().Where(stroke => stroke.Row == "control.water").SelectMany(stroke => stroke.Points).Select(point => Math.Round(side * point.X, 3)).Order()];
        Assert.Equal(Across(plain, 1), Across(mirrored, -1));
        Assert.Equal(plain.Bounds.Left, -mirrored.Bounds.Right, 6);
        Assert.Equal(plain.Bounds.Top, mirrored.Bounds.Top, 6);

        static View Seen(string mirror) => InsetTests.Whole("parapet-01", ["sheet.paper=A1", "sheet.scale=1:10", "mirror=" + mirror]).Scene.Views.Single(view => view.Id == Id);
    }

    private static IEnumerable<Item> Leaves(Item item) => item is Group group ? group.Items.SelectMany(Leaves) : [item];

    private static Item[] Added(Page before, Page on) => [.. on.Items.Skip(before.Items.Count)];
}
