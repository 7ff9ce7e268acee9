using DetailGen.Dxf.Tags;

namespace DetailGen.Dxf.Writing;

/// <summary>The classes of records that the format does not count among its first ones. No group more: strict readers stop there.</summary>
internal static class ClassesSection
{
    private static readonly (string Record, string Class, int Flags)[] Classes =
    [
        ("ACDBDICTIONARYWDFLT", "AcDbDictionaryWithDefault", 0),
        ("MATERIAL", "AcDbMaterial", 1153),
        ("ACDBPLACEHOLDER", "AcDbPlaceHolder", 0),
        ("LAYOUT", "AcDbLayout", 0),
        ("SORTENTSTABLE", "AcDbSortentsTable", 0),
    ];

    public static void Write(TagWriter writer)
    {
        writer.Text(0, "SECTION");
        writer.Text(2, "CLASSES");
        foreach (var (record, name, flags) in Classes)
        {
            writer.Text(0, "CLASS");
            writer.Text(1, record);
            writer.Text(2, name);
            writer.Text(3, "ObjectDBX Classes");
            writer.Integer(90, flags);
            writer.Integer(91, 0);
            writer.Integer(280, 0);
            writer.Integer(281, 0);
        }

        writer.Text(0, "ENDSEC");
    }
}
