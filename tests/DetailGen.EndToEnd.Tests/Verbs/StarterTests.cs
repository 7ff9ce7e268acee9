using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using DetailGen.Testing;

namespace DetailGen.EndToEnd.Tests.Verbs;

/// <summary>What the verb new writes is a preset whose lines can each be used alone.</summary>
public partial class StarterTests
{
    private const int Sample = 2; // lines of each pairing in the suite; scripts/soak tries them all

    public static TheoryData<string, string, string> Pairings
    {
        get
        {
            var data = new TheoryData<string, string, string>();
            foreach (var junction in Ids("junctions"))
            {
                foreach (var wall in Ids("walls"))
                {
                    foreach (var roof in Ids("roofs"))
                    {
                        data.Add(junction, wall, roof);
                    }
                }
            }

            return data;
        }
    }

    private static IEnumerable<string> Ids(string topic) => Tool.Run("list", topic, "--json").Json[topic]!.AsArray().Select(one => one!["id"]!.GetValue<string>());

    [Theory]
    [MemberData(nameof(Pairings))]
    public void Every_line_taken_in_alone_changes_nothing_and_all_together_can_be_solved(string junction, string wall, string roof)
    {
        var lines = Tool.Run("new", junction, wall, roof).Output.Split('\n');
        List<int> commented = [.. Enumerable.Range(0, lines.Length).Where(index => Commented().IsMatch(lines[index]))];
        Assert.True(commented.Count > 40);
        using var scratch = new Scratch();
        var usual = Sizes(scratch, lines);
        var step = Soak.IsAsked ? 1 : commented.Count / Sample;
        for (var i = (junction.Length + wall.Length + roof.Length) % step; i < commented.Count; i += step)
        {
            Assert.Equal((lines[commented[i]], usual), (lines[commented[i]], Sizes(scratch, Without(lines, [commented[i]]))));
        }

        Assert.Equal(usual, Sizes(scratch, Without(lines, commented)));
    }

    private static string[] Without(string[] lines, IReadOnlyCollection<int> comments) =>
        [.. lines.Select((line, index) => comments.Contains(index) ? line.Remove(line.IndexOf('#', StringComparison.Ordinal), line.IndexOf("# ", StringComparison.Ordinal) + 2 - line.IndexOf('#', StringComparison.Ordinal)) : line)];

    private static string Sizes(Scratch scratch, string[] lines)
    {
        var run = Tool.Run("check", scratch.Write("p.yaml", string.Join('\n', lines)), "--json");
        Assert.True(run.Status == 0, run.Messages);
        return string.Join('\n', run.Detail["parameters"]!.AsObject().Select(one => $"{one.Key} {((JsonObject)one.Value!)["text"]}"));
    }

    // one # before a key; ## is for lines that need another choice, and the head is prose
    [GeneratedRegex("^( {2})?# [a-z][a-z0-9.-]*: [^#]*(#|$)")]
    private static partial Regex Commented();

    [Fact]
    public void In_json_a_starter_is_the_text_of_one_document()
    {
        string[] verb = ["new", "parapet", "cavity-masonry", "warm-timber-deck"];
        var json = Tool.Run([.. verb, "--json"]).Json;
        Assert.Equal(Tool.Run(verb).Output, json["text"]!.GetValue<string>());
        Assert.Null(json["file"]);
    }

    [Fact]
    public void A_starter_goes_to_its_file_alone_and_never_into_a_folder_or_over_a_file()
    {
        using var scratch = new Scratch();
        string[] verb = ["new", "parapet", "cavity-masonry", "warm-timber-deck", "--out"];
        var file = Path.Combine(scratch.Folder, "own.yaml");
        var run = Tool.Run([.. verb, file]);
        Assert.Equal((0, ""), (run.Status, run.Output));
        Assert.Contains("detail: own", File.ReadAllText(file), StringComparison.Ordinal);
        foreach (var place in (string[])[file, scratch.Folder, scratch.Folder + "/", Path.Combine(scratch.Folder, "new") + "/", ""])
        {
            var refused = Tool.Run([.. verb, place, "--json"]);
            Assert.Equal(2, refused.Status);
            Assert.NotEmpty(refused.Json["errors"]![0]!["hint"]!.GetValue<string>());
        }
    }

    [Fact]
    public void A_name_that_is_too_long_and_a_folder_that_takes_no_files_are_told_as_such()
    {
        using var scratch = new Scratch();
        string[] verb = ["new", "parapet", "cavity-masonry", "warm-timber-deck", "--out"];
        Assert.Equal(0, Tool.Run([.. verb, Path.Combine(scratch.Folder, new string('a', 240) + ".yaml")]).Status);
        var tooLong = Tool.Run([.. verb, Path.Combine(scratch.Folder, new string('a', 300) + ".yaml")]);
        Assert.Equal(3, tooLong.Status);
        Assert.Contains("the name is too long", tooLong.Messages, StringComparison.Ordinal);
        Assert.SkipUnless(Directory.Exists("/proc/self"), "This system has no folder of processes.");
        var none = Tool.Run([.. verb, "/proc/own.yaml"]);
        Assert.Equal(3, none.Status);
        Assert.Contains("no files can be made in that folder", none.Messages, StringComparison.Ordinal);
    }
}
