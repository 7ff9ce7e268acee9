using System.Reflection;
using System.Text;

namespace DetailGen.Details.Reading;

/// <summary>
/// The data files: those that ship inside the product, and those of a practice's own folder, which stand in for files of the same name and add others.
/// Nothing is read before it is asked for.
/// </summary>
public sealed class Shelf
{
    private readonly IReadOnlyList<ShelfFile> _files;

    // plain lists of references: what is generic over a value type is compiled anew at every start
    private Shelf(IEnumerable<ShelfFile> files)
    {
        var sorted = files.ToList();
        sorted.Sort((a, b) => string.CompareOrdinal(a.Name, b.Name));
        _files = sorted;
    }

    /// <summary>Only what ships.</summary>
    public static Shelf Shipped { get; } = FromResources(typeof(Shelf).Assembly);

    /// <summary>What ships, with a practice's folder over it; the folder holds materials, stock, rules, constructions, sheets.</summary>
    /// <returns>A fault where the folder cannot be looked through.</returns>
    public Outcome<Shelf> With(string folder)
    {
        var own = new List<ShelfFile>();
        try
        {
            var options = new EnumerationOptions { RecurseSubdirectories = true, MaxRecursionDepth = 4, AttributesToSkip = FileAttributes.Hidden | FileAttributes.System };
            foreach (var path in Directory.EnumerateFiles(folder, "*.y*ml", options).Where(IsYaml).Order(StringComparer.Ordinal))
            {
                var name = "presets/" + Path.GetRelativePath(folder, path).Replace('\\', '/');
                own.Add(new(name, false, () => Own(path), () => null));
            }
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException or ArgumentException)
        {
            return Outcome.Bad<Shelf>(Messages.NoFolder(new(folder, 1, 1)));
        }

        var names = own.Select(file => file.Name).ToHashSet(StringComparer.Ordinal);
        return Outcome.Good(new Shelf([.. _files.Where(file => !names.Contains(file.Name)), .. own]));
    }

    /// <summary>Files whose name begins so, in ordinal order of names; such as <c>presets/materials/</c>.</summary>
    public IEnumerable<ShelfFile> Under(string start) => _files.Where(file => file.Name.StartsWith(start, StringComparison.Ordinal));

    /// <summary>Null where there is none of that name.</summary>
    public ShelfFile? Find(string name) => _files.FirstOrDefault(file => string.Equals(file.Name, name, StringComparison.Ordinal));

    /// <summary>Names of the folders right under a folder, such as the rule packs under <c>presets/rules/</c>.</summary>
    public IReadOnlyList<string> Folders(string start) =>
        [.. Under(start).Select(file => file.Name[start.Length..]).Where(rest => rest.Contains('/')).Select(rest => rest[..rest.IndexOf('/')]).Distinct(StringComparer.Ordinal)];

    /// <summary>The order in which files are taken in: what a practice writes goes before what ships.</summary>
    internal static IEnumerable<ShelfFile> ShippedFirst(IEnumerable<ShelfFile> files) => files.Where(file => file.Shipped).Concat(files.Where(file => !file.Shipped));

    private static Shelf FromResources(Assembly assembly)
    {
        var files = new List<ShelfFile>();
        foreach (var resource in assembly.GetManifestResourceNames())
        {
            var name = resource.Replace('\\', '/');
            if (name.EndsWith(".yaml", StringComparison.Ordinal))
            {
                files.Add(new(name, true, () => Read(Text(assembly, resource), name), () => Text(assembly, resource)));
            }
        }

        return new(files);
    }

    private static bool IsYaml(string path) => Path.GetExtension(path) is ".yaml" or ".yml";

    private static ReadText Own(string path)
    {
        var read = NodeReader.File(path, ReadingLimits.Usual);
        return read with { Faults = [.. read.Faults.Select(fault => fault.Code == "empty" ? Messages.EmptyOfPractice(fault) : fault)] };
    }

    // shipped files are as long as they need to be
    private static ReadText Read(string text, string name) => NodeReader.Text(text, name, new(long.MaxValue, 32, int.MaxValue));

    private static string Text(Assembly assembly, string resource)
    {
        using var stream = assembly.GetManifestResourceStream(resource)!;
        using var reader = new StreamReader(stream, Encoding.UTF8);
        return reader.ReadToEnd();
    }
}

/// <summary>A data file, not yet read.</summary>
/// <param name="Name">Such as <c>presets/materials/masonry.yaml</c>, whatever folder it comes from.</param>
/// <param name="Shipped">It came with the product, and its tests have read it whole.</param>
/// <param name="Read">Reads it to a tree.</param>
/// <param name="Text">Its text; null unless it ships.</param>
public sealed record ShelfFile(string Name, bool Shipped, Func<ReadText> Read, Func<string?> Text);
