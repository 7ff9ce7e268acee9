namespace DetailGen.EndToEnd.Tests.Verbs;

public class BadInputTests
{
    private const string Head = "detail: d\njunction: parapet\nwall: cavity-masonry\nroof: warm-timber-deck\n";

    public static TheoryData<string, string, int, string> Files => new()
    {
        // what is wrong, text, line, word that must stand in reason or hint
        { "unknown key", Head + "sets: { wall.cavity: 150 mm }\n", 5, "set" },
        { "unknown parameter", Head + "set:\n  wall.cavitty: 150 mm\n", 6, "wall.cavity" },
        { "duplicate key", Head + "wall: cavity-masonry\n", 5, "twice" },
        { "no unit", Head + "set:\n  wall.cavity: 150\n", 6, "150 mm" },
        { "wrong unit", Head + "set:\n  wall.cavity: 150 kg\n", 6, "mm" },
        { "out of domain", Head + "set:\n  wall.cavity: 9 m\n", 6, "can only be" },
        { "unknown material", Head + "materials: { roof.deck: plywod }\n", 5, "plywood" },
        { "wrong kind of material", Head + "materials: { roof.deck: lead }\n", 5, "lead" },
        { "waiver without reason", Head + "waive: { upstand-min: {} }\n", 5, "reason" },
        { "waiver with a blank reason", Head + "waive: { upstand-min: { reason: \"  \" } }\n", 5, "no value" },
        { "unknown rule", Head + "waive: { upstand-mim: { reason: agreed } }\n", 5, "upstand-min" },
        { "tab", "detail: d\n\tjunction: parapet\n", 2, "tab" },
        { "empty", "", 1, "empty" },
        { "missing key", "detail: d\njunction: parapet\nwall: cavity-masonry\n", 1, "roof" },
        { "alias", "a: &x [1]\nb: *x\n", 1, "" },
        { "deep nesting", string.Concat(Enumerable.Repeat("[", 500)), 1, "" },
        { "file name", Head + "title-block: { number: TC/1 }\n", 5, "" },
        { "missing base", Head + "extends: nowhere.yaml\n", 5, "" },
        { "binary", "detail: \0\u0001\n", 1, "" },
    };

    [Theory]
    [MemberData(nameof(Files))]
    public void A_fault_has_its_place_a_reason_and_status_two(string what, string text, int line, string word)
    {
        using var scratch = new Scratch();
        var run = Tool.Run("draw", scratch.Write("preset.yaml", text), "--out", Path.Combine(scratch.Folder, "out"), "--json");
        Assert.True(run.Status == 2, what);
        var errors = run.Detail["errors"]!.AsArray();
        Assert.Contains(errors, error => error!["line"]!.GetValue<int>() == line && $"{error["reason"]} {error["hint"]}".Contains(word, StringComparison.OrdinalIgnoreCase));
        Assert.DoesNotContain("   at ", run.Messages, StringComparison.Ordinal);
        Assert.False(Directory.Exists(Path.Combine(scratch.Folder, "out")));
    }

    [Fact]
    public void A_missing_file_a_folder_and_a_huge_file_are_each_told_at_once()
    {
        using var scratch = new Scratch();
        Assert.Equal(2, Tool.Run("draw", Path.Combine(scratch.Folder, "none.yaml")).Status);
        Assert.Equal(2, Tool.Run("draw", scratch.Folder).Status);
        var huge = Path.Combine(scratch.Folder, "huge.yaml");
        using (var file = File.Create(huge))
        {
            file.SetLength(100_000_000);
        }

        Assert.Equal(2, Tool.Run("check", huge).Status);
    }

    [Fact]
    public void Bases_that_extend_each_other_are_told_as_a_circle()
    {
        using var scratch = new Scratch();
        scratch.Write("a.yaml", Head + "extends: b.yaml\n");
        scratch.Write("b.yaml", "extends: a.yaml\n");
        var run = Tool.Run("check", Path.Combine(scratch.Folder, "a.yaml"));
        Assert.Equal(2, run.Status);
        Assert.NotEmpty(run.Messages);
    }

    [Theory]
    [InlineData("wall.cavity")]
    [InlineData("wall.cavity=")]
    [InlineData("=150 mm")]
    [InlineData("wall.cavity=150")]
    [InlineData("nothing=1 mm")]
    public void A_wrong_override_is_told_as_such(string set)
    {
        var run = Tool.Run("check", Tool.Shipped("tern-court-parapet-01"), "--set", set, "--json");
        Assert.Equal(2, run.Status);
        Assert.Equal("--set", run.Detail["errors"]![0]!["file"]!.GetValue<string>());
    }

    [Theory]
    [InlineData(".", "folder-base")]
    [InlineData("none.yaml", "missing-base")]
    [InlineData("empty.yaml", "empty-base")]
    public void A_base_that_cannot_be_taken_is_told_where_it_is_named(string named, string code)
    {
        using var scratch = new Scratch();
        scratch.Write("empty.yaml", "");
        var preset = scratch.Write("preset.yaml", Head + $"extends: {named}\n");
        var error = Assert.Single(Tool.Run("check", preset, "--json").Detail["errors"]!.AsArray())!;
        Assert.Equal((code, preset, 5, 10), (error["code"]!.GetValue<string>(), error["file"]!.GetValue<string>(), error["line"]!.GetValue<int>(), error["column"]!.GetValue<int>()));
    }

    [Theory]
    [InlineData("check")]
    [InlineData("draw")]
    [InlineData("heat")]
    [InlineData("moisture")]
    public void A_wrong_preset_is_told_by_the_name_of_its_detail_where_that_can_be_read(string verb)
    {
        using var scratch = new Scratch();
        string Detail(string text) => Tool.Run(verb, scratch.Write("preset.yaml", text), "--json").Detail["detail"]!.GetValue<string>();
        Assert.Equal("d", Detail(Head + "sets: {}\n"));
        Assert.Equal("d", Detail("detail: d\n"));
        Assert.Equal("", Detail("detail: [d]\n"));
        Assert.Equal("", Detail("detail: d\n\tjunction: parapet\n"));
    }

    [Fact]
    public void Explain_and_range_tell_the_name_of_a_wrong_detail_too()
    {
        using var scratch = new Scratch();
        var preset = scratch.Write("preset.yaml", Head + "sets: {}\n");
        Assert.Equal("d", Tool.Run("explain", preset, "--json").Json["detail"]!.GetValue<string>());
        Assert.Equal("d", Tool.Run("range", preset, "--json").Json["detail"]!.GetValue<string>());
    }
}
