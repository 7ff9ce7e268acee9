using DetailGen.Details.Parts;
using DetailGen.Sections;

namespace DetailGen.Details.Junctions.Parapet;

/// <summary>
/// The damp-proof course right through a parapet without a cavity, where its membrane ends under a flashing: it does for such a wall what the tray does for one with a cavity.
/// It lies in the bed that takes the flashing, over it, and just shows on the roof side.
/// </summary>
internal static class WallDpc
{
    public const string Id = "wall.dpc";

    /// <param name="bed">Underside of the bed joint, mm.</param>
    public static void Build(Site site, double bed)
    {
        var (left, right) = (site.Face(Faces.BearingEnd), site.Face(Faces.RoofSide));
        var leaf = site.Blanks.First(blank => blank.Coursing is not null && blank.Region.Contains(new((left + right) / 2, bed)));

        // Nothing is laid into concrete that is cast in one piece.
        if (site.Sizes.Material(leaf.Slot).IsCast)
        {
            return;
        }

        site.MakeUpBed(leaf, bed);
        site.Lay(new(
            Id, "Damp-proof course in the wall", Id, Element.Wall, Roles.WaterBarrier, Stage.Tray,
            [new(left, bed), new(right + CavityTray.Projection, bed)], site.Length("coping.dpc-thickness"))
        {
            Over = ["flashing"],
            Parameters = ["flashing.bed", "coping.dpc-thickness"],
        });
    }
}
