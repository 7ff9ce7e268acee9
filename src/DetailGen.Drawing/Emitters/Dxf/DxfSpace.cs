using System.Collections.Immutable;
using DetailGen.Drawing.Lettering;
using DetailGen.Drawing.Scenes;
using DetailGen.Dxf.Document;
using DetailGen.Dxf.Entities;

namespace DetailGen.Drawing.Emitters.Dxf;

/// <summary>What a drawing gathers while its items are turned into entities.</summary>
internal sealed record DxfTables(Typeface Typeface, DxfLayers Layers, DxfFills Fills, DxfDimensions Dimensions, DxfNames Groups, DxfNames BlockNames, List<Block> Blocks, bool HasParts);

/// <summary>Turns items into entities of one space: a view in model space, or a sheet.</summary>
/// <param name="dashScale">Factor on dashes where the view's scale is not that of the drawing; null for the usual.</param>
internal sealed class DxfSpace(DxfTables tables, DxfPlace place, double? dashScale, ImmutableArray<Entity>.Builder into)
{
    private string? _group;

    public void Add(IReadOnlyList<Item> items)
    {
        foreach (var item in items)
        {
            Add(item);
        }
    }

    private void Add(Item item)
    {
        switch (item)
        {
            case Scenes.Group group:
                AddGroup(group);
                break;
            case Form form:
                into.Add(Insert(form));
                break;
            case Scenes.Hatch { Families.Count: 0 } or Stroke { Points.Count: < 2 }:
                break;
            case Grains grains:
                foreach (var centre in grains.Centres)
                {
                    into.Add(Owned(DxfShapes.Ring(tables.Layers.Use(grains.Row), centre, grains.Diameter, place), grains));
                }

                break;
            default:
                into.Add(Owned(Entity(item), item));
                break;
        }
    }

    // Groups of a group belong to the outermost: what is picked together in the drawing is the whole note.
    private void AddGroup(Scenes.Group group)
    {
        var outermost = _group is null;
        _group ??= tables.Groups.Unique(group.Name);
        Add(group.Items);
        if (outermost)
        {
            _group = null;
        }
    }

    private Entity Entity(Item item)
    {
        var layer = tables.Layers.Use(item.Row);
        return item switch
        {
            Stroke stroke => DxfShapes.Line(layer, stroke.Points, stroke.Closed, place),
            Ring ring => DxfShapes.Ring(layer, ring.Centre, ring.Diameter, place),
            Scenes.Solid solid => DxfShapes.Area(layer, solid.Outline, solid.Holes, place),
            Dot dot => DxfShapes.Dot(layer, dot.Centre, dot.Diameter, place),
            Scenes.Hatch hatch => DxfShapes.Fill(layer, hatch, tables.Fills.Pattern(hatch, place), place),
            Scenes.Text text => DxfLetters.Line(tables.Typeface, layer, text, place),
            Paragraph paragraph => DxfLetters.Lines(tables.Typeface, layer, paragraph, place),
            Scenes.Dimension dimension => tables.Dimensions.Of(layer, dimension, place, Entity),
            _ => throw new NotSupportedException($"No entity shows a {item.GetType().Name} here."),
        };
    }

    private Entity Owned(Entity entity, Item item) => entity with
    {
        Group = _group,
        LinetypeScale = dashScale,
        Part = tables.HasParts && item.PartId is { } part ? new PartTag(part) : null,
    };

    // Lines and labels keep the layers of their rows inside the block, so that their widths hold; the insert's layer colours nothing.
    private Insert Insert(Form form)
    {
        var content = ImmutableArray.CreateBuilder<Entity>();
        new DxfSpace(tables, place, dashScale, content).Add(form.Items);
        var name = tables.BlockNames.Unique(form.Name);
        tables.Blocks.Add(new(name, content.ToImmutable())
        {
            Fields = [.. form.Values.Select(value => new AttributeDefinition(value.Tag, DxfLetters.LeftEnd(tables.Typeface, value.Text, place), value.Text.Height * place.Scale)
            {
                Layer = tables.Layers.Use(value.Text.Row),
            })],
        });
        return new(name, default, [.. form.Values.Select(value => new AttributeValue(value.Tag, DxfLetters.Plain(value.Text.Words)))])
        {
            Layer = tables.Layers.Use(form.Row),
            Group = _group,
        };
    }
}
