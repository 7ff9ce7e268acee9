using System.Text.Json.Nodes;
using DetailGen.Cli.Verbs;
using DetailGen.Testing;

namespace DetailGen.EndToEnd.Tests.Verbs;

/// <summary>The command line, run in this process.</summary>
internal sealed record Tool(int Status, string Output, string Messages)
{
    internal JsonNode Json => JsonNode.Parse(Output)!;

    internal JsonNode Detail => Json["details"]![0]!;

    internal static Tool Run(params string[] arguments)
    {
        using var output = new StringWriter();
        using var messages = new StringWriter();
        var status = CommandLine.Run(arguments, output, messages);
        return new(status, output.ToString(), messages.ToString());
    }

    /// <summary>Path of a shipped detail.</summary>
    internal static string Shipped(string name) => Repository.Path("presets", "details", name + ".yaml");
}

/// <summary>A folder that goes when the test ends.</summary>
internal sealed class Scratch : IDisposable
{
    internal string Folder { get; } = Directory.CreateTempSubdirectory("detailgen-").FullName;

    public void Dispose() => Directory.Delete(Folder, recursive: true);

    internal string Write(string name, string text)
    {
        var path = Path.Combine(Folder, name);
        File.WriteAllText(path, text);
        return path;
    }

    internal string Preset(string junction, string wall, string roof, string more = "", string name = "preset.yaml") =>
        Write(name, $"detail: {Path.GetFileNameWithoutExtension(name)}\njunction: {junction}\nwall: {wall}\nroof: {roof}\n{more}");
}
