using System.Globalization;
using System.Text;
using CsCheck;
using DetailGen.Dxf.Tags;
using DetailGen.Testing;

namespace DetailGen.Dxf.Tests.Tags;

public sealed class DxfStringTests
{
    // Letters of one to four bytes, escapes, combining marks and blanks, in the odds that make cuts fall badly.
    private static readonly Gen<string> Line = Gen.OneOf(Plain, Gen.OneOf("^", "%%")).List[1, 400].Select(string.Concat);

    private static Gen<string> Plain =>
        Gen.OneOf("a", "é", "λ", "\u20AC", "\U0001F600", "e\u0301", "\\", "{", "}", "%", " ", "\u00A0", "\uD55C");

    [Fact]
    public void Chunks_joined_are_the_text() =>
        Line.Always(line => string.Concat(DxfString.Chunks(DxfString.ForLines([line]))) == DxfString.ForLines([line]));

    [Fact]
    public void Every_chunk_fits_a_tag() =>
        Line.Always(line => DxfString.Chunks(DxfString.ForLines([line, line])).All(chunk =>
            chunk.Length <= DxfString.MostLetters && Encoding.UTF8.GetByteCount(chunk) <= DxfString.MostBytes));

    [Fact]
    public void No_chunk_is_cut_inside_an_escape_a_surrogate_pair_or_a_combining_sequence() =>
        Line.Always(line =>
        {
            var chunks = DxfString.Chunks(DxfString.ForLines([line])).ToArray();
            return chunks.SkipLast(1).All(EndsBetweenEscapes)
                && chunks.Skip(1).All(chunk => !char.IsLowSurrogate(chunk[0]) && CharUnicodeInfo.GetUnicodeCategory(chunk, 0) is not UnicodeCategory.NonSpacingMark);
        });

    [Fact]
    public void Escapes_read_back_as_the_lines() =>
        Plain.Where(letter => letter != "%").List[0, 100].Select(string.Concat).List[1, 4].Always(lines => Lines(DxfString.ForLines(lines)).SequenceEqual(lines.Select(line => line.TrimEnd())));

    [Fact]
    public void No_cut_falls_beside_a_blank_where_another_place_is_near()
    {
        var text = string.Concat(Enumerable.Repeat("word ", 120));

        var chunks = DxfString.Chunks(text).ToArray();

        Assert.True(chunks.Length > 2);
        Assert.All(chunks[..^1], chunk => Assert.NotEqual(' ', chunk[^1]));
        Assert.All(chunks[1..], chunk => Assert.NotEqual(' ', chunk[0]));
    }

    [Fact]
    public void A_tower_of_marks_longer_than_a_chunk_is_cut_between_marks()
    {
        var text = "a" + new string('\u0301', 600);

        Assert.Equal(text, string.Concat(DxfString.Chunks(text)));
        Assert.All(DxfString.Chunks(text), chunk => Assert.True(Encoding.UTF8.GetByteCount(chunk) <= DxfString.MostBytes));
    }

    [Theory]
    [InlineData("a^b", "a^ b")]
    [InlineData("100%%", "100% %")]
    [InlineData("%%%", "% % %")]
    [InlineData(" outer blanks \u00A0 ", "outer blanks")]
    [InlineData("Ø 5 % ± °", "Ø 5 % ± °")]
    public void Carets_and_pairs_of_percent_signs_are_parted_and_outer_blanks_go(string text, string written) => Assert.Equal(written, DxfString.ForText(text));

    [Theory]
    [InlineData("two\nlines")]
    [InlineData("tab\t")]
    [InlineData("next\u0085line")]
    [InlineData("\u2028")]
    public void A_control_letter_is_refused(string text) => Assert.Throws<ArgumentException>(() => DxfString.ForLines([text]));

    private static bool EndsBetweenEscapes(string chunk)
    {
        var at = 0;
        while (at < chunk.Length)
        {
            at += chunk[at] is '\\' or '^' ? 2 : 1;
        }

        return at == chunk.Length;
    }

    // Reads escapes back by hand, so that the writer is not its own judge.
    private static List<string> Lines(string escaped)
    {
        var lines = new List<string> { "" };
        for (var i = 0; i < escaped.Length; i++)
        {
            if (escaped[i] != '\\')
            {
                lines[^1] += escaped[i];
            }
            else if (escaped[++i] == 'P')
            {
                lines.Add("");
            }
            else
            {
                lines[^1] += escaped[i] == '~' ? '\u00A0' : escaped[i];
            }
        }

        return lines;
    }
}
