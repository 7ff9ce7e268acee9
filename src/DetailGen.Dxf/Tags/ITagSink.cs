namespace DetailGen.Dxf.Tags;

/// <summary>Takes the values of an entity one by one: the file, or the digest of what is drawn.</summary>
internal interface ITagSink
{
    /// <summary>True for the digest: it wants values only, and defaults too; the file wants markers and constants, and leaves defaults out.</summary>
    bool ValuesOnly { get; }

    void Marker(string name);

    void Number(int code, double value, Grid grid);

    /// <summary>A place in the drawing: what moves when the entity is moved.</summary>
    void Place(int xCode, int yCode, DxfPoint place);

    void Integer(int code, int value);

    void Text(int code, string value);
}

/// <summary>Points as tags.</summary>
internal static class TagSinkPoints
{
    /// <summary>A point of a list in the plane: x and y only.</summary>
    public static void FlatPoint(this ITagSink sink, int code, DxfPoint point) => sink.Place(code, code + 10, point);

    /// <summary>A point in space, with z = 0.</summary>
    public static void Point(this ITagSink sink, int code, DxfPoint point, double z = 0)
    {
        sink.FlatPoint(code, point);
        if (!sink.ValuesOnly)
        {
            sink.Number(code + 20, z, Grid.Length);
        }
    }
}
