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
    public void A_box_too_small_for_the_least_has_no_window() => Assert.Null(new ViewRoom(new(0, 0, 60, 60), new(0, 0, 80, 80), new(0, 0)).Window(Parapet, 5));
}
