using System.Collections.Immutable;
using DetailGen.Dxf.Entities;

namespace DetailGen.Dxf.Reading;

/// <summary>Makes of a record the entity that this project would have written so. What it would never write so stays a record.</summary>
internal static class EntityReader
{
    private const int ByLayer = 256;
    private const double Hair = 1e-6;

    /// <summary>Null where the kind is none of ours, or says more than ours does.</summary>
    /// <exception cref="UnreadableException">A value of the record is not of its kind.</exception>
    public static Entity? Read(RecordReader record, ImmutableArray<PlacedAttribute> fields)
    {
        var layer = record.Text(8, "0");
        Entity? entity = record.Kind switch
        {
            "LINE" => new Line(record.Point(10), record.Point(11)) { Layer = layer },
            "CIRCLE" => new Circle(record.Point(10), record.Number(40)) { Layer = layer },
            "ARC" => new Arc(record.Point(10), record.Number(40), record.Number(50), record.Number(51)) { Layer = layer },
            "ELLIPSE" when record.Number(41) == 0 && Math.Abs(record.Number(42, 2 * Math.PI) - (2 * Math.PI)) < Hair =>
                new Ellipse(record.Point(10), record.Point(11), record.Number(40, 1)) { Layer = layer },
            "LWPOLYLINE" => Polyline(record, layer),
            "SOLID" when record.Point(12).DistanceTo(record.Point(13)) < Hair => new Solid(record.Point(10), record.Point(11), record.Point(12)) { Layer = layer },
            "TEXT" => Text(record, layer),
            "MTEXT" => Mtext(record, layer),
            "HATCH" => HatchReader.Read(record, layer),
            "DIMENSION" => Dimension(record, layer),
            "INSERT" => new Insert(record.Text(2), record.Point(10), [.. fields.Select(field => new AttributeValue(field.Tag, field.Value))]) { Layer = layer, Fields = fields },
            "VIEWPORT" => new Window(record.Point(10), record.Number(40), record.Number(41), record.Point(12), record.Number(45)) { Layer = layer },
            _ => null,
        };
        return entity is null ? null : WithProperties(entity, record);
    }

    public static PlacedAttribute Field(RecordReader record) =>
        new(record.Text(2), LetterCodes.Text(record.Text(1)), record.Point(10), record.Number(40), record.Text(8, "0"));

    // Most have the properties of their layer: then no second entity is made.
    private static Entity WithProperties(Entity entity, RecordReader record)
    {
        var (linetype, index, trueColor, weight) = (record.TextOrNull(6), record.Integer(62, ByLayer), record.Integer(420, -1), record.Integer(370, -1));
        var isByLayer = linetype is null || linetype.Equals("ByLayer", StringComparison.OrdinalIgnoreCase);
        return isByLayer && index == ByLayer && trueColor < 0 && weight == -1 && !record.Has(48)
            ? entity
            : entity with
            {
                Linetype = isByLayer ? null : linetype,
                Color = index == ByLayer && trueColor < 0 ? null : new DxfColor(index, trueColor < 0 ? null : trueColor),
                Weight = weight == -1 ? null : weight,
                LinetypeScale = record.Has(48) ? record.Number(48) : null,
            };
    }

    private static Polyline Polyline(RecordReader record, string layer)
    {
        var vertices = ImmutableArray.CreateBuilder<Vertex>();
        for (var tag = record.First; tag < record.End; tag++)
        {
            AddTo(vertices, record, tag);
        }

        return new(vertices.ToImmutable()) { Layer = layer, IsClosed = (record.Integer(70) & 1) != 0, Width = record.Number(43) };
    }

    /// <summary>Takes a tag of a path: a new vertex, or what belongs to the last.</summary>
    internal static void AddTo(ImmutableArray<Vertex>.Builder vertices, RecordReader record, int tag)
    {
        switch (record.Code(tag))
        {
            case 10:
                vertices.Add(new(record.NumberAt(tag), 0));
                break;
            case 20 when vertices.Count > 0:
                vertices[^1] = vertices[^1] with { Y = record.NumberAt(tag) };
                break;
            case 42 when vertices.Count > 0:
                vertices[^1] = vertices[^1] with { Bulge = record.NumberAt(tag) };
                break;
            default:
                break;
        }
    }

    private static Text? Text(RecordReader record, string layer)
    {
        var (across, upright) = (record.Integer(72), record.Integer(73));
        if (across is < 0 or > 2 || upright is not (0 or 2 or 3))
        {
            return null; // fitted between two points, or hung on the descenders
        }

        var isAligned = across != 0 || upright != 0;
        var (left, anchor) = (record.Point(10), isAligned ? record.Point(11) : record.Point(10));
        return new(LetterCodes.Text(record.Text(1)), anchor, record.Number(40), WidthOf(left, anchor, across))
        {
            Layer = layer,
            Across = (Across)across,
            Upright = (Upright)upright,
            Rotation = record.Number(50),
        };
    }

    // Only a text that is not aligned left tells its width, by where its left end lies.
    private static double WidthOf(DxfPoint left, DxfPoint anchor, int across) => across == 0 ? 0 : 2.0 / across * left.DistanceTo(anchor);

    private static Mtext? Mtext(RecordReader record, string layer)
    {
        var letters = new System.Text.StringBuilder();
        for (var tag = record.First; tag < record.End; tag++)
        {
            if (record.Code(tag) is 3 or 1)
            {
                letters.Append(record.TextAt(tag));
            }
        }

        var attachment = record.Integer(71, 1);
        return attachment is < 1 or > 9
            ? null
            : new(LetterCodes.Lines(letters.ToString()), record.Point(10), record.Number(40), record.Number(41) / 1.5)
            {
                Layer = layer,
                Attachment = (Attachment)attachment,
                Rotation = record.Number(50),
                LineSpacing = record.Number(44, 1),
            };
    }

    private static Dimension? Dimension(RecordReader record, string layer)
    {
        var measuring = record.Integer(70) & 7;
        if (measuring > 1)
        {
            return null; // of an angle, a radius and the like
        }

        var text = record.TextOrNull(1);
        var picture = new DimensionPicture([], default, [], new("", record.Point(11), 0, 0, 0));
        return new(record.Point(13), record.Point(14), record.Point(10), record.Text(3, "Standard"), picture)
        {
            Layer = layer,
            Measuring = (Measuring)measuring,
            Angle = record.Number(50),
            Override = text is null or "" ? null : LetterCodes.Text(text),
            PictureBlock = record.Text(2),
        };
    }
}
