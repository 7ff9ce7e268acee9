using System.Text;
using CsCheck;
using DetailGen.Details.Reading;
using DetailGen.Testing;

namespace DetailGen.Details.Tests.Reading;

public class NodeReaderTests
{
    private static ReadText Read(string text) => NodeReader.Bytes(Encoding.UTF8.GetBytes(text), "a.yaml", ReadingLimits.Usual);

    private static Diagnostic OnlyFault(string text) => Assert.Single(Read(text).Faults);

    [Fact]
    public void Every_key_and_value_knows_its_place()
    {
        var map = (MapNode)Read("detail: one\nset:\n  wall.cavity: 150 mm\n  list: [a, 1:40]\n").Root!;
        Assert.Equal(new("a.yaml", 1, 1), map.Find("detail")!.KeyAt);
        Assert.Equal(new("a.yaml", 1, 9), map["detail"]!.At);
        var set = (MapNode)map["set"]!;
        Assert.Equal(new("a.yaml", 3, 3), set.Find("wall.cavity")!.KeyAt);
        Assert.Equal(new("a.yaml", 3, 16), set["wall.cavity"]!.At);
        Assert.Equal(new("a.yaml", 4, 13), ((ListNode)set["list"]!).Items[1].At);
    }

    [Theory]
    [InlineData("{ roof.fall: 1:40, other: 2 }")]
    [InlineData("roof.fall: 1:40\nother: 2")]
    [InlineData("roof.fall: \"1:40\"\nother: 2")]
    public void A_ratio_stays_the_text_it_is(string text) =>
        Assert.Equal("1:40", ((ScalarNode)((MapNode)Read(text).Root!)["roof.fall"]!).Text);

    [Fact]
    public void A_duplicate_key_is_told_with_both_lines_and_the_reading_goes_on()
    {
        var read = Read("a: 1\nb: 2\na: 3\nb: 4\n");
        Assert.Equal(
            [Messages.DuplicateKey(new("a.yaml", 3, 1), "a", new("a.yaml", 1, 1)), Messages.DuplicateKey(new("a.yaml", 4, 1), "b", new("a.yaml", 2, 1))], read.Faults);
        Assert.NotNull(read.Root);
    }

    [Theory]
    [InlineData("", "empty", 1, 1)]
    [InlineData("# only a comment\n", "empty", 1, 1)]
    [InlineData("---\n", "empty", 1, 1)]
    [InlineData("a:\n\tb: 1\n", "tab", 2, 1)]
    [InlineData("a:\n  \tb: 1\n", "tab", 2, 3)]
    [InlineData("a: 1\n---\nb: 2\n", "several-documents", 2, 1)]
    [InlineData("a: &x 1\n", "alias", 1, 4)]
    [InlineData("a: 1\nb: *x\n", "alias", 2, 4)]
    [InlineData("a: !!int 1\n", "tag", 1, 4)]
    [InlineData("a: !System.IO.File x\n", "tag", 1, 4)]
    [InlineData("a: 1\n[b]: 2\n", "bad-key", 2, 1)]
    [InlineData("a: b: c\n", "bad-yaml", 1, 5)]
    [InlineData("a: \"open\n", "bad-yaml", 1, 4)]
    [InlineData("a: \0b\n", "binary", 1, 4)]
    [InlineData("ä: \u0007\n", "binary", 1, 4)]
    public void What_is_not_read_is_one_fault_with_its_place(string text, string code, int line, int column)
    {
        var fault = OnlyFault(text);
        Assert.Equal((code, new Mark("a.yaml", line, column)), (fault.Code, fault.At));
        Assert.NotNull(fault.Hint);
    }

    [Fact]
    public void A_text_that_is_not_utf8_is_told_where_it_breaks()
    {
        var fault = Assert.Single(NodeReader.Bytes([(byte)'a', (byte)':', (byte)'\n', 0xC3, 0x28], "a.yaml", ReadingLimits.Usual).Faults);
        Assert.Equal(Messages.NotUtf8(new("a.yaml", 2, 1)), fault);
        Assert.Equal(Messages.NotUtf8(new("a.yaml", 1, 1)), Assert.Single(NodeReader.Bytes(Encoding.Unicode.GetPreamble().Concat(Encoding.Unicode.GetBytes("a: 1")).ToArray(), "a.yaml", ReadingLimits.Usual).Faults));
    }

    [Fact]
    public void A_byte_order_mark_is_no_fault()
    {
        var read = NodeReader.Bytes([0xEF, 0xBB, 0xBF, .. "a: 1\n"u8], "a.yaml", ReadingLimits.Usual);
        Assert.Empty(read.Faults);
        Assert.Equal(new("a.yaml", 1, 1), ((MapNode)read.Root!).Entries[0].KeyAt);
    }

    [Theory]
    [InlineData('[')]
    [InlineData('{')]
    public void Deep_nesting_stops_at_the_limit(char bracket)
    {
        var fault = OnlyFault(new string(bracket, 100_000));
        Assert.Contains(fault.Code, (string[])["too-deep", "bad-yaml"]);
    }

    [Fact]
    public void Deep_nesting_by_indentation_stops_at_the_limit()
    {
        var text = string.Concat(Enumerable.Range(0, 500).Select(i => new string(' ', i) + "a:\n"));
        Assert.Equal(Messages.TooDeep(new("a.yaml", 33, 33), 32), OnlyFault(text));
    }

    [Fact]
    public void Too_many_values_stop_at_the_limit() =>
        Assert.Equal("too-many", OnlyFault("a: [" + string.Concat(Enumerable.Repeat("1,", 60_000)) + "]").Code);

    [Fact]
    public void An_alias_bomb_is_refused_at_its_first_anchor() =>
        Assert.Equal(Messages.NoAliases(new("a.yaml", 1, 4)), OnlyFault("a: &a [x,x]\nb: &b [*a,*a,*a]\nc: [*b,*b,*b]\n"));

    [Fact]
    public void Missing_files_folders_and_long_files_are_told_without_reading_them()
    {
        var folder = Directory.CreateTempSubdirectory("detailgen-reading-").FullName;
        try
        {
            string Code(string path) => Assert.Single(NodeReader.File(path, ReadingLimits.Usual).Faults).Code;
            Assert.Equal("missing-file", Code(Path.Combine(folder, "none.yaml")));
            Assert.Equal("folder", Code(folder));
            Assert.Equal("missing-file", Code(""));
            Assert.Equal("missing-file", Code("a\0b"));
            var big = Path.Combine(folder, "big.yaml");
            using (var stream = File.Create(big))
            {
                stream.SetLength(100_000_000);
            }

            Assert.Equal(Messages.FileTooLong(new(big, 1, 1), 1 << 20), Assert.Single(NodeReader.File(big, ReadingLimits.Usual).Faults));
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    [Fact]
    public void Random_bytes_never_throw() =>
        Gen.Byte.Array[0, 400].Always(bytes => NodeReader.Bytes(bytes, "a.yaml", ReadingLimits.Usual) is { } read && (read.Root is not null || read.Faults.Count > 0));

    [Fact]
    public void Random_scraps_of_yaml_never_throw() =>
        Gen.OneOf("a", "b:", ": ", "- ", "\n", "\n  ", "[", "]", "{", "}", ",", "\"", "'", "|", ">", "#", "&x", "*x", "!t", "%", "@", "`", "---", "...", "?", "? ", "\t", "1:40", "é", "\\u", "<<: ")
            .Array[0, 60].Select(string.Concat)
            .Always(text => Read(text) is { } read && (read.Root is not null || read.Faults.Count > 0));
}
