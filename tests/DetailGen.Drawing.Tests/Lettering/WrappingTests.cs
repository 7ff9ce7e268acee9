using CsCheck;
using DetailGen.Drawing.Lettering;
using DetailGen.Testing;

namespace DetailGen.Drawing.Tests.Lettering;

public class WrappingTests
{
    private static double Width(string words) => Typeface.Shipped.Width(words, 2.5);

    [Fact]
    public void A_short_text_stays_on_one_line() => Assert.Equal(["50 mm clear cavity"], Typeface.Shipped.Wrap("50 mm clear cavity", 2.5, 72));

    [Fact]
    public void An_empty_text_has_no_lines() => Assert.Empty(Typeface.Shipped.Wrap(" ", 2.5, 72));

    [Fact]
    public void No_line_is_wider_than_the_width_and_no_word_is_lost() =>
        Gen.Select(Gen.String["abcdefg 123 - mm"].Array[0, 30], Gen.Double[8, 80]).Always((words, width) =>
        {
            var text = string.Join(' ', words);
            var lines = Typeface.Shipped.Wrap(text, 2.5, width);
            Assert.All(lines, line => Assert.InRange(Width(line), 0, width + 1e-6));
            Assert.Equal(text.Replace(" ", "", StringComparison.Ordinal), string.Concat(lines).Replace(" ", "", StringComparison.Ordinal));
        });

    [Fact]
    public void A_short_last_word_takes_the_word_before_it_down()
    {
        var width = Width("taken up to the underside of");
        Assert.Equal(["taken up to the underside", "of it"], Typeface.Shipped.Wrap("taken up to the underside of it", 2.5, width));
    }

    [Fact]
    public void A_long_last_word_may_stand_alone()
    {
        var width = Width("taken up to the underside");
        Assert.Equal(["taken up to the underside", "coping"], Typeface.Shipped.Wrap("taken up to the underside coping", 2.5, width));
    }

    [Fact]
    public void A_size_stays_with_its_unit()
    {
        var width = Width("Membrane turned up 150");
        Assert.Equal(["Membrane turned up", "150 mm above"], Typeface.Shipped.Wrap("Membrane turned up 150 mm above", 2.5, width));
    }

    [Fact]
    public void A_word_too_wide_is_broken_after_its_hyphen()
    {
        var width = Width("damp-proof");
        Assert.Equal(["damp-", "proofcourse"], Typeface.Shipped.Wrap("damp-proofcourse", 2.5, Width("proofcourse")));
        Assert.Equal("damp-proof", string.Concat(Typeface.Shipped.Wrap("damp-proof", 2.5, width - 1)));
    }

    [Fact]
    public void Line_breaks_in_the_text_are_kept() => Assert.Equal(["a", "b"], Typeface.Shipped.Wrap("a\nb", 2.5, 72));
}
