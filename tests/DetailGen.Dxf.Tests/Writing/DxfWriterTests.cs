using System.Text;

namespace DetailGen.Dxf.Tests.Writing;

public sealed class DxfWriterTests
{
    [Fact]
    public void Independent_readers_find_nothing_to_complain_about()
    {
        var (script, reason) = IndependentReaders.Find();
        Assert.SkipWhen(script is null, reason);
        var file = Path.Combine(Directory.CreateTempSubdirectory().FullName, "sample.dxf");
        File.WriteAllBytes(file, SampleDrawing.Bytes(SampleDrawing.Document()));

        var (exit, output) = IndependentReaders.Check(script!, file);

        Assert.SkipWhen(exit == 3, "One of the independent readers is not installed.");
        Assert.True(exit == 0, output);
    }

    [Fact]
    public void The_bytes_are_the_same_twice_and_under_any_culture()
    {
        var first = SampleDrawing.Bytes(SampleDrawing.Document());
        foreach (var culture in (string[])["tr-TR", "de-DE", "ar-SA"])
        {
            Assert.Equal(first, Under(culture, () => SampleDrawing.Bytes(SampleDrawing.Document())));
        }
    }

    [Fact]
    public void Lines_end_in_CRLF_and_there_is_no_byte_order_mark()
    {
        var text = Encoding.UTF8.GetString(SampleDrawing.Bytes(SampleDrawing.Document()));

        Assert.StartsWith("  0\r\nSECTION\r\n", text, StringComparison.Ordinal);
        Assert.EndsWith("  0\r\nEOF\r\n", text, StringComparison.Ordinal);
        Assert.DoesNotContain('\n', text.Replace("\r\n", "", StringComparison.Ordinal));
    }

    private static T Under<T>(string culture, Func<T> make)
    {
        var before = System.Globalization.CultureInfo.CurrentCulture;
        System.Globalization.CultureInfo.CurrentCulture = new(culture);
        try
        {
            return make();
        }
        finally
        {
            System.Globalization.CultureInfo.CurrentCulture = before;
        }
    }
}
