using System.Globalization;

namespace DetailGen.EndToEnd.Tests.Verbs;

public class ThermalTests
{
    private const string Thermal = "set: { roof.insulation: 150 mm }\nsheet: { companions: [thermal] }\n";

    [Fact]
    public void The_thermal_sheet_is_drawn_from_a_simulation_by_which_rules_are_judged_too_and_is_the_same_under_another_culture()
    {
        using var first = new Scratch();
        using var second = new Scratch();
        var run = Draw(first);
        Assert.Equal(0, run.Status);
        Assert.Equal("pass", Rule(run, "frsi-dwelling"));
        var before = CultureInfo.CurrentCulture;
        try
        {
            (CultureInfo.CurrentCulture, CultureInfo.CurrentUICulture) = (CultureInfo.GetCultureInfo("tr-TR"), CultureInfo.GetCultureInfo("tr-TR"));
            Draw(second);
        }
        finally
        {
            (CultureInfo.CurrentCulture, CultureInfo.CurrentUICulture) = (before, before);
        }

        var files = Directory.GetFiles(first.Folder, "preset*").Where(file => !file.EndsWith(".yaml", StringComparison.Ordinal)).Select(Path.GetFileName).Order(StringComparer.Ordinal).ToList();
        Assert.Contains("preset.dxf", files);
        Assert.All(files, file => Assert.Equal(File.ReadAllBytes(Path.Combine(first.Folder, file!)), File.ReadAllBytes(Path.Combine(second.Folder, file!))));

        // the figures on the sheet are those of the report, with the minus of a drawing
        var psi = run.Detail["physics"]!["psi_internal_w_mk"]!.GetValue<double>().ToString("F4", CultureInfo.InvariantCulture);
        Assert.Contains(Directory.GetFiles(first.Folder, "*.svg"), file => File.ReadAllText(file) is var svg && svg.Contains(psi.Replace('-', '−'), StringComparison.Ordinal) && svg.Contains("Dew point", StringComparison.Ordinal));
        var report = File.ReadAllText(Path.Combine(first.Folder, "preset.md"));
        Assert.Contains($"| Ψ, inside dimensions, W/mK | {psi} |", report, StringComparison.Ordinal);
        Assert.Contains("competent person", report, StringComparison.Ordinal);

        static Tool Draw(Scratch scratch) => Tool.Run(
            "draw", scratch.Preset("abutment", "solid-masonry-insulated", "warm-concrete-deck", Thermal), "--out", scratch.Folder, "--formats", "dxf,svg,pdf,md", "--json");
    }

    [Fact]
    public void With_physics_check_simulates_what_no_target_asks_for()
    {
        using var scratch = new Scratch();
        var preset = scratch.Preset("abutment", "solid-masonry-insulated", "warm-concrete-deck");
        var plain = Tool.Run("check", preset, "--json");
        Assert.Equal("to-confirm", Rule(plain, "frsi-dwelling"));
        var asked = Tool.Run("check", preset, "--physics");
        Assert.Equal(0, asked.Status);
        Assert.All((string[])["Ψ, inside dimensions", "Temperature factor", "U of the wall", "Coldest inside surface"], words => Assert.Contains(words, asked.Output, StringComparison.Ordinal));
    }

    [Fact]
    public void A_sweep_is_drawn_into_a_picture_of_the_format_that_its_name_ends_in()
    {
        using var scratch = new Scratch();
        var preset = scratch.Preset("abutment", "solid-masonry-insulated", "warm-concrete-deck", "set: { roof.insulation: 150 mm }\ntarget: { junction.frsi: 0.8 }\n");
        var file = Path.Combine(scratch.Folder, "curve.svg");
        var run = Tool.Run("heat", preset, "--sweep", "upstand.insulation", "--picture", file, "--json");
        Assert.Equal(0, run.Status);
        Assert.Equal("curve.svg", run.Json["picture"]!["path"]!.GetValue<string>());
        var svg = File.ReadAllText(file);
        Assert.All((string[])["upstand.insulation, mm", "W/mK", "Temperature factor", "target: at least 0.8", "as the detail is drawn"], words => Assert.Contains(words, svg, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("--sweep", "upstand.insulation", "--picture", "curve.bmp")]
    [InlineData("--picture", "curve.svg")]
    public void A_picture_that_cannot_be_drawn_is_told_before_anything_is_calculated(params string[] options)
    {
        var run = Tool.Run(["heat", Tool.Shipped("tern-court-abutment-02"), .. options]);
        Assert.Equal(2, run.Status);
        Assert.Contains("picture", run.Messages, StringComparison.Ordinal);
    }

    private static string Rule(Tool run, string id) => run.Detail["rules"]!.AsArray().Single(rule => rule!["id"]!.GetValue<string>() == id)!["verdict"]!.GetValue<string>();

    [Fact]
    public void Steps_of_the_model_and_verdicts_on_materials_speak_of_things_by_their_names()
    {
        using var scratch = new Scratch();
        var run = Tool.Run("heat", scratch.Preset("parapet", "cavity-masonry", "warm-timber-deck"), "--json");
        var steps = string.Join('\n', run.Detail["physics"]!["steps"]!.AsArray().Select(step => step!.GetValue<string>()));
        Assert.Contains("vapour control layer", steps, StringComparison.Ordinal);
        Assert.DoesNotContain("roof.vcl", steps, StringComparison.Ordinal);
        Assert.DoesNotContain("flashing.gap", steps, StringComparison.Ordinal);
        var here = Tool.Run("explain", Path.Combine(scratch.Folder, "preset.yaml"), "parapet-no-pe-dpc").Output;
        Assert.Contains("Here: pass, bitumen DPC against anything but polyethylene VCL, low density film.", here, StringComparison.Ordinal);
    }

    [Fact]
    public void A_verdict_tells_lengths_in_tenths_of_a_millimetre()
    {
        using var scratch = new Scratch();
        var run = Tool.Run("draw", Tool.Shipped("tern-court-parapet-01"), "--out", scratch.Folder, "--formats", "md");
        Assert.Equal(0, run.Status);
        Assert.DoesNotMatch(@"\d\.\d\d+ mm", File.ReadAllText(Directory.GetFiles(scratch.Folder, "*.md").Single()));
    }
}
