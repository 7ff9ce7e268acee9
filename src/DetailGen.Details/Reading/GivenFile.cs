using System.Collections.Concurrent;

namespace DetailGen.Details.Reading;

/// <summary>
/// Reads a file that somebody named. A pipe without a writer, or a device, could keep the reader waiting for ever; nothing but a file's content and what is handed over to
/// the program (standard input, a shell's substitution) is opened therefore. Links are followed.
/// </summary>
public static class GivenFile
{
    private static readonly string[] HandedOver = ["/dev/stdin", "/dev/fd/", "/proc/self/fd/"];

    /// <summary>What is handed over comes once, and a verb may ask for it again.</summary>
    private static readonly ConcurrentDictionary<string, byte[]> Taken = new(StringComparer.Ordinal);

    /// <param name="most">Of bytes; of a longer file one more is given, by which the caller sees that it is too long.</param>
    public static Outcome<byte[]> Read(string path, long most) => Read(path, path, most);

    /// <param name="name">What marks call the file.</param>
    public static Outcome<byte[]> Read(string path, string name, long most)
    {
        var start = new Mark(name, 1, 1);
        try
        {
            if (Directory.Exists(path))
            {
                return Outcome.Bad<byte[]>(Messages.IsFolder(start));
            }

            if (Array.Exists(HandedOver, place => path.StartsWith(place, StringComparison.Ordinal)))
            {
                return Outcome.Good(Taken.GetOrAdd(path, _ => Bytes(path, most)));
            }

            // of a link both length and being there are those of the link itself
            var file = new FileInfo(path);
            file = file.ResolveLinkTarget(returnFinalTarget: true) as FileInfo ?? file;
            return !file.Exists ? Outcome.Bad<byte[]>(Messages.NoSuchFile(start))
                : file.Length == 0 ? Outcome.Bad<byte[]>(Messages.EmptyOrPipe(start)) // that is all that is known of it unopened
                : Outcome.Good(Bytes(path, most));
        }
        catch (ArgumentException)
        {
            return Outcome.Bad<byte[]>(Messages.NoSuchFile(start)); // no file can have such a name
        }
        catch (Exception fault) when (fault is FileNotFoundException or DirectoryNotFoundException)
        {
            return Outcome.Bad<byte[]>(Messages.NoSuchFile(start));
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException or NotSupportedException)
        {
            return Outcome.Bad<byte[]>(Messages.Unreadable(start));
        }
    }

    // a file may grow meanwhile, and what is handed over tells no length, so the reading itself stops at the limit
    private static byte[] Bytes(string path, long most)
    {
        using var input = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.Read);
        using var bytes = new MemoryStream();
        var piece = new byte[1 << 16];
        while (bytes.Length <= most && input.Read(piece, 0, (int)Math.Min(piece.Length, most + 1 - bytes.Length)) is > 0 and var count)
        {
            bytes.Write(piece, 0, count);
        }

        return bytes.ToArray();
    }
}
