using DetailGen.Details.Reading;
using DetailGen.Library.Reports;

namespace DetailGen.Library.Working;

/// <summary>Why a file cannot be read, in the words that a preset's reader has for it.</summary>
internal static class UnreadableFile
{
    internal static ErrorReport Of(string path)
    {
        Mark start = new(path, 1, 1);
        return SolvedReport.Errors([Directory.Exists(path) ? Details.Messages.IsFolder(start) : File.Exists(path) ? Details.Messages.Unreadable(start) : Details.Messages.NoSuchFile(start)])[0];
    }
}
