using DetailGen.Dxf.Document;
using DetailGen.Dxf.Tags;

namespace DetailGen.Dxf.Writing;

/// <summary>The windows of a sheet. The first stands for the sheet itself; it must be there and come first.</summary>
internal static class ViewportWriter
{
    private const double Overlap = 1.1; // the sheet's own window is a little larger than the paper
    private const int Usual = 32768;
    private const int Locked = 16384;

    public static void Write(TagWriter writer, PlannedSpace space, Handles handles, ContentDigest? digest)
    {
        var sheet = space.Sheet!;
        var middle = new DxfPoint(sheet.Width / 2, sheet.Height / 2);
        var whole = new Viewport("0", middle, Overlap * sheet.Width, Overlap * sheet.Height, middle, 1);
        WriteOne(writer, space, whole, 0, handles);
        for (var i = 0; i < sheet.Viewports.Length; i++)
        {
            WriteOne(writer, space, sheet.Viewports[i], i + 1, handles);
            if (digest is not null)
            {
                EntityWriter.Note(writer, null, digest.OfWindow(space, i));
            }
        }
    }

    private static void WriteOne(TagWriter writer, PlannedSpace space, Viewport viewport, int index, Handles handles)
    {
        writer.Begin("VIEWPORT", space.Viewports[index], space.Record);
        writer.Marker("AcDbEntity");
        writer.Integer(67, 1);
        writer.Text(8, viewport.Layer);
        writer.Marker("AcDbViewport");
        writer.Point(10, viewport.Centre);
        writer.Number(40, viewport.Width);
        writer.Number(41, viewport.Height);
        writer.Integer(68, index + 1);
        writer.Integer(69, index + 1);
        writer.FlatPoint(12, viewport.Looks);
        writer.FlatPoint(13, default);
        writer.FlatPoint(14, new(10, 10));
        writer.FlatPoint(15, new(10, 10));
        writer.Point(16, default, z: 1);
        writer.Point(17, default);
        writer.Number(42, 50);
        writer.Number(43, 0);
        writer.Number(44, 0);
        writer.Number(45, DxfNumber.OnGrid(viewport.Height, Grid.Length) * viewport.Scale); // exactly height × scale, or the scale is not what it says
        writer.Number(50, 0);
        writer.Number(51, 0);
        writer.Integer(72, 1000);
        foreach (var layer in viewport.Frozen)
        {
            writer.Handle(331, handles.Row(TablesSection.LayerTable, layer));
        }

        writer.Integer(90, index == 0 ? Usual : Usual + Locked);
        writer.Text(1, "");
        writer.Integer(281, 0);
        writer.Integer(71, 1);
        writer.Integer(74, 0);
        writer.Point(110, default);
        writer.Point(111, new(1, 0));
        writer.Point(112, new(0, 1));
        writer.Integer(79, 0);
        writer.Number(146, 0);
        writer.Integer(170, 0);
    }
}
