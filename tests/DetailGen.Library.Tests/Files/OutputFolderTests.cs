using DetailGen.Library.Files;

namespace DetailGen.Library.Tests.Files;

public sealed class OutputFolderTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("detailgen-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void Files_stand_under_their_names_with_size_and_digest()
    {
        var files = OutputFolder.Write(Path.Combine(_folder, "new", "deeper"), [new("a.txt", "txt", "abc"u8.ToArray())], out var fault);
        Assert.Null(fault);
        // FIPS 180-4, example of SHA-256 for "abc".
        Assert.Equal(new("a.txt", "txt", 3, "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"), Assert.Single(files));
        Assert.Equal("abc", File.ReadAllText(Path.Combine(_folder, "new", "deeper", "a.txt")));
    }

    [Fact]
    public void An_earlier_file_is_replaced()
    {
        File.WriteAllText(Path.Combine(_folder, "a.txt"), "a longer text from before");
        OutputFolder.Write(_folder, [new("a.txt", "txt", "abc"u8.ToArray())], out var fault);
        Assert.Null(fault);
        Assert.Equal("abc", File.ReadAllText(Path.Combine(_folder, "a.txt")));
    }

    [Fact]
    public void A_folder_in_the_way_of_one_file_leaves_nothing_of_the_others()
    {
        Directory.CreateDirectory(Path.Combine(_folder, "b.txt"));
        var files = OutputFolder.Write(_folder, [new("a.txt", "txt", [1]), new("b.txt", "txt", [2])], out var fault);
        Assert.Empty(files);
        Assert.Contains("b.txt is a folder there", fault!.Reason, StringComparison.Ordinal);
        Assert.Equal(["b.txt"], Directory.GetFileSystemEntries(_folder).Select(Path.GetFileName));
    }

    [Fact]
    public void A_file_in_place_of_the_folder_is_told_and_kept()
    {
        var path = Path.Combine(_folder, "file");
        File.WriteAllText(path, "kept");
        Assert.Empty(OutputFolder.Write(path, [new("a.txt", "txt", [1])], out var fault));
        Assert.Contains($"{path} is a file, not a folder", fault!.Reason, StringComparison.Ordinal);
        Assert.Equal("kept", File.ReadAllText(path));
    }

    [Fact]
    public void A_file_that_cannot_take_its_name_leaves_the_folder_as_it_was()
    {
        File.WriteAllText(Path.Combine(_folder, "a.txt"), "issued before");
        var nameless = new string('n', 300); // longer than any file system takes, so it can be written aside and not be renamed
        var files = OutputFolder.Write(_folder, [new("a.txt", "txt", [1]), new("b.txt", "txt", [2]), new(nameless, "txt", [3])], out var fault);
        Assert.Empty(files);
        Assert.Equal(Messages.NameTooLongHint, fault!.Hint);
        Assert.Equal(["a.txt"], Directory.GetFileSystemEntries(_folder).Select(Path.GetFileName));
        Assert.Equal("issued before", File.ReadAllText(Path.Combine(_folder, "a.txt")));
    }
}
