using System.Globalization;

namespace DetailGen.EndToEnd.Tests.Verbs;

public class SameBytesTests
{
    [Fact]
    public void The_same_preset_gives_the_same_bytes_in_another_folder_and_under_another_culture()
    {
        using var first = new Scratch();
        using var second = new Scratch();
        var before = CultureInfo.CurrentCulture;
        try
        {
            Draw(first);
            (CultureInfo.CurrentCulture, CultureInfo.CurrentUICulture) = (CultureInfo.GetCultureInfo("tr-TR"), CultureInfo.GetCultureInfo("tr-TR"));
            Draw(second);
        }
        finally
        {
            (CultureInfo.CurrentCulture, CultureInfo.CurrentUICulture) = (before, before);
        }

        var files = Directory.GetFiles(first.Folder, "TC-*").Select(Path.GetFileName).Order(StringComparer.Ordinal).ToList();
        Assert.Contains("TC-DET-0201-P01.pdf", files);
        Assert.All(files, file => Assert.Equal(File.ReadAllBytes(Path.Combine(first.Folder, file!)), File.ReadAllBytes(Path.Combine(second.Folder, file!))));
    }

    private static void Draw(Scratch scratch) =>
        Assert.Equal(0, Tool.Run("draw", Tool.Shipped("tern-court-abutment-01"), "--out", scratch.Folder, "--formats", "dxf,svg,pdf,png,csv,xlsx,md", "--dpi", "100").Status);
}
