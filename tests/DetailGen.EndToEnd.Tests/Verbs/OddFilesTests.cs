using System.Diagnostics;
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

    [Theory]
    [InlineData(3, "check", "PRESET")]
    [InlineData(3, "check", "PRESET", "--json")]
    [InlineData(3, "check", "nowhere.yaml")]
    [InlineData(3, "list", "nothing")]
    [InlineData(0, "list", "walls")]
    public void Messages_that_go_nowhere_do_not_end_the_work_but_are_not_passed_over(int status, params string[] arguments)
    {
        using var output = new StringWriter();
        using var full = new StreamWriter(new FullStream()) { AutoFlush = true };
        string[] given = [.. arguments.Select(word => word == "PRESET" ? Tool.Shipped("tern-court-parapet-01") : word)];
        Assert.Equal(status, CommandLine.Run(given, output, full));
        Assert.Equal(Tool.Run(given).Output, output.ToString());
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

    /// <summary>Each way in which a verb reads a file that somebody names.</summary>
    public static TheoryData<string, string[]> Readings => new()
    {
        { "preset.yaml", ["check"] }, { "preset.yaml", ["draw", "--out", "nowhere"] }, { "preset.yaml", ["explain"] }, { "case.json", ["heat", "--case"] },
        { "case.json", ["moisture", "--case"] }, { "drawing.dxf", ["inspect"] },
    };

    [Theory]
    [MemberData(nameof(Readings))]
    public async Task A_pipe_that_nobody_writes_to_is_refused_at_once(string name, string[] verb)
    {
        Assert.SkipUnless(File.Exists("/usr/bin/mkfifo"), "This system makes no named pipes.");
        using var scratch = new Scratch();
        var pipe = Path.Combine(scratch.Folder, name);
        using (var making = Process.Start("/usr/bin/mkfifo", [pipe]))
        {
            await making.WaitForExitAsync(TestContext.Current.CancellationToken);
        }

        var run = await Task.Run(() => Tool.Run([.. verb, pipe, "--json"])).WaitAsync(TimeSpan.FromSeconds(100), TestContext.Current.CancellationToken);
        Assert.Equal(2, run.Status);
        Assert.Contains("is a pipe or a device", run.Messages, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Readings))]
    public void A_device_without_an_end_is_refused(string name, string[] verb)
    {
        const string Endless = "/dev/zero";
        Assert.SkipUnless(File.Exists(Endless), "This system has no endless file.");
        using var scratch = new Scratch();
        var link = File.CreateSymbolicLink(Path.Combine(scratch.Folder, name), Endless).FullName;
        Assert.Equal(2, Tool.Run([.. verb, Endless]).Status);
        Assert.Equal(2, Tool.Run([.. verb, link]).Status);
    }

    [Fact]
    public void A_link_to_a_file_is_read_as_that_file()
    {
        using var scratch = new Scratch();
        var link = Path.Combine(scratch.Folder, "link.yaml");
        File.CreateSymbolicLink(link, Path.GetFileName(scratch.Preset("parapet", "solid-masonry-insulated", "warm-concrete-deck")));
        Assert.Equal(0, Tool.Run("check", link).Status);
        File.CreateSymbolicLink(link + "2", "link.yaml");
        Assert.Equal(0, Tool.Run("check", link + "2").Status);
    }

    [Theory]
    [MemberData(nameof(Readings))]
    public void A_link_that_leads_nowhere_or_to_itself_is_told(string name, string[] verb)
    {
        using var scratch = new Scratch();
        var nowhere = File.CreateSymbolicLink(Path.Combine(scratch.Folder, name), "none").FullName;
        var circle = File.CreateSymbolicLink(Path.Combine(scratch.Folder, "circle"), "circle").FullName;
        var run = Tool.Run([.. verb, nowhere]);
        Assert.Equal(2, run.Status);
        Assert.Contains("no such file", run.Messages, StringComparison.Ordinal);
        Assert.Equal(2, Tool.Run([.. verb, circle]).Status);
    }

    [Fact]
    public async Task A_preset_comes_through_standard_input_by_its_path()
    {
        Assert.SkipUnless(File.Exists("/dev/stdin"), "This system has no path for standard input.");
        using var scratch = new Scratch();
        var preset = scratch.Preset("parapet", "solid-masonry-insulated", "warm-concrete-deck");
        ProcessStartInfo asked = new("dotnet", [typeof(CommandLine).Assembly.Location, "explain", "/dev/stdin", "upstand.height", "--what-if", "upstand.height=300mm"])
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
        };
        using var tool = Process.Start(asked)!;
        await tool.StandardInput.WriteAsync(await File.ReadAllTextAsync(preset, TestContext.Current.CancellationToken));
        tool.StandardInput.Close();
        var said = await tool.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken);
        await tool.WaitForExitAsync(TestContext.Current.CancellationToken);
        Assert.Equal(0, tool.ExitCode);
        Assert.Contains("upstand.height = 300 mm", said, StringComparison.Ordinal); // the preset was asked for more than once
    }

    private sealed class FullStream : MemoryStream
    {
        public override void Write(ReadOnlySpan<byte> buffer) => throw new IOException("No room.");

        public override void Write(byte[] buffer, int offset, int count) => throw new IOException("No room.");
    }
}
