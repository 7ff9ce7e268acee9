using System.Collections.Immutable;
using DetailGen.Dxf.Tags;

namespace DetailGen.Dxf.Entities;

/// <summary>A block in its place, at full size and not turned.</summary>
/// <param name="Block">A block of the document.</param>
/// <param name="Values">In any order; fields of the block that are not named stay empty.</param>
public sealed record Insert(string Block, DxfPoint Position, ImmutableArray<AttributeValue> Values) : Entity
{
    /// <summary>The block's fields with their values, in the block's order and in place; settled by the writer.</summary>
    internal ImmutableArray<PlacedAttribute> Fields { get; init; } = [];

    /// <summary>What the block covers, in its own axes; settled by the writer.</summary>
    internal Bounds? Content { get; init; }

    /// <summary>From the block's axes to those of the drawing; settled by the writer.</summary>
    internal DxfPoint Shift { get; init; }

    internal static readonly AttributeTable<Insert> Table = new("INSERT")
    {
        "AcDbBlockReference",
        { 66, _ => 1, Role.Derived, insert => !insert.Fields.IsEmpty },
        { 2, insert => insert.Block },
        { 10, insert => insert.Position },
        (insert, sink) =>
        {
            if (sink.ValuesOnly)
            {
                foreach (var field in insert.Fields)
                {
                    sink.Text(2, field.Tag);
                    sink.Text(1, DxfString.ForText(field.Value));
                }
            }
        },
    };

    internal override string Kind => Table.Kind;

    internal override Entity? Cleaned() => this;

    internal override void Walk(ITagSink sink) => Table.Walk(this, sink);

    internal override void Extend(Bounds bounds)
    {
        if (Content is not null)
        {
            bounds.Add(Content, Shift);
        }
    }
}

/// <summary>A field's value in drawing axes.</summary>
internal sealed record PlacedAttribute(string Tag, string Value, DxfPoint Position, double Height, string Layer)
{
    internal static readonly AttributeTable<PlacedAttribute> Table = new("ATTRIB")
    {
        "AcDbText",
        { 10, field => field.Position },
        { 40, field => field.Height },
        { 1, field => DxfString.ForText(field.Value) },
        { 7, _ => Tables.TextStyle.Name },
        "AcDbAttribute",
        { 280, 0 },
        { 2, field => field.Tag },
        { 70, 0 },
    };
}
