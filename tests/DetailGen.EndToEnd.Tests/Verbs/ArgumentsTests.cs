using DetailGen.Testing;

namespace DetailGen.EndToEnd.Tests.Verbs;

/// <summary>Slips on the command line, each told in one line that helps.</summary>
public class ArgumentsTests
{
    private static readonly string Parapet = Tool.Shipped("tern-court-parapet-01");

    [Theory]
    [InlineData("abc")]
    [InlineData("99999999999")]
    [InlineData("-1")]
    [InlineData("49")]
    [InlineData("601")]
    [InlineData("150.5")]
    [InlineData("")]
    public void A_resolution_that_is_none_is_told_the_range(string dpi)
    {
        var run = Tool.Run("draw", Parapet, "--dpi", dpi);
        Assert.Equal(2, run.Status);
        Assert.Contains($"--dpi is {dpi}; it can only be a whole number from 50 to 600.", run.Messages, StringComparison.Ordinal);
        Assert.Equal(2, run.Messages.Split('\n', StringSplitOptions.RemoveEmptyEntries).Length);
    }

    [Theory]
    [InlineData("draw PRESET --view-only:maybe")]
    [InlineData("draw PRESET --json=perhaps")]
    [InlineData("draw PRESET --dpi")]
    [InlineData("draw PRESET --set")]
    [InlineData("draw PRESET --formats")]
    [InlineData("draw PRESET --formats ,")]
    [InlineData("check PRESET --practice ''")]
    [InlineData("check ''")]
    [InlineData("inspect ''")]
    [InlineData("heat --case ''")]
    [InlineData("list ''")]
    [InlineData("schema ''")]
    [InlineData("range PRESET ''")]
    [InlineData("explain PRESET --what-if ''")]
    [InlineData("new '' '' ''")]
    [InlineData("new parapet cavity-masonry warm-timber-deck --out ''")]
    public void A_value_that_cannot_be_read_is_never_our_fault(string line)
    {
        var run = Tool.Run([.. line.Split(' ').Select(word => word switch { "PRESET" => Parapet, "''" => "", _ => word })]);
        Assert.True(run.Status == 2, run.Messages);
        Assert.DoesNotContain("Internal fault", run.Messages, StringComparison.Ordinal);
        Assert.DoesNotContain("System.", run.Messages, StringComparison.Ordinal);
    }

    [Fact]
    public void A_fault_of_the_command_line_has_no_place_in_a_text()
    {
        var error = Tool.Run("draw", Parapet, "--formats", "abc", "--json").Json["errors"]![0]!;
        Assert.Equal("unknown-format", error["code"]!.GetValue<string>());
        Assert.Null(error["line"]);
        Assert.Null(error["column"]);
    }

    [Theory]
    [InlineData("--out", "draw", "PRESET", "--out", "--json")]
    [InlineData("--set", "draw", "PRESET", "--set", "--json")]
    [InlineData("--formats", "draw", "PRESET", "--json", "--formats", "--view-only")]
    [InlineData("--case", "heat", "--case", "--json")]
    [InlineData("--practice", "check", "PRESET", "--practice", "--json")]
    public void An_option_is_never_taken_for_the_value_of_the_one_before(string option, params string[] arguments)
    {
        var run = Tool.Run([.. arguments.Select(word => word == "PRESET" ? Parapet : word)]);
        Assert.Equal(2, run.Status);
        Assert.Equal($"{option} needs a value, and the option {arguments[Array.IndexOf(arguments, option) + 1]} follows it.", run.Json["errors"]![0]!["reason"]!.GetValue<string>());
        Assert.False(Directory.Exists("--json"));
    }

    [Theory]
    [InlineData("There is no verb drw. Did you mean draw?", "drw", "x.yaml")]
    [InlineData("draw needs PRESET", "draw")]
    [InlineData("Did you mean roofs?", "list", "rool")]
    [InlineData("Did you mean rules?", "schema", "ruls")]
    [InlineData("There is no option --practice.", "inspect", "x.dxf", "--practice", "y")]
    [InlineData("Did you mean --formats?", "draw", "x.yaml", "--format", "svg")]
    public void What_was_meant_is_told(string told, params string[] arguments)
    {
        var run = Tool.Run(arguments);
        Assert.Equal(2, run.Status);
        Assert.Contains(told, run.Messages, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("sheet: { paper: A5 }", "Did you mean A4?")]
    [InlineData("sheet: { scale: \"1:7\" }", "it can only be 1:2, 1:5, 1:10, 1:20 or 1:50. Write one of these.")]
    public void A_word_of_a_list_is_told_the_nearest_in_size_or_the_list(string line, string hint)
    {
        using var scratch = new Scratch();
        Assert.Contains(hint, Tool.Run("check", scratch.Preset("parapet", "cavity-masonry", "warm-timber-deck", line)).Messages, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("range PRESET wall.thickness")]
    [InlineData("heat PRESET --sweep wall.thickness")]
    public void A_value_that_follows_from_others_is_told_as_such(string line)
    {
        var run = Tool.Run([.. line.Split(' ').Select(word => word == "PRESET" ? Parapet : word), "--json"]);
        Assert.Equal(2, run.Status);
        Assert.Equal("derived-key", run.Json["errors"]![0]!["code"]!.GetValue<string>());
        Assert.Contains("wall.thickness follows from other sizes", run.Messages, StringComparison.Ordinal);
    }

    [Fact]
    public void A_missing_junction_is_told_those_that_there_are()
    {
        using var scratch = new Scratch();
        var run = Tool.Run("check", scratch.Write("p.yaml", "detail: d\nwall: cavity-masonry\nroof: warm-timber-deck\n"));
        Assert.Contains("Add junction: abutment or parapet.", run.Messages, StringComparison.Ordinal);
    }

    [Fact]
    public void A_fault_of_what_is_tried_is_placed_there()
    {
        var run = Tool.Run("explain", Parapet, "--set", "wall.cavity=150mm", "--what-if", "roof.insulation=120mm", "--what-if", "wall.fill=half");
        Assert.Equal(2, run.Status);
        Assert.StartsWith("--what-if:2:", run.Messages, StringComparison.Ordinal);
        Assert.StartsWith("--set:1:", Tool.Run("explain", Parapet, "--set", "wall.cavity=150", "--what-if", "roof.insulation=120mm").Messages, StringComparison.Ordinal);
    }

    [Fact]
    public void Examples_of_the_help_name_files_that_are_there()
    {
        foreach (var verb in (string[])["draw", "check", "explain", "range", "heat", "moisture", "inspect"])
        {
            var example = Tool.Run(verb, "--help").Output.Split('\n').Where(line => line.TrimStart().StartsWith($"detailgen {verb} ", StringComparison.Ordinal) && !line.Contains('[', StringComparison.Ordinal));
            Assert.All(example.SelectMany(line => line.Split(' ')).Where(word => word.Contains('/', StringComparison.Ordinal)),
                path => Assert.True(Path.Exists(Repository.Path(path.Trim().Split('/'))), path));
        }
    }

    [Fact]
    public void The_cases_that_ship_are_answered()
    {
        var cases = Repository.Path("presets", "cases", "tern-court-cases.json");
        // every answer states the standard of its kind
        var (heat, moisture) = (Tool.Run("heat", "--case", cases), Tool.Run("moisture", "--case", cases));
        Assert.Equal((0, 0), (heat.Status, moisture.Status));
        Assert.Contains("ISO 10211:2017 (two-dimensional heat flow), ISO 6946:2017 (U-values); from memory", heat.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("ISO 10211", moisture.Output, StringComparison.Ordinal);
        Assert.Contains("ISO 13788:2012 (condensation, mould); from memory", moisture.Output, StringComparison.Ordinal);
        var other = Tool.Run("heat", "--case", cases, "--only", "flat-roof-moisture");
        Assert.Equal(2, other.Status);
        Assert.Contains("detailgen moisture --case", other.Messages, StringComparison.Ordinal);
        Assert.Contains("flat-roof", Tool.Run("heat", "--case", cases, "--only", "flat-rof").Messages, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_option_of_every_verb_without_its_value_is_told_in_one_line()
    {
        (string Verb, string[] Words, string[] Options)[] verbs =
        [
            ("draw", ["x.yaml"], ["--set", "--out", "--formats", "--dpi", "--practice"]), ("new", ["parapet", "cavity-masonry", "warm-timber-deck"], ["--out", "--practice"]),
            ("check", ["x.yaml"], ["--set", "--practice"]), ("explain", ["x.yaml"], ["--set", "--what-if", "--practice"]), ("range", ["x.yaml"], ["--set", "--practice"]),
            ("heat", ["x.yaml"], ["--set", "--sweep", "--picture", "--practice"]), ("heat", [], ["--case", "--sweep", "--picture"]), ("heat", ["--case", "c.json"], ["--only"]), ("moisture", ["x.yaml"], ["--set", "--practice"]),
            ("moisture", [], ["--case"]), ("moisture", ["--case", "c.json"], ["--only"]), ("list", ["rules"], ["--practice"]), ("schema", [], ["--practice"]),
        ];
        foreach (var (verb, words, options) in verbs)
        {
            Assert.All(options, option =>
            {
                var run = Tool.Run([verb, .. words, option]);
                Assert.Equal(2, run.Status);
                Assert.Contains(option, run.Messages, StringComparison.Ordinal);
                Assert.DoesNotContain("Internal fault", run.Messages, StringComparison.Ordinal);
                Assert.Equal(2, Tool.Run([verb, .. words, option, ""]).Status);
            });
        }
    }

    [Theory]
    [InlineData("--only picks cases", "heat", "x.yaml", "--only", "a")]
    [InlineData("--only picks cases", "moisture", "x.yaml", "--only", "a")]
    [InlineData("--out names no folder.", "draw", "x.yaml", "--out", "")]
    [InlineData("--set is for presets", "heat", "--case", "c.json", "--set", "wall.cavity=150mm")]
    public void An_option_that_would_do_nothing_is_told(string reason, params string[] arguments)
    {
        var run = Tool.Run(arguments);
        Assert.Equal(2, run.Status);
        Assert.Contains(reason, run.Messages, StringComparison.Ordinal);
    }

    [Fact]
    public void What_steers_a_terminal_is_repeated_as_its_number()
    {
        using var scratch = new Scratch();
        var run = Tool.Run("check", scratch.Preset("parapet", "cavity-masonry", "warm-timber-deck", "set: { wall.cavity: \"\\e[2J150 mm\", weep.spacing: \"\u202E900 mm\" }\n"), "--json");
        Assert.Equal(2, run.Status);
        Assert.Contains("\\u001B[2J150 mm", run.Messages, StringComparison.Ordinal);
        Assert.Contains("\\u202E900 mm", run.Messages, StringComparison.Ordinal);
        Assert.DoesNotContain(run.Messages, sign => sign is '\u001B' or '\u202E');
        Assert.Equal("\u001B[2J150 mm", run.Detail["errors"]![0]!["value"]!.GetValue<string>());
    }
}
