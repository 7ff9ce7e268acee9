using DetailGen.Details.Constructions;
using DetailGen.Details.Parts;
using DetailGen.Sections;

namespace DetailGen.Details.Junctions.Abutment;

/// <summary>Levels, dimensions, labels and ends of an abutment.</summary>
internal static class AbutmentPlan
{
    public static Plan Make(
        Site site, PlacedWall wall, PlacedRoof roof, Upstand upstand, RoofEnds ends, double foot, double top, double high, TrayLine? tray)
    {
        var outer = upstand.Outer(site);
        var ceiling = site.Level(Levels.Ceiling);
        var toe = outer + site.Length("upstand.fillet");
        var feature = toe + site.Length("membrane.lap");
        var least = Extents.NearestBreak(site, roof, feature);
        var shownFoot = ceiling - Courses.Block;
        var shownTop = high + Courses.Block;
        var across = Buildups.Wall(site, wall, "Wall", shownTop - 100);
        var room = site.Face(Faces.Room);
        var face = site.Face(Faces.RoofSide);
        return new(
            LevelMarks.Of(site, roof, outer, least, tray is not null, DripProfile(site)),
            [across, Buildups.Roof(site, roof, "Roof", least - 60)],
            [
                .. Dimensions.AcrossWall(wall, across, shownTop, Chains.Head),
                .. Dimensions.DownRoof(roof, least, PlacedRoof.Boards(site)),
                .. Heights(site, roof, face),
                .. UpstandMeasures.Close(site, roof, upstand, face),
                .. TrayMeasures(site, roof, face, tray),
            ],
            [
                new("higher-room", "Higher room", new(room - 300, (shownTop + shownFoot) / 2)),
                new("lower-room", "Lower room", new(feature, ceiling - 140)),
                new("outside", "Outside", new(feature + 60, 180)),
            ],
            [
                new("wall-foot", Heading.Down, shownFoot, foot, (room, Math.Max(face, site.Face(Faces.BearingEnd)))),
                new("wall-head", Heading.Up, shownTop, top, (room, site.Face(Faces.Weather))),
                new("roof-end", Heading.Along, least, ends.End, (ceiling, roof.Plane.At(least))),
            ],
            [new("roof.fall", new(feature + 40, roof.Plane.At(feature + 40)), roof.Plane.Ratio, -roof.Plane.Rises) { End = roof.Plane.End }]);
    }

    private static IEnumerable<Level> DripProfile(Site site) => site.Sizes.HasLength("wall.insulation-base")
        ? [new("insulation-base", "drip profile", new(site.Face(Faces.Weather), site.Length("wall.insulation-base")), true)]
        : [];

    private static IEnumerable<Measure> Heights(Site site, PlacedRoof roof, double face)
    {
        var datum = roof.Plane.Datum;
        var upstand = site.Length("upstand.height");
        var bed = site.Length("flashing.bed");
        yield return new("upstand.height", new(datum, 0), new(datum, upstand), Axis.Vertical, Chains.Heights);
        yield return new("flashing.rise", new(face, upstand), new(face, bed), Axis.Vertical, Chains.Heights);
        yield return new("flashing.bed", new(datum, 0), new(face, bed), Axis.Vertical, Chains.Heights, 1);
        if (site.Sizes.HasLength("wall.insulation-base"))
        {
            var foot = site.Length("wall.insulation-base");
            var weather = site.Face(Faces.Weather);
            yield return new("wall.insulation-base", new(datum, 0), new(weather, foot), Axis.Vertical, Chains.Heights, 2);
        }
    }

    private static IEnumerable<Measure> TrayMeasures(Site site, PlacedRoof roof, double face, TrayLine? tray)
    {
        if (tray is null)
        {
            yield break;
        }

        var (a, b) = (site.Face(Faces.CavityLeft), site.Face(Faces.CavityRight));
        yield return new("tray.step", new(a, tray.At(a)), new(b, tray.At(b)), Axis.Vertical, Chains.Close) { Told = new("tray", "", "step") };
        yield return new("tray.outlet", new(roof.Plane.Datum, 0), new(face, site.Level(Levels.TrayOutlet)), Axis.Vertical);
    }
}
