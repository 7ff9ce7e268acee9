using DetailGen.Dxf.Document;
using DetailGen.Dxf.Entities;
using DetailGen.Dxf.Tags;

namespace DetailGen.Dxf.Writing;

/// <summary>Writes the entities of a space: head, values, and the part they belong to.</summary>
internal sealed class EntityWriter(TagWriter writer, Handles handles, ContentDigest? digest)
{
    public void WriteContent(PlannedSpace space)
    {
        if (space.Block is { } block)
        {
            for (var i = 0; i < block.Fields.Length; i++)
            {
                WriteField(space, block.Fields[i], space.Fields[i]);
            }
        }

        if (space.Sheet is not null)
        {
            ViewportWriter.Write(writer, space, handles, digest);
        }

        for (var i = 0; i < space.Entities.Count; i++)
        {
            try
            {
                Write(space, i);
            }
            catch (ArgumentException fault)
            {
                throw space.Entities[i].Told(fault);
            }
        }
    }

    private void Write(PlannedSpace space, int index)
    {
        var (entity, handle, isOnPaper) = (space.Entities[index], space.Handles[index], space.Sheet is not null);
        writer.Begin(entity.Kind, handle, space.Record);
        writer.Marker("AcDbEntity");
        if (isOnPaper)
        {
            writer.Integer(67, 1);
        }

        writer.Text(8, entity.Layer);
        WriteProperties(entity);
        entity.Walk(writer);
        if (digest is not null && !space.IsPicture)
        {
            Note(writer, entity.Part, digest.Of(space, index));
        }

        if (entity is Insert { Fields: { IsEmpty: false } fields } insert)
        {
            WriteValues(insert, fields, handle, isOnPaper);
        }
    }

    /// <summary>What this project notes of an entity.</summary>
    public static void Note(TagWriter writer, PartTag? part, Digest digest)
    {
        writer.Text(1001, Provenance.Application);
        if (part is { } named)
        {
            writer.Text(1000, "part=", named.Id);
        }

        Span<char> hex = stackalloc char[Digest.ShortLetters];
        digest.Short(hex);
        writer.Text(1000, "d=", hex);
    }

    // By-layer properties are written by leaving them out.
    private void WriteProperties(Entity entity)
    {
        if (entity.Linetype is { } linetype)
        {
            writer.Text(6, linetype);
        }

        if (entity.Color is { } color)
        {
            writer.Integer(62, color.Index);
            if (color.TrueColor is { } trueColor)
            {
                writer.Integer(420, trueColor);
            }
        }

        if (entity.LinetypeScale is { } scale and not 1)
        {
            writer.Number(48, scale, Grid.Ratio);
        }

        if (entity.Weight is { } weight)
        {
            writer.Integer(370, weight);
        }
    }

    private void WriteValues(Insert insert, IReadOnlyList<PlacedAttribute> fields, int handle, bool isOnPaper)
    {
        var next = handle;
        foreach (var field in fields)
        {
            Head("ATTRIB", ++next, field.Layer);
            PlacedAttribute.Table.Walk(field, writer);
        }

        Head("SEQEND", ++next, insert.Layer);

        void Head(string kind, int own, string layer)
        {
            writer.Begin(kind, own, handle);
            writer.Marker("AcDbEntity");
            if (isOnPaper)
            {
                writer.Integer(67, 1);
            }

            writer.Text(8, layer);
        }
    }

    private void WriteField(PlannedSpace space, AttributeDefinition field, int handle)
    {
        writer.Begin("ATTDEF", handle, space.Record);
        writer.Marker("AcDbEntity");
        writer.Text(8, field.Layer ?? "0");
        writer.Marker("AcDbText");
        writer.Point(10, field.Position);
        writer.Number(40, field.Height);
        writer.Text(1, "");
        writer.Text(7, Tables.TextStyle.Name);
        writer.Marker("AcDbAttributeDefinition");
        writer.Integer(280, 0);
        writer.Text(3, field.Prompt.Length > 0 ? field.Prompt : field.Tag);
        writer.Text(2, field.Tag);
        writer.Integer(70, 0);
    }
}
