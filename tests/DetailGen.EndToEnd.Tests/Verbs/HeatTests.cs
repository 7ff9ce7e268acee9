using System.Text.Json.Nodes;

namespace DetailGen.EndToEnd.Tests.Verbs;

public class HeatTests
{
    [Fact]
    public void Heat_answers_a_preset_with_proven_figures_and_says_how_it_got_them()
    {
        var run = Tool.Run("heat", Tool.Shipped("tern-court-abutment-02"), "--json");
        Assert.Equal(0, run.Status);
        var physics = run.Detail["physics"]!;
        double Number(string key) => physics[key]!.GetValue<double>();
        var bounds = physics["l2d_bounds_w_mk"]!.AsArray().Select(bound => bound!.GetValue<double>()).ToArray();
        Assert.InRange(Number("l2d_w_mk"), bounds[0], bounds[1]);
        Assert.Equal(bounds[1] - bounds[0], Number("error_estimate_w_mk"), 1e-12);
        Assert.True(Number("error_estimate_w_mk") <= 0.0011 * Number("l2d_w_mk"));

        // Ψ is what is left of the coupling when both plane elements are taken off
        foreach (var side in (string[])["internal", "external"])
        {
            var plane = physics["flanking"]!.AsArray().Sum(flank => flank!["u_w_m2k"]!.GetValue<double>() * flank[$"length_{side}_mm"]!.GetValue<double>() / 1000);
            Assert.Equal(Number("l2d_w_mk") - plane, Number($"psi_{side}_w_mk"), 1e-9);
        }

        Assert.Equal(["higher-room", "lower-room", "outside"], physics["flows_w_m"]!.AsObject().Select(flow => flow.Key));
        Assert.Equal(0, physics["flows_w_m"]!.AsObject().Sum(flow => flow.Value!.GetValue<double>()), 1e-6);

        // What goes through the surfaces to an air is what it gives.
        var surfaces = physics["surfaces"]!.AsArray().GroupBy(surface => surface!["environment"]!.GetValue<string>()).ToDictionary(air => air.Key, air => air.Sum(surface => surface!["heat_w_m"]!.GetValue<double>()), StringComparer.Ordinal);
        Assert.All(physics["flows_w_m"]!.AsObject(), flow => Assert.Equal(flow.Value!.GetValue<double>(), surfaces[flow.Key], 1e-9));
        Assert.All(physics["surfaces"]!.AsArray(), surface => Assert.NotEqual(0, surface!["heat_w_m"]!.GetValue<double>()));
        Assert.Equal(20 * physics["f_rsi"]!["value"]!.GetValue<double>(), Number("theta_si_min_c"), 1e-9);
        var triangles = physics["subdivision"]!["triangles"]!.AsArray().Select(count => count!.GetValue<int>()).ToArray();
        Assert.True(physics["subdivision"]!["met"]!.GetValue<bool>() && 2 * triangles[0] <= triangles[1]);
        Assert.InRange(physics["f_rsi"]!["change"]!.GetValue<double>(), 0, 1e-3);
        Assert.NotEmpty(physics["steps"]!.AsArray());
        Assert.All(physics["conductivities"]!.AsArray(), one => Assert.Contains(one!["confidence"]!.GetValue<string>(), (string[])["read", "memory", "common-practice"]));
        Assert.NotEmpty(physics["standard"]!.GetValue<string>());
        Assert.NotEmpty(physics["caution"]!.GetValue<string>());
        Assert.Equal("pass", Rule(run, "frsi-dwelling")["verdict"]!.GetValue<string>());
    }

    [Fact]
    public void A_mirrored_preset_has_the_heat_of_the_other()
    {
        var (plain, mirrored) = (Tool.Run("heat", Tool.Shipped("tern-court-abutment-02"), "--set", "mirror=false", "--json"), Tool.Run("heat", Tool.Shipped("tern-court-abutment-02"), "--json"));
        Assert.Equal(plain.Detail["physics"]!.ToJsonString(), mirrored.Detail["physics"]!.ToJsonString());
    }

    [Fact]
    public void In_words_it_tells_figures_model_and_caution()
    {
        var run = Tool.Run("heat", Tool.Shipped("tern-court-abutment-02"));
        Assert.Equal(0, run.Status);
        Assert.All((string[])["Ψ, inside dimensions", "proven between", "Temperature factor", "°C", "Model:", "Comparison of two subdivisions", "estimated, not proven: the last refinement changed it by", "ISO 10211", "competent person"], words => Assert.Contains(words, run.Output, StringComparison.Ordinal));
    }

    [Fact]
    public void What_cannot_be_solved_has_no_heat_but_its_conflict()
    {
        var run = Tool.Run("heat", Tool.Shipped("tern-court-impossible"), "--json");
        Assert.Equal(1, run.Status);
        Assert.Null(run.Detail["physics"]);
        Assert.NotNull(run.Detail["conflict"]);
    }

    [Fact]
    public void Heat_wants_presets_or_a_case_file_and_not_both()
    {
        Assert.Equal(2, Tool.Run("heat").Status);
        Assert.Equal(2, Tool.Run("heat", Tool.Shipped("tern-court-abutment-02"), "--case", "cases.json").Status);
    }

    [Fact]
    public void Check_leaves_the_field_alone_unless_a_target_asks_for_it()
    {
        var plain = Tool.Run("check", Tool.Shipped("tern-court-abutment-02"), "--json");
        Assert.Null(plain.Detail["physics"]!["psi_internal_w_mk"]);
        Assert.Equal("to-confirm", Rule(plain, "frsi-dwelling")["verdict"]!.GetValue<string>());
        var asked = Tool.Run("check", Tool.Shipped("tern-court-abutment-02"), "--set", "junction.frsi=0.8", "--json");
        Assert.Equal(0, asked.Status);
        Assert.Equal("pass", Rule(asked, "frsi-dwelling")["verdict"]!.GetValue<string>());
        var target = Assert.Single(asked.Detail["targets"]!.AsArray())!;
        Assert.Equal(("junction.frsi", "pass"), (target["key"]!.GetValue<string>(), target["verdict"]!.GetValue<string>()));
        Assert.True(target["reached"]!.GetValue<double>() >= 0.8);
    }

    [Fact]
    public void A_target_that_the_usual_upstand_misses_is_met_by_a_thicker_one()
    {
        using var scratch = new Scratch();
        var preset = scratch.Preset("parapet", "solid-masonry-insulated", "warm-concrete-deck");
        var before = Tool.Run("heat", preset, "--json").Detail;
        var psi = before["physics"]!["psi_internal_w_mk"]!.GetValue<double>();
        var wanted = Math.Round(psi - 0.003, 4).ToString("0.0000", System.Globalization.CultureInfo.InvariantCulture);
        var met = Tool.Run("check", preset, "--set", $"junction.psi={wanted}", "--json");
        Assert.Equal(0, met.Status);
        Assert.Equal("pass", Assert.Single(met.Detail["targets"]!.AsArray())!["verdict"]!.GetValue<string>());
        var thickness = met.Detail["parameters"]!["upstand.insulation"]!;
        Assert.Equal("target", thickness["why"]!["kind"]!.GetValue<string>());
        Assert.True(thickness["value"]!.GetValue<double>() > before["parameters"]!["upstand.insulation"]!["value"]!.GetValue<double>());
    }

    [Fact]
    public void A_target_that_nothing_tried_meets_is_a_conflict_that_is_told_as_not_proven()
    {
        using var scratch = new Scratch();
        var preset = scratch.Preset("parapet", "solid-masonry-insulated", "warm-concrete-deck", "set: { upstand.insulation: 50 mm }\ntarget: { junction.psi: -1 }\n");
        var run = Tool.Run("check", preset, "--json");
        Assert.Equal(1, run.Status);
        Assert.Equal("target.junction.psi", Assert.Single(run.Detail["conflict"]!["members"]!.AsArray())!["id"]!.GetValue<string>());
        Assert.Contains(run.Detail["warnings"]!.AsArray(), warning => warning!.GetValue<string>().Contains("not proven", StringComparison.Ordinal));
        var repair = Assert.Single(run.Detail["conflict"]!["repairs"]!.AsArray())!["set"]!.AsObject().Single();
        Assert.Equal(0, Tool.Run("check", preset, "--set", $"{repair.Key}={repair.Value!.GetValue<string>()}").Status);
    }

    [Fact]
    public void A_sweep_gives_a_line_for_each_thickness()
    {
        using var scratch = new Scratch();
        var preset = scratch.Preset("abutment", "solid-masonry-insulated", "warm-concrete-deck", "set: { roof.insulation: 150 mm }\n");
        var run = Tool.Run("heat", preset, "--sweep", "upstand.insulation");
        Assert.Equal(0, run.Status);
        var lines = run.Output.Split('\n', StringSplitOptions.RemoveEmptyEntries);
        Assert.StartsWith("upstand.insulation (mm),l2d_w_mk,psi_internal_w_mk", lines[0], StringComparison.Ordinal);
        var rows = lines[1..].Select(line => line.Split(',').Select(figure => double.Parse(figure, System.Globalization.CultureInfo.InvariantCulture)).ToArray()).ToArray();
        Assert.InRange(rows.Length, 2, 20);
        Assert.Equal(rows.Select(row => row[0]).Order(), rows.Select(row => row[0]));
        Assert.All(rows, row => Assert.True(row.Length == 8 && row[3] <= row[2] && row[2] <= row[4] && row[6] is > 0 and < 1));
        Assert.Equal(2, Tool.Run("heat", preset, "--sweep", "upstand.insulaton").Status);
        Assert.Equal(2, Tool.Run("heat", preset, "--sweep", "roof.finish").Status);
        Assert.Equal(2, Tool.Run("heat", "--sweep", "upstand.insulation").Status);
    }

    [Fact]
    public void Surfaces_give_the_temperatures_along_them_the_coldest_place_inside_among_them()
    {
        var preset = Tool.Shipped("tern-court-abutment-02");
        var heat = Tool.Run("heat", preset, "--json").Detail["physics"]!;
        var run = Tool.Run("heat", preset, "--surfaces", "--json");
        Assert.Equal(0, run.Status);
        var surfaces = run.Json["surfaces"]!.AsArray().ToDictionary(surface => surface!["environment"]!.GetValue<string>(), surface => surface!["places"]!.AsArray());
        Assert.Equal(["higher-room", "lower-room", "outside"], surfaces.Keys.Order(StringComparer.Ordinal));
        var coldest = surfaces.Where(surface => surface.Key != "outside").SelectMany(surface => surface.Value).MinBy(place => place!["theta_si_c"]!.GetValue<double>())!;
        Assert.Equal(heat["theta_si_min_c"]!.GetValue<double>(), coldest["theta_si_c"]!.GetValue<double>(), 0.001);
        Assert.Equal(heat["f_rsi"]!["x_mm"]!.GetValue<double>(), coldest["x_mm"]!.GetValue<double>(), 0.5);
        Assert.Equal(heat["f_rsi"]!["y_mm"]!.GetValue<double>(), coldest["y_mm"]!.GetValue<double>(), 0.5);

        var lines = Tool.Run("heat", preset, "--surfaces").Output.Split('\n', StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal("environment,along_mm,x_mm,y_mm,theta_si_c", lines[0]);
        Assert.Equal(surfaces.Values.Sum(places => places.Count), lines.Length - 1);
        Assert.Equal(2, Tool.Run("heat", preset, preset, "--surfaces").Status);
        Assert.Equal(2, Tool.Run("heat", preset, "--surfaces", "--sweep", "upstand.height").Status);
        Assert.Equal(1, Tool.Run("heat", Tool.Shipped("tern-court-impossible"), "--surfaces").Status);
    }

    [Fact]
    public void A_sweep_over_many_values_says_what_it_leaves_out_and_keeps_the_drawn_one()
    {
        using var scratch = new Scratch();
        var preset = scratch.Preset("abutment", "solid-masonry-insulated", "warm-concrete-deck", "set: { upstand.height: 187 mm }\n");
        var run = Tool.Run("heat", preset, "--sweep", "upstand.height", "--json");
        Assert.Equal(0, run.Status);
        var rows = run.Json["rows"]!.AsArray().Select(row => row!["value"]!.GetValue<double>()).ToList();
        var all = run.Json["values"]!.GetValue<int>();
        Assert.True(all > rows.Count);
        Assert.Equal(187, run.Json["drawn"]!.GetValue<double>());
        Assert.Contains(187, rows);
        Assert.Equal(rows.Order().Distinct(), rows);
        Assert.Contains($"can have {all} values here. {rows.Count} were calculated", run.Messages, StringComparison.Ordinal);
    }

    private static JsonNode Rule(Tool run, string id) => run.Detail["rules"]!.AsArray().Single(rule => rule!["id"]!.GetValue<string>() == id)!;
}
