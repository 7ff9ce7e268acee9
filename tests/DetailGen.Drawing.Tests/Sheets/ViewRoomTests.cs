using DetailGen.Drawing.Scenes;
using DetailGen.Drawing.Sheets;
using DetailGen.Sections;
using DetailGen.Testing;

namespace DetailGen.Drawing.Tests.Sheets;

public class ViewRoomTests
{
    private static readonly Section Parapet = SampleParapet.Section();

    [Fact]
    public void A_window_that_fits_with_room_to_spare_shows_at_least_what_must_be_seen()
    {
        var room = new ViewRoom(new(0, 0, 200, 300), new(0, 0, 300, 320), new(0, 0));
        var window = room.Window(Parapet, 10)!.Value;
        Assert.All(Parapet.Runs, run => Assert.True(run.Heading == Heading.Down ? window.Bottom <= run.Least : window.Right >= run.Least));
        Assert.InRange(window.Width / 10, 0, 200);
        Assert.InRange(window.Height / 10, 0, 300);
    }

    [Fact]
    public void A_mirrored_view_and_its_title_have_the_mirrored_room()
    {
        var format = SampleSheets.A3 with { Zones = new Dictionary<string, PaperBox>(SampleSheets.A3.Zones) { ["drawing"] = new(96, 94, 250, 287) } };
        var (plain, mirrored) = (ViewRoom.Of(format, false), ViewRoom.Of(format, true));
        var both = format.Zones["view"].Left + format.Zones["view"].Right;
        Assert.Equal((both - plain.Box.Right, both - plain.Box.Left), (mirrored.Box.Left, mirrored.Box.Right));
        var (title, turned) = (plain.Title("Section through parapet", 10, false), mirrored.Title("Section through parapet", 10, true));
        Assert.Equal((both - title.Right, both - title.Left), (turned.Left, turned.Right));
    }

    [Fact]
    public void What_is_drawn_higher_than_its_box_hangs_over_below()
    {
        var room = new ViewRoom(new(0, 0, 200, 100), new(0, 0, 300, 320), new(0, 0));
        Assert.Equal(100, room.Origin(new(0, 0, 80, 106), Parapet).Y + 106);
    }

    [Fact]
    public void A_box_too_small_for_the_least_has_no_window() => Assert.Null(new ViewRoom(new(0, 0, 60, 60), new(0, 0, 80, 80), new(0, 0)).Window(Parapet, 5));
}
