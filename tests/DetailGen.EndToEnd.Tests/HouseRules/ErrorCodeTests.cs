using System.Text.RegularExpressions;
using DetailGen.EndToEnd.Tests.Verbs;
using DetailGen.Testing;

namespace DetailGen.EndToEnd.Tests.HouseRules;

/// <summary>The list of faults and the codes that the sources write.</summary>
public partial class ErrorCodeTests
{
    [Fact]
    public void Every_code_of_an_error_is_listed_with_its_meaning_and_none_that_is_not_written()
    {
        var listed = Tool.Run("list", "faults", "--json").Json["faults"]!.AsArray().Select(fault => fault!["code"]!.GetValue<string>()).ToList();
        Assert.Equal(listed.Distinct(), listed);
        var written = Directory.EnumerateFiles(Repository.Path("src"), "*.cs", SearchOption.AllDirectories)
            .Where(file => !file.Split(Path.DirectorySeparatorChar).Any(part => part is "bin" or "obj"))
            .SelectMany(file => Code().Matches(File.ReadAllText(file)).Select(match => match.Groups["code"].Value))
            .Concat(["unknown-junction", "unknown-wall", "unknown-roof", "folder-base", "unreadable-base", "empty-base", "missing-base"]) // put together where they are written
            .Distinct().Order(StringComparer.Ordinal).ToList();
        Assert.True(written.Count > 80);
        Assert.Equal(written, listed.Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Every_shipped_detail_is_listed_by_its_file()
    {
        var listed = Tool.Run("list", "details", "--json").Json["details"]!.AsArray();
        var files = Directory.EnumerateFiles(Repository.Path("presets", "details"), "*.yaml").Where(file => File.ReadAllText(file).Contains("\ndetail: ", StringComparison.Ordinal) || File.ReadAllText(file).StartsWith("detail: ", StringComparison.Ordinal));
        Assert.Equal(files.Select(file => "presets/details/" + Path.GetFileName(file)).Order(StringComparer.Ordinal), listed.Select(detail => detail!["file"]!.GetValue<string>()));
        Assert.All(listed, detail => Assert.NotEmpty(detail!["title"]!.GetValue<string>()));
    }

    // a diagnostic with its mark, an error report with file, line and column, or one without a place
    [GeneratedRegex("""(?:new(?: Diagnostic| ErrorReport)?\(\s*|Refuse\(screen, [^"]*?)"(?<code>[a-z][a-z0-9]*(?:-[a-z0-9]+)*)",\s*(?:at\b|asked\.Length|[^,()]*, (?:1|line|[\w.?]+\.Line(?: \?\? 1)?), )|ErrorReport\.Of\("(?<code>[a-z0-9-]+)",""")]
    private static partial Regex Code();
}
