using DetailGen.Dxf.Tags;

namespace DetailGen.Dxf.Writing;

/// <summary>Objects that never change and that nothing drawn uses; a file without them has been refused.</summary>
internal static class FixedObjects
{
    public static void WritePlotStyles(TagWriter writer, int handle, int owner, int style)
    {
        writer.Begin("ACDBDICTIONARYWDFLT", handle, owner);
        writer.Marker("AcDbDictionary");
        writer.Integer(281, 1);
        writer.Text(3, "Normal");
        writer.Handle(350, style);
        writer.Marker("AcDbDictionaryWithDefault");
        writer.Handle(340, style);
        writer.Begin("ACDBPLACEHOLDER", style, handle);
    }

    /// <summary>A material with all defaults.</summary>
    public static void WriteMaterial(TagWriter writer, string name, int handle, int owner)
    {
        writer.Begin("MATERIAL", handle, owner);
        writer.Marker("AcDbMaterial");
        writer.Text(1, name);
        foreach (var (code, value) in Material)
        {
            if (GroupCodes.IsNumber(code))
            {
                writer.Number(code, value);
            }
            else if (GroupCodes.IsString(code))
            {
                writer.Text(code, "");
            }
            else
            {
                writer.Integer(code, (int)value);
            }
        }
    }

    public static void WriteLineStyle(TagWriter writer, int handle, int owner)
    {
        writer.Begin("MLINESTYLE", handle, owner);
        writer.Marker("AcDbMlineStyle");
        writer.Text(2, "Standard");
        writer.Integer(70, 0);
        writer.Text(3, "");
        writer.Integer(62, 256);
        writer.Number(51, 90);
        writer.Number(52, 90);
        writer.Integer(71, 2);
        foreach (var offset in (ReadOnlySpan<double>)[0.5, -0.5])
        {
            writer.Number(49, offset);
            writer.Integer(62, 256);
            writer.Text(6, "BYLAYER");
        }
    }

    private static readonly (int Code, double Value)[] Material =
    [
        (2, 0), (70, 0), (40, 1), (71, 1), (41, 1), (91, -1023410177), (42, 1), (72, 1), (3, 0), (73, 1), (74, 1), (75, 1), (44, 0.5), (73, 0),
        (45, 1), (46, 1), (77, 1), (4, 0), (78, 1), (79, 1), (170, 1), (48, 1), (171, 1), (6, 0), (172, 1), (173, 1), (174, 1),
        (140, 1), (141, 1), (175, 1), (7, 0), (176, 1), (177, 1), (178, 1), (143, 1), (179, 1), (8, 0), (270, 1), (271, 1), (272, 1),
        (145, 1), (146, 1), (273, 1), (9, 0), (274, 1), (275, 1), (276, 1), (42, 1), (72, 1), (3, 0), (73, 1), (74, 1), (75, 1), (94, 63),
    ];
}
