using DetailGen.Drawing.Lettering;
using DetailGen.Drawing.Scenes;

namespace DetailGen.Library.Tests.Working;

public class RoomNamesTests
{
    // On the paper past a break line a name belongs to nothing; where leaders and notes take all that is drawn of the room, there is nothing else.
    [Theory]
    [InlineData("abutment-01", "Lower room", "A3")]
    [InlineData("parapet-01", "Inside", "A1")]
    public void A_room_is_named_beside_what_is_drawn_of_it(string detail, string name, string paper)
    {
        var view = InsetTests.Composed(detail, ["sheet.scale=1:10", "sheet.paper=" + paper]).Scene.Views[0];
        var words = Typeface.Shipped.Box(Assert.Single(view.Items.OfType<Text>(), text => text.Words == name));
        var foot = view.Items.OfType<Stroke>().Where(stroke => stroke.Row == "break").SelectMany(stroke => stroke.Points).Min(point => point.Y);
        Assert.True(words.Bottom >= foot, $"{name} stands {foot - words.Bottom} mm below the wall's foot.");
    }
}
