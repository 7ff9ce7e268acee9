namespace DetailGen.Drawing.Scenes;

/// <summary>Items in another place.</summary>
public static class Moving
{
    public static Item By(Item item, PaperPoint by) => item switch
    {
        Stroke stroke => stroke with { Points = Points(stroke.Points, by) },
        Ring ring => ring with { Centre = ring.Centre + by },
        Solid solid => solid with { Outline = Points(solid.Outline, by), Holes = Holes(solid.Holes, by) },
        Dot dot => dot with { Centre = dot.Centre + by },
        Grains grains => grains with { Centres = Points(grains.Centres, by) },
        Hatch hatch => hatch with
        {
            Outline = Points(hatch.Outline, by),
            Holes = Holes(hatch.Holes, by),
            Families = [.. hatch.Families.Select(family => family with { Base = family.Base + by })],
        },
        Text text => text with { At = text.At + by },
        Paragraph paragraph => paragraph with { At = paragraph.At + by },
        Dimension dimension => dimension with
        {
            From = dimension.From + by,
            To = dimension.To + by,
            Line = dimension.Line + (dimension.Vertical ? by.X : by.Y),
            FigureAt = dimension.FigureAt + by,
        },
        Group group => group with { Items = [.. group.Items.Select(inner => By(inner, by))] },
        Form form => form with
        {
            Items = [.. form.Items.Select(inner => By(inner, by))],
            Values = [.. form.Values.Select(value => value with { Text = (Text)By(value.Text, by) })],
        },
        _ => throw new ArgumentException($"An item of kind {item.GetType().Name} cannot be moved.", nameof(item)),
    };

    private static PaperPoint[] Points(IReadOnlyList<PaperPoint> points, PaperPoint by)
    {
        var moved = new PaperPoint[points.Count];
        for (var i = 0; i < moved.Length; i++)
        {
            moved[i] = points[i] + by;
        }

        return moved;
    }

    private static IReadOnlyList<IReadOnlyList<PaperPoint>> Holes(IReadOnlyList<IReadOnlyList<PaperPoint>> holes, PaperPoint by) => [.. holes.Select(hole => Points(hole, by))];
}
