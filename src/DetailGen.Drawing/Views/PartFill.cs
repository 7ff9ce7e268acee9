using DetailGen.Sections;

namespace DetailGen.Drawing.Views;

/// <summary>The fill of a part as it is cut.</summary>
internal static class PartFill
{
    /// <summary>The material's fill; timber that repeats out of the plane is cut along its grain, not across it.</summary>
    internal static string Of(Part part) => part is { Material.Fill: "sawn-timber", Presence: Presence.Cut, Repeat: not null } ? "timber-grain" : part.Material.Fill;
}
