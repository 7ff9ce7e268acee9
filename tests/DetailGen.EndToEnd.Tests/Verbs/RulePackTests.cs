using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using DetailGen.Testing;

namespace DetailGen.EndToEnd.Tests.Verbs;

/// <summary>Packs, practices and waivers as a user meets them.</summary>
public class RulePackTests
{
    private static readonly string Practice = Repository.Path("presets", "practice-example");

    [Fact]
    public void The_example_practice_adds_tightens_and_relaxes_rules_and_sets_what_is_usual()
    {
        using var scratch = new Scratch();
        var detail = Tool.Run("check", scratch.Preset("parapet", "cavity-masonry", "warm-timber-deck", "rules: [tern-court]"), "--practice", Practice, "--json").Detail;
        Assert.Equal(["uk 1.0", "tern-court 1.2"], detail["packs"]!.AsArray().Select(pack => $"{pack!["name"]} {pack["version"]}"));
        Assert.Equal("15 mm", detail["parameters"]!["upstand.backing"]!["text"]!.GetValue<string>());
        var rules = detail["rules"]!.AsArray().ToDictionary(rule => rule!["id"]!.GetValue<string>(), rule => rule!, StringComparer.Ordinal);
        Assert.Equal(("pass", 175.0), (rules["upstand-min"]["verdict"]!.GetValue<string>(), rules["upstand-min"]["right"]!.GetValue<double>()));
        Assert.Contains("tc-cavity", rules.Keys);
    }

    [Theory]
    [InlineData("materials/own.yaml", "0.032 W/mK", "-1 W/mK", "conductivity is -1 W/mK; it can only be 0.002 to 500 W/mK.")]
    [InlineData("materials/own.yaml", "0.032 W/mK", "0 W/mK", "conductivity is 0 W/mK")]
    [InlineData("materials/own.yaml", "0.032 W/mK", "0.000001 W/mK", "conductivity is 0.000001 W/mK")]
    [InlineData("materials/own.yaml", "45 kg/m³", "-45 kg/m³", "density is -45 kg/m³; it can only be 0.1 to 25000 kg/m³.")]
    [InlineData("stock/cavities.yaml", "100 mm,", "-100 mm,", "sizes holds -100 mm")]
    [InlineData("rules/tern-court/rules.yaml", "Our copings over render have drips that were tried on both sides.", "\"  \"", "The rule coping-slope-direction has no relaxes.")]
    [InlineData("rules/tern-court/rules.yaml", "Our walls always carry insulation.", "\"  \"", "The rule tc-cavity has no reason.")]
    public void A_figure_that_cannot_be_and_a_blank_reason_are_faults_of_the_practice_used_or_not(string file, string good, string bad, string told)
    {
        using var scratch = new Scratch();
        var path = Path.Combine(Copied(scratch), file);
        File.WriteAllText(path, File.ReadAllText(path).Replace(good, bad, StringComparison.Ordinal));
        Refused(scratch, told);
    }

    // The confidence of a value that the material does not have was asked for too.
    [Fact]
    public void A_material_tells_how_far_each_value_that_it_has_is_known()
    {
        using var scratch = new Scratch();
        var practice = Copied(scratch);
        var path = Path.Combine(practice, "materials", "own.yaml");
        var whole = File.ReadAllText(path);
        File.WriteAllText(path, Regex.Replace(Regex.Replace(whole, "^  fire: .*\n", "", RegexOptions.Multiline), ", fire: [a-z-]+", ""));
        Assert.Equal(0, Tool.Run("check", scratch.Preset("parapet", "cavity-masonry", "warm-timber-deck"), "--practice", practice).Status);
        File.WriteAllText(path, Regex.Replace(whole, "{ conductivity: [a-z-]+, ", "{ "));
        Refused(scratch, "The key conductivity is missing under");
    }

    [Theory]
    [InlineData("materials/own.yaml")]
    [InlineData("stock/cavities.yaml")]
    [InlineData("climates/own.yaml")]
    public void Two_entries_of_one_id_in_a_practice_are_told(string file)
    {
        using var scratch = new Scratch();
        var path = Path.Combine(Copied(scratch), file);
        File.Copy(path, Path.Combine(Path.GetDirectoryName(path)!, "zz.yaml"));
        Refused(scratch, "stands at");
    }

    [Fact]
    public void Two_constructions_of_one_id_in_a_practice_are_told_and_one_of_a_shipped_id_takes_its_place()
    {
        using var scratch = new Scratch();
        var folder = Directory.CreateDirectory(Path.Combine(Copied(scratch), "constructions")).FullName;
        var shipped = Repository.Path("presets", "constructions", "warm-concrete-deck.yaml");
        File.Copy(shipped, Path.Combine(folder, "a.yaml"));
        Assert.Equal(0, Tool.Run("check", scratch.Preset("parapet", "cavity-masonry", "warm-concrete-deck"), "--practice", Path.GetDirectoryName(folder)!).Status);
        File.Copy(shipped, Path.Combine(folder, "b.yaml"));
        Refused(scratch, "warm-concrete-deck stands at");
    }

    private static string Copied(Scratch scratch)
    {
        var copy = Path.Combine(scratch.Folder, "practice");
        foreach (var file in Directory.GetFiles(Practice, "*.yaml", SearchOption.AllDirectories))
        {
            var to = Path.Combine(copy, Path.GetRelativePath(Practice, file));
            Directory.CreateDirectory(Path.GetDirectoryName(to)!);
            File.Copy(file, to);
        }

        return copy;
    }

    private static void Refused(Scratch scratch, string told)
    {
        var run = Tool.Run("check", scratch.Preset("parapet", "cavity-masonry", "warm-timber-deck"), "--practice", Path.Combine(scratch.Folder, "practice"));
        Assert.Equal(2, run.Status);
        Assert.Contains(told, run.Messages, StringComparison.Ordinal);
    }

    [Fact]
    public void The_list_of_rules_tells_classes_counts_packs_and_disagreements()
    {
        var list = Tool.Run("list", "rules", "--json").Json;
        var classes = list["rules"]!.AsArray().Select(rule => rule!["class"]!.GetValue<string>()).ToList();
        Assert.All(["enforced", "to-confirm", "dormant"], (string word) => Assert.Equal(classes.Count(one => one == word), list["counts"]![word]!.GetValue<int>()));
        Assert.True(list["counts"]!["breakable"]!.GetValue<int>() >= 150);
        Assert.Equal(18, list["disagreements"]!.AsArray().Count);
        Assert.Contains(list["packs"]!.AsArray(), pack => pack!["name"]!.GetValue<string>() == "germany");
    }

    [Fact]
    public void A_waived_rule_is_told_with_its_reason_and_does_not_block()
    {
        using var scratch = new Scratch();
        var run = Tool.Run("draw", Repository.Path("presets", "details", "tern-court-refurbishment-01.yaml"), "--out", scratch.Folder, "--formats", "md,svg", "--json");
        Assert.Equal(0, run.Status);
        JsonNode Rule(string id) => run.Detail["rules"]!.AsArray().Single(one => one!["id"]!.GetValue<string>() == id)!;
        Assert.Equal("waived", Rule("tie-top-parapet")["verdict"]!.GetValue<string>());
        var rule = Rule("upstand-min");
        Assert.Equal(("waived", "TC-L-031"), (rule["verdict"]!.GetValue<string>(), rule["waiver"]!["reference"]!.GetValue<string>()));
        var report = File.ReadAllText(Directory.GetFiles(scratch.Folder, "*.md").Single());
        Assert.Contains("Waived: upstand-min", report, StringComparison.Ordinal);
        Assert.Contains("uk 1.0 of 2026-11-25", report, StringComparison.Ordinal);
    }

    [Fact]
    public void A_waiver_without_reason_and_one_of_an_unknown_rule_are_told()
    {
        using var scratch = new Scratch();
        var run = Tool.Run("check", scratch.Preset("parapet", "cavity-masonry", "warm-timber-deck", "waive: { upstand-min: { by: someone }, upstand-mim: { reason: agreed } }"), "--json");
        Assert.Equal(2, run.Status);
        var errors = run.Detail["errors"]!.AsArray();
        Assert.Contains(errors, error => error!["code"]!.GetValue<string>() == "missing-key" && error["line"]!.GetValue<int>() > 0);
        Assert.Contains(errors, error => error!["code"]!.GetValue<string>() == "unknown-rule" && error["hint"]!.GetValue<string>().Contains("upstand-min", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("material/own.yaml", "Did you mean materials/own.yaml?")]
    [InlineData("materials.yaml", "climates, constructions, materials, rules, sheets or stock")]
    [InlineData("default.yaml", "defaults.yaml")]
    [InlineData("sheets/layer.yaml", "Did you mean sheets/layers.yaml?")]
    [InlineData("rules/own.yaml", "rules/NAME/")]
    public void A_file_of_a_practice_that_nothing_reads_is_told(string name, string hint)
    {
        using var scratch = new Scratch();
        Directory.CreateDirectory(Path.Combine(scratch.Folder, "practice", Path.GetDirectoryName(name)!));
        scratch.Write(Path.Combine("practice", name), "- id: own\n");
        var run = Tool.Run("check", scratch.Preset("parapet", "cavity-masonry", "warm-timber-deck"), "--practice", Path.Combine(scratch.Folder, "practice"), "--json");
        Assert.Equal(2, run.Status);
        var error = Assert.Single(run.Detail["errors"]!.AsArray())!;
        Assert.Equal(Path.Combine(scratch.Folder, "practice", name), error["file"]!.GetValue<string>());
        Assert.Contains(hint, error["hint"]!.GetValue<string>(), StringComparison.Ordinal);
    }

    [Fact]
    public void Presets_may_lie_in_a_practices_folder_and_its_files_may_end_in_yml()
    {
        using var scratch = new Scratch();
        Directory.CreateDirectory(Path.Combine(scratch.Folder, "stock"));
        Directory.CreateDirectory(Path.Combine(scratch.Folder, "details"));
        File.Copy(Path.Combine(Practice, "stock", "cavities.yaml"), Path.Combine(scratch.Folder, "stock", "cavities.yml"));
        scratch.Preset("parapet", "cavity-masonry", "warm-timber-deck", name: Path.Combine("details", "other.yaml"));
        scratch.Write("base.yaml", "building: { use: school }\n");
        var preset = scratch.Preset("parapet", "cavity-masonry", "warm-timber-deck");
        Assert.Equal(0, Tool.Run("check", preset, "--practice", scratch.Folder).Status);
        string Stock(string practice) => Tool.Run("list", "stock", "--practice", practice, "--json").Output;
        Assert.Equal(Stock(Practice), Stock(scratch.Folder));
    }

    [Fact]
    public void A_practice_below_another_is_passed_over_and_told_where_it_alone_can_be_meant()
    {
        using var scratch = new Scratch();
        var below = Directory.CreateDirectory(Path.Combine(scratch.Folder, "office", "stock")).FullName;
        File.Copy(Path.Combine(Practice, "stock", "cavities.yaml"), Path.Combine(below, "cavities.yaml"));
        var alone = Tool.Run("list", "stock", "--practice", scratch.Folder);
        Assert.Equal(2, alone.Status);
        Assert.Contains($"give --practice {Path.Combine(scratch.Folder, "office")}.", alone.Messages, StringComparison.Ordinal);
        scratch.Write("defaults.yaml", "upstand.backing: 15 mm\n");
        Assert.Equal(Tool.Run("list", "stock").Output, Tool.Run("list", "stock", "--practice", scratch.Folder).Output);
        Assert.Equal(0, Tool.Run("list", "stock", "--practice", Repository.Path("presets")).Status);
    }

    [Fact]
    public void A_folder_of_a_practice_that_is_not_there_is_told_by_every_verb()
    {
        foreach (var verb in (string[][])[["list", "materials"], ["check", Tool.Shipped("tern-court-parapet-01")], ["schema"], ["new", "parapet", "cavity-masonry", "warm-timber-deck"]])
        {
            var run = Tool.Run([.. verb, "--practice", "nowhere"]);
            Assert.Equal(2, run.Status);
            Assert.Contains("nowhere", run.Messages, StringComparison.Ordinal);
        }
    }
}
