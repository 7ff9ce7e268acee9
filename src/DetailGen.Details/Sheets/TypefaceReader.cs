using DetailGen.Details.Reading;
using DetailGen.Details.Reading.Shapes;

namespace DetailGen.Details.Sheets;

/// <summary>Reads a practice's <c>sheets/typeface.yaml</c> and the font files that it names; what is in them is for the drawing to say.</summary>
internal static class TypefaceReader
{
    /// <summary>Fonts with the letters of East Asia are a few times as large as this, and no sheet needs them.</summary>
    internal const long MostBytes = 8 << 20;

    /// <returns>Null where there is no such file, or a fault.</returns>
    internal static TypefaceRow? Read(ShelfFile? file, List<Diagnostic> faults)
    {
        if (file is null)
        {
            return null;
        }

        var read = file.Read();
        List<Diagnostic> found = [.. read.Faults, .. read.Root is { } root ? ShapeCheck.Check(root, SheetShape.Typeface) : []];
        if (found.Count > 0)
        {
            faults.AddRange(found);
            return null;
        }

        var map = (MapNode)read.Root!;
        var (regular, bold) = (Font(map, "regular", faults), Font(map, "bold", faults));
        var style = map["dxf"] as MapNode;
        return regular is null || bold is null ? null : new(regular, bold, style?.Must("file"), style?.Must("family"));
    }

    private static TypefaceFile? Font(MapNode map, string key, List<Diagnostic> faults)
    {
        var (path, at) = (map.Must(key), map[key]!.At);
        var practice = Path.GetDirectoryName(Path.GetDirectoryName(at.File)) ?? "";
        var bytes = GivenFile.Read(Path.Combine(practice, path), MostBytes);
        Diagnostic? fault = !bytes.IsGood ? Messages.FontUnread(at, key, path, bytes.Faults[0].Reason)
            : bytes.Value.Length > MostBytes ? Messages.FontTooLong(at, key, path, MostBytes)
            : null;
        if (fault is not null)
        {
            faults.Add(fault);
            return null;
        }

        return new(key, path, bytes.Value, at);
    }
}
