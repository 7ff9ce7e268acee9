using System.Diagnostics;
using System.IO.Compression;
using DetailGen.Cli.Verbs;
using DetailGen.Testing;
using SixLabors.ImageSharp;
using SixLabors.ImageSharp.PixelFormats;

namespace DetailGen.EndToEnd.Tests.Verbs;

/// <summary>What stands in output-samples is what the tool makes today.</summary>
public sealed class SamplesTests
{
    private const string Impossible = "presets/details/tern-court-impossible.yaml";
    private const string Formats = "dxf,svg,pdf,png,csv,xlsx,md,json";

    [Fact]
    public void The_samples_are_what_the_tool_makes_today()
    {
        var samples = Repository.Path("output-samples");
        Assert.SkipWhen(Names(samples).Count == 0, "output-samples holds no samples yet; scripts/samples makes them.");

        using var scratch = new Scratch();
        // As scripts/samples names them: paths from the repository, in order of name.
        List<string> presets = [.. Directory.EnumerateFiles(Repository.Path("presets", "details"), "tern-court-*.yaml")
            .Select(file => "presets/details/" + Path.GetFileName(file)).Where(file => file != Impossible).Order(StringComparer.Ordinal)];
        var (status, _) = Process(["draw", .. presets, "--out", scratch.Folder, "--formats", Formats]);
        Assert.Equal(0, status);
        var (refused, conflict) = Process(["draw", Impossible, "--out", scratch.Folder, "--json"]);
        Assert.Equal(1, refused);
        scratch.Write("TC-DET-0199-P01.json", conflict);

        Assert.Equal(Names(samples), Names(scratch.Folder));
        var stale = Names(samples).Where(name => !Same(Path.Combine(samples, name), Path.Combine(scratch.Folder, name)));
        Assert.Empty(stale);
    }

    private static List<string> Names(string folder) => Directory.Exists(folder)
        ? [.. Directory.EnumerateFiles(folder).Select(file => Path.GetFileName(file)).Where(name => name != "README.md" && !name.StartsWith('.')).Order(StringComparer.Ordinal)]
        : [];

    private static bool Same(string expected, string actual) => Path.GetExtension(expected) switch
    {
        ".png" => Pixels(expected).SequenceEqual(Pixels(actual)),
        ".xlsx" => Parts(expected).SequenceEqual(Parts(actual), StringComparer.Ordinal),
        _ => File.ReadAllBytes(expected).AsSpan().SequenceEqual(File.ReadAllBytes(actual)),
    };

    private static byte[] Pixels(string path)
    {
        using var image = Image.Load<Rgba32>(path);
        var pixels = new byte[(image.Width * image.Height * 4) + 4];
        // The width stands in front, so that two pictures of one area but another shape differ.
        BitConverter.TryWriteBytes(pixels, image.Width);
        image.CopyPixelDataTo(pixels.AsSpan(4));
        return pixels;
    }

    private static List<string> Parts(string path)
    {
        using var archive = ZipFile.OpenRead(path);
        return [.. archive.Entries.OrderBy(entry => entry.FullName, StringComparer.Ordinal).Select(entry =>
        {
            using var reader = new StreamReader(entry.Open());
            return $"{entry.FullName}: {reader.ReadToEnd()}";
        })];
    }

    // A process of its own, under a culture that writes numbers and the letter i otherwise.
    private static (int Status, string Output) Process(IEnumerable<string> arguments)
    {
        var start = new ProcessStartInfo("dotnet", [typeof(CommandLine).Assembly.Location, .. arguments])
        {
            WorkingDirectory = Repository.Path(),
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            Environment = { ["LANG"] = "tr_TR.UTF-8", ["LC_ALL"] = "tr_TR.UTF-8" },
        };
        using var process = System.Diagnostics.Process.Start(start)!;
        var messages = process.StandardError.ReadToEndAsync();
        var output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        _ = messages.Result;
        return (process.ExitCode, output);
    }
}
