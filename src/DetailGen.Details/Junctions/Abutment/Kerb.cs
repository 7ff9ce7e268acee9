using DetailGen.Details.Constructions;
using DetailGen.Details.Parts;
using DetailGen.Sections;

namespace DetailGen.Details.Junctions.Abutment;

/// <summary>A free-standing kerb on the deck, for a roof that may move against the wall: nothing but the flashing crosses the gap.</summary>
/// <param name="Back">Its face towards the wall, mm.</param>
internal sealed record Kerb(double Back, double Thickness)
{
    /// <summary>How far a membrane turns down behind the kerb; mm, common practice, no source.</summary>
    private const double TurnDown = 30;

    /// <summary>The air seal: its thickness, how far it goes up the wall, and its lap under the vapour control layer; mm, common practice, no source.</summary>
    private const double Seal = 1.2, Up = 80, Lap = 100;

    /// <summary>Its face towards the roof, mm.</summary>
    public double Face => Back + Thickness;

    /// <summary>
    /// The upstand against this kerb. The membrane runs over its head and down behind it; one that would take more than half of the gap, in which roof and wall move, ends on the
    /// edge of the head under the flashing.
    /// </summary>
    public Upstand Upstand(Site site)
    {
        var ratio = (double)site.Sizes.Number("upstand.head-fall");
        var thickness = site.Length("roof.membrane");
        var back = site.Length("upstand.height") - thickness;
        IReadOnlyList<Point> turned = 2 * thickness <= site.Length("roof.deck-gap") ? [new(Back, back - TurnDown)] : [];
        return new(Face, back - (Thickness / ratio), ratio, [.. turned, new(Back, back)]);
    }

    /// <summary>The seal from the wall over the gap, under the kerb and on to the deck; it lies there before the kerb and the vapour control layer.</summary>
    public void BuildSeal(Site site, PlacedRoof roof, double wall)
    {
        var line = roof.Plane.Line(wall, Face + Lap, site.Level(Levels.DeckTop));
        site.Lay(new(
            Parts.Upstand.AirSealId, "Flexible air seal", Parts.Upstand.AirSealId, Element.Roof, Roles.AirBarrier, Stage.Deck,
            [new(wall, line[0].Y + Up), .. line], Seal)
        {
            Parameters = ["roof.deck-gap"],
        });
    }

    public void Build(Site site, PlacedRoof roof, Upstand upstand, double wall)
    {
        var deck = site.Level(Levels.DeckTop);
        var floor = roof.Plane.Line(Back, Face, deck);
        site.Add(new(
            "upstand.kerb", "Free-standing kerb", "upstand.kerb", Element.Roof,
            Region.Polygon([.. floor, new(Face, upstand.Head(Face)), new(Back, upstand.Head(Back))]), Roles.Support, Precedence.Member, Stage.Deck)
        {
            Parameters = ["upstand.kerb", "upstand.height"],
            Axis = new(0, 1),
        });
        site.Add(new(
            "upstand.gap-packing", "Packing in the movement gap", "roof.edge-packing", Element.Roof,
            Region.Polygon([.. roof.Plane.Line(wall, Back, deck), new(Back, upstand.Head(Back)), new(wall, upstand.Head(wall))]),
            Roles.Insulation, Precedence.Fill, Stage.Upstand)
        {
            Parameters = ["roof.deck-gap"],
            Axis = new(0, 1),
        });
    }
}
