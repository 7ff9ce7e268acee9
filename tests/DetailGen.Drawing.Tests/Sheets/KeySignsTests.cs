using DetailGen.Drawing.Annotation;
using DetailGen.Drawing.Lettering;
using DetailGen.Drawing.Sheets;
using DetailGen.Drawing.Tests.Annotation;
using DetailGen.Drawing.Views;
using DetailGen.Testing;

namespace DetailGen.Drawing.Tests.Sheets;

public sealed class KeySignsTests
{
    [Fact]
    public void Signs_of_the_key_are_those_that_occur()
    {
        var section = SampleParapet.Section();
        var view = SectionView.Draw(section, new(10, ViewRoom.Least(section)));
        var layout = Annotator.Place(AnnotationSamples.Request(10, false));
        var bare = KeySigns.Of(TextSizes.Usual, view, [], numbers: false, rings: false).Select(entry => entry.Words).ToArray();
        var all = KeySigns.Of(TextSizes.Usual, view, layout.Items, numbers: true, rings: true).Select(entry => entry.Words).ToArray();
        Assert.DoesNotContain("size, mm", bare);
        Assert.Contains("size, mm", all);
        Assert.Contains("fall, downhill", all);
        Assert.Contains("note by number: see the list", all);
        Assert.DoesNotContain(bare, words => words.StartsWith("ring", StringComparison.Ordinal));
        Assert.Single(all, words => words.StartsWith("ring: drawn larger", StringComparison.Ordinal));
        Assert.Equal(all.Length, all.Distinct(StringComparer.Ordinal).Count());
    }

    [Fact]
    public void Pictures_stay_in_their_box()
    {
        var section = SampleParapet.Section();
        var view = SectionView.Draw(section, new(10, ViewRoom.Least(section)));
        foreach (var entry in KeySigns.Of(TextSizes.Usual, view, Annotator.Place(AnnotationSamples.Request(10, false)).Items, numbers: true, rings: true))
        {
            var box = Marks.Of(entry.Picture, Typeface.Shipped).Bounds(new(0, 0, 1, 1));
            Assert.InRange(box.Left, -0.6, 10);
            Assert.InRange(box.Right, 0, Key.SwatchWidth + 0.6);
            Assert.InRange(box.Bottom, -0.6, 5);
            Assert.InRange(box.Top, 0, Key.SwatchHeight + 0.6);
        }
    }
}
