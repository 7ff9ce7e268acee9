using DetailGen.Sections;

namespace DetailGen.Drawing.Views;

/// <summary>The fill of a part as it is cut.</summary>
internal static class PartFill
{
    /// <summary>No timber that lies flat is sawn that many times as wide as it is thick: it is cut along its grain.</summary>
    private const double Slender = 4;

    /// <summary>The material's fill; timber that repeats out of the plane is cut along its grain, not across it.</summary>
    internal static string Of(Part part) => part is { Material.Fill: "sawn-timber", Presence: Presence.Cut } && (part.Repeat is not null || LiesFlat(part)) ? "timber-grain" : part.Material.Fill;

    private static bool LiesFlat(Part part) => part.Region.Bounds is var box && Math.Abs(part.Axis.X) > Math.Abs(part.Axis.Y) && box.Width > Slender * part.Region.Area / box.Width;
}
