using DetailGen.Drawing.Emitters;
using DetailGen.Drawing.Scenes;

namespace DetailGen.Drawing.Tests.Emitters;

public class PdfEmitterTests
{
    private static readonly PdfFile File = new(Pdf(SampleScene.Scene));

    [Fact]
    public void A_line_of_100_mm_is_100_mm_long_on_paper()
    {
        // (100, 60) to (200, 60) of the first page; a point is 1/72 of 25.4 mm.
        var line = File.Lines(0).Single(line => Close(line.FromX, 100) && Close(line.FromY, 60) && Close(line.ToY, 60));
        Assert.Equal(100, line.ToX - line.FromX, 0.001);

        static bool Close(double a, double b) => Math.Abs(a - b) < 0.001;
    }

    [Fact]
    public void The_page_is_as_large_as_the_trimmed_sheet()
    {
        Assert.Equal([(420, 297), (210, 297)], File.PageSizes.Select(size => (Math.Round(size.Width, 3), Math.Round(size.Height, 3))));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    public void Every_word_can_be_read_back_through_the_fonts_own_tables(int page) => Assert.Equal(
        SampleScene.Words(SampleScene.Scene.Pages[page]).Order(StringComparer.Ordinal),
        File.Texts(page).Order(StringComparer.Ordinal));

    [Fact]
    public void The_fonts_are_embedded_with_the_used_letters_only()
    {
        Assert.Equal(2, File.FontFiles.Count);
        Assert.All(File.FontFiles, font => Assert.InRange(font.Length, 1_000, 80_000)); // whole they have 410,000 bytes and more
    }

    [Fact]
    public void There_is_no_date_unless_the_scene_has_one()
    {
        Assert.Contains("/CreationDate (D:20261125000000Z)", File.Plain, StringComparison.Ordinal);
        Assert.DoesNotContain("Date", new PdfFile(Pdf(SampleScene.Scene with { Identity = SampleScene.Scene.Identity with { Date = null } })).Plain, StringComparison.Ordinal);
    }

    [Fact]
    public void The_machines_time_zone_does_not_show()
    {
        var before = Environment.GetEnvironmentVariable("TZ");
        var here = Pdf(SampleScene.Scene);
        try
        {
            Environment.SetEnvironmentVariable("TZ", "Asia/Tokyo");
            TimeZoneInfo.ClearCachedData();
            Assert.Equal(9, TimeZoneInfo.Local.BaseUtcOffset.Hours);
            Assert.Equal(here, Pdf(SampleScene.Scene));
        }
        finally
        {
            Environment.SetEnvironmentVariable("TZ", before);
            TimeZoneInfo.ClearCachedData();
        }
    }

    [Fact]
    public void It_holds_lines_and_letters_but_no_pictures() => Assert.DoesNotContain("/Subtype /Image", File.Plain, StringComparison.Ordinal);

    private static byte[] Pdf(Scene scene) => SceneFiles.Emit(scene, ["pdf"]).Single().Bytes;
}
