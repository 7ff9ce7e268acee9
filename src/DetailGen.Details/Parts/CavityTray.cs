using DetailGen.Sections;

namespace DetailGen.Details.Parts;

/// <summary>The cavity tray: from the high leaf down across the cavity and right through the draining leaf, and the weeps that stand on it.</summary>
/// <param name="Line">Upper face of what carries it, left to right, mm.</param>
/// <param name="Draining">Stations of the draining leaf, mm.</param>
/// <param name="Outlet">Underside of the bed joint in the draining leaf, mm.</param>
internal sealed record CavityTray(IReadOnlyList<Point> Line, (double Left, double Right) Draining, double Outlet)
{
    /// <summary>How far the edge shows beyond the face of the draining leaf; mm, common practice, no source.</summary>
    public const double Projection = 5;

    public void Build(Site site)
    {
        site.Lay(new("tray", "Cavity tray", "tray", Element.Wall, Roles.WaterBarrier | Roles.Drainage, Stage.Tray, Line, site.Length("tray.thickness"))
        {
            Over = ["flashing"],
            Parameters = ["tray.step", "tray.thickness"],
        });
        var foot = Outlet + site.Sizes.LengthOrZero("flashing.thickness") + site.Length("tray.thickness");
        site.Add(new(
            "weep", "Weep hole", "weep", Element.Wall, Region.Box(Draining.Left, foot, Draining.Right, Outlet + site.Length("weep.height")),
            Roles.Drainage | Roles.Air, Precedence.Air, Stage.WallAbove)
        {
            Presence = Presence.Local,
            Repeat = new(site.Length("weep.spacing"), 10),
            Parameters = ["weep.spacing", "weep.height"],
            Axis = new(1, 0),
        });
    }
}
