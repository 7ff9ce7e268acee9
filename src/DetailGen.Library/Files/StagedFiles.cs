namespace DetailGen.Library.Files;

/// <summary>Files that stand aside, under names of no meaning, until all of them are written: then they take their own names, and where one cannot, none does.</summary>
/// <remarks>Every method lets the disk's faults through; after one, <see cref="TakeBack"/> leaves the folder as it was.</remarks>
internal sealed class StagedFiles(string folder)
{
    private readonly List<Staged> _files = [];

    /// <summary>Writes a file aside.</summary>
    internal void Add(OutputFile file)
    {
        var staged = new Staged(Aside(), Path.Combine(folder, file.Name));
        _files.Add(staged);
        File.WriteAllBytes(staged.Written, file.Bytes);
    }

    /// <summary>Gives all files their names. What stood under one is copied aside first and not moved, so that a whole file stands under it at any moment.</summary>
    internal void Place()
    {
        foreach (var file in _files.Where(file => File.Exists(file.Final)))
        {
            file.Earlier = Aside();
            File.Copy(file.Final, file.Earlier);
        }

        foreach (var file in _files)
        {
            File.Move(file.Written, file.Final, overwrite: true);
            file.IsPlaced = true;
        }

        foreach (var file in _files.Where(file => file.Earlier is not null))
        {
            Remove(file.Earlier!);
        }
    }

    /// <summary>Removes what was written and puts back what stood there before.</summary>
    internal void TakeBack()
    {
        foreach (var file in _files)
        {
            Remove(file.IsPlaced ? file.Final : file.Written);
            if (file.Earlier is { } earlier)
            {
                Quietly(() => File.Move(earlier, file.Final, overwrite: true));
            }
        }
    }

    private string Aside() => Path.Combine(folder, $".{Path.GetRandomFileName()}.part");

    private static void Remove(string path) => Quietly(() => File.Delete(path));

    private static void Quietly(Action work)
    {
        try
        {
            work();
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            // Either all is written, or a fault is told already: a scrap that cannot be removed adds nothing to it.
        }
    }

    private sealed class Staged(string written, string final)
    {
        internal string Written => written;

        internal string Final => final;

        /// <summary>A copy of what stood under the name; null where nothing did.</summary>
        internal string? Earlier { get; set; }

        internal bool IsPlaced { get; set; }
    }
}
