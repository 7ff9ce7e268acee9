using DetailGen.Details.Constructions;
using DetailGen.Details.Parts;
using DetailGen.Sections;

namespace DetailGen.Details.Junctions;

/// <summary>The level marks that every junction of a flat roof with a wall shows.</summary>
internal static class LevelMarks
{
    /// <summary>Those of roof, upstand and tray together with a junction's own, from the top down.</summary>
    /// <param name="outer">Face of the upstand towards the roof, mm.</param>
    /// <param name="end">Where the drawing breaks the roof off at the earliest, mm.</param>
    public static IReadOnlyList<Level> Of(Site site, PlacedRoof roof, double outer, double end, bool tray, IEnumerable<Level> own)
    {
        var slab = roof.Find(RoofBehaviour.Slab) is not null;
        List<Level> levels =
        [
            .. own,
            new(Levels.UpstandTop, "top of upstand", new(outer, site.Level(Levels.UpstandTop)), true),
            new(Levels.FinishedRoof, "finished roof level", new(roof.Plane.Datum, 0), true),
            new(Levels.DeckTop, "top of deck at the upstand", new(roof.Plane.Datum, site.Level(Levels.DeckTop)), false, Shown: false),
            new("deck-at-break", "deck at the break", new(end, site.Level(Levels.DeckTop) + roof.Plane.At(end)), false, Shown: !slab),
            new(Levels.StructureTop, slab ? "top of slab" : "top of joists", new(end, site.Level(Levels.StructureTop)), false, Shown: slab),
            new(Levels.Ceiling, slab ? "soffit" : "ceiling", new(end, site.Level(Levels.Ceiling)), true),
        ];
        if (tray)
        {
            levels.Add(new(Levels.TrayOutlet, "tray outlet, weep", new(site.Face(site.Sizes.Is("tray.discharge", "outside") ? Faces.Weather : Faces.RoofSide), site.Level(Levels.TrayOutlet)), false));
        }

        return [.. levels.OrderByDescending(level => level.Y).ThenBy(level => level.Name, StringComparer.Ordinal)];
    }
}
