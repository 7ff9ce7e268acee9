using DetailGen.Sections;

namespace DetailGen.Drawing.Views;

/// <summary>Rows of the layer map by part.</summary>
internal static class Rows
{
    public static string Cut(Part part) => $"cut.{part.Material.LayerCode}.{Of(part.Element)}";

    /// <summary>What is black at usual scales has one layer for its section; its fill lies there where it is drawn thick enough for one.</summary>
    public static string Fill(Part part) => part.Material.LayerCode is "ME" or "FX" or "WP" or "DP" ? Solid(part) : $"fill.{part.Material.LayerCode}.{Of(part.Element)}";

    public static string Sheet(Part part) => $"sheet.{part.Material.LayerCode}.{Of(part.Element)}";

    public static string Solid(Part part) => $"solid.{part.Material.LayerCode}.{Of(part.Element)}";

    public static string Local(Part part) => $"local.FX.{Of(part.Element)}";

    public static string Beyond(Part part) => $"beyond.{Of(part.Element)}";

    /// <summary>Bed joints: thinner than the leaf's own faces, so they lie with the mortars.</summary>
    public static string Joint(Part part) => $"cut.MO.{Of(part.Element)}";

    public static string Mortar(Part part) => $"fill.MO.{Of(part.Element)}";

    public const string Break = "break";

    /// <summary>Width class of a cut outline for sheets up to A2, mm; it decides which of two coinciding edges is drawn.</summary>
    public static double Width(Part part) => part.Material.LayerCode switch
    {
        "BK" or "BL" or "CO" or "ST" or "TS" => 0.5,
        "TB" or "ME" => 0.35,
        _ => 0.25,
    };

    public const double JointWidth = 0.25;

    private static string Of(Element element) => element == Element.Wall ? "wall" : "roof";
}
