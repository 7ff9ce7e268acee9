using System.Diagnostics;
using System.Runtime.CompilerServices;

namespace DetailGen.Dxf.Tests.Writing;

/// <summary>Finds the checker that asks readers other than ours: by DXF_CHECK (path of dxfcheck.py), or beside the repository.</summary>
internal static class IndependentReaders
{
    private const string Beside = "shared/tools/dxf-check/dxfcheck.py";

    /// <summary>The checker's script, or null and the reason.</summary>
    public static (string? Script, string Reason) Find()
    {
        var named = Environment.GetEnvironmentVariable("DXF_CHECK");
        var script = named ?? Above(SourceFolder()).Select(folder => Path.Combine(folder, Beside)).FirstOrDefault(File.Exists);
        return script is null || !File.Exists(script)
            ? (null, "The checker is neither named by DXF_CHECK nor beside the repository.")
            : Run("python3", ["--version"]).Exit != 0
            ? (null, "python3 is not installed.")
            : (script, "");
    }

    public static (int Exit, string Output) Check(string script, string drawing) =>
        Run(script, [drawing, "--config", Path.Combine(Path.GetDirectoryName(script)!, "detailgen.json"), "--strict"]);

    private static (int Exit, string Output) Run(string program, string[] arguments)
    {
        try
        {
            using var process = Process.Start(new ProcessStartInfo(program, arguments) { RedirectStandardOutput = true })!;
            var output = process.StandardOutput.ReadToEnd();
            process.WaitForExit();
            return (process.ExitCode, output);
        }
        catch (System.ComponentModel.Win32Exception fault)
        {
            return (-1, fault.Message);
        }
    }

    private static IEnumerable<string> Above(string folder)
    {
        for (var at = new DirectoryInfo(folder); at is not null; at = at.Parent)
        {
            yield return at.FullName;
        }
    }

    private static string SourceFolder([CallerFilePath] string file = "") => Path.GetDirectoryName(file)!;
}
