using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using DetailGen.Testing;

namespace DetailGen.EndToEnd.Tests.Verbs;

/// <summary>Sheets in the letters of a practice.</summary>
public partial class TypefaceTests
{
    private const string Yaml = "regular: fonts/TernSans-Regular.ttf\nbold: fonts/TernSans-Bold.ttf\n";

    private static readonly AlteredFont Regular = AlteredFont.Of("Regular").Named("Tern Sans").Stretched(1.15, 1, 2048);
    private static readonly AlteredFont Bold = AlteredFont.Of("Bold").Named("Tern Sans").Stretched(1.15, 1, 2048);

    [Fact]
    public void Every_format_names_the_practices_letters_and_words_are_as_wide_as_theirs()
    {
        using var scratch = new Scratch();
        var preset = scratch.Preset("parapet", "cavity-masonry", "warm-timber-deck", "sheet: { paper: A2, scale: \"1:10\" }\n");
        Files(scratch, preset, "plain");
        Files(scratch, preset, "own", "--practice", Practice(scratch));

        string Read(string folder, string extension) => File.ReadAllText(Path.Combine(scratch.Folder, folder, "preset." + extension), Encoding.Latin1);
        Assert.Contains("font-family=\"'Tern Sans', ", Read("own", "svg"), StringComparison.Ordinal);
        Assert.Contains("/BaseFont /AAAAAA+Tern#20Sans", Read("own", "pdf"), StringComparison.Ordinal);
        Assert.Contains("\nTernSans-Regular.ttf\n", Read("own", "dxf").ReplaceLineEndings("\n"), StringComparison.Ordinal);
        Assert.Contains("\nTern Sans\n", Read("own", "dxf").ReplaceLineEndings("\n"), StringComparison.Ordinal);
        Assert.DoesNotContain("arial.ttf", Read("own", "dxf"), StringComparison.OrdinalIgnoreCase);
        Assert.Equal(1.15 * Length(Read("plain", "svg"), "Key"), Length(Read("own", "svg"), "Key"), 0.02);
        Assert.NotEqual(File.ReadAllBytes(Path.Combine(scratch.Folder, "plain", "preset.png")), File.ReadAllBytes(Path.Combine(scratch.Folder, "own", "preset.png")));
    }

    [Fact]
    public void A_drawing_names_another_font_of_the_same_widths_where_the_practice_says_so()
    {
        using var scratch = new Scratch();
        var preset = scratch.Preset("parapet", "cavity-masonry", "warm-timber-deck");
        Files(scratch, preset, "own", "--practice", Practice(scratch, Yaml + "dxf: { file: ternlike.ttf, family: Tern Like }\n"));
        var lines = File.ReadAllLines(Path.Combine(scratch.Folder, "own", "preset.dxf"));
        Assert.Contains("ternlike.ttf", lines);
        Assert.Contains("Tern Like", lines);
    }

    [Theory]
    [InlineData("parapet", "cavity-masonry", "warm-timber-deck", "A3", "1:10")]
    [InlineData("abutment", "cavity-masonry", "warm-concrete-deck", "A1", "1:5")]
    [InlineData("parapet", "solid-masonry-insulated", "warm-concrete-deck", "A2", "1:10")]
    [InlineData("abutment", "solid-masonry-insulated", "warm-timber-deck", "A4", "1:20")]
    public void A_sheet_in_wider_letters_has_no_fault_in_its_layout(string junction, string wall, string roof, string paper, string scale)
    {
        using var scratch = new Scratch();
        var preset = scratch.Preset(junction, wall, roof, $"mirror: true\nsheet: {{ paper: {paper}, scale: \"{scale}\", companions: [exploded, control-lines, sequence] }}\n" + TitleBlock);
        var run = Tool.Run("draw", preset, "--practice", Practice(scratch), "--out", scratch.Folder, "--formats", "json", "--layout-audit", "--dpi", "50", "--json");
        Assert.Equal(0, run.Status);
        Assert.DoesNotContain(run.Detail["layout"]!["audit"]!.AsArray(), fault => fault!["kind"]!.GetValue<string>() != "crowded");
    }

    [Fact]
    public void Bytes_are_the_same_again_and_from_another_folder_and_other_drawings_keep_theirs()
    {
        using var first = new Scratch();
        using var second = new Scratch();
        byte[][] All(Scratch scratch, string folder, params string[] more)
        {
            Files(scratch, scratch.Preset("abutment", "solid-masonry-insulated", "warm-concrete-deck"), folder, more);
            return [.. Directory.GetFiles(Path.Combine(scratch.Folder, folder)).Order(StringComparer.Ordinal).Select(File.ReadAllBytes)];
        }

        var plain = All(first, "plain");
        byte[][][] both = new byte[2][][];
        var (own, other) = (Practice(first), Practice(second));
        Parallel.Invoke(() => both[0] = All(first, "own", "--practice", own), () => both[1] = All(second, "own", "--practice", other));
        Assert.Equal(both[0], both[1]);
        Assert.Equal(plain, All(second, "plain"));
        Assert.NotEqual(plain[0], both[0][0]);
    }

    [Fact]
    public void Letters_that_the_typeface_lacks_are_told()
    {
        using var scratch = new Scratch();
        var practice = Practice(scratch);
        File.WriteAllBytes(Path.Combine(practice, "fonts", "TernSans-Regular.ttf"), Regular.Only(Enumerable.Range(' ', 95).Select(letter => (char)letter)).Bytes());
        var run = Tool.Run("draw", scratch.Preset("parapet", "cavity-masonry", "warm-timber-deck"), "--practice", practice, "--out", scratch.Folder, "--formats", "svg", "--json");
        Assert.Equal(0, run.Status);
        var warning = Assert.Single(run.Detail["warnings"]!.AsArray(), one => one!.GetValue<string>().StartsWith("The font of the sheets has no", StringComparison.Ordinal))!.GetValue<string>();
        Assert.Contains(" × ", warning, StringComparison.Ordinal);
        Assert.Contains("Take a typeface", warning, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("regular: fonts/TernSans-Regular.ttf\n", 1, 1, "missing-key", "bold")]
    [InlineData("regular: fonts/TernSans-Regular.ttf\nbold: fonts/Missing.ttf\n", 2, 7, "typeface", "There is no such file")]
    [InlineData("regular: fonts/TernSans-Regular.ttf\nbold: fonts\n", 2, 7, "typeface", "This is a folder")]
    [InlineData("regular: fonts/TernSans-Regular.ttf\nbold: fonts/junk.ttf\n", 2, 7, "typeface", "no TrueType font")]
    [InlineData("regular: fonts/TernSans-Regular.ttf\nbold: fonts/cut.ttf\n", 2, 7, "typeface", "damaged")]
    [InlineData("regular: fonts/TernSans-Regular.ttf\nbold: fonts/cff.otf\n", 2, 7, "typeface", "CFF")]
    [InlineData("regular: fonts/TernSans-Regular.ttf\nbold: fonts/large.ttf\n", 2, 7, "typeface", "more than 8,388,608 bytes")]
    [InlineData("bold: fonts/TernSans-Bold.ttf\nregular: fonts/restricted.ttf\n", 2, 10, "typeface", "forbid to embed")]
    [InlineData("regular: ../fonts/TernSans-Regular.ttf\nbold: fonts/TernSans-Bold.ttf\n", 1, 10, "bad-text", "within the practice's folder")]
    [InlineData("regular: fonts/../../TernSans-Regular.ttf\nbold: fonts/TernSans-Bold.ttf\n", 1, 10, "bad-text", "within the practice's folder")]
    [InlineData("regular: /etc/TernSans-Regular.ttf\nbold: fonts/TernSans-Bold.ttf\n", 1, 10, "bad-text", "within the practice's folder")]
    [InlineData("regular: C:/TernSans-Regular.ttf\nbold: fonts/TernSans-Bold.ttf\n", 1, 10, "bad-text", "within the practice's folder")]
    [InlineData(Yaml + "dxf: { file: fonts/own.ttf, family: Own }\n", 3, 14, "bad-text", "without a folder")]
    [InlineData(Yaml + "dxf: { file: own.ttf }\n", 3, 6, "missing-key", "family")]
    [InlineData(Yaml + "italic: fonts/TernSans-Bold.ttf\n", 3, 1, "unknown-key", "italic")]
    public void What_gives_no_typeface_is_told_with_its_place(string text, int line, int column, string code, string words)
    {
        using var scratch = new Scratch();
        var practice = Practice(scratch, text);
        void Font(string name, byte[] bytes) => File.WriteAllBytes(Path.Combine(practice, "fonts", name), bytes);
        Font("junk.ttf", [.. Enumerable.Range(0, 5000).Select(i => (byte)(i * 31 % 256))]);
        Font("cut.ttf", Regular.Bytes()[..300_000]);
        Font("cff.otf", [.. "OTTO"u8, .. new byte[1000]]);
        Font("large.ttf", new byte[(8 << 20) + 1]);
        Font("restricted.ttf", Regular.With("OS/2", 8, 2).Bytes());

        var run = Tool.Run("check", scratch.Preset("parapet", "cavity-masonry", "warm-timber-deck"), "--practice", practice, "--json");
        Assert.Equal(2, run.Status);
        JsonNode error = Assert.Single(run.Json["errors"]?.AsArray() ?? run.Detail["errors"]!.AsArray())!;
        Assert.Equal(
            (Path.Combine(practice, "sheets", "typeface.yaml"), line, column, code),
            (error["file"]!.GetValue<string>(), error["line"]!.GetValue<int>(), error["column"]!.GetValue<int>(), error["code"]!.GetValue<string>()));
        Assert.Contains(words, error["reason"]!.GetValue<string>(), StringComparison.Ordinal);
        Assert.NotEmpty(error["hint"]!.GetValue<string>());
    }

    [Fact]
    public void Faults_of_both_fonts_are_told_at_once()
    {
        using var scratch = new Scratch();
        var run = Tool.Run("check", scratch.Preset("parapet", "cavity-masonry", "warm-timber-deck"), "--practice", Practice(scratch, "regular: sheets/typeface.yaml\nbold: sheets/typeface.yaml\n"), "--json");
        Assert.Equal([1, 2], (run.Json["errors"]?.AsArray() ?? run.Detail["errors"]!.AsArray()).Select(error => error!["line"]!.GetValue<int>()));
    }

    private const string TitleBlock =
        "title-block: { owner: Tern Court Drawing Office, project: Tern Court Workshops, number: TC-DET-0101, revision: P01, status: S2, date: 2026-11-25, drawn: AB, checked: CD, approved: EF }\n"
        + "revisions: [ { rev: P01, date: 2026-11-25, text: First issue, drawn: AB, checked: CD } ]\n";

    private static void Files(Scratch scratch, string preset, string folder, params string[] more) =>
        Assert.Equal(0, Tool.Run(["draw", preset, "--out", Path.Combine(scratch.Folder, folder), "--formats", "dxf,svg,pdf,png", "--dpi", "60", .. more]).Status);

    /// <summary>What the drawing says of the width of a text.</summary>
    private static double Length(string svg, string words) =>
        double.Parse(TextLength().Matches(svg).First(text => text.Groups[2].Value.StartsWith(words, StringComparison.Ordinal)).Groups[1].Value, CultureInfo.InvariantCulture);

    [GeneratedRegex("textLength=\"([0-9.]+)\"[^>]*>([^<]*)<")]
    private static partial Regex TextLength();

    private static string Practice(Scratch scratch, string yaml = Yaml)
    {
        var folder = Path.Combine(scratch.Folder, "practice");
        Directory.CreateDirectory(Path.Combine(folder, "sheets"));
        Directory.CreateDirectory(Path.Combine(folder, "fonts"));
        File.WriteAllText(Path.Combine(folder, "sheets", "typeface.yaml"), yaml);
        File.WriteAllBytes(Path.Combine(folder, "fonts", "TernSans-Regular.ttf"), Regular.Bytes());
        File.WriteAllBytes(Path.Combine(folder, "fonts", "TernSans-Bold.ttf"), Bold.Bytes());
        return folder;
    }
}
