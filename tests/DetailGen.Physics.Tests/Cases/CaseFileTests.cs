using System.Text;
using System.Text.Json.Nodes;
using CsCheck;
using DetailGen.Physics.Cases;
using DetailGen.Physics.Moisture;
using DetailGen.Testing;

namespace DetailGen.Physics.Tests.Cases;

public class CaseFileTests
{
    private const string Wall = """
        {"id": "wall", "kind": "u-value", "rsi_m2k_w": 0.13, "rse_m2k_w": 0.04,
         "layers": [{"name": "block", "d_mm": 100, "lambda_w_mk": 0.2}], "expected": [EXPECTED]}
        """;

    private static CaseAnswers Heat(string text, params string[] only) => CaseFile.Answer(Encoding.UTF8.GetBytes(text), "a.json", CaseMatter.Heat, only);

    private static CaseAnswers Moisture(string text) => CaseFile.Answer(Encoding.UTF8.GetBytes(text), "a.json", CaseMatter.Moisture, []);

    private static string Told(CaseAnswers answers) => string.Join('\n', answers.Faults.Select(fault => $"{fault.Line}:{fault.Column} {fault.Key} {fault.Reason} {fault.Hint}"));

    [Theory]
    [InlineData("""{"path": "result.u_w_m2k", "value": 1.4925373, "tolerance": 1e-7}""", 0)]
    [InlineData("""{"path": "result.u_w_m2k", "value": 1.49, "tolerance": 1e-7}""", 1)]
    [InlineData("""{"path": "result.u_w_m2k", "value": 1.4, "bounds": [1.4, 1.5], "tolerance": 0}""", 0)]
    [InlineData("""{"path": "result.u_w_m2k", "value": 1.4, "bounds": [1.3, 1.4], "tolerance": 0.05}""", 1)]
    [InlineData("""{"path": "result.u_w_m2k", "value": 1.49, "covered_by": "result.max_relative_error"}""", 1)]
    [InlineData("""{"path": "result.u_w_m2k", "value": 1.49, "covered_by": "result.r_total_m2k_w"}""", 0)]
    [InlineData("""{"path": "result.u_w_m2k", "value": 1.49, "covered_by": "result.nothing"}""", 1)]
    [InlineData("""{"path": "result.u_rounded", "value": "1.5"}""", 0)]
    [InlineData("""{"path": "result.corrections_applied", "value": true}""", 1)]
    [InlineData("""{"path": "result.areas", "equals_null": true}""", 0)]
    [InlineData("""{"path": "result.u_w_m2k", "equals_null": true}""", 1)]
    [InlineData("""{"path": "result.layers.*.r_m2k_w", "value": [0.5], "tolerance": 1e-9}""", 0)]
    [InlineData("""{"path": "result.layers.*.r_m2k_w", "value": [0.5, 0.5], "tolerance": 1e-9}""", 1)]
    [InlineData("""{"path": "result.nothing", "value": 1, "tolerance": 100}""", 1)]
    [InlineData("""{"path": "result.u_w_m2k"}""", 2)]
    [InlineData("""{"path": "results.u_w_m2k", "value": 1}""", 2)]
    public void An_expectation_holds_or_fails_or_cannot_be_read(string expected, int status) =>
        Assert.Equal(status, Heat(Wall.Replace("EXPECTED", expected, StringComparison.Ordinal)).Status);

    [Fact]
    public void One_case_is_answered_by_one_object_and_cases_by_a_list()
    {
        var one = Wall.Replace("EXPECTED", "", StringComparison.Ordinal);
        var answer = JsonNode.Parse(Heat(one).Json!)!.AsObject();
        Assert.Equal(["id", "kind", "title", "result", "points", "checks", "warnings"], answer.Select(pair => pair.Key));
        var listed = JsonNode.Parse(Heat($$"""{"format": 1, "about": "x", "cases": [{{one}}]}""").Json!)!;
        Assert.True(JsonNode.DeepEquals(answer, Assert.Single(listed["cases"]!.AsArray())));
    }

    [Theory]
    [InlineData("", "JSON")]
    [InlineData("[]", "one JSON object")]
    [InlineData("""{"cases": []}""", "empty")]
    [InlineData("""{"kind": "u-value"}""", "id is missing")]
    [InlineData("""{"id": "a", "kind": "u-valeu"}""", "u-value")]
    [InlineData("""{"id": "a", "kind": "moisture"}""", "no case of kind heat2d or u-value")]
    [InlineData("""{"id": "A b", "kind": "u-value", "rsi_m2k_w": 0.13, "rse_m2k_w": 0.04, "layers": [{"name": "a", "r_m2k_w": 1}]}""", "a-z")]
    [InlineData("""{"id": "a", "id": "b", "kind": "u-value"}""", "twice")]
    [InlineData("""{"cases": [{"id": "a", "kind": "moisture"}, {"id": "a", "kind": "u-value"}]}""", "The id a stands twice")]
    [InlineData("""{"id": "a", "kind": "u-value", "rsi_m2k_w": 0.13, "rse_m2k_w": 0.04, "layers": [{"name": "a", "r_m2k_w": 1e999}]}""", "too large")]
    [InlineData("""{"id": "a", "kind": "u-value", "rsi_m2k_w": 0.13, "rse_m2k_w": 0.04, "layers": [{"name": "a", "r_m2k_w": 1, "air": {}}]}""", "one form")]
    [InlineData("""{"id": "a", "kind": "u-value", "rsi_m2k_w": 0.13, "rse_m2k_w": 0.04, "layers": [{"name": "a", "r_m2k_w": 1}], "corrections": {"air_gaps": {"layer": "b", "level": 1}}}""", "The layers are a")]
    [InlineData("""{"id": "a", "kind": "u-value", "rsi_m2k_w": 0.13, "layers": [{"name": "a", "r_m2k_w": 1}]}""", "rse_m2k_w is missing")]
    [InlineData("""{"id": "a", "kind": "u-value", "rsi_m2k_w": "0.13", "rse_m2k_w": 0.04, "layers": [{"name": "a", "r_m2k_w": 1}]}""", "must be a number")]
    public void A_file_that_cannot_be_is_told_why(string text, string reason)
    {
        var answers = Heat(text);
        Assert.Equal((2, null), (answers.Status, answers.Json));
        Assert.Contains(reason, Told(answers), StringComparison.Ordinal);
        Assert.All(answers.Faults, fault => Assert.NotEmpty(fault.Hint!));
    }

    [Theory]
    [InlineData("d_mm", "1e300", "at most 1,000,000 mm")]
    [InlineData("d_mm", "1e-300", null)]
    [InlineData("lambda_w_mk", "1e-300", "0.000001 to 100,000 W/mK")]
    [InlineData("lambda_w_mk", "1e300", "0.000001 to 100,000 W/mK")]
    [InlineData("rsi_m2k_w", "1e300", "0 to 1,000,000 m²K/W")]
    [InlineData("t_c", "-500", "-273.15 to 5,000 °C")]
    [InlineData("t_c", "1e9", "-273.15 to 5,000 °C")]
    [InlineData("rs_m2k_w", "1e9", "0 to 1,000,000 m²K/W")]
    public void A_figure_that_nothing_built_has_is_refused_with_its_limits(string key, string figure, string? limits)
    {
        string Of(string other, string usual) => key == other ? figure : usual;
        var told = Told(Heat($$$"""
            {"cases": [
              {"id": "a", "kind": "u-value", "rsi_m2k_w": {{{Of("rsi_m2k_w", "0.13")}}}, "rse_m2k_w": 0.04, "layers": [{"name": "a", "d_mm": {{{Of("d_mm", "100")}}}, "lambda_w_mk": {{{Of("lambda_w_mk", "1")}}} }]},
              {"id": "b", "kind": "heat2d", "materials": {"brick": {"lambda_w_mk": 1}},
               "environments": {"in": {"t_c": {{{Of("t_c", "20")}}}, "side": "internal"}, "out": {"t_c": 0, "side": "external"}},
               "regions": [{"material": "brick", "rect": [0, 0, 100, 100]}],
               "boundary": [{"env": "in", "rs_m2k_w": {{{Of("rs_m2k_w", "0.13")}}}, "line": [[0, 0], [100, 0]]}, {"env": "out", "rs_m2k_w": 0.04, "line": [[0, 100], [100, 100]]},
                            {"env": "adiabatic", "line": [[0, 0], [0, 100]]}, {"env": "adiabatic", "line": [[100, 0], [100, 100]]}]}]}
            """));
        if (limits is null)
        {
            Assert.Empty(told);
            return;
        }

        Assert.Contains($"{key} is {figure}; it must be {(key == "d_mm" ? "above 0 and " : "")}{limits}.", told, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_fault_of_a_file_is_told_at_once_with_its_place()
    {
        var told = Told(Heat("""
            {"id": "a", "kind": "u-value", "rsi_m2k_w": -1, "rse": 0.04,
              "layers": [{"name": "é", "d_mm": 0, "lambda_w_mk": 1}]}
            """));
        Assert.Contains("1:45 rsi_m2k_w rsi_m2k_w is -1; it must be 0 to 1,000,000 m²K/W.", told, StringComparison.Ordinal);
        Assert.Contains("1:49 rse A case has no key rse. The nearest is rse_m2k_w.", told, StringComparison.Ordinal);
        Assert.Contains("2:36 layers.0.d_mm", told, StringComparison.Ordinal);
    }

    [Fact]
    public void A_case_that_is_not_there_is_told_its_nearest() =>
        Assert.Contains("wall", Told(Heat(Wall.Replace("EXPECTED", "", StringComparison.Ordinal), "wal")), StringComparison.Ordinal);

    [Fact]
    public void A_field_that_is_well_formed_is_told_its_nearest_names_and_limits()
    {
        var told = Told(Heat("""
            {"id": "a", "kind": "heat2d", "materials": {"brick": {"lambda_w_mk": 1}}, "environments": {"in": {"t_c": 20, "side": "internl"}, "out": {"t_c": 0, "side": "external"}},
             "regions": [{"material": "brick", "rect": [0, 0, 0, 1]}, {"material": "brick", "polygon": [[0, 0], [1, 0], [0, 0]]}, {"material": "brick"}],
             "boundary": [{"env": "adiabatic", "rs_m2k_w": 0, "line": [[0, 0], [1, 1]]}, {"env": "out", "line": [[0, 0]]}], "wanted_error": 1}
            """));
        foreach (var words in new[] { "internal", "empty or turned round", "2 points", "neither rect nor polygon", "adiabatic", "rs_m2k_w is missing in boundary.1", "1 points", "0.000001 to 0.1" })
        {
            Assert.Contains(words, told, StringComparison.Ordinal);
        }
    }

    [Theory]
    [InlineData("0.79", false)]
    [InlineData("0.81", true)]
    public void A_room_too_damp_for_any_surface_is_told(string humidity, bool told)
    {
        var answer = Moisture($$"""{"id": "damp", "kind": "moisture", "climate": {"external_t_c": 5, "external_rh": 0.8, "internal_t_c": 20, "internal_rh": {{humidity}} } }""");
        Assert.Equal(told, answer.Cases[0].Warnings.Any(warning => warning.Contains("no build-up meets the allowed humidity", StringComparison.Ordinal)));
    }

    /// <summary>20 °C saturates at 2337 Pa; with Rsi 0.13 of 0.34 in all the surface is at 12.4 °C while it is 0 °C outside (1435 Pa), and at 19.2 °C while it is 18 °C (2230 Pa).</summary>
    [Fact]
    public void What_is_true_of_several_months_is_told_once_with_all_of_them()
    {
        string[] Warnings(string excess) => [.. Moisture($$"""
            {"id": "a", "kind": "moisture", "rsi_m2k_w": 0.13, "rse_m2k_w": 0.04, "layers": [{"name": "a", "r_m2k_w": 0.17, "sd_m": 1}],
             "climate": {"external_t_c": [0, 0, 18, 18, 18, 18, 18, 18, 18, 18, 18, 0], "external_rh": 0.5, "internal_t_c": 20, "vapour_excess_pa": {{excess}} } }
            """).Cases[0].Warnings];
        Assert.Equal([Messages.SurfaceDew(["jan", "feb", "dec"])], Warnings("[1200, 1200, 300, 300, 300, 300, 300, 300, 300, 300, 300, 1200]").Where(told => told.Contains("dew point", StringComparison.Ordinal)));
        Assert.Equal([Messages.PressureAboveSaturation(["jan"]), Messages.SurfaceDew(["feb"])],
            Warnings("[2500, 1200, 300, 300, 300, 300, 300, 300, 300, 300, 300, 300]").Where(told => !told.Contains("no build-up", StringComparison.Ordinal)));
        Assert.StartsWith("In jan, feb and dec ", Messages.SurfaceDew(["jan", "feb", "dec"]), StringComparison.Ordinal);
        Assert.StartsWith("In every month ", Messages.SurfaceDew([.. Month.Names]), StringComparison.Ordinal);
    }

    [Fact]
    public void Water_at_a_surface_or_beyond_is_refused()
    {
        string Case(int after) => $$"""
            {"id": "a", "kind": "moisture", "rsi_m2k_w": 0.13, "rse_m2k_w": 0.04, "layers": [{"name": "a", "r_m2k_w": 1, "sd_m": 0}, {"name": "b", "r_m2k_w": 1, "sd_m": 1}],
             "climate": {"external_t_c": 0, "external_rh": 0.8, "internal_t_c": 20, "internal_rh": 0.5}, "initial": [{"after_layer": {{after}}, "mass_g_m2": 1}]}
            """;
        Assert.Contains("at a surface", Told(Moisture(Case(1))), StringComparison.Ordinal);
        Assert.Contains("after layer 1 to 1", Told(Moisture(Case(2))), StringComparison.Ordinal);
    }

    /// <summary>Whatever is done to a good file, there is an answer without NaN or a fault with its place, and never an exception.</summary>
    [Fact]
    public void A_damaged_file_is_answered_or_refused_but_never_breaks_the_tool()
    {
        var good = File.ReadAllText(Repository.Path("tests", "DetailGen.Physics.Tests", "Cases", "physics-checks.json"));
        var cases = JsonNode.Parse(good)!["cases"]!.AsArray().Select(one => one!.ToJsonString()).ToArray();
        string[] pieces = ["0", "-1", "1e300", "1e-300", "null", "true", "\"\"", "[]", "{}", "[[]]", "1e999", "\"\\ud800\"", ",", "}", "\0"];
        Gen.Select(Gen.Int[0, cases.Length - 1], Gen.Int[0, int.MaxValue], Gen.Int[0, pieces.Length - 1], Gen.Bool).Always((index, at, piece, whole) =>
        {
            var text = cases[index];
            var start = at % text.Length;
            // Either a whole number gives way to something else, or a piece falls anywhere.
            var match = System.Text.RegularExpressions.Regex.Match(text[start..], "-?[0-9]+(\\.[0-9]+)?(e-?[0-9]+)?");
            var damaged = whole && match.Success ? text[..(start + match.Index)] + pieces[piece] + text[(start + match.Index + match.Length)..] : text[..start] + pieces[piece] + text[start..];
            foreach (var matter in new[] { CaseMatter.Heat, CaseMatter.Moisture })
            {
                var answers = CaseFile.Answer(Encoding.UTF8.GetBytes(damaged), "a.json", matter, []);
                Assert.Equal(answers.Json is null, answers.Faults.Length > 0);
                Assert.True(answers.Json is null || JsonNode.Parse(answers.Json) is not null);
            }
        }, cases: 300);
    }
}
