using DetailGen.Sections;

namespace DetailGen.Testing;

/// <summary>
/// A cavity parapet with a warm roof, set out by hand for tests of the drawing: every kind of fill, a lap of membranes, a flashing over an upstand, a tray
/// in the same bed. Its sizes are plausible and nothing more.
/// </summary>
public static class SampleParapet
{
    private static readonly PartWords Silent = new("", "", "");

    /// <summary>The sheet materials by their true thickness in mm.</summary>
    private const double Membrane = 1.5, Vapour = 0.5, Lead = 1.8, Tray = 1.2;

    public static Section Section()
    {
        var parts = new List<Part>();
        Part Cut(string id, string fill, string code, Element element, Region region, Point? axis = null)
        {
            var part = new Part(id, id, new(id, id, "board", fill, code, 0.1, 1000, "assumed"), element, region, Presence.Cut, Roles.None, parts.Count + 1)
            {
                Slot = id,
                Words = Silent,
                Axis = axis ?? new(1, 0),
            };
            parts.Add(part);
            return part;
        }

        Part Lay(string id, string fill, string code, Element element, double thickness, Seat seat, string[] over, params Point[] face)
        {
            var part = Cut(id, fill, code, element, Strip(face, thickness)) with { Sheet = new(face, thickness, over, seat) };
            parts[^1] = part;
            return part;
        }

        void Air(string id, Region region)
        {
            Cut(id, "air", "", Element.Wall, region);
            parts[^1] = parts[^1] with { Roles = Roles.Air };
        }

        void Local(string id, string fill, string code, Region region)
        {
            Cut(id, fill, code, Element.Wall, region);
            parts[^1] = parts[^1] with { Presence = Presence.Local };
        }

        var up = new Point(0, 1);
        double Slope(double x) => -(x - 400) / 40;
        Region Layer(double left, double right, double top, double bottom) =>
            Region.Polygon(new(left, Slope(left) + bottom), new(right, Slope(right) + bottom), new(right, Slope(right) + top), new(left, Slope(left) + top));

        Cut("wall.outer-leaf", "brick", "BK", Element.Wall, Region.Box(0, -1600, 102.5, 500), up);
        parts[^1] = parts[^1] with { Coursing = new(185, 75, 10), Seed = new Point(0, 500) };
        Cut("wall.inner-leaf", "dense-block", "BL", Element.Wall, Region.Box(252.5, -1600, 352.5, 500), up);
        parts[^1] = parts[^1] with { Coursing = new(185, 225, 10), Seed = new Point(252.5, 500) };
        Cut("wall.cavity-insulation", "fibrous-insulation", "IF", Element.Wall, Region.Polygon(new(102.5, -1600), new(252.5, -1600), new(252.5, 185), new(102.5, 335)), up);
        Air("wall.cavity", Region.Polygon(new(102.5, 335), new(252.5, 185), new(252.5, 500), new(102.5, 500)));
        Cut("wall.dab", "adhesive-dab", "BD", Element.Wall, Region.Box(352.5, -1600, 367.5, -450), up);
        Cut("wall.lining-insulation", "rigid-insulation", "IR", Element.Wall, Region.Box(367.5, -1600, 407.5, -450), up);
        Cut("wall.lining-board", "plasterboard", "BD", Element.Wall, Region.Box(407.5, -1600, 420, -450), up);
        Cut("roof.packing", "fibrous-insulation", "IF", Element.Roof, Region.Box(352.5, -437.5, 400, -200 + Vapour * 0), up);
        Cut("roof.joist.1", "sawn-timber", "TS", Element.Roof, Region.Box(402, -437.5, 449, -259), up);
        Cut("roof.firring.1", "sawn-timber", "TS", Element.Roof, Region.Polygon(new(402, -259), new(449, -259), new(449, Slope(449) - 180), new(402, Slope(402) - 180)), up);
        Cut("roof.joist.2", "timber-grain", "TS", Element.Roof, Region.Box(802, -437.5, 849, -259), up);
        Cut("roof.firring.2", "sawn-timber", "TS", Element.Roof, Region.Polygon(new(802, -259), new(849, -259), new(849, Slope(849) - 180), new(802, Slope(802) - 180)), up);
        Cut("roof.ceiling-board", "plasterboard", "BD", Element.Roof, Region.Box(352.5, -450, 1500, -437.5));
        Cut("roof.deck", "plywood", "TB", Element.Roof, Layer(400, 1500, -162, -180));
        Lay("roof.vcl", "vapour-control", "VC", Element.Roof, Vapour, Seat.Between, [],
            new(415, 155.7), new(352.5, 160), new(352.5, Slope(352.5) - 162), new(1500, Slope(1500) - 162));
        Cut("roof.insulation.1", "rigid-insulation", "IR", Element.Roof, Layer(415, 700, -80, -161.5));
        Cut("roof.insulation.1b", "rigid-insulation", "IR", Element.Roof, Layer(700, 1500, -80, -161.5));
        Cut("roof.insulation.2", "rigid-insulation", "IR", Element.Roof, Layer(415, 900, 0, -80));
        Cut("roof.insulation.2b", "rigid-insulation", "IR", Element.Roof, Layer(900, 1500, 0, -80));
        Cut("upstand.insulation", "rigid-insulation", "IR", Element.Roof, Region.Polygon(
            new(353, Slope(353) - 161.5), new(403, Slope(403) - 161.5), new(403, 156.5), new(353, 160)), up);
        Cut("upstand.backing", "plywood", "TB", Element.Roof, Region.Polygon(new(403, Slope(403) - 161.5), new(415, Slope(415) - 161.5), new(415, 155.7), new(403, 156.5)), up);
        Cut("upstand.fillet", "sawn-timber", "TS", Element.Roof, Region.Polygon(new(415, Slope(415)), new(465, Slope(465)), new(415, 50)));
        Lay("roof.membrane", "membrane", "WP", Element.Roof, Membrane, Seat.Face, [], new(470, Slope(470)), new(1500, Slope(1500)));
        Lay("upstand.membrane", "membrane", "WP", Element.Roof, Membrane, Seat.Face, ["roof.membrane"],
            new(352.5, 183), new(352.5, 160), new(415, 155.7), new(415, 50), new(465, Slope(465)), new(575, Slope(575)));
        Lay("flashing", "metal-flashing", "ME", Element.Wall, Lead, Seat.Face, ["upstand.membrane"],
            new(322.5, 185), new(352.5, 185), new(352.5, 160), new(421.5, 155.3), new(421.5, 75));
        Lay("tray", "damp-proof-course", "DP", Element.Wall, Tray, Seat.Between, ["flashing"],
            new(45, 335), new(102.5, 335), new(252.5, 185), new(357.5, 185));
        Lay("coping.dpc", "damp-proof-course", "DP", Element.Wall, Tray, Seat.Between, [], new(-5, 500), new(357.5, 500));
        Cut("coping.bed", "mortar-bed", "MO", Element.Wall, Region.Box(0, 500, 352.5, 510));
        Cut("coping", "natural-stone", "ST", Element.Wall, Region.Polygon(new(-65, 510), new(417.5, 510), new(417.5, 582), new(-65, 630))
            .Minus(Region.Box(-50, 510, -40, 518)).Minus(Region.Box(392.5, 510, 402.5, 518)));
        Cut("ballast", "gravel", "LF", Element.Roof, Layer(620, 1500, 50, 1.5));
        Local("weep", "air", "", Region.Box(252.5, 187, 352.5, 260));
        foreach (var bed in new[] { -40.0, -265, -490, -715, 410 })
        {
            Local($"tie.{bed}", "metal", "FX", Region.Box(42.5, bed + 3, 312.5, bed + 7).Union(Region.Box(174.5, bed - 6, 180.5, bed + 7)));
        }

        Local("strap", "metal", "FX", Region.Box(247.5, -305, 960, -300).Union(Region.Box(247.5, -400, 252.5, -300)));
        Cut("nogging", "timber-grain", "TS", Element.Roof, Region.Box(449, -400, 802, -259));
        parts[^1] = parts[^1] with { Presence = Presence.Beyond };

        return new("parapet", parts, [], [], [], [],
        [
            new("wall", Heading.Down, -675, -1600, (0, 420)),
            new("roof", Heading.Along, 720, 1500, (-450, 60)),
        ], []);
    }

    // True to the thickness but not mitred: enough for a drawing that lays its sheets itself.
    private static Region Strip(Point[] face, double thickness) =>
        Region.Union(face.Zip(face.Skip(1), (a, b) => thickness * (b - a).Unit.Left is var by ? Region.Polygon(a, b, b + by, a + by) : Region.Empty));
}
