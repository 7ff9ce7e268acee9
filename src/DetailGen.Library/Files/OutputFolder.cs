using System.Security.Cryptography;
using DetailGen.Library.Reports;

namespace DetailGen.Library.Files;

/// <summary>A file that is to stand under its name.</summary>
/// <param name="Name">Letters, digits, hyphen, dot and underscore; no folder.</param>
public sealed record OutputFile(string Name, string Format, byte[] Bytes);

/// <summary>Writes files so that nothing half-written ever stands under a final name: all aside first, then renamed.</summary>
internal static class OutputFolder
{
    /// <summary>The files as written, in the order given; or in <paramref name="fault"/> one sentence that says why none was.</summary>
    internal static IReadOnlyList<FileReport> Write(string folder, IReadOnlyList<OutputFile> files, out string? fault)
    {
        var aside = new List<(string Temporary, string Final)>();
        try
        {
            Directory.CreateDirectory(folder);
            foreach (var file in files)
            {
                var final = Path.Combine(folder, file.Name);
                if (Directory.Exists(final))
                {
                    throw new IOException($"{file.Name} is a folder there.");
                }

                var temporary = Path.Combine(folder, $".{file.Name}.{Path.GetRandomFileName()}.part");
                aside.Add((temporary, final));
                File.WriteAllBytes(temporary, file.Bytes);
            }

            foreach (var (temporary, final) in aside)
            {
                File.Move(temporary, final, overwrite: true);
            }
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            foreach (var (temporary, _) in aside)
            {
                Remove(temporary);
            }

            fault = Messages.CannotWrite(folder, problem.Message);
            return [];
        }

        fault = null;
        return [.. files.Select(Describe)];
    }

    internal static FileReport Describe(OutputFile file) =>
        new(file.Name, file.Format, file.Bytes.LongLength, Convert.ToHexStringLower(SHA256.HashData(file.Bytes)));

    private static void Remove(string temporary)
    {
        try
        {
            File.Delete(temporary);
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            // The write has failed already and is told; a scrap that cannot be removed either adds nothing to it.
        }
    }
}
