using System.Text.Json.Nodes;

namespace DetailGen.EndToEnd.Tests.Verbs;

/// <summary>A practice's own mark in the title block.</summary>
public class LogoTests
{
    private const string Mark = "- { shape: area, points: [0, 0, 14, 0, 7, 8] }\n- { shape: line, points: [0, 10, 14, 10] }\n";

    [Theory]
    [InlineData("A3", "1:10")]
    [InlineData("A4", "1:20")]
    public void It_stands_beside_the_legal_owner_on_every_sheet_and_moves_nothing(string paper, string scale)
    {
        using var scratch = new Scratch();
        var preset = scratch.Preset("abutment", "solid-masonry-insulated", "warm-concrete-deck", $"sheet: {{ paper: {paper}, scale: \"{scale}\" }}\ntitle-block: {{ owner: Tern Court }}\n");
        string[] Lines(string folder, params string[] more)
        {
            var run = Tool.Run(["draw", preset, "--out", Path.Combine(scratch.Folder, folder), "--formats", "svg", .. more]);
            Assert.Equal(0, run.Status);
            return [.. Directory.GetFiles(Path.Combine(scratch.Folder, folder), "*.svg").Order(StringComparer.Ordinal).Select(File.ReadAllText)];
        }

        var (plain, marked) = (Lines("plain"), Lines("marked", "--practice", Practice(scratch, Mark)));
        Assert.Equal(plain.Length, marked.Length);
        Assert.All(plain.Zip(marked), pair =>
        {
            // An area and a line more, and else the same.
            Assert.Equal(Count(pair.First, "<path") + 2, Count(pair.Second, "<path"));
            Assert.Equal(Count(pair.First, "<text"), Count(pair.Second, "<text"));
        });
    }

    [Theory]
    [InlineData("- { shape: area, points: [0, 0, 14, 0] }\n", 1, "logo")]
    [InlineData("- { shape: line, points: [0, 0, 14] }\n", 1, "logo")]
    [InlineData("- { shape: area, points: [0, 0, 0, 0, 0, 0] }\n", 1, "logo")]
    [InlineData("- { shape: line, points: [0, 0, 14, 0] }\n- { shape: blob, points: [0, 0, 14, 0] }\n", 2, "unknown-choice")]
    [InlineData("- { shape: line, points: [0, -1, 14, 0] }\n", 1, "out-of-domain")]
    public void What_makes_no_logo_is_told_with_its_line(string text, int line, string code)
    {
        using var scratch = new Scratch();
        var practice = Practice(scratch, text);
        var run = Tool.Run("check", scratch.Preset("parapet", "cavity-masonry", "warm-timber-deck"), "--practice", practice, "--json");
        Assert.Equal(2, run.Status);
        JsonNode error = Assert.Single(run.Json["errors"]?.AsArray() ?? run.Detail["errors"]!.AsArray())!;
        Assert.Equal((Path.Combine(practice, "sheets", "logo.yaml"), line, code), (error["file"]!.GetValue<string>(), error["line"]!.GetValue<int>(), error["code"]!.GetValue<string>()));
    }

    private static int Count(string text, string part) => text.Split(part).Length - 1;

    private static string Practice(Scratch scratch, string logo)
    {
        var folder = Path.Combine(scratch.Folder, "practice");
        Directory.CreateDirectory(Path.Combine(folder, "sheets"));
        File.WriteAllText(Path.Combine(folder, "sheets", "logo.yaml"), logo);
        return folder;
    }
}
