using System.Globalization;
using DetailGen.Drawing.Lettering;
using DetailGen.Drawing.Scenes;
using DetailGen.Drawing.Views;
using DetailGen.Sections;

namespace DetailGen.Drawing.Sheets.Companions;

/// <summary>The layers of roof and wall pulled apart in the order of their stacks, each a piece at true thickness with its reference, its name and its task.</summary>
internal static class ExplodedLayers
{
    private const double MostPiece = 90; // length of a piece on paper, mm
    private const double Apart = 7; // least distance between two pieces, mm; a line of text fits between
    private const double UsualPitch = 4;
    private const double MostWords = 88;
    private const double Between = 10;
    private const double UnderStacks = 8;
    private const double Thin = 1; // of a space that is not drawn, true mm

    internal static CompanionSheet Of(CompanionBasis basis)
    {
        var views = new List<View>();
        var placements = new List<Placement>();
        var items = new List<Item>();
        var room = basis.Room;
        var scale = Scale(basis, room);
        var column = (room.Width + Between) / basis.Section.Buildups.Count - Between;
        var piece = Math.Min(MostPiece, 0.35 * column);
        var wordsWidth = Math.Min(basis.Sizes.ByNotes(MostWords), column - piece);
        var left = room.Left;
        var lowest = room.Top;
        foreach (var buildup in basis.Section.Buildups)
        {
            var (view, words, height) = Stack(basis, buildup, scale, piece, wordsWidth);
            PaperPoint origin = new(left, room.Top - 12);
            views.Add(view);
            placements.Add(new(view.Id, origin, new(left - 1, origin.Y - height - 2, left + piece + 1, room.Top - 8)));
            items.Add(new Text("title.view", buildup.Title, new(left, room.Top - basis.Sizes.ByTitles(4.5)), basis.Sizes.Titles));
            items.AddRange(words.Select(item => Moving.By(item, origin)));
            left += piece + wordsWidth + Between;
            lowest = Math.Min(lowest, origin.Y - height);
        }

        // Its title stands under the view, however much of the sheet is left below.
        var foot = Math.Max(room.Bottom, lowest - UnderStacks - ViewTitle.Height(basis.Sizes));
        return new(scale, views, placements, [.. items, .. basis.Title("Layers pulled apart", scale, new(room.Left, foot))]);
    }

    /// <summary>Larger than the section itself, on a sheet that would else stand half empty.</summary>
    private const double Largest = 2;

    /// <summary>Lines that the words of a layer may take.</summary>
    private const int MostLines = 3;

    // The largest at which both stacks fit above the title.
    private static double Scale(CompanionBasis basis, PaperBox room)
    {
        var height = room.Height - 12 - ViewTitle.Height(basis.Sizes) - 4;
        var (pitch, apart) = (basis.Sizes.ByNotes(UsualPitch), basis.Sizes.ByNotes(Apart));
        return Candidates.Scales.Prepend(Largest).FirstOrDefault(
            scale => basis.Section.Buildups.All(buildup => buildup.Layers.Sum(layer => Math.Max(pitch * MostLines, layer.Thickness / scale) + apart) <= height), Candidates.Scales[^1]);
    }

    // From the top downwards: a roof as it lies, a wall turned on its side, outside uppermost.
    private static (View View, IReadOnlyList<Item> Words, double Height) Stack(CompanionBasis basis, Buildup buildup, double scale, double piece, double wordsWidth)
    {
        var parts = new List<Part>();
        var words = new List<Item>();
        var (sizes, letter, pitch) = (basis.Sizes, basis.Sizes.Notes, basis.Sizes.ByNotes(UsualPitch));
        var reference = sizes.ByWord(10, "W10", bold: true);
        var y = 0.0;
        foreach (var layer in buildup.Layers)
        {
            var thickness = layer.Thickness / scale;
            if (layer.Kind == LayerKind.Bridged && layer.IsAir)
            {
                parts.AddRange(Members(basis.Section, layer, y * scale, piece * scale));
            }
            else if (PartOf(basis.Section, layer) is { IsAir: false } part)
            {
                parts.AddRange(Whole(part, layer, y * scale, piece * scale));
            }

            // What it is made of stands on a line of its own; air is made of nothing.
            var wide = wordsWidth - 4 - reference;
            string[] lines =
            [
                .. sizes.Typeface.Wrap($"{layer.Element}, {layer.Thickness.ToString("0.#", CultureInfo.InvariantCulture)} mm: {layer.Function}", letter, wide),
                .. layer.IsAir ? [] : sizes.Typeface.Wrap(IsRaised(PartOf(basis.Section, layer), layer) ? layer.Told : layer.Material.Name, letter, wide),
            ];
            var middle = y - thickness / 2;
            var first = middle + (lines.Length - 1) * pitch / 2 - letter / 2;
            words.Add(new Text("note.text", layer.Reference, new(piece + 4, first), letter, Bold: true));
            words.Add(new Paragraph("note.text", lines, new(piece + 4 + reference, first), letter, pitch));
            y -= Math.Max(lines.Length * pitch, thickness) + sizes.ByNotes(Apart);
        }

        var section = new Section(basis.Section.Junction, parts, [], [], [], [], [], []);
        var drawn = SectionView.Draw(section, new(scale, new(0, y * scale, piece * scale, 100), Mirror: false));
        return (new("exploded-" + buildup.Id, scale, drawn.Items, drawn.Bounds), words, -y);
    }

    private static Part? PartOf(Section section, Layer layer) => section.Parts.FirstOrDefault(part => part.Id == layer.PartId);

    /// <summary>Whether the part stands in the layer on something else, as slabs do on supports.</summary>
    private static bool IsRaised(Part? part, Layer layer) => part is { IsAir: false } && part.Slot != layer.Slot;

    // What is raised keeps its own thickness, over the space that it leaves.
    private static IEnumerable<Part> Whole(Part part, Layer layer, double top, double length)
    {
        var own = IsRaised(part, layer) ? Math.Min(layer.Thickness, part.Region.Area / part.Region.Bounds.Width) : layer.Thickness;
        yield return Laid(part, top, own, length);
        if (layer.Thickness - own > Thin)
        {
            yield return Laid(part, top - own, layer.Thickness - own, length) with { Id = layer.Slot + ".void", Presence = Presence.Beyond, Repeat = null };
        }
    }

    // The space between two edges seen beyond, and what crosses it: a member along the wall is cut, one across it is seen beyond.
    private static IEnumerable<Part> Members(Section section, Layer layer, double top, double length)
    {
        if (section.Parts.FirstOrDefault(part => part.Slot == layer.Slot && part is { IsAir: false, Presence: Presence.Cut }) is not { } member)
        {
            yield break;
        }

        var under = member.Region.Bounds;
        var on = section.Parts.Where(part => part.Presence == Presence.Cut && part.Roles.HasFlag(Roles.Structure) && part.Region.Bounds is var box && Math.Abs(box.Bottom - under.Top) < 0.1 && box.Left < under.Right && box.Right > under.Left).Take(1);
        var across = member.Repeat is not null;
        var (left, right) = across ? (0, length) : ((length - under.Width) / 2, (length + under.Width) / 2);
        var foot = top - layer.Thickness;
        foreach (var (part, from, to) in on.Select(part => (part, foot + under.Height, top)).Prepend((member, foot, foot + under.Height)))
        {
            yield return Laid(part, to, to - from, length) with { Region = Region.Box(left, from, right, to), Presence = across ? Presence.Beyond : Presence.Cut, Repeat = null, Axis = member.Axis };
        }

        yield return Laid(member, top, layer.Thickness, length) with { Id = layer.Slot + ".void", Presence = Presence.Beyond, Repeat = null };
    }

    private static Part Laid(Part part, double top, double thickness, double length)
    {
        var region = Region.Box(0, top - thickness, length, top);
        return part with
        {
            Region = region,
            Presence = Presence.Cut,
            Axis = new(1, 0),
            Seed = null,
            Coursing = null,
            Sheet = part.Sheet is { } sheet ? sheet with { Face = [new(0, top - thickness), new(length, top - thickness)], Over = [], Seat = Seat.Face } : null,
        };
    }
}
