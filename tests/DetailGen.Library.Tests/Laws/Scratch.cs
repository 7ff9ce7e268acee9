namespace DetailGen.Library.Tests.Laws;

/// <summary>Folders that nobody keeps.</summary>
internal static class Scratch
{
    public static void Folder(Action<string> work)
    {
        var folder = Directory.CreateTempSubdirectory("detailgen-").FullName;
        try
        {
            work(folder);
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }
}
