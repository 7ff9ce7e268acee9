namespace DetailGen.Testing;

/// <summary>Where the sources lie, for tests that read them.</summary>
public static class Repository
{
    public static string Root { get; } = Find();

    public static string Path(params string[] names) => System.IO.Path.Combine([Root, .. names]);

    private static string Find()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(System.IO.Path.Combine(folder.FullName, "DetailGen.sln")))
            {
                return folder.FullName;
            }
        }

        throw new InvalidOperationException("The tests do not run from within the repository.");
    }
}
