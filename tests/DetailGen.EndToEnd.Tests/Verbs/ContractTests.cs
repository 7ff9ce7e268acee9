using System.Text.Json.Nodes;

namespace DetailGen.EndToEnd.Tests.Verbs;

public class ContractTests
{
    [Theory]
    [InlineData("draw")]
    [InlineData("new")]
    [InlineData("check")]
    [InlineData("explain")]
    [InlineData("range")]
    [InlineData("heat")]
    [InlineData("moisture")]
    [InlineData("inspect")]
    [InlineData("list")]
    [InlineData("schema")]
    public void Every_verb_has_help_with_an_example(string verb)
    {
        var help = Tool.Run(verb, "--help");
        Assert.Equal(0, help.Status);
        Assert.Contains("Example:", help.Output, StringComparison.Ordinal);
        Assert.Contains($"detailgen {verb}", help.Output, StringComparison.Ordinal);
        Assert.Contains("--json", help.Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("set: { upstand.top: coping, tray.discharge: roof }", "upstand-to-coping-drains-outside", "given.upstand.top", "given.tray.discharge")]
    [InlineData("set: { roof.tied-to-wall: no, coping.kind: metal }", "parapet-is-tied-to-the-roof", "given.roof.tied-to-wall")]
    public void A_choice_of_the_author_that_clashes_is_a_member_of_the_conflict(string set, params string[] members)
    {
        using var scratch = new Scratch();
        var run = Tool.Run("check", scratch.Preset("parapet", "cavity-masonry", "warm-timber-deck", set), "--json");
        Assert.Equal(1, run.Status);
        Assert.Equal(members.Order(StringComparer.Ordinal), run.Detail["conflict"]!["members"]!.AsArray().Select(member => member!["id"]!.GetValue<string>()).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void A_detail_that_can_be_drawn_ends_with_zero_and_tells_its_files()
    {
        using var scratch = new Scratch();
        var run = Tool.Run("draw", scratch.Preset("parapet", "cavity-masonry", "warm-timber-deck"), "--out", scratch.Folder, "--formats", "dxf,csv,json", "--json");
        Assert.Equal(0, run.Status);
        Assert.True(run.Detail["solved"]!.GetValue<bool>());
        var files = run.Detail["files"]!.AsArray();
        Assert.Equal(["preset.dxf", "preset.csv"], files.Select(file => file!["path"]!.GetValue<string>()));
        Assert.All(files, file => Assert.Equal(new FileInfo(Path.Combine(scratch.Folder, file!["path"]!.GetValue<string>())).Length, file["bytes"]!.GetValue<long>()));
        Assert.True(File.Exists(Path.Combine(scratch.Folder, "preset.json")));
        Assert.Empty(Directory.GetFiles(scratch.Folder, ".*"));
    }

    [Fact]
    public void Values_carry_unit_text_and_reason()
    {
        using var scratch = new Scratch();
        var parameters = Tool.Run("check", scratch.Preset("parapet", "cavity-masonry", "warm-timber-deck", "set: { wall.cavity: 150 mm }"), "--json").Detail["parameters"]!;
        var cavity = parameters["wall.cavity"]!;
        Assert.Equal((150.0, "mm", "150 mm", "given"), (cavity["value"]!.GetValue<double>(), cavity["unit"]!.GetValue<string>(), cavity["text"]!.GetValue<string>(), cavity["why"]!["kind"]!.GetValue<string>()));
        Assert.Equal((40.0, "1:n"), (parameters["roof.fall"]!["value"]!.GetValue<double>(), parameters["roof.fall"]!["unit"]!.GetValue<string>()));
        Assert.Equal("full", parameters["wall.fill"]!["value"]!.GetValue<string>());
        Assert.Null(parameters["wall.fill"]!["unit"]);
        Assert.True(parameters["wall.fill"]!.AsObject().ContainsKey("unit"));
    }

    [Fact]
    public void What_cannot_be_ends_with_one_writes_nothing_and_every_repair_works()
    {
        using var scratch = new Scratch();
        var run = Tool.Run("draw", Tool.Shipped("tern-court-impossible"), "--out", scratch.Folder, "--json");
        Assert.Equal(1, run.Status);
        Assert.Empty(Directory.GetFileSystemEntries(scratch.Folder));
        var conflict = run.Detail["conflict"]!;
        Assert.Contains(conflict["members"]!.AsArray(), member => member!["id"]!.GetValue<string>() == "given.coping.overhang");
        var repairs = conflict["repairs"]!.AsArray();
        Assert.NotEmpty(repairs);
        foreach (var repair in repairs)
        {
            var set = repair!["set"]!.AsObject().SelectMany(pair => new[] { "--set", $"{pair.Key}={pair.Value!.GetValue<string>()}" });
            Assert.Equal(0, Tool.Run(["check", Tool.Shipped("tern-court-impossible"), .. set]).Status);
        }
    }

    [Fact]
    public void Further_conflicts_and_changes_that_go_together_stand_in_the_json()
    {
        var run = Tool.Run("check", Tool.Shipped("tern-court-parapet-01"), "--set", "wall.cavity=40mm", "--set", "weep.spacing=1200mm", "--json");
        Assert.Equal(1, run.Status);
        var conflict = run.Detail["conflict"]!;
        var further = Assert.Single(conflict["further"]!.AsArray())!["members"]!.AsArray();
        Assert.All(further, member => Assert.NotEmpty(member!["text"]!.GetValue<string>()));
        Assert.False(conflict["may_be_more"]!.GetValue<bool>());
        Assert.Equal(2, conflict["repairs"]![0]!["set"]!.AsObject().Count);
    }

    [Fact]
    public void What_if_answers_in_json_and_in_words_and_its_help_has_an_example()
    {
        var preset = Tool.Shipped("tern-court-parapet-01");
        var run = Tool.Run("explain", preset, "--what-if", "wall.cavity=180mm", "--json");
        Assert.Equal(0, run.Status);
        var whatIf = run.Json["what_if"]!;
        Assert.Equal("wall.cavity=180mm", whatIf["set"]![0]!.GetValue<string>());
        var cavity = whatIf["values"]!.AsArray().Single(value => value!["key"]!.GetValue<string>() == "wall.cavity")!;
        Assert.Equal(("150 mm", "180 mm"), (cavity["from"]!.GetValue<string>(), cavity["to"]!.GetValue<string>()));
        Assert.Contains("wall.thickness", Tool.Run("explain", preset, "--what-if", "wall.cavity=180mm").Output, StringComparison.Ordinal);
        var refused = Tool.Run("explain", preset, "--what-if", "wall.cavity=40mm", "--what-if", "weep.spacing=1200mm");
        Assert.Equal(1, refused.Status);
        Assert.Contains("No single change mends it. These together do:", refused.Output, StringComparison.Ordinal);
        Assert.Equal(2, Tool.Run("explain", preset, "--what-if", "wall.cavity").Status);
        Assert.Contains("--what-if roof.insulation=120mm", Tool.Run("explain", "--help").Output, StringComparison.Ordinal);
    }

    [Fact]
    public void Each_of_several_presets_is_done_on_its_own_and_the_worst_status_counts()
    {
        using var scratch = new Scratch();
        var good = scratch.Preset("abutment", "solid-masonry-insulated", "warm-concrete-deck", name: "good.yaml");
        var bad = scratch.Write("bad.yaml", "detail: bad\njunction: parapit\nwall: cavity-masonry\nroof: warm-timber-deck\n");
        var run = Tool.Run("draw", bad, good, "--out", scratch.Folder, "--formats", "csv", "--json");
        Assert.Equal(2, run.Status);
        Assert.True(File.Exists(Path.Combine(scratch.Folder, "good.csv")));
        var error = run.Detail["errors"]![0]!;
        Assert.Equal(2, error["line"]!.GetValue<int>());
        Assert.Contains("parapet", error["hint"]!.GetValue<string>(), StringComparison.Ordinal);
    }

    [Fact]
    public void Of_two_presets_of_one_name_neither_is_written()
    {
        using var scratch = new Scratch();
        var one = scratch.Preset("abutment", "cavity-masonry", "warm-concrete-deck", "title-block: { number: TC-1 }", "one.yaml");
        var two = scratch.Preset("parapet", "cavity-masonry", "warm-concrete-deck", "title-block: { number: TC-1 }", "two.yaml");
        var run = Tool.Run("draw", one, two, "--out", scratch.Folder, "--formats", "csv", "--json");
        Assert.Equal(2, run.Status);
        Assert.Contains("TC-1", run.Messages, StringComparison.Ordinal);
        Assert.All(run.Json["details"]!.AsArray(), detail => Assert.Equal("same-name", detail!["errors"]![0]!["code"]!.GetValue<string>()));
        Assert.Empty(Directory.EnumerateFiles(scratch.Folder, "TC-1*"));
    }

    [Fact]
    public void A_folder_in_the_way_of_a_file_ends_with_three_and_no_file_is_written()
    {
        using var scratch = new Scratch();
        var preset = scratch.Preset("abutment", "cavity-masonry", "warm-timber-deck");
        var blocked = Directory.CreateDirectory(Path.Combine(scratch.Folder, "out", "preset.csv")).Parent!.FullName;
        Assert.Equal(3, Tool.Run("draw", preset, "--out", blocked, "--formats", "json,csv,md").Status);
        Assert.Empty(Directory.EnumerateFiles(blocked));
    }

    [Fact]
    public void A_folder_that_cannot_be_written_ends_with_three_and_leaves_nothing()
    {
        using var scratch = new Scratch();
        var preset = scratch.Preset("abutment", "cavity-masonry", "warm-timber-deck");
        var file = scratch.Write("occupied", "kept");
        var run = Tool.Run("draw", preset, "--out", file, "--formats", "csv,json");
        Assert.Equal(3, run.Status);
        Assert.Equal("kept", File.ReadAllText(file));
    }

    [Fact]
    public void An_unknown_option_verb_or_format_ends_with_two()
    {
        Assert.Equal(2, Tool.Run("drow", "x").Status);
        Assert.Equal(2, Tool.Run("draw", Tool.Shipped("tern-court-parapet-01"), "--formats", "dwf").Status);
        var option = Tool.Run("draw", Tool.Shipped("tern-court-parapet-01"), "--bogus", "--json");
        Assert.Equal(2, option.Status);
        Assert.NotEmpty(option.Json["errors"]!.AsArray());
    }

    [Fact]
    public void What_a_person_must_confirm_is_told_of_one_preset_and_counted_among_several()
    {
        var preset = Tool.Shipped("tern-court-refurbishment-01");
        var alone = Tool.Run("check", preset);
        Assert.Contains("waived: ", alone.Output, StringComparison.Ordinal);
        Assert.Contains("(125 mm, wanted at least 150 mm). BS 6229:2018, 4.5 (read) [upstand-min]", alone.Output, StringComparison.Ordinal);
        Assert.True(alone.Output.IndexOf("[upstand-min]", StringComparison.Ordinal) < alone.Output.IndexOf("[strap-holding-down]", StringComparison.Ordinal));
        var among = Tool.Run("check", preset, Tool.Shipped("tern-court-abutment-02"));
        Assert.Contains("[upstand-min]", among.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("[strap-holding-down]", among.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void A_folder_is_checked_without_its_bases()
    {
        var run = Tool.Run("check", Path.GetDirectoryName(Tool.Shipped("x"))!, "--json");
        Assert.Equal(1, run.Status); // one of them is impossible on purpose
        var presets = run.Json["details"]!.AsArray().Select(detail => Path.GetFileName(detail!["preset"]!.GetValue<string>())).ToList();
        Assert.DoesNotContain("tern-court.yaml", presets);
        Assert.Equal(10, presets.Count);
    }

    [Theory]
    [InlineData("upstand.height", "parameter")]
    [InlineData("upstand-min", "rule")]
    [InlineData("coping", "part")]
    public void Values_rules_and_parts_are_explained(string subject, string kind)
    {
        var run = Tool.Run("explain", Tool.Shipped("tern-court-parapet-01"), subject, "--json");
        Assert.Equal(0, run.Status);
        Assert.Equal(kind, run.Json["kind"]!.GetValue<string>());
        Assert.NotEmpty(run.Json["explained"]![0]!["text"]!.AsArray());
    }

    [Fact]
    public void A_subject_that_is_none_is_told_the_nearest() =>
        Assert.Contains("upstand.height", Tool.Run("explain", Tool.Shipped("tern-court-parapet-01"), "upstand.heigth").Messages, StringComparison.Ordinal);

    [Fact]
    public void Every_topic_lists_something()
    {
        foreach (var topic in Library.DetailLibrary.Topics)
        {
            var run = Tool.Run("list", topic, "--json");
            Assert.Equal(0, run.Status);
            Assert.NotEmpty(run.Json[topic]!.AsArray());
        }
    }

    [Fact]
    public void Each_parameter_is_listed_with_domain_stock_meaning_and_source()
    {
        var parameters = Tool.Run("list", "parameters", "--json").Json["parameters"]!.AsArray();
        Assert.All(parameters, one => Assert.All((string[])["unit", "meaning", "source", "confidence"], key => Assert.NotEmpty(one![key]!.GetValue<string>())));
        JsonNode Of(string key) => parameters.First(one => one!["key"]!.GetValue<string>() == key)!;
        Assert.NotEmpty(Of("roof.joist-depth")["stock"]!.AsArray());
        Assert.Empty(Of("parapet.height")["stock"]!.AsArray());
        Assert.Equal("1", Of("roof.fall")["step"]!.GetValue<string>());
        Assert.Contains("roof.finish", Of("roof.paving")["when"]!.GetValue<string>(), StringComparison.Ordinal);
    }

    [Fact]
    public void Every_schema_is_json_of_its_kind()
    {
        foreach (var kind in Library.DetailLibrary.SchemaKinds)
        {
            Assert.Contains("2020-12", Tool.Run("schema", kind).Json["$schema"]!.GetValue<string>(), StringComparison.Ordinal);
        }
    }
}
