using System.Text.RegularExpressions;
using DetailGen.Testing;

namespace DetailGen.EndToEnd.Tests.HouseRules;

public partial class MarkdownTests
{
    [Fact]
    public void Every_link_in_a_markdown_file_leads_somewhere()
    {
        var broken =
            from file in Directory.EnumerateFiles(Repository.Root, "*.md", SearchOption.AllDirectories)
            where !Path.GetRelativePath(Repository.Root, file).Split(Path.DirectorySeparatorChar).Any(part => part is "bin" or "obj" or ".git" or "out")
            let text = File.ReadAllText(file)
            from link in Link().Matches(text)
            let target = link.Groups[1].Value
            where !target.Contains("://", StringComparison.Ordinal)
            where !Leads(file, text, target)
            select $"{Path.GetRelativePath(Repository.Root, file)}: {target}";
        Assert.Empty(broken);
    }

    [Fact]
    public void What_DEVELOPERS_names_of_the_code_is_there_under_that_name()
    {
        var files = new[] { "src", "tests" }.SelectMany(folder => Directory.EnumerateFiles(Repository.Path(folder), "*.*", SearchOption.AllDirectories))
            .Where(file => Path.GetExtension(file) is ".cs" or ".csproj" or ".props" && !file.Split(Path.DirectorySeparatorChar).Any(part => part is "bin" or "obj")).ToList();
        var places = files.Select(file => file.Replace(Path.DirectorySeparatorChar, '/').Replace("/DetailGen.", "/", StringComparison.Ordinal)).ToList();
        var words = files.SelectMany(file => Word().Matches(File.ReadAllText(file)).Select(word => word.Value)).ToHashSet(StringComparer.Ordinal);
        var spans = Span().Matches(File.ReadAllText(Repository.Path("DEVELOPERS.md"))).Select(span => span.Groups[1].Value).Where(span => !span.StartsWith("dotnet ", StringComparison.Ordinal)).ToList();
        Assert.True(spans.Count > 100);
        Assert.Equal([], spans.SelectMany(span => Named().Matches(span).Select(name => name.Value)).Except(words, StringComparer.Ordinal));
        Assert.Equal([], spans.Where(span => PathOfCode().IsMatch(span) && !places.Exists(place => place.Contains($"/{span}/", StringComparison.Ordinal) || place.EndsWith($"/{span}.cs", StringComparison.Ordinal))));
    }

    private static bool Leads(string file, string text, string target)
    {
        var parts = target.Split('#', 2);
        var path = parts[0].Length == 0 ? file : Path.Combine(Path.GetDirectoryName(file)!, Uri.UnescapeDataString(parts[0]));
        if (!File.Exists(path) && !Directory.Exists(path))
        {
            return false;
        }

        return parts.Length == 1 || Anchors(parts[0].Length == 0 ? text : File.ReadAllText(path)).Contains(parts[1]);
    }

    private static HashSet<string> Anchors(string text) =>
    [
        .. Heading().Matches(text).Select(heading => NotInAnchor().Replace(heading.Groups[1].Value.Trim().ToLowerInvariant(), "").Replace(' ', '-')),
    ];

    [GeneratedRegex(@"\]\(([^)\s]+)\)")]
    private static partial Regex Link();

    [GeneratedRegex(@"^#+ (.*)$", RegexOptions.Multiline)]
    private static partial Regex Heading();

    [GeneratedRegex(@"[^\p{L}\p{N} _-]")]
    private static partial Regex NotInAnchor();

    [GeneratedRegex("`([^`\\n]+)`")]
    private static partial Regex Span();

    /// <summary>A name in the style of types and members.</summary>
    [GeneratedRegex(@"\b[A-Z][a-z]+[A-Za-z]+\b")]
    private static partial Regex Named();

    [GeneratedRegex(@"\w+")]
    private static partial Regex Word();

    /// <summary>Folders with or without a type at their end, such as Search/Tracer.</summary>
    [GeneratedRegex("^[A-Z][A-Za-z]+(/[A-Z][A-Za-z]+)+$")]
    private static partial Regex PathOfCode();
}
