using DetailGen.Dxf.Tags;

namespace DetailGen.Dxf.Writing;

/// <summary>Blocks: model space and the first sheet stand first and empty, then the other sheets, blocks and pictures of dimensions.</summary>
internal static class BlocksSection
{
    private const int IsAnonymous = 1;
    private const int HasFields = 2;

    public static void Write(TagWriter writer, WritePlan plan, EntityWriter entities)
    {
        writer.Text(0, "SECTION");
        writer.Text(2, "BLOCKS");
        foreach (var space in plan.Spaces)
        {
            writer.Begin("BLOCK", space.Begin, space.Record);
            writer.Marker("AcDbEntity");
            writer.Text(8, "0");
            writer.Marker("AcDbBlockBegin");
            writer.Text(2, space.Name);
            writer.Integer(70, space.IsPicture ? IsAnonymous : space.Block is { Fields.IsEmpty: false } ? HasFields : 0);
            writer.Point(10, space.Block?.Base ?? default);
            writer.Text(3, space.Name);
            writer.Text(1, "");
            if (!space.LiesInEntities)
            {
                entities.WriteContent(space);
            }

            writer.Begin("ENDBLK", space.End, space.Record);
            writer.Marker("AcDbEntity");
            writer.Text(8, "0");
            writer.Marker("AcDbBlockEnd");
        }

        writer.Text(0, "ENDSEC");
    }
}
