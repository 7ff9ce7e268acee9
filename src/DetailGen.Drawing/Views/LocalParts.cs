using DetailGen.Drawing.Fills;
using DetailGen.Drawing.Scenes;
using DetailGen.Sections;

namespace DetailGen.Drawing.Views;

/// <summary>Something that repeats out of the plane, drawn over the cut parts.</summary>
/// <param name="Region">As drawn, paper mm.</param>
/// <param name="Opening">An open joint: what it passes through is not seen there.</param>
internal sealed record LocalPart(Part Part, Region Region, bool Opening, IReadOnlyList<Item> Items);

/// <summary>Ties, straps, weeps and fixings.</summary>
internal static class LocalParts
{
    private const double SolidUnder = 2.0;

    /// <summary>No metal of a fixing is that thick: what is seen of it is its broad side, mm.</summary>
    private const double Broad = 15;

    public static IReadOnlyList<LocalPart> Of(IEnumerable<(Part Part, Region Region)> parts, double scale) =>
        [.. parts.OrderBy(entry => entry.Part.BuildOrder).Select(entry => Of(entry.Part, entry.Region, scale))];

    private static LocalPart Of(Part part, Region region, double scale)
    {
        if (part.IsAir || part.Material.LayerCode.Length == 0)
        {
            return new(part, region, true, []);
        }

        var metal = part.Material.LayerCode is "FX" or "ME" or "SE";
        if (metal)
        {
            region = Thickened(region, SheetStyles.LeastOf(part, scale));
        }

        if (metal && Slender(part.Region) >= Broad)
        {
            return new(part, region, false, [.. Ring(region, Rows.Beyond(part), part.Id)]);
        }

        var thick = Slender(region);
        var solid = part.Material.LayerCode == "SE" ? "SE" : "FX";
        var wall = part.Element == Element.Wall ? "wall" : "roof";
        if (metal && thick < SolidUnder)
        {
            return new(part, region, false, [.. Bands.Solids(region, $"solid.{solid}.{wall}", part.Id)]);
        }

        var axis = new PaperPoint(1, 0);
        var fill = Filler.Fill(new FillJob(part.Id, part.Material.Fill, Rows.Fill(part), Rows.Solid(part), region, region, region, axis, axis, 0, scale));
        return new(part, region, false, [.. fill.Items, .. Ring(region, metal ? Rows.Local(part) : Rows.Cut(part), part.Id)]);
    }

    /// <summary>Grown evenly until its limbs are at least that thick.</summary>
    public static Region Thickened(Region region, double least)
    {
        var thick = Slender(region);
        return thick >= least - 1e-9 || region.IsEmpty ? region : region.Grow((least - thick) / 2);
    }

    /// <summary>Thickness of a long thin shape whatever its bends: from area and girth, as if it were straight.</summary>
    public static double Slender(Region region)
    {
        if (region.IsEmpty)
        {
            return 0;
        }

        var girth = region.Pieces.Sum(piece => Planes.Length([.. piece.Outline.Append(piece.Outline[0]).Select(corner => new PaperPoint(corner.X, corner.Y))])) / region.Pieces.Count;
        var area = region.Area / region.Pieces.Count;
        var root = girth * girth / 16 - area;
        return root <= 0 ? Math.Sqrt(area) : girth / 4 - Math.Sqrt(root);
    }

    private static IEnumerable<Item> Ring(Region region, string row, string id) =>
        region.Pieces.Select(piece => new Stroke(row, [.. piece.Outline.Select(corner => new PaperPoint(corner.X, corner.Y))], true) { PartId = id });
}
