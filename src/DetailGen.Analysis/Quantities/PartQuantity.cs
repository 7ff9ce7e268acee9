using DetailGen.Sections;

namespace DetailGen.Analysis.Quantities;

/// <summary>What one part takes per metre run of the junction, within the modelled section.</summary>
/// <param name="Area">In section, m².</param>
/// <param name="Volume">m³ per metre run; members that repeat out of the plane by their share of the run.</param>
/// <param name="Mass">kg per metre run.</param>
/// <param name="SheetLength">Developed length of a sheet material in section, m; null for other parts.</param>
public sealed record PartQuantity(string PartId, string Material, double Area, double Volume, double Mass, double? SheetLength)
{
    /// <summary>Every cut part but air, in build order. Parts that run on are counted as far as the model goes.</summary>
    public static IReadOnlyList<PartQuantity> Of(Section section) =>
        [.. section.Parts.Where(part => part is { Presence: Presence.Cut, IsAir: false }).Select(Of)];

    private static PartQuantity Of(Part part)
    {
        var area = part.Region.Area / 1e6;
        var volume = area * (part.Repeat is { Width: > 0, Centres: > 0 } repeat ? Math.Min(1, repeat.Width / repeat.Centres) : 1);
        return new(part.Id, part.Material.Id, area, volume, volume * part.Material.Density, part.Sheet is { } sheet ? Length(sheet.Face) / 1000 : null);
    }

    private static double Length(IReadOnlyList<Point> face)
    {
        var length = 0.0;
        for (var i = 1; i < face.Count; i++)
        {
            length += (face[i] - face[i - 1]).Length;
        }

        return length;
    }
}
