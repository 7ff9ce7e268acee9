using DetailGen.Drawing.Scenes;

namespace DetailGen.Drawing.Sheets;

/// <summary>
/// Insets as they are read: A is the higher ring of the view and, where the two stand over each other, the upper inset, and the letters at both rings have one height. What shows most finds its
/// place first, and only when all have theirs is known which is the higher.
/// </summary>
internal static class InsetLetters
{
    internal static InsetSheet InOrder(InsetSheet sheet)
    {
        if (sheet.Insets.Count < 2)
        {
            return sheet;
        }

        Inset[] order = [.. sheet.Insets.OrderByDescending(inset => Math.Round(inset.At.Y, 3))];
        var places = Places(order);
        var shifts = order.Select((inset, now) => (inset.ViewId, By: places[now] - inset.Corner)).ToDictionary(one => one.ViewId, one => one.By, StringComparer.Ordinal);
        var beside = order.SelectMany(inset => inset.Beside.Select(item => (item, inset))).ToDictionary(one => (object)one.item, one => one.inset, ReferenceEqualityComparer.Instance);
        var scene = sheet.Papers.Scene;
        var marks = scene.Views[0].Items.OfType<Group>().Where(IsMark).SelectMany(group => group.Items.OfType<Text>()).ToList();
        var height = marks.Select(text => text.Height).DefaultIfEmpty(0).Min();
        if (order.SequenceEqual(sheet.Insets) && order.Zip(places).All(one => one.First.Corner == one.Second) && marks.TrueForAll(text => text.Height == height))
        {
            return sheet;
        }

        var named = scene with
        {
            Views = [.. scene.Views.Select(view => view with { Id = Id(view.Id), Items = [.. view.Items.Select(item => item is Group group && IsMark(group) ? Mark(group) : item)] })],
            Pages = [.. scene.Pages.Select(page => page with { Placements = [.. page.Placements.Select(Placed)], Items = [.. page.Items.Select(Item)] })],
        };
        return new(sheet.Papers.Other(named), [.. order.Select((inset, now) => inset with { Number = now, Corner = places[now] })]);

        int Now(Inset inset) => Array.IndexOf(order, inset);

        string Id(string id) => Array.Find(order, inset => inset.ViewId == id) is { } inset ? Insets.ViewIdOf(Now(inset)) : id;

        Placement Placed(Placement placement) => shifts.TryGetValue(placement.ViewId, out var by)
            ? new(Id(placement.ViewId), placement.Origin + by, placement.Window.Shift(by))
            : placement;

        Item Item(Item item) => beside.TryGetValue(item, out var inset) ? Moving.By(item is Text text ? Lettered(text, inset) : item, shifts[inset.ViewId]) : item;

        // A title is "Detail A", the letter in its ring "A", that beside the ring on the view "A" or "A/2".
        Text Lettered(Text text, Inset inset)
        {
            var (was, now) = (Insets.Name(inset.Number), Insets.Name(Now(inset)));
            return text.Words == Insets.Title(inset.Number) ? text with { Words = Insets.Title(Now(inset)) } : text.Words.Split('/')[0] == was ? text with { Words = now + text.Words[was.Length..] } : text;
        }

        Group Mark(Group group)
        {
            var inset = Array.Find(order, inset => group.Name == InsetMark.NameOf(Insets.Name(inset.Number)))!;
            return group with
            {
                Name = InsetMark.NameOf(Insets.Name(Now(inset))),
                Items = [.. group.Items.Select(item => item is Text text ? Lettered(text, inset) with { Height = height, At = text.At + new PaperPoint(0, (text.Height - height) / 2) } : item)],
            };
        }

        bool IsMark(Group group) => Array.Exists(order, inset => group.Name == InsetMark.NameOf(Insets.Name(inset.Number)));
    }

    /// <summary>Corners by the letters; two insets of one size that stand over each other change places where the lower ring's is the upper.</summary>
    private static PaperPoint[] Places(Inset[] order)
    {
        PaperPoint[] corners = [.. order.Select(inset => inset.Corner)];
        for (var i = 0; i + 1 < order.Length; i++)
        {
            var (upper, lower) = (order[i], order[i + 1]);
            if ((upper.Page, upper.Diameter, upper.Named) == (lower.Page, lower.Diameter, lower.Named) && Math.Abs(corners[i].X - corners[i + 1].X) < upper.Diameter && corners[i].Y < corners[i + 1].Y)
            {
                (corners[i], corners[i + 1]) = (corners[i + 1], corners[i]);
            }
        }

        return corners;
    }
}
