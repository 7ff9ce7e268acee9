using System.Reflection;
using System.Runtime.CompilerServices;
using System.Xml.Linq;
using DetailGen.Testing;

namespace DetailGen.EndToEnd.Tests.HouseRules;

public class CodeTests
{
    private static readonly string[] Projects = ["Dxf", "Solver", "Physics", "Sections", "Details", "Analysis", "Drawing", "Library"];

    [Fact]
    public void A_section_cannot_be_changed_once_it_is_made()
    {
        var setters =
            from type in Assembly.Load("DetailGen.Sections").GetExportedTypes()
            from property in type.GetProperties()
            where property.SetMethod is { IsPublic: true } setter
                && !setter.ReturnParameter.GetRequiredCustomModifiers().Contains(typeof(IsExternalInit))
            select $"{type.Name}.{property.Name}";
        Assert.Empty(setters);
    }

    [Fact]
    public void No_static_field_can_be_changed()
    {
        var fields =
            from project in Projects
            from type in Assembly.Load("DetailGen." + project).GetTypes()
            where !type.IsDefined(typeof(CompilerGeneratedAttribute), inherit: false) && type.Namespace?.StartsWith("DetailGen", StringComparison.Ordinal) == true
            from field in type.GetFields(BindingFlags.Static | BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.DeclaredOnly)
            where !field.IsInitOnly && !field.IsLiteral && !field.IsDefined(typeof(CompilerGeneratedAttribute), inherit: false)
            where !field.Name.StartsWith('<') && !IsGenerated(type)
            select $"{type.Name}.{field.Name}";
        Assert.Empty(fields);
    }

    [Fact]
    public void Every_type_says_what_it_is()
    {
        var silent =
            from project in Projects
            let assembly = Assembly.Load("DetailGen." + project)
            let said = Said(Path.ChangeExtension(assembly.Location, ".xml"))
            from type in assembly.GetTypes()
            where type.Namespace?.StartsWith("DetailGen", StringComparison.Ordinal) == true && !type.IsNestedPrivate && !type.Name.StartsWith('<')
            where !type.IsDefined(typeof(CompilerGeneratedAttribute), inherit: false) && !(type.DeclaringType is { } outer && IsGenerated(outer))
            where !said.Contains("T:" + type.FullName!.Replace('+', '.'))
            select type.FullName;
        Assert.Empty(silent);
    }

    [Fact]
    public void No_source_file_is_longer_than_four_hundred_lines()
    {
        var files = new[] { "src", "tests" }
            .SelectMany(folder => Directory.EnumerateFiles(Repository.Path(folder), "*.cs", SearchOption.AllDirectories))
            .Where(file => !file.Split(Path.DirectorySeparatorChar).Any(part => part is "bin" or "obj"));
        Assert.Empty(files.Where(file => File.ReadLines(file).Count() > 400).Select(file => Path.GetRelativePath(Repository.Root, file)));
    }

    private static bool IsGenerated(Type type) => type.IsDefined(typeof(System.CodeDom.Compiler.GeneratedCodeAttribute), inherit: false) || type.Name == "ReportContext";

    private static HashSet<string> Said(string documentation) =>
        [.. XDocument.Load(documentation).Descendants("member").Where(member => member.Element("summary")?.Nodes().Any() == true).Select(member => member.Attribute("name")!.Value)];
}
