using System.Text;

namespace DetailGen.EndToEnd.Tests.Verbs;

public class InspectTests
{
    [Theory]
    [InlineData("parapet", "cavity-masonry", "warm-timber-deck", false)]
    [InlineData("parapet", "solid-masonry-insulated", "warm-concrete-deck", true)]
    [InlineData("abutment", "cavity-masonry", "warm-concrete-deck", true)]
    [InlineData("abutment", "solid-masonry-insulated", "warm-timber-deck", false)]
    public void A_drawing_gives_back_what_it_was_made_from(string junction, string wall, string roof, bool mirror)
    {
        using var scratch = new Scratch();
        var drawn = Tool.Run("draw", scratch.Preset(junction, wall, roof, $"mirror: {(mirror ? "true" : "false")}"), "--out", scratch.Folder, "--formats", "dxf", "--json");
        var run = Tool.Run("inspect", Path.Combine(scratch.Folder, "preset.dxf"), "--json");
        Assert.Equal(0, run.Status);
        Assert.False(run.Json["edited"]!.GetValue<bool>());
        Assert.Empty(run.Json["edits"]!.AsArray());
        Assert.Empty(run.Json["findings"]!.AsArray());
        Assert.Equal((junction, wall, roof, mirror), (Word("junction"), Word("wall"), Word("roof"), run.Json["mirror"]!.GetValue<bool>()));
        var parameters = drawn.Detail["parameters"]!.AsObject();
        Assert.Equal(parameters.Select(pair => pair.Key), run.Json["parameters"]!.AsObject().Select(pair => pair.Key));
        Assert.All(parameters, pair =>
        {
            var read = run.Json["parameters"]![pair.Key]!;
            Assert.Equal(pair.Value!["value"]!.ToJsonString(), read["value"]!.ToJsonString());
            Assert.Equal(pair.Value["unit"]?.ToJsonString(), read["unit"]?.ToJsonString());
        });

        string Word(string key) => run.Json[key]!.GetValue<string>();
    }

    [Fact]
    public void An_edited_word_and_a_line_that_went_are_told_and_end_with_nought()
    {
        using var scratch = new Scratch();
        Tool.Run("draw", Tool.Shipped("tern-court-abutment-02"), "--out", scratch.Folder, "--formats", "dxf");
        var file = Directory.GetFiles(scratch.Folder, "*.dxf").Single();
        File.WriteAllText(file, File.ReadAllText(file).Replace("Tern Court Drawing Office", "Reed Lane Drawing Office", StringComparison.Ordinal), new UTF8Encoding(false));
        var run = Tool.Run("inspect", file);
        Assert.Equal(0, run.Status);
        Assert.Contains("Edited since it was issued:", run.Output, StringComparison.Ordinal);
        Assert.Contains("title block (sheet, line ", run.Output, StringComparison.Ordinal);
        Assert.Contains("  upstand.height = ", run.Output, StringComparison.Ordinal);
        Assert.True(Tool.Run("inspect", file, "--json").Json["edited"]!.GetValue<bool>());
    }

    [Fact]
    public void What_is_no_drawing_of_ours_ends_with_two_and_says_where()
    {
        using var scratch = new Scratch();
        var text = scratch.Write("a.dxf", "detail: a\njunction: parapet\n");
        var run = Tool.Run("inspect", text);
        Assert.Equal(2, run.Status);
        Assert.StartsWith($"{text}:1:1: ", run.Messages, StringComparison.Ordinal);
        Assert.Equal("", run.Output);
        Assert.Equal(2, Tool.Run("inspect", Path.Combine(scratch.Folder, "none.dxf")).Status);
        Assert.Equal(2, Tool.Run("inspect", scratch.Folder).Status);
        var foreign = Tool.Run("inspect", scratch.Write("b.dxf", "  0\nSECTION\n  2\nENTITIES\n  0\nENDSEC\n  0\nEOF\n"), "--json");
        Assert.Equal(2, foreign.Status);
        Assert.Contains("no record", foreign.Json["errors"]![0]!["reason"]!.GetValue<string>(), StringComparison.Ordinal);
    }
}
