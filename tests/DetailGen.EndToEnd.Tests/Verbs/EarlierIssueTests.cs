using System.Text.Json.Nodes;

namespace DetailGen.EndToEnd.Tests.Verbs;

/// <summary>A revision whose notes stay where a reader knows them.</summary>
public class EarlierIssueTests
{
    [Theory]
    [InlineData("abutment", "cavity-masonry", "warm-timber-deck")]
    [InlineData("parapet", "solid-masonry-insulated", "warm-concrete-deck")]
    public void Drawn_again_after_its_own_report_a_sheet_is_the_same_and_nothing_has_moved(string junction, string wall, string roof)
    {
        using var scratch = new Scratch();
        var preset = scratch.Preset(junction, wall, roof);
        var (first, again) = (Drawn(scratch, preset, "first"), Drawn(scratch, preset, "again", "--earlier", Report(scratch, "first")));
        Assert.Equal(0, Measure(again, "moved_notes"));
        Assert.Equal(first["layout"]!["places"]!.AsArray().Count, Measure(again, "kept_notes"));
        Assert.Equal(File.ReadAllBytes(Only(scratch, "first", "*.svg")), File.ReadAllBytes(Only(scratch, "again", "*.svg")));
    }

    [Fact]
    public void After_a_change_more_notes_stay_than_without_the_report()
    {
        using var scratch = new Scratch();
        var preset = scratch.Preset("abutment", "cavity-masonry", "warm-timber-deck");
        var first = Levels(Drawn(scratch, preset, "first"));
        var free = Levels(Drawn(scratch, preset, "free", "--set", "roof.insulation=180mm"));
        var kept = Drawn(scratch, preset, "kept", "--set", "roof.insulation=180mm", "--earlier", Report(scratch, "first"));
        var stay = Levels(kept).Intersect(first).Count();
        Assert.True(stay > free.Intersect(first).Count() && stay >= first.Count / 2, $"{stay} of {first.Count} stay, {free.Intersect(first).Count()} without the report.");
        Assert.Equal(stay, Measure(kept, "kept_notes"));
    }

    [Fact]
    public void A_report_without_the_detail_and_one_of_another_sheet_are_told_and_used_no_further()
    {
        using var scratch = new Scratch();
        var preset = scratch.Preset("abutment", "cavity-masonry", "warm-timber-deck");
        _ = Drawn(scratch, preset, "first");
        var other = Drawn(scratch, scratch.Write("other.yaml", File.ReadAllText(preset) + "\nsheet: { paper: A1, scale: \"1:5\" }\n"), "other", "--earlier", Report(scratch, "first"));
        Assert.Contains(other["warnings"]!.AsArray(), warning => warning!.GetValue<string>().Contains("the notes are laid anew", StringComparison.Ordinal));
        Assert.Null(other["layout"]!["measures"]!["moved_notes"]);
        var stranger = Drawn(scratch, scratch.Write("stranger.yaml", File.ReadAllText(preset).Replace("detail: ", "detail: stranger-", StringComparison.Ordinal)), "stranger", "--earlier", Report(scratch, "first"));
        Assert.Contains(stranger["warnings"]!.AsArray(), warning => warning!.GetValue<string>().StartsWith("The earlier issue does not hold stranger-", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("not json")]
    [InlineData("[]")]
    [InlineData("{\"details\": [null, {\"detail\": \"a\", \"layout\": {\"paper\": \"A3\", \"places\": null}}]}")]
    [InlineData("{\"details\": [{\"detail\": 5}]}")]
    public void What_is_no_report_is_refused_with_its_file_and_nothing_is_written(string text)
    {
        using var scratch = new Scratch();
        var file = scratch.Write("earlier.json", text);
        var folder = Path.Combine(scratch.Folder, "out");
        var run = Tool.Run("draw", scratch.Preset("abutment", "cavity-masonry", "warm-timber-deck"), "--earlier", file, "--out", folder);
        Assert.Equal(2, run.Status);
        Assert.Contains($"{file}:1:1: This is no report of drawn details", run.Messages, StringComparison.Ordinal);
        Assert.False(Directory.Exists(folder));
    }

    private static JsonNode Drawn(Scratch scratch, string preset, string folder, params string[] options)
    {
        var run = Tool.Run(["draw", preset, "--out", Path.Combine(scratch.Folder, folder), "--formats", "svg,json", "--json", .. options]);
        Assert.Equal(0, run.Status);
        return run.Detail;
    }

    private static double Measure(JsonNode detail, string name) => detail["layout"]!["measures"]![name]!.GetValue<double>();

    private static List<string> Levels(JsonNode detail) =>
        [.. detail["layout"]!["places"]!.AsArray().Select(place => FormattableString.Invariant($"{place!["part"]} {place["column"]} {place["y_mm"]!.GetValue<double>():0.00}"))];

    private static string Report(Scratch scratch, string folder) => Only(scratch, folder, "*.json");

    private static string Only(Scratch scratch, string folder, string pattern) => Directory.GetFiles(Path.Combine(scratch.Folder, folder), pattern).Order(StringComparer.Ordinal).First();
}
