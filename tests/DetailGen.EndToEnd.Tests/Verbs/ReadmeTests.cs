using System.Text.RegularExpressions;
using DetailGen.Testing;

namespace DetailGen.EndToEnd.Tests.Verbs;

/// <summary>What the README shows can be copied and works.</summary>
public partial class ReadmeTests
{
    private static readonly IReadOnlyList<string> Examples =
        [.. Yaml().Matches(File.ReadAllText(Repository.Path("README.md"))).Select(match => Indent().Replace(match.Groups[2].Value, "").Replace("\n" + match.Groups[1].Value, "\n", StringComparison.Ordinal))];

    [Fact]
    public void The_presets_it_shows_can_be_checked()
    {
        var presets = Examples.Where(example => example.StartsWith("detail:", StringComparison.Ordinal)).ToList();
        Assert.Equal(2, presets.Count);
        using var scratch = new Scratch();
        File.Copy(Tool.Shipped("tern-court"), Path.Combine(scratch.Folder, "tern-court.yaml"));
        Assert.All(presets, preset => Assert.Equal("", Faults(Tool.Run("check", scratch.Write("preset.yaml", preset), "--json"))));
    }

    [Fact]
    public void The_rule_it_shows_is_kept_from_a_practices_folder()
    {
        var rule = Assert.Single(Examples, example => example.StartsWith("- id:", StringComparison.Ordinal));
        using var scratch = new Scratch();
        Directory.CreateDirectory(Path.Combine(scratch.Folder, "rules", "ours"));
        scratch.Write(Path.Combine("rules", "ours", "upstands.yaml"), rule);
        scratch.Write(Path.Combine("rules", "ours", "pack.yaml"), Assert.Single(Examples, example => example.Contains("extends: uk\n", StringComparison.Ordinal)));
        var preset = Path.Combine(Directory.CreateDirectory(Path.Combine(scratch.Folder, "..", Path.GetFileName(scratch.Folder) + "-preset")).FullName, "p.yaml");
        try
        {
            File.WriteAllText(preset, "detail: p\njunction: parapet\nwall: cavity-masonry\nroof: warm-timber-deck\nrules: [ours]\n");
            var run = Tool.Run("check", preset, "--practice", scratch.Folder, "--json");
            Assert.Equal("", Faults(run));
            Assert.Equal("pass", run.Detail["rules"]!.AsArray().Single(one => one!["id"]!.GetValue<string>() == "tc-upstand")!["verdict"]!.GetValue<string>());
        }
        finally
        {
            Directory.Delete(Path.GetDirectoryName(preset)!, recursive: true);
        }
    }

    [Fact]
    public void The_contradiction_it_shows_is_what_the_tool_answers()
    {
        var shown = Indent().Replace(Answer().Match(File.ReadAllText(Repository.Path("README.md"))).Groups[1].Value, "").Split('\n', StringSplitOptions.RemoveEmptyEntries);
        Assert.NotEmpty(shown);
        using var scratch = new Scratch();
        var preset = scratch.Write("my-parapet.yaml", Examples[0]);
        var command = shown[0].Split(' ')[1..];
        Assert.Equal("my-parapet.yaml", command[1]);
        command[1] = preset;
        var run = Tool.Run([.. command, "--out", Path.Combine(scratch.Folder, "out")]);
        Assert.Equal(1, run.Status);
        Assert.Equal(shown[1..].Select(line => line.Trim()), run.Output.Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(line => line.Trim()));
    }

    private static string Faults(Tool run) => run.Status == 0 ? "" : run.Messages;

    [GeneratedRegex("^( *)```yaml\\n(.*?)^ *```", RegexOptions.Singleline | RegexOptions.Multiline)]
    private static partial Regex Yaml();

    [GeneratedRegex("^ *```text\\n *\\$ (.*?)^ *```", RegexOptions.Singleline | RegexOptions.Multiline)]
    private static partial Regex Answer();

    [GeneratedRegex("^ +")]
    private static partial Regex Indent();
}
