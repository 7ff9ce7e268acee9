using DetailGen.Cli.Verbs;

namespace DetailGen.EndToEnd.Tests.Verbs;

/// <summary>Files that are no ordinary ones, and an output that takes nothing.</summary>
public class OddFilesTests
{
    [Theory]
    [InlineData("list", "rules")]
    [InlineData("list", "rules", "--json")]
    public void Standard_output_that_takes_nothing_ends_with_three_and_one_line(params string[] arguments)
    {
        using var full = new StreamWriter(new FullStream()) { AutoFlush = true };
        using var messages = new StringWriter();
        Assert.Equal(3, CommandLine.Run(arguments, full, messages));
        Assert.Equal("Standard output could not be written: No room. Send it to a place with room for it." + Environment.NewLine, messages.ToString());
    }

    [Fact]
    public void A_folder_that_links_to_itself_is_looked_through_once()
    {
        using var scratch = new Scratch();
        scratch.Preset("parapet", "solid-masonry-insulated", "warm-concrete-deck");
        Directory.CreateSymbolicLink(Path.Combine(scratch.Folder, "again"), scratch.Folder);
        var run = Tool.Run("check", scratch.Folder, "--json");
        Assert.Equal(0, run.Status);
        Assert.Single(run.Json["details"]!.AsArray());
    }

    [Fact]
    public void A_case_file_without_an_end_is_refused()
    {
        const string Endless = "/dev/zero";
        Assert.SkipUnless(File.Exists(Endless), "This system has no endless file.");
        var run = Tool.Run("heat", "--case", Endless);
        Assert.Equal(2, run.Status);
        Assert.Contains("67108864 bytes", run.Messages, StringComparison.Ordinal);
    }

    private sealed class FullStream : MemoryStream
    {
        public override void Write(ReadOnlySpan<byte> buffer) => throw new IOException("No room.");

        public override void Write(byte[] buffer, int offset, int count) => throw new IOException("No room.");
    }
}
