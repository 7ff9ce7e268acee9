using DetailGen.Dxf.Document;
using DetailGen.Dxf.Tables;
using DetailGen.Dxf.Tags;

namespace DetailGen.Dxf.Writing;

/// <summary>All nine tables, in the order that the format wants, those that stay empty too.</summary>
internal static class TablesSection
{
    public const string BlockRecord = "BLOCK_RECORD";
    public const string LayerTable = "LAYER";

    private const double ViewAspect = 1.4;
    private const double ViewMargin = 1.1;

    /// <summary>The names of the rows of each table, in the order of writing.</summary>
    public static IEnumerable<(string Table, IEnumerable<string> Names)> Rows(WritePlan plan) =>
    [
        ("VPORT", ["*Active"]),
        ("LTYPE", Linetypes(plan).Select(linetype => linetype.Name)),
        (LayerTable, plan.Layers.Select(layer => layer.Name)),
        ("STYLE", [TextStyle.Name]),
        ("VIEW", []),
        ("UCS", []),
        ("APPID", ["ACAD", Provenance.Application]),
        ("DIMSTYLE", DimensionStyles(plan).Select(style => style.Name)),
        (BlockRecord, plan.Spaces.Select(space => space.Name)),
    ];

    public static void Write(TagWriter writer, WritePlan plan, Handles handles)
    {
        writer.Text(0, "SECTION");
        writer.Text(2, "TABLES");
        var table = new TableWriter(writer, handles);

        table.Begin("VPORT", 1);
        table.Row("*Active", "AcDbViewportTableRecord");
        WriteView(writer, plan.Extents);
        table.End();

        var linetypes = Linetypes(plan);
        table.Begin("LTYPE", linetypes.Count);
        foreach (var linetype in linetypes)
        {
            table.Row(linetype.Name, "AcDbLinetypeTableRecord");
            WriteDashes(writer, linetype);
        }

        table.End();
        table.Begin(LayerTable, plan.Layers.Count);
        foreach (var layer in plan.Layers)
        {
            table.Row(layer.Name, "AcDbLayerTableRecord");
            WriteLayer(writer, layer, handles);
        }

        table.End();
        table.Begin("STYLE", 1);
        table.Row(TextStyle.Name, "AcDbTextStyleTableRecord");
        WriteLetters(writer, plan.Document.TextStyle);
        table.End();
        table.Empty("VIEW");
        table.Empty("UCS");

        table.Begin("APPID", 2);
        table.Row("ACAD", "AcDbRegAppTableRecord");
        writer.Integer(70, 0);
        table.Row(Provenance.Application, "AcDbRegAppTableRecord");
        writer.Integer(70, 0);
        table.End();

        var styles = DimensionStyles(plan);
        table.Begin("DIMSTYLE", styles.Count);
        writer.Marker("AcDbDimStyleTable"); // in the head only, and without its counts
        foreach (var style in styles)
        {
            table.Row(style.Name, "AcDbDimStyleTableRecord");
            DimensionStyleRow.Write(writer, style, handles.Row("STYLE", TextStyle.Name));
        }

        table.End();
        table.Begin(BlockRecord, plan.Spaces.Count);
        foreach (var space in plan.Spaces)
        {
            table.Row(space.Name, "AcDbBlockTableRecord");
            writer.Handle(340, space.Layout);
            writer.Integer(70, 0);
            writer.Integer(280, 1);
            writer.Integer(281, 0);
        }

        table.End();
        writer.Text(0, "ENDSEC");
    }

    private static List<Linetype> Linetypes(WritePlan plan) =>
    [
        new("ByBlock", "", []),
        new("ByLayer", "", []),
        new(Linetype.Continuous, "", []),
        .. plan.Document.Linetypes.OrderBy(linetype => linetype.Name, StringComparer.Ordinal),
    ];

    private static List<DimensionStyle> DimensionStyles(WritePlan plan)
    {
        List<DimensionStyle> styles = [.. plan.Document.DimensionStyles];
        if (!styles.Exists(style => style.Name == DimensionStyle.Standard))
        {
            styles.Add(new DimensionStyle(DimensionStyle.Standard, 1));
        }

        styles.Sort((a, b) => string.CompareOrdinal(a.Name, b.Name));
        return styles;
    }

    private static void WriteView(TagWriter writer, Bounds extents)
    {
        var (width, height) = (extents.Right - extents.Left, extents.Top - extents.Bottom);
        writer.Integer(70, 0);
        writer.FlatPoint(10, default);
        writer.FlatPoint(11, new(1, 1));
        writer.FlatPoint(12, new((extents.Left + extents.Right) / 2, (extents.Bottom + extents.Top) / 2));
        writer.FlatPoint(13, default);
        writer.FlatPoint(14, new(10, 10));
        writer.FlatPoint(15, new(10, 10));
        writer.Point(16, default, z: 1);
        writer.Point(17, default);
        writer.Number(40, Math.Max(1, ViewMargin * Math.Max(height, width / ViewAspect)));
        writer.Number(41, ViewAspect);
        writer.Number(42, 50);
        foreach (var code in (ReadOnlySpan<int>)[43, 44, 50, 51])
        {
            writer.Number(code, 0);
        }

        foreach (var (code, value) in (ReadOnlySpan<(int, int)>)[(71, 0), (72, 1000), (73, 1), (74, 3), (75, 0), (76, 0), (77, 0), (78, 0)])
        {
            writer.Integer(code, value);
        }
    }

    private static void WriteDashes(TagWriter writer, Linetype linetype)
    {
        writer.Integer(70, 0);
        writer.Text(3, linetype.Description);
        writer.Integer(72, 65);
        writer.Integer(73, linetype.Dashes.Length);
        writer.Number(40, linetype.Dashes.Sum(dash => Math.Abs(DxfNumber.OnGrid(dash, Grid.Length)))); // of what is written, not of what was meant
        foreach (var dash in linetype.Dashes)
        {
            writer.Number(49, dash);
            writer.Integer(74, 0);
        }
    }

    private static void WriteLayer(TagWriter writer, Layer layer, Handles handles)
    {
        writer.Integer(70, 0);
        writer.Integer(62, layer.Color.Index);
        if (layer.Color.TrueColor is { } color)
        {
            writer.Integer(420, color);
        }

        writer.Text(6, layer.Linetype);
        if (!layer.IsPlotted)
        {
            writer.Integer(290, 0);
        }

        writer.Integer(370, layer.Weight);
        writer.Handle(390, handles.Object(ObjectsSection.PlotStyle)); // strict readers drop the file without it
        writer.Handle(347, handles.Object(ObjectsSection.GlobalMaterial));
    }

    private static void WriteLetters(TagWriter writer, TextStyle style)
    {
        writer.Integer(70, 0);
        writer.Number(40, 0);
        writer.Number(41, 1);
        writer.Number(50, 0);
        writer.Integer(71, 0);
        writer.Number(42, 2.5);
        writer.Text(3, style.FontFile);
        writer.Text(4, "");
        writer.Text(1001, "ACAD");
        writer.Text(1000, style.Family);
        writer.Integer(1071, 34);
    }
}
