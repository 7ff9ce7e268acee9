using DetailGen.Dxf.Tags;

namespace DetailGen.Dxf.Writing;

/// <summary>Layouts: model space, then the sheets. Margins are 0, so the paper's corner is the origin; no device, no plot style table.</summary>
internal static class LayoutWriter
{
    private const int StandardScale = 16;
    private const int LineWeights = 128;
    private const int ViewportsFirst = 512;
    private const int ModelKind = 1024;

    public static string NameOf(PlannedSpace space) => space.Sheet?.Name ?? "Model";

    public static void Write(TagWriter writer, WritePlan plan, PlannedSpace space, int order, int owner)
    {
        var sheet = space.Sheet ?? plan.Sheets[0];
        writer.Begin("LAYOUT", space.Layout, owner);
        WritePlotSettings(writer, sheet, isModel: space.Sheet is null);
        writer.Marker("AcDbLayout");
        writer.Text(1, NameOf(space));
        writer.Integer(70, 0);
        writer.Integer(71, order);
        writer.FlatPoint(10, default);
        writer.FlatPoint(11, new(sheet.Width, sheet.Height));
        writer.Point(12, default);
        var (least, most) = space.Sheet is null
            ? (new DxfPoint(plan.Extents.Left, plan.Extents.Bottom), new DxfPoint(plan.Extents.Right, plan.Extents.Top))
            : (default, new DxfPoint(sheet.Width, sheet.Height));
        writer.Point(14, least);
        writer.Point(15, most);
        writer.Number(146, 0);
        writer.Point(13, default);
        writer.Point(16, new(1, 0));
        writer.Point(17, new(0, 1));
        writer.Integer(76, 0);
        writer.Handle(330, space.Record);
        if (space.Sheet is not null)
        {
            writer.Handle(331, space.Viewports[0]);
        }
    }

    private static void WritePlotSettings(TagWriter writer, Document.Sheet sheet, bool isModel)
    {
        writer.Marker("AcDbPlotSettings");
        writer.Text(1, "");
        writer.Text(2, "");
        writer.Text(4, sheet.Paper);
        writer.Text(6, "");
        foreach (var (code, value) in (ReadOnlySpan<(int, double)>)
        [
            (40, 0), (41, 0), (42, 0), (43, 0), (44, sheet.Width), (45, sheet.Height), (46, 0), (47, 0), (48, 0), (49, 0),
            (140, 0), (141, 0), (142, 1), (143, 1),
        ])
        {
            writer.Number(code, value);
        }

        writer.Integer(70, StandardScale + LineWeights + (isModel ? ModelKind : ViewportsFirst));
        writer.Integer(72, 1); // mm
        writer.Integer(73, 0); // not turned: width and height are as seen
        writer.Integer(74, 5); // the layout
        writer.Text(7, "");
        writer.Integer(75, 16); // 1:1
        writer.Number(147, 1);
        writer.Integer(76, 0);
        writer.Integer(77, 2);
        writer.Integer(78, 300);
        writer.Number(148, 0);
        writer.Number(149, 0);
    }
}
