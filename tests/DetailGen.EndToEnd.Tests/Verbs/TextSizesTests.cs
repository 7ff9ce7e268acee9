using System.Globalization;
using System.Text.Json.Nodes;

namespace DetailGen.EndToEnd.Tests.Verbs;

/// <summary>How high the letters of a sheet are, read from the drawing file.</summary>
public class TextSizesTests
{
    private static readonly double[] Usual = [1.8, 2.5, 3.5, 5];
    private static readonly double[] Reduced = [1.8, 3.5, 5];

    [Theory]
    [InlineData("abutment", "cavity-masonry", "warm-concrete-deck", "A3", "1:10")]
    [InlineData("parapet", "solid-masonry-insulated", "warm-concrete-deck", "A2", "1:10")]
    [InlineData("abutment", "solid-masonry-insulated", "warm-timber-deck", "A1", "1:5")]
    [InlineData("parapet", "cavity-masonry", "warm-timber-deck", "A4", "1:20")]
    public void On_a_sheet_for_reduced_print_nothing_but_labels_is_under_3_5(string junction, string wall, string roof, string paper, string scale)
    {
        using var scratch = new Scratch();
        var (detail, heights) = Drawn(scratch, scratch.Preset(junction, wall, roof, $"sheet: {{ paper: {paper}, scale: \"{scale}\", reduced-print: true, inset: none }}"), "--layout-audit");
        Assert.Equal(Reduced, heights);
        Assert.DoesNotContain(detail["warnings"]!.AsArray(), warning => warning!.GetValue<string>().Contains("not built", StringComparison.Ordinal));
        Assert.DoesNotContain(detail["layout"]!["audit"]!.AsArray(), fault => fault!["kind"]!.GetValue<string>() is "outside-zone" or "text-over-text");
    }

    [Fact]
    public void A_sheet_that_no_longer_holds_what_is_said_gives_way_and_says_so()
    {
        using var scratch = new Scratch();
        var (detail, _) = Drawn(scratch, scratch.Preset("parapet", "cavity-masonry", "warm-timber-deck", "sheet: { paper: A4, scale: \"1:10\", reduced-print: true }"));
        Assert.NotEqual("A4", detail["layout"]!["paper"]!.GetValue<string>());
        Assert.Contains(detail["warnings"]!.AsArray(), warning => warning!.GetValue<string>().StartsWith("A4 at 1:10 does not hold", StringComparison.Ordinal));
    }

    [Fact]
    public void A_companion_sheet_for_reduced_print_has_the_larger_letters_too()
    {
        using var scratch = new Scratch();
        var (_, heights) = Drawn(scratch, scratch.Preset("parapet", "cavity-masonry", "warm-timber-deck", "sheet: { paper: A2, scale: \"1:10\", reduced-print: true, inset: none, companions: [exploded, control-lines, sequence, blank] }"));
        Assert.Equal(Reduced, heights);
    }

    /// <summary>In the model they are twice as high, for they are seen at 1:2.</summary>
    [Fact]
    public void Names_in_an_inset_are_as_high_on_paper_as_notes()
    {
        using var scratch = new Scratch();
        var (_, heights) = Drawn(scratch, scratch.Preset("abutment", "cavity-masonry", "warm-concrete-deck", "sheet: { paper: A3, scale: \"1:10\", reduced-print: true }"));
        Assert.Equal([.. Reduced, 7], heights);
    }

    [Fact]
    public void A_practice_has_letters_of_its_own_height()
    {
        using var scratch = new Scratch();
        var preset = scratch.Preset("parapet", "cavity-masonry", "warm-timber-deck", "sheet: { paper: A2, scale: \"1:10\", inset: none }");
        Assert.Equal(Usual, Drawn(scratch, preset).Heights);
        Assert.Equal([2, 3, 4, 5], Drawn(scratch, preset, "--practice", Practice(scratch, "- { use: full-size, notes: 3, titles: 4, numbers: 5, field-labels: 2 }\n" + Print)).Heights);
    }

    private const string Full = "- { use: full-size, notes: 2.5, titles: 3.5, numbers: 5, field-labels: 1.8 }\n";
    private const string Print = "- { use: reduced-print, notes: 3.5, titles: 5, numbers: 5, field-labels: 1.8 }\n";

    [Theory]
    [InlineData("- { use: full-size, notes: 2, titles: 3.5, numbers: 5, field-labels: 1.8 }\n" + Print, 1, "2.5")]
    [InlineData("- { use: full-size, notes: 3.5, titles: 3, numbers: 5, field-labels: 1.8 }\n" + Print, 1, "Write titles: 3.5")]
    [InlineData(Full + "- { use: reduced-print, notes: 3, titles: 5, numbers: 5, field-labels: 1.8 }\n", 2, "Write notes: 3.5")]
    [InlineData(Full + "- { use: reduced-print, notes: 3.5, titles: 5, numbers: 5, field-label: 1.8 }\n", 2, "field-labels")]
    [InlineData(Full, 1, "use: reduced-print")]
    public void Heights_that_make_no_sheet_are_told_with_their_line_and_what_to_write(string text, int line, string hint)
    {
        using var scratch = new Scratch();
        var practice = Practice(scratch, text);
        var run = Tool.Run("check", scratch.Preset("parapet", "cavity-masonry", "warm-timber-deck"), "--practice", practice, "--json");
        Assert.Equal(2, run.Status);
        var errors = run.Json["errors"]?.AsArray() ?? run.Detail["errors"]!.AsArray();
        Assert.Contains(errors, error =>
            error!["file"]!.GetValue<string>() == Path.Combine(practice, "sheets", "text-sizes.yaml") && error["line"]!.GetValue<int>() == line
            && error["hint"]!.GetValue<string>().Contains(hint, StringComparison.Ordinal));
    }

    private static string Practice(Scratch scratch, string sizes)
    {
        var folder = Path.Combine(scratch.Folder, "practice");
        Directory.CreateDirectory(Path.Combine(folder, "sheets"));
        File.WriteAllText(Path.Combine(folder, "sheets", "text-sizes.yaml"), sizes);
        return folder;
    }

    private static (JsonNode Detail, double[] Heights) Drawn(Scratch scratch, string preset, params string[] more)
    {
        var run = Tool.Run(["draw", preset, "--out", scratch.Folder, "--formats", "dxf", "--json", .. more]);
        Assert.Equal(0, run.Status);
        return (run.Detail, Heights(File.ReadAllLines(Assert.Single(Directory.GetFiles(scratch.Folder, "*.dxf"))), run.Detail["layout"]!["scale"]!.GetValue<double>()));
    }

    // A style that every file has by format is not used on the sheet. Texts of a view stand in the model at so many times their height; no text on paper is as high as the lowest of those.
    private static double[] Heights(string[] lines, double scale)
    {
        const double Highest = 7;
        var heights = new SortedSet<double>();
        var (kind, name) = ("", "");
        for (var i = 0; i + 1 < lines.Length; i += 2)
        {
            var code = lines[i].Trim();
            (kind, name) = code switch { "0" => (lines[i + 1], ""), "2" => (kind, lines[i + 1]), _ => (kind, name) };
            var isHeight = kind switch { "TEXT" or "MTEXT" or "ATTRIB" or "ATTDEF" => code == "40", "DIMSTYLE" => code == "140" && name != "Standard", _ => false };
            if (isHeight && double.Parse(lines[i + 1], CultureInfo.InvariantCulture) is var height)
            {
                heights.Add(Math.Round(height > Highest ? height / scale : height, 3));
            }
        }

        return [.. heights];
    }
}
