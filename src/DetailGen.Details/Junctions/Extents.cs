using DetailGen.Details.Constructions;
using DetailGen.Details.Parts;

namespace DetailGen.Details.Junctions;

/// <summary>How far the section and its view run on beyond the junction itself; mm.</summary>
internal static class Extents
{
    /// <summary>The section goes on to planes at least so far away, and three thicknesses of the element, as its thermal model needs (ISO 10211:2017, cut-off planes, from memory).</summary>
    private const double LeastReach = 1000;

    /// <summary>The least of the roof that is shown beyond the laps at the upstand; a choice.</summary>
    private const double LeastRoof = 300;

    /// <summary>What the section has of the roof beyond the break line, at least; a choice.</summary>
    private const double BeyondBreak = 100;

    internal static double Reach(Site site, PlacedWall wall) => Math.Max(LeastReach, 3 * Math.Max(wall.Thickness, -site.Level(Levels.Ceiling)));

    /// <summary>Where the roof of the section ends.</summary>
    /// <param name="upstand">Face of the upstand.</param>
    internal static double RoofEnd(Site site, double upstand, double reach) => upstand + Math.Max(reach, RoofFinish.Shown(site) + BeyondBreak);

    /// <summary>Where the view may break the roof off at the nearest.</summary>
    /// <param name="laps">Where the last lap at the upstand ends.</param>
    internal static double NearestBreak(Site site, PlacedRoof roof, double laps) =>
        Math.Max(laps + Math.Max(LeastRoof, -site.Level(Levels.Ceiling)), roof.Plane.Datum + RoofFinish.Shown(site));
}
