using System.Text;
using System.Text.Json.Nodes;
using DetailGen.Physics.Cases;
using DetailGen.Physics.Layers;
using DetailGen.Physics.Moisture;
using DetailGen.Testing;

namespace DetailGen.Physics.Tests.Cases;

/// <summary>Cases, formulas and wrong inputs of <c>physics-checks.json</c>, where each has its source; every one is held to its own tolerance.</summary>
public class PublishedCasesTests
{
    private const string File = "physics-checks.json";

    private static readonly JsonObject Document = JsonNode.Parse(Text)!.AsObject();

    private static byte[] Text => System.IO.File.ReadAllBytes(Path.Combine(Repository.Root, "tests", "DetailGen.Physics.Tests", "Cases", File));

    private static string KindOf(JsonNode node) => node["kind"]!.GetValue<string>();

    private static string IdOf(JsonNode node) => node["id"]!.GetValue<string>();

    private static CaseMatter Matter(string kind) => kind == "moisture" ? CaseMatter.Moisture : CaseMatter.Heat;

    public static TheoryData<string, string> Calculated()
    {
        var rows = new TheoryData<string, string>();
        foreach (var one in Document["cases"]!.AsArray().OfType<JsonNode>())
        {
            rows.Add(IdOf(one), KindOf(one));
        }

        return rows;
    }

    [Theory]
    [MemberData(nameof(Calculated))]
    public void A_published_case_is_met_within_its_tolerance(string id, string kind)
    {
        var answers = CaseFile.Answer(Text, File, Matter(kind), [id]);
        Assert.Empty(answers.Faults);
        var answered = Assert.Single(answers.Cases);
        Assert.Empty(answered.FailedChecks);
        Assert.NotEqual(0, answered.Checks);
        Assert.Equal(0, answers.Status);
    }

    public static TheoryData<int> Formulas()
    {
        var rows = new TheoryData<int>();
        for (var i = 0; i < Document["formulas"]!.AsArray().Count; i++)
        {
            rows.Add(i);
        }

        return rows;
    }

    [Theory]
    [MemberData(nameof(Formulas))]
    public void A_published_formula_gives_its_figure(int index)
    {
        var formula = Document["formulas"]![index]!;
        var inputs = formula["inputs"]!;
        double Input(string key) => inputs[key]!.GetValue<double>();
        var got = formula["function"]!.GetValue<string>() switch
        {
            "saturation_pressure_pa" => Saturation.Pressure(Input("t_c")),
            "saturation_temperature_c" => Saturation.Temperature(Input("p_pa")),
            "vapour_excess_pa" => VapourExcess.At(Input("external_t_c"), Input("excess_at_0c_pa")),
            "air_layer_resistance_m2k_w" => new AirSpace(
                Input("d_mm") / 1000, inputs["emissivity"]![0]!.GetValue<double>(), inputs["emissivity"]![1]!.GetValue<double>(), Input("mean_t_c"), Input("step_k"), 0)
                .Resistance(inputs["heat_flow"]!.GetValue<string>() switch { "up" => Flow.Upwards, "down" => Flow.Downwards, _ => Flow.Horizontal }),
            var other => throw new InvalidOperationException($"No test for {other}."),
        };
        Assert.NotNull(got);
        Assert.Equal(formula["value"]!.GetValue<double>(), got.Value, formula["tolerance"]!.GetValue<double>());
        if (formula["published"] is { } printed)
        {
            Assert.Equal(printed.GetValue<double>(), Math.Round(got.Value, 2), 1e-9);
        }
    }

    public static TheoryData<string> Invalid()
    {
        var rows = new TheoryData<string>();
        foreach (var one in Document["invalid"]!.AsArray())
        {
            rows.Add(IdOf(one!["case"]!));
        }

        return rows;
    }

    [Theory]
    [MemberData(nameof(Invalid))]
    public void A_wrong_input_is_refused_with_the_words_that_say_why(string id)
    {
        var entry = Document["invalid"]!.AsArray().Single(one => IdOf(one!["case"]!) == id)!;
        var answers = CaseFile.Answer(Encoding.UTF8.GetBytes(entry["case"]!.ToJsonString()), "bad.json", Matter(KindOf(entry["case"]!)), []);
        Assert.Equal((entry["exit"]!.GetValue<int>(), null), (answers.Status, answers.Json));
        Assert.All(answers.Faults, fault => Assert.True(fault is { Line: > 0, Column: > 0 } && fault.Case == id, fault.ToString()));
        var told = string.Join('\n', answers.Faults.Select(fault => $"{fault.Reason} {fault.Hint}"));
        Assert.All(entry["message_contains"]!.AsArray(), word => Assert.Contains(word!.GetValue<string>(), told, StringComparison.Ordinal));
    }

    [Fact]
    public void The_whole_file_is_answered_in_its_order_and_the_same_twice()
    {
        var answers = CaseFile.Answer(Text, File, CaseMatter.Moisture, []);
        Assert.Equal(0, answers.Status);
        var ids = JsonNode.Parse(answers.Json!)!["cases"]!.AsArray().Select(one => IdOf(one!));
        Assert.Equal(Document["cases"]!.AsArray().Where(one => KindOf(one!) == "moisture").Select(one => IdOf(one!)), ids);
        Assert.Equal(answers.Json, CaseFile.Answer(Text, File, CaseMatter.Moisture, []).Json);
    }
}
