using DetailGen.Testing;

namespace DetailGen.EndToEnd.Tests.Verbs;

/// <summary>The fields of the grid reference on the sheets of a practice.</summary>
public class GridReferenceTests
{
    [Fact]
    public void A_sheet_has_as_many_fields_as_there_are_letters()
    {
        using var scratch = new Scratch();
        var run = Tool.Run("draw", scratch.Preset("abutment", "solid-masonry-insulated", "warm-concrete-deck", "sheet: { paper: A3, scale: \"1:10\" }"), "--practice", Practice(scratch, 24), "--out", scratch.Folder, "--formats", "svg");
        Assert.Equal(0, run.Status);
        Assert.Contains(">Z<", File.ReadAllText(Path.Combine(scratch.Folder, "preset.svg")), StringComparison.Ordinal);
    }

    [Fact]
    public void More_fields_than_letters_are_told_with_their_line_and_the_most()
    {
        using var scratch = new Scratch();
        var practice = Practice(scratch, 25);
        var run = Tool.Run("check", scratch.Preset("parapet", "cavity-masonry", "warm-timber-deck"), "--practice", practice, "--json");
        Assert.Equal(2, run.Status);
        var errors = run.Json["errors"]?.AsArray() ?? run.Detail["errors"]!.AsArray();
        Assert.Contains(errors, error => error!["file"]!.GetValue<string>() == Path.Combine(practice, "sheets", "formats.yaml") && error["line"]!.GetValue<int>() > 1
            && error["reason"]!.GetValue<string>().EndsWith("2 to 24.", StringComparison.Ordinal));
    }

    // The shipped formats with so many fields down the A3.
    private static string Practice(Scratch scratch, int down)
    {
        const string Shipped = "grid: { long: 8, short: 6 }";
        var folder = Path.Combine(scratch.Folder, "practice");
        Directory.CreateDirectory(Path.Combine(folder, "sheets"));
        var formats = File.ReadAllText(Repository.Path("presets", "sheets", "formats.yaml"));
        Assert.Contains(Shipped, formats, StringComparison.Ordinal);
        File.WriteAllText(Path.Combine(folder, "sheets", "formats.yaml"), formats.Replace(Shipped, FormattableString.Invariant($"grid: {{ long: 8, short: {down} }}"), StringComparison.Ordinal));
        return folder;
    }
}
