using System.Security.Cryptography;
using DetailGen.Library.Reports;

namespace DetailGen.Library.Files;

/// <summary>A file that is to stand under its name.</summary>
/// <param name="Name">Letters, digits, hyphen, dot and underscore; no folder.</param>
public sealed record OutputFile(string Name, string Format, byte[] Bytes);

/// <summary>Why files could not be written, and what to do.</summary>
internal sealed record WriteFault(string Reason, string Hint);

/// <summary>Writes files so that nothing half-written ever stands under a final name: all aside first, then renamed.</summary>
internal static class OutputFolder
{
    /// <summary>The files as written, in the order given; or in <paramref name="fault"/> why none was.</summary>
    internal static IReadOnlyList<FileReport> Write(string folder, IReadOnlyList<OutputFile> files, out WriteFault? fault)
    {
        var staged = new StagedFiles(folder);
        try
        {
            if (FileInTheWay(folder) is { } occupied)
            {
                fault = Undone(staged, folder, Messages.IsFile(occupied), Messages.IsFileHint);
                return [];
            }

            Directory.CreateDirectory(folder);
            foreach (var file in files)
            {
                var final = Path.Combine(folder, file.Name);
                if (Directory.Exists(final))
                {
                    fault = Undone(staged, folder, Messages.IsFolderThere(file.Name), Messages.IsFolderThereHint);
                    return [];
                }

                // a rename would pass over the protection of what was issued
                if (File.Exists(final) && File.GetAttributes(final).HasFlag(FileAttributes.ReadOnly))
                {
                    fault = Undone(staged, folder, Messages.IsProtected(file.Name), Messages.IsProtectedHint);
                    return [];
                }

                staged.Add(file);
            }

            staged.Place();
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            var (reason, hint) = problem switch
            {
                UnauthorizedAccessException => (Messages.NotAllowed, Messages.NotAllowedHint),
                PathTooLongException => (Messages.NameTooLong, Messages.NameTooLongHint),
                FileNotFoundException or DirectoryNotFoundException when Directory.Exists(folder) => (Messages.TakesNoFiles, Messages.CannotBeHint),
                IOException when Directory.Exists(folder) => (Messages.DiskFault, Messages.DiskFaultHint),
                _ => (Messages.CannotBe, Messages.CannotBeHint),
            };
            fault = Undone(staged, folder, reason, hint);
            return [];
        }

        fault = null;
        return [.. files.Select(Describe)];
    }

    internal static FileReport Describe(OutputFile file) =>
        new(file.Name, file.Format, file.Bytes.LongLength, Convert.ToHexStringLower(SHA256.HashData(file.Bytes)));

    private static WriteFault Undone(StagedFiles staged, string folder, string reason, string hint)
    {
        staged.TakeBack();
        return new(Messages.CannotWrite(folder, reason), hint);
    }

    /// <summary>The folder itself or the first above it that is a file; null where there is none.</summary>
    private static string? FileInTheWay(string folder)
    {
        for (var path = folder; path is { Length: > 0 }; path = Path.GetDirectoryName(path))
        {
            if (File.Exists(path))
            {
                return path;
            }
        }

        return null;
    }
}
