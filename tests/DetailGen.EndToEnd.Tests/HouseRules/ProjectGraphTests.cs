using System.Xml.Linq;
using DetailGen.Testing;

namespace DetailGen.EndToEnd.Tests.HouseRules;

public class ProjectGraphTests
{
    private static readonly (string Project, string[] References, string[] Packages)[] Graph =
    [
        ("Dxf", [], []),
        ("Solver", [], []),
        ("Physics", [], []),
        ("Sections", [], ["NetTopologySuite"]),
        ("Details", ["Sections", "Solver"], ["YamlDotNet"]),
        ("Analysis", ["Physics", "Sections"], []),
        ("Drawing", ["Analysis", "Dxf", "Sections"], ["SkiaSharp", "SkiaSharp.NativeAssets.Linux.NoDependencies"]),
        ("Library", ["Analysis", "Details", "Drawing", "Physics", "Sections"], ["MiniExcel"]),
        ("Cli", ["Library"], ["Spectre.Console", "System.CommandLine"]),
    ];

    public static TheoryData<string> Projects => [.. Graph.Select(row => row.Project)];

    [Theory]
    [MemberData(nameof(Projects))]
    public void A_project_sees_only_its_own_row_of_the_graph(string project)
    {
        var row = Graph.Single(row => row.Project == project);
        var file = XDocument.Load(Repository.Path("src", $"DetailGen.{project}", $"DetailGen.{project}.csproj"));
        var references = Names(file, "ProjectReference").Select(path => Path.GetFileNameWithoutExtension(path.Replace('\\', '/')).Replace("DetailGen.", ""));
        Assert.Equal(row.References, references.Order(StringComparer.Ordinal));
        Assert.Equal(row.Packages, Names(file, "PackageReference").Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Every_project_stands_in_the_graph() =>
        Assert.Equal(
            Graph.Select(row => "DetailGen." + row.Project).Order(StringComparer.Ordinal),
            Directory.GetDirectories(Repository.Path("src")).Select(folder => Path.GetFileName(folder)!).Order(StringComparer.Ordinal));

    private static IEnumerable<string> Names(XDocument file, string element) =>
        file.Descendants(element).Select(item => item.Attribute("Include")!.Value);
}
