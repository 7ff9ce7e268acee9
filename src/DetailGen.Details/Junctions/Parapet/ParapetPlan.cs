using System.Globalization;
using DetailGen.Details.Constructions;
using DetailGen.Details.Parts;
using DetailGen.Sections;

namespace DetailGen.Details.Junctions.Parapet;

/// <summary>Levels, dimensions, labels and ends of a parapet.</summary>
internal static class ParapetPlan
{
    public static Plan Make(
        Site site, PlacedWall wall, PlacedRoof roof, Upstand upstand, RoofEnds ends, double foot, double head, TrayLine? tray, bool toCoping)
    {
        var face = site.Face(Faces.RoofSide);
        var outer = upstand.Outer(site);
        var datum = roof.Plane.Datum;
        var ceiling = site.Level(Levels.Ceiling);
        var top = site.Level(Levels.CopingTop);
        var under = top - site.Length("coping.rise") - site.Length("coping.thickness");
        var metal = site.Sizes.Is("coping.kind", "metal");
        var toe = outer + site.Length("upstand.fillet");
        var feature = toe + site.Length("membrane.lap");
        var least = Extents.NearestBreak(site, roof, feature);
        var shownFoot = ceiling - Courses.Block;
        var inner = site.Face(Faces.HeadRoofSide) + site.Length("coping.overhang-inside");
        var left = -site.Length("coping.overhang");
        var stem = Buildups.Wall(site, wall, "Wall", ceiling - 150);
        return new(
            LevelMarks.Of(site, roof, outer, least, tray is not null, HeadLevels(site, inner, under, top, metal)),
            [stem, Buildups.Roof(site, roof, "Roof", least - 60)],
            [
                .. Dimensions.AcrossWall(wall, stem, shownFoot, Chains.WallFoot),
                .. Dimensions.DownRoof(roof, least, PlacedRoof.Boards(site)),
                .. HeadOf(site, left, inner, top, under, metal, head),
                .. HeightsOf(site, wall, datum, inner, under, top, toCoping),
                .. UpstandMeasures.Close(site, roof, upstand, face),
                .. TrayMeasures(site, roof, face, tray),
            ],
            [
                new("outside", "Outside", new(left - 300, Math.Min(0, shownFoot + 300))),
                new("room", "Inside", new(site.Face(Faces.Room) + 300, ceiling - 140)),
                new("roof", "Roof", new(feature + 60, 180)),
            ],
            [
                new("wall-foot", Heading.Down, shownFoot, foot, (site.Face(Faces.Weather), site.Face(Faces.Room))),
                new("roof-end", Heading.Along, least, ends.End, (ceiling, roof.Plane.At(least))),
            ],
            [.. FallsOf(site, roof, left, inner, top, feature)]);
    }

    private static IEnumerable<Level> HeadLevels(Site site, double inner, double under, double top, bool metal) =>
    [
        new(Levels.CopingTop, "top of coping", new(inner, top), true),
        new("coping-underside", metal ? "wall head" : "underside of coping", new(inner, under), false),
        new(Levels.WallHead, "wall head", new(site.Face(Faces.RoofSide), site.Level(Levels.WallHead)), false, Shown: false),
    ];

    private static IEnumerable<Measure> HeadOf(Site site, double left, double inner, double top, double under, bool metal, double head)
    {
        var (weather, roof) = (site.Face(Faces.Weather), site.Face(Faces.HeadRoofSide));
        yield return new("coping.overhang", new(left, top), new(weather, top), Axis.Horizontal, Chains.Head);
        yield return new("parapet.width", new(weather, top), new(roof, top), Axis.Horizontal, Chains.Head);
        yield return new("coping.overhang-inside", new(roof, top), new(inner, top), Axis.Horizontal, Chains.Head);
        yield return new("coping.width", new(left, top), new(inner, top), Axis.Horizontal, Chains.Head, 1);
        var clear = site.Length("coping.drip-clearance");
        var drip = metal ? head - site.Length("coping.leg") : under;
        yield return new("coping.drip-clearance", new(weather - clear, drip), new(weather, drip), Axis.Horizontal, Chains.Close) { Told = new("coping", "drip", "clear of the outer face") };
        var clearInside = metal ? inner - site.Length("coping.sheet") - roof : clear;
        yield return new("coping.drip-clearance-inside", new(roof, drip), new(roof + clearInside, drip), Axis.Horizontal, Chains.Close) { Told = new("coping", "drip", "clear of the roof face") };
        if (!metal)
        {
            yield return new("coping.dpc-projection", new(weather - site.Length("coping.dpc-projection"), head), new(weather, head), Axis.Horizontal);
        }
    }

    private static IEnumerable<Measure> HeightsOf(Site site, PlacedWall wall, double datum, double inner, double under, double top, bool toCoping)
    {
        var upstand = site.Level(Levels.UpstandTop);
        yield return new("upstand.height", new(datum, 0), new(datum, upstand), Axis.Vertical, Chains.Heights);
        var from = upstand;
        if (!toCoping)
        {
            var bed = site.Length("flashing.bed");
            var face = site.Face(Faces.RoofSide);
            yield return new("flashing.rise", new(face, upstand), new(face, bed), Axis.Vertical, Chains.Heights);
            yield return new("flashing.bed", new(datum, 0), new(face, bed), Axis.Vertical, Chains.Heights, 1);
            from = bed;
        }

        if (under - from > 0.01) // a metal coping begins where an upstand to the head ends
        {
            yield return new("coping.underside-rise", new(datum, from), new(inner, under), Axis.Vertical, Chains.Heights);
        }

        // The note of a stone tells how thick its edge is; that of a sheet tells the metal, so the chain goes up its edge.
        var edge = under + site.Length("coping.thickness");
        var outside = site.Sizes.Is("coping.fall-to", "outside");
        if (site.Sizes.Is("coping.kind", "metal") && !outside)
        {
            yield return new("coping.thickness", new(inner, under), new(inner, edge), Axis.Vertical, Chains.Heights);
            yield return new("coping.rise", new(inner, edge), new(inner, top), Axis.Vertical, Chains.Heights);
        }
        else
        {
            var thin = outside ? -site.Length("coping.overhang") : inner;
            yield return new("coping.depth", new(inner, under), new(inner, top), Axis.Vertical, Chains.Heights);
            yield return new("coping.thickness", new(thin, under), new(thin, edge), Axis.Vertical, Chains.Close) { Told = new("coping", "", "thick at the thin edge") };
        }

        yield return new("parapet.height", new(datum, 0), new(inner, top), Axis.Vertical, Chains.Heights, 2);

        // As far down as the tray's edge, in bricks; a wall without one shows its units' own course, and one of concrete has none.
        if (!site.Sizes.Has("tray.courses-below-head") && site.Sizes.Material(wall.Bearing.Layer.Slot).IsCast)
        {
            yield break;
        }

        var own = PlacedWall.Course(site, wall.Bearing.Layer.Slot, wall.Bearing.Layer.Course);
        var (courses, course) = site.Sizes.Has("tray.courses-below-head") ? (site.Sizes.Number("tray.courses-below-head"), Courses.Brick) : (Math.Max(1, (long)Math.Round(Courses.Block / own)), own);
        var head = site.Level(Levels.WallHead);
        yield return new(
            "courses", new(0, head - (course * courses)), new(0, head), Axis.Vertical, Chains.WeatherSide, site.HasLevel(Levels.TrayOutlet) ? 1 : 0,
            string.Create(CultureInfo.InvariantCulture, $"= {courses} {(courses == 1 ? "course" : "courses")}"));
    }

    private static IEnumerable<Measure> TrayMeasures(Site site, PlacedRoof roof, double face, TrayLine? tray)
    {
        if (tray is not null)
        {
            // Beside the courses that lie over it, where no note takes its place.
            var (low, high) = (tray.Lowest, tray.Lowest + site.Length("tray.step"));
            yield return new("tray.step", new(0, low), new(0, high), Axis.Vertical, Chains.WeatherSide);
            yield return new("tray.cover", new(0, high), new(0, site.Level(Levels.WallHead)), Axis.Vertical, Chains.WeatherSide);

            // Towards the roof the outlet is the bed of the flashing, whose height is given there.
            var outside = site.Sizes.Is("tray.discharge", "outside");
            yield return new("tray.outlet", new(roof.Plane.Datum, 0), new(outside ? site.Face(Faces.Weather) : face, site.Level(Levels.TrayOutlet)), Axis.Vertical, outside ? Chains.Close : "") { Told = new("weep", "outlet", "above finished roof level") };
        }
    }

    private static IEnumerable<Fall> FallsOf(Site site, PlacedRoof roof, double left, double inner, double top, double feature)
    {
        yield return new("roof.fall", new(feature + 40, roof.Plane.At(feature + 40)), roof.Plane.Ratio, -roof.Plane.Rises) { End = roof.Plane.End };
        var ratio = site.Sizes.Number("coping.fall");
        var to = site.Sizes.Choice("coping.fall-to");
        if (to != "outside")
        {
            var x = to == "roof" ? (left + inner) / 2 : (left + (3 * inner)) / 4;
            var low = to == "roof" ? (x - left) / ratio : (inner - left) / 4 / ratio;
            yield return new("coping.fall", new(x, top - low), ratio, 1);
        }

        if (to != "roof")
        {
            var x = to == "outside" ? (left + inner) / 2 : ((3 * left) + inner) / 4;
            var low = to == "outside" ? (inner - x) / ratio : (inner - left) / 4 / ratio;
            yield return new("coping.fall", new(x, top - low), ratio, -1);
        }
    }
}
