using System.IO.Compression;
using System.Text.Json.Nodes;

namespace DetailGen.EndToEnd.Tests.Verbs;

/// <summary>What a reader who knows only the document, the list of layers or the message is told.</summary>
public class ToldOutsideTests
{
    private const string LowUpstand = "set: { upstand.height: 100 mm }\nwaive: { upstand-min: { reason: \"Low, <b>protected</b> wall\", by: architect, reference: TC-L-9 } }\n";

    public static TheoryData<string> Details => ["tern-court-parapet-01", "tern-court-parapet-02", "tern-court-abutment-01", "tern-court-refurbishment-01"];

    [Theory]
    [MemberData(nameof(Details))]
    public void Every_comparison_holds_between_the_numbers_that_are_told_where_the_rule_is_kept(string name)
    {
        var rules = Tool.Run("check", Tool.Shipped(name), "--json").Detail["rules"]!.AsArray().Select(rule => rule!).ToList();
        Assert.Contains(rules, rule => rule["unit"]?.GetValue<string>() == "1:n");
        Assert.All(rules.Where(rule => rule["left"] is not null && rule["right"] is not null && rule["verdict"]!.GetValue<string>() is "pass" or "warn"), rule =>
            Assert.Equal(rule["verdict"]!.GetValue<string>() == "pass", Holds(rule["left"]!.GetValue<double>(), rule["op"]!.GetValue<string>(), rule["right"]!.GetValue<double>())));
    }

    // A comparison of words or materials has no numbers to tell.
    [Fact]
    public void Both_sides_of_every_comparison_are_told_in_words()
    {
        var rules = Tool.Run("check", Tool.Shipped("tern-court-parapet-01"), "--json", "--set", "coping.fall-to=both").Detail["rules"]!.AsArray().Select(rule => rule!).ToList();
        var compared = rules.Where(rule => rule["op"] is not null && rule["verdict"]!.GetValue<string>() is "pass" or "warn").ToList();
        Assert.Contains(compared, rule => rule["left"] is null && rule["op"]!.GetValue<string>() == "in");
        Assert.All(compared, rule => Assert.False(string.IsNullOrEmpty(rule["drawn"]?.GetValue<string>()) || string.IsNullOrEmpty(rule["wanted"]?.GetValue<string>()), rule["id"]!.GetValue<string>()));
        var fall = rules.Single(rule => rule["id"]!.GetValue<string>() == "coping-slope-direction");
        Assert.Equal(("both", "roof"), (fall["drawn"]!.GetValue<string>(), fall["wanted"]!.GetValue<string>()));
    }

    [Fact]
    public void A_fault_without_a_place_in_a_text_has_no_line_and_one_with_a_place_has_it()
    {
        using var scratch = new Scratch();
        var preset = scratch.Preset("parapet", "cavity-masonry", "warm-timber-deck", "set: { wall.cavty: 100 mm }");
        Assert.Equal((5, 8), (Tool.Run("check", preset, "--json").Detail["errors"]![0]!["line"]!.GetValue<int>(), Tool.Run("check", preset, "--json").Detail["errors"]![0]!["column"]!.GetValue<int>()));
        JsonNode error = Tool.Run("list", "walks", "--json").Json["errors"]![0]!;
        Assert.True(error.AsObject().ContainsKey("line") && error["line"] is null && error["column"] is null);
    }

    [Fact]
    public void A_waived_rule_stands_in_every_output()
    {
        using var scratch = new Scratch();
        Assert.Equal(0, Tool.Run("draw", scratch.Preset("parapet", "cavity-masonry", "warm-timber-deck", LowUpstand), "--out", scratch.Folder, "--formats", "dxf,svg,csv,xlsx,md,json").Status);
        string Text(string extension) => File.ReadAllText(Path.Combine(scratch.Folder, "preset" + extension));
        Assert.All((string[])[".dxf", ".svg", ".csv", ".md", ".json"], extension => Assert.Contains("waived", Text(extension), StringComparison.Ordinal));
        Assert.Contains("waived,upstand-min,Rule,", Text(".csv"), StringComparison.Ordinal);
        Assert.Contains("TC-L-9", Text(".csv"), StringComparison.Ordinal);
        using var zip = ZipFile.OpenRead(Path.Combine(scratch.Folder, "preset.xlsx"));
        using var sheet = new StreamReader(zip.GetEntry("xl/worksheets/sheet1.xml")!.Open());
        Assert.Contains("upstand-min", sheet.ReadToEnd(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_list_of_layers_without_waivers_holds_layers_alone()
    {
        using var scratch = new Scratch();
        Assert.Equal(0, Tool.Run("draw", scratch.Preset("parapet", "cavity-masonry", "warm-timber-deck"), "--out", scratch.Folder, "--formats", "csv").Status);
        Assert.All(File.ReadAllLines(Path.Combine(scratch.Folder, "preset.csv")).Skip(1), line => Assert.Matches("^(wall|roof),", line));
    }

    [Fact]
    public void What_an_author_writes_is_text_in_the_report_though_it_looks_like_a_tag()
    {
        using var scratch = new Scratch();
        Tool.Run("draw", scratch.Preset("parapet", "cavity-masonry", "warm-timber-deck", LowUpstand), "--out", scratch.Folder, "--formats", "md");
        var report = File.ReadAllText(Path.Combine(scratch.Folder, "preset.md"));
        Assert.Contains("\\<b>protected", report, StringComparison.Ordinal);
        Assert.DoesNotMatch("[^\\\\]<", report);
    }

    [Fact]
    public void The_report_counts_the_pieces_of_one_thing_together_and_loses_none()
    {
        using var scratch = new Scratch();
        Tool.Run("draw", scratch.Preset("abutment", "cavity-masonry", "warm-timber-deck", "set: { roof.finish: paving }\n"), "--out", scratch.Folder, "--formats", "md,json");
        string[][] rows = [.. File.ReadAllLines(Path.Combine(scratch.Folder, "preset.md")).SkipWhile(line => !line.StartsWith("## Quantities", StringComparison.Ordinal)).Where(line => line.StartsWith('|')).Skip(2).Select(line => line.Split('|', StringSplitOptions.TrimEntries))];
        Assert.Equal(rows.Length, rows.Select(row => (row[1], row[2])).Distinct().Count());
        Assert.Single(rows, row => row[1] == "Paving slab");
        var pieces = JsonNode.Parse(File.ReadAllText(Path.Combine(scratch.Folder, "preset.json")))!["details"]![0]!["quantities"]!.AsArray();
        Assert.True(pieces.Count > rows.Length);
        Assert.Equal(pieces.Sum(piece => piece!["mass_kg_per_m"]!.GetValue<double>()), rows.Sum(row => double.Parse(row[5], System.Globalization.CultureInfo.InvariantCulture)), 0.05 * rows.Length);
    }

    [Fact]
    public void A_rule_pack_that_is_named_twice_is_told_with_both_places()
    {
        using var scratch = new Scratch();
        var run = Tool.Run("check", scratch.Preset("parapet", "cavity-masonry", "warm-timber-deck", "rules: [uk, uk]"), "--json");
        var error = Assert.Single(run.Detail["errors"]!.AsArray())!;
        Assert.Equal((2, "rules-twice", 5, 13), (run.Status, error["code"]!.GetValue<string>(), error["line"]!.GetValue<int>(), error["column"]!.GetValue<int>()));
        Assert.Contains("preset.yaml:5:9 already", error["reason"]!.GetValue<string>(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("cavity-widht", 2)]
    [InlineData("cavity-width", 0)]
    [InlineData("coping-stone-width", 0)] // ships, though nothing may be sold in it
    [InlineData("quarry-sawn", 0)] // for a construction that is still to come
    public void A_slip_in_the_id_of_a_stock_class_of_a_practice_is_told(string id, int status)
    {
        using var scratch = new Scratch();
        Directory.CreateDirectory(Path.Combine(scratch.Folder, "practice", "stock"));
        var own = scratch.Write(
            Path.Combine("practice", "stock", "own.yaml"),
            $"- id: {id}\n  force: prefer\n  sizes: [100 mm, 150 mm]\n  meaning: Ours\n  source: {{ document: note 4, confidence: read, read-kind: primary }}\n");
        var run = Tool.Run("check", scratch.Preset("parapet", "cavity-masonry", "warm-timber-deck"), "--practice", Path.Combine(scratch.Folder, "practice"), "--json");
        Assert.Equal(status, run.Status);
        if (status > 0)
        {
            var error = Assert.Single(run.Detail["errors"]!.AsArray())!;
            Assert.Equal((own, 1, "unread-stock"), (error["file"]!.GetValue<string>(), error["line"]!.GetValue<int>(), error["code"]!.GetValue<string>()));
            Assert.Contains("cavity-width", error["hint"]!.GetValue<string>(), StringComparison.Ordinal);
        }
    }

    [Fact]
    public void A_temperature_factor_says_that_it_is_not_proven()
    {
        var physics = Tool.Run("heat", Tool.Shipped("tern-court-abutment-02"), "--json").Detail["physics"]!;
        Assert.All((string[])["f_rsi", "f_rsi_humidity"], key => Assert.False(physics[key]!["proven"]!.GetValue<bool>()));
    }

    [Fact]
    public void A_case_file_that_is_no_JSON_is_told_so_in_words_for_its_author()
    {
        using var scratch = new Scratch();
        var run = Tool.Run("moisture", "--case", scratch.Write("case.json", "{\"id\": \"a\",}"));
        Assert.Equal(2, run.Status);
        Assert.Contains("case.json:1:12: This is not JSON: The JSON object contains a trailing comma at the end. ", run.Messages, StringComparison.Ordinal);
    }

    private static bool Holds(double left, string op, double right) => op switch
    {
        ">=" => left >= right - 1e-9,
        "<=" => left <= right + 1e-9,
        ">" => left > right,
        "<" => left < right,
        "=" => Math.Abs(left - right) <= 1e-9,
        _ => Math.Abs(left - right) > 1e-9,
    };
}
