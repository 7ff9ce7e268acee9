using System.Text.Json.Nodes;
using DetailGen.Testing;

namespace DetailGen.EndToEnd.Tests.Verbs;

public class MoistureTests
{
    private const string January = "    jan: { temperature: 2, humidity: 0.85 }\n";
    private const string Others = """
            feb: { temperature: 3, humidity: 0.85 }
            mar: { temperature: 5, humidity: 0.80 }
            apr: { temperature: 8, humidity: 0.76 }
            may: { temperature: 12, humidity: 0.74 }
            jun: { temperature: 15, humidity: 0.74 }
            jul: { temperature: 17, humidity: 0.75 }
            aug: { temperature: 16, humidity: 0.77 }
            sep: { temperature: 13, humidity: 0.81 }
            oct: { temperature: 10, humidity: 0.85 }
            nov: { temperature: 6, humidity: 0.88 }
            dec: { temperature: 3, humidity: 0.89 }
          origin: measured
          source: { document: Our own station, confidence: memory }

        """;

    [Theory]
    [MemberData(nameof(PairingTests.Pairings), MemberType = typeof(PairingTests))]
    public void Each_pairing_is_answered_and_mirroring_changes_nothing(string junction, string wall, string roof)
    {
        using var scratch = new Scratch();
        var file = scratch.Preset(junction, wall, roof);
        var (plain, mirrored) = (Tool.Run("moisture", file, "--json"), Tool.Run("moisture", file, "--set", "mirror=true", "--json"));
        Assert.Equal((0, 0), (plain.Status, mirrored.Status));
        var moisture = plain.Detail["physics"]!["moisture"]!;
        Assert.Equal(moisture.ToJsonString(), mirrored.Detail["physics"]!["moisture"]!.ToJsonString());
        Assert.Equal(["wall", "roof"], moisture["elements"]!.AsArray().Select(element => element!["id"]!.GetValue<string>()));
        Assert.All(moisture["elements"]!.AsArray(), element =>
        {
            var result = element!["result"]!;
            Assert.Contains(result["verdict"]!.GetValue<string>(), new[] { "dry", "dries", "stays" });
            Assert.Equal(12, result["months"]!.AsArray().Count);
            foreach (var key in new[] { "f_rsi_min", "critical_month", "start_month", "peak_g_m2", "peak_month", "residual_g_m2", "dry_after_months", "interfaces" })
            {
                Assert.True(result.AsObject().ContainsKey(key), key);
            }
        });
    }

    [Fact]
    public void Months_are_told_to_people_by_their_names()
    {
        using var scratch = new Scratch();
        var told = Tool.Run("moisture", scratch.Preset("parapet", "cavity-masonry", "warm-timber-deck", "set: { wall.lining: wet-plaster }\n")).Output;
        Assert.Matches(" condensation .* from (October|November|December|January), at most .* in (January|February|March|April);", told);
        Assert.Matches("needed against mould 0[.][0-9]+ \\((October|November|December|January|February)\\)", told);
    }

    // The same layers and climate as a stand-alone case give the same answer.
    [Fact]
    public void A_detail_and_the_case_of_its_layers_agree()
    {
        using var scratch = new Scratch();
        var file = scratch.Preset("parapet", "cavity-masonry", "warm-timber-deck", "site: { climate: tern-court-inland }\nbuilding: { use: sports }\nmaterials: { roof.vcl: breather }\n");
        var moisture = Tool.Run("moisture", file, "--json").Detail["physics"]!["moisture"]!;
        foreach (var element in moisture["elements"]!.AsArray())
        {
            var layers = new JsonArray([
                .. element!["layers"]!.AsArray().Select(layer => new JsonObject
                {
                    ["name"] = layer!["element"]!.DeepClone(), ["r_m2k_w"] = layer["r_m2k_w"]!.DeepClone(), ["sd_m"] = layer["sd_m"]!.DeepClone(),
                }),
            ]);
            var asked = new JsonObject
            {
                ["id"] = "same",
                ["kind"] = "moisture",
                ["rsi_m2k_w"] = element["rsi_m2k_w"]!.DeepClone(),
                ["rse_m2k_w"] = element["rse_m2k_w"]!.DeepClone(),
                ["layers"] = layers,
                ["climate"] = new JsonObject
                {
                    ["external_t_c"] = moisture["climate"]!["external_t_c"]!.DeepClone(),
                    ["external_rh"] = moisture["climate"]!["external_rh"]!.DeepClone(),
                    ["internal_t_c"] = moisture["internal"]!["internal_t_c"]!.DeepClone(),
                    ["vapour_excess_pa"] = moisture["internal"]!["vapour_excess_pa"]!.DeepClone(),
                },
            };
            var answered = Tool.Run("moisture", "--case", scratch.Write("case.json", asked.ToJsonString()), "--json").Json["result"]!;
            Assert.NotEqual("dry", answered["verdict"]!.GetValue<string>());
            Assert.Equal(answered["verdict"]!.GetValue<string>(), element["result"]!["verdict"]!.GetValue<string>());
            Assert.Equal(answered["peak_g_m2"]!.GetValue<double>(), element["result"]!["peak_g_m2"]!.GetValue<double>(), 1e-6);
            Assert.Equal(answered["residual_g_m2"]!.GetValue<double>(), element["result"]!["residual_g_m2"]!.GetValue<double>(), 1e-6);
            Assert.Equal(answered["f_rsi_min"]!.GetValue<double>(), element["result"]!["f_rsi_min"]!.GetValue<double>(), 1e-9);
        }
    }

    [Fact]
    public void Water_that_stays_and_mould_are_failures_of_this_verb_alone()
    {
        using var scratch = new Scratch();
        var file = scratch.Preset("parapet", "cavity-masonry", "warm-timber-deck", "site: { climate: tern-court-inland }\nbuilding: { humidity-class: 5 }\nmaterials: { roof.vcl: breather }\n");
        var run = Tool.Run("moisture", file, "--json");
        Assert.Equal(1, run.Status);
        var verdicts = run.Detail["checks"]!.AsArray().ToDictionary(check => check!["id"]!.GetValue<string>(), check => check!["verdict"]!.GetValue<string>());
        Assert.Equal(("fail", "fail"), (verdicts["condensation-roof"], verdicts["mould-roof"]));
        Assert.Equal(0, Tool.Run("check", file).Status);
        Assert.Contains("gathers year after year", Tool.Run("moisture", file).Output, StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_drawn_or_checked_carries_the_same_figures()
    {
        using var scratch = new Scratch();
        var file = scratch.Preset("abutment", "solid-masonry-insulated", "warm-concrete-deck");
        string Figures(params string[] arguments) => Tool.Run([.. arguments, file, "--json"]).Detail["physics"]!["moisture"]!.ToJsonString();
        Assert.Equal(Figures("moisture"), Figures("check"));
        Assert.Equal(Figures("moisture"), Figures("draw", "--out", scratch.Folder, "--formats", "md"));
        Assert.Contains("## Condensation and mould", File.ReadAllText(Path.Combine(scratch.Folder, "preset.md")), StringComparison.Ordinal);
    }

    [Fact]
    public void A_damper_use_has_a_higher_class_and_the_preset_has_the_last_word()
    {
        using var scratch = new Scratch();
        int Class(params string[] set) => Tool.Run(["moisture", scratch.Preset("parapet", "cavity-masonry", "warm-timber-deck"), "--json", .. set.SelectMany(one => new[] { "--set", one })])
            .Detail["physics"]!["moisture"]!["internal"]!["humidity_class"]!.GetValue<int>();
        Assert.Equal([2, 4, 5, 3, 1], [Class(), Class("building.use=sports"), Class("building.use=pool"), Class("building.use=other"), Class("building.use=pool", "building.humidity-class=1")]);
    }

    [Fact]
    public void An_invented_climate_says_so_and_a_measured_one_does_not()
    {
        using var scratch = new Scratch();
        var practice = Practice(scratch, January + Others);
        var file = scratch.Preset("parapet", "cavity-masonry", "warm-timber-deck");
        Assert.Contains("invented", Tool.Run("moisture", file).Messages, StringComparison.Ordinal);
        var own = Tool.Run("moisture", file, "--practice", practice, "--set", "site.climate=ours");
        Assert.DoesNotContain("invented", own.Messages, StringComparison.Ordinal);
        Assert.Contains("Our own station", own.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void A_climate_that_is_not_there_is_told_with_its_place_and_the_nearest()
    {
        using var scratch = new Scratch();
        var run = Tool.Run("moisture", scratch.Preset("parapet", "cavity-masonry", "warm-timber-deck", "site: { climate: tern-court-inlnd }\n"), "--json");
        var error = Assert.Single(run.Detail["errors"]!.AsArray())!;
        Assert.Equal((2, 5, "unknown-climate"), (run.Status, error["line"]!.GetValue<int>(), error["code"]!.GetValue<string>()));
        Assert.Contains("tern-court-inland", error["hint"]!.GetValue<string>(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_climate_without_a_month_is_told_with_file_and_line()
    {
        using var scratch = new Scratch();
        var run = Tool.Run("moisture", scratch.Preset("parapet", "cavity-masonry", "warm-timber-deck"), "--practice", Practice(scratch, Others), "--json");
        var error = Assert.Single(run.Detail["errors"]!.AsArray())!;
        Assert.Equal(2, run.Status);
        Assert.EndsWith("ours.yaml", error["file"]!.GetValue<string>(), StringComparison.Ordinal);
        Assert.Contains("jan", error["reason"]!.GetValue<string>(), StringComparison.Ordinal);
    }

    [Fact]
    public void Air_that_holds_more_vapour_than_it_can_is_told_with_its_month()
    {
        using var scratch = new Scratch();
        var practice = Practice(scratch, January.Replace("humidity: 0.85", "vapour-pressure: 7400", StringComparison.Ordinal) + Others);
        var run = Tool.Run("moisture", scratch.Preset("parapet", "cavity-masonry", "warm-timber-deck", "site: { climate: ours }\n"), "--practice", practice, "--json");
        var error = Assert.Single(run.Detail["errors"]!.AsArray())!;
        Assert.Equal((2, "bad-climate", 4), (run.Status, error["code"]!.GetValue<string>(), error["line"]!.GetValue<int>()));
        Assert.Contains("7400 Pa", error["reason"]!.GetValue<string>(), StringComparison.Ordinal);
    }

    [Fact]
    public void Presets_or_a_case_file_are_asked_for_and_not_both()
    {
        Assert.Equal(2, Tool.Run("moisture").Status);
        Assert.Equal(2, Tool.Run("moisture", Tool.Shipped("tern-court-parapet-01"), "--case", "cases.json").Status);
        Assert.Equal(1, Tool.Run("moisture", Tool.Shipped("tern-court-impossible"), "--json").Status);
    }

    [Fact]
    public void The_practice_to_copy_has_a_climate_that_is_answered() => Assert.Equal(0, Tool.Run(
        "moisture", Tool.Shipped("tern-court-parapet-02"), "--practice", Repository.Path("presets", "practice-example"), "--set", "site.climate=tern-court-roof-station").Status);

    private static string Practice(Scratch scratch, string months)
    {
        var folder = Path.Combine(scratch.Folder, "practice");
        Directory.CreateDirectory(Path.Combine(folder, "climates"));
        File.WriteAllText(Path.Combine(folder, "climates", "ours.yaml"), "- id: ours\n  title: Ours\n  months:\n" + months);
        return folder;
    }
}
