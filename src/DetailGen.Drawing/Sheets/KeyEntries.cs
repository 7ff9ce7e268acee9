using DetailGen.Drawing.Lettering;
using DetailGen.Drawing.Scenes;
using DetailGen.Drawing.Views;
using DetailGen.Sections;

namespace DetailGen.Drawing.Sheets;

/// <summary>The entries of the key: exactly the fills, sheets and signs that occur in the view, each drawn by the code that draws the view.</summary>
internal static class KeyEntries
{
    /// <summary>Materials that share a fill are named as far as a reader takes in.</summary>
    private const int Named = 2;

    /// <param name="annotation">Items of the layout.</param>
    /// <param name="numbers">Whether notes stand on the view as numbers.</param>
    /// <param name="rings">Whether something is ringed and drawn larger.</param>
    internal static IReadOnlyList<KeyEntry> Of(TextSizes sizes, DrawnView view, IReadOnlyList<Item> annotation, bool numbers, bool rings) =>
        [.. Materials(view), .. KeySigns.Of(sizes, view, annotation, numbers, rings)];

    private static List<KeyEntry> Materials(DrawnView view)
    {
        var (fills, shown) = (new List<string>(), new List<Part>());
        // Walls, roof, then sheets.
        var order = view.Parts.Where(part => !part.Part.IsAir && !part.Visible.IsEmpty)
            .OrderBy(part => part.IsSheet).ThenBy(part => part.Part.Element).ThenBy(part => part.Part.BuildOrder).ToArray();
        foreach (var part in order)
        {
            if (part.Part.Presence == Presence.Cut && !fills.Contains(PartFill.Of(part.Part)))
            {
                fills.Add(PartFill.Of(part.Part));
                shown.Add(part.Part);
            }
        }

        // A fill tells the kind of material; its grade is for the schedule, unless two fills would then go by one name.
        var (kinds, names) = (fills.ConvertAll(fill => Words(fill, order, Kind)), fills.ConvertAll(fill => Words(fill, order, name => name)));
        return [.. shown.Select((part, i) => new KeyEntry(Title(i), Picture(part, view.Scale)))];

        // One material may be cut in two ways: then the fill tells them apart.
        string Title(int i) => kinds.Count(kind => kind == kinds[i]) == 1 ? kinds[i] : names.Count(name => name == names[i]) == 1 ? names[i] : $"{names[i]} ({Way(fills[i])})";
    }

    private static string Way(string fill) => fill switch { "sawn-timber" => "end grain", "timber-grain" => "along the grain", _ => fill.Replace('-', ' ') };

    // What is known: the materials by name; the fill's own name where more than a few share it.
    private static string Words(string fill, IEnumerable<DrawnPart> parts, Func<string, string> shorten)
    {
        var names = parts.Where(part => part.Part.Presence == Presence.Cut && PartFill.Of(part.Part) == fill).Select(part => shorten(part.Part.Material.Name)).Distinct(StringComparer.Ordinal).ToArray();
        return names.Length <= Named ? string.Join("; ", names) : char.ToUpperInvariant(fill[0]) + fill[1..].Replace('-', ' ');
    }

    private static string Kind(string name) => name.Split([",", " ("], StringSplitOptions.None)[0];

    // A section of one part, as large as the swatch: the key cannot differ from the view.
    private static IReadOnlyList<Item> Picture(Part part, double scale)
    {
        var (width, height) = (Key.SwatchWidth * scale, Key.SwatchHeight * scale);
        var alone = part with
        {
            Id = "key",
            Material = part.Material with { Fill = PartFill.Of(part) }, // the swatch has another shape and way of lying
            Region = part.Sheet is null ? Region.Box(0, 0, width, height) : Region.Box(0, height / 2, width, height / 2 + part.Sheet.Thickness),
            Sheet = part.Sheet is null ? null : part.Sheet with { Face = [new(0, height / 2), new(width, height / 2)], Over = [] },
            Coursing = part.Coursing is null ? null : part.Coursing with { Datum = -part.Coursing.Height },
            Axis = new(1, 0),
            Seed = new(0, 0),
        };
        var section = new Section("key", [alone], [], [], [], [], [], []);
        return SectionView.Draw(section, new(scale, new(-1, -1, width + 1, height + 1))).Items;
    }
}
