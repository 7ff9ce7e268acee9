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
}
