using DetailGen.Drawing.Lettering;
using DetailGen.Drawing.Scenes;

namespace DetailGen.Library.Tests.Working;

public class RoomNamesTests
{
    // On the paper past a break line a name belongs to nothing; where leaders and notes take all that is drawn of the room, there is nothing else.
    [Theory]
    [InlineData("abutment-01", "Higher room", "A3")]
    [InlineData("abutment-02", "Lower room", "A3")]
    [InlineData("abutment-02", "Lower room", "A2")]
    [InlineData("abutment-03", "Lower room", "A2")]
    [InlineData("parapet-01", "Inside", "A1")]
    public void A_room_is_named_beside_what_is_drawn_of_it(string detail, string name, string paper)
    {
        var view = InsetTests.Whole(detail, ["sheet.scale=1:10", "sheet.paper=" + paper]).Scene.Views[0];
        var words = Typeface.Shipped.Box(Assert.Single(view.Items.OfType<Text>(), text => text.Words == name));
        var foot = view.Items.OfType<Stroke>().Where(stroke => stroke.Row == "break").SelectMany(stroke => stroke.Points).Min(point => point.Y);
        Assert.True(words.Bottom >= foot, $"{name} stands {foot - words.Bottom} mm below the wall's foot.");
    }

    // Under a wall that breaks off a name would belong to the room on either side of it.
    [Theory]
    [InlineData("abutment-03", "sheet.paper=A4", "sheet.scale=1:20")]
    [InlineData("abutment-01", "sheet.paper=A3", "sheet.scale=1:10")]
    [InlineData("abutment-01", "wall.fill=partial", "wall.cavity=150mm", "roof.finish=paving", "roof.joists=along", "sheet.paper=A2", "sheet.scale=1:10")]
    public void The_lower_room_is_named_on_its_own_side_of_the_wall(string detail, params string[] set)
    {
        foreach (var mirror in (bool[])[false, true])
        {
            var view = InsetTests.Whole(detail, [.. set, $"mirror={(mirror ? "true" : "false")}"]).Scene.Views[0];
            var words = view.Items.OfType<Text>().Single(text => text.Words == "Lower room");
            var box = Typeface.Shipped.Box(words);
            double[] wall = [.. view.Items.OfType<Stroke>().Where(stroke => stroke.PartId?.StartsWith("wall.", StringComparison.Ordinal) == true).SelectMany(stroke => stroke.Points).Select(point => point.X)];
            Assert.True(mirror ? box.Right <= wall.Min() + 1e-6 : box.Left >= wall.Max() - 1e-6, $"{words.At} beside a wall from {wall.Min()} to {wall.Max()}");
        }
    }
}
