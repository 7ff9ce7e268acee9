using DetailGen.Details.Parts;
using DetailGen.Sections;

namespace DetailGen.Details.Constructions;

/// <summary>A layer with the levels of its faces at the datum; mm. A flat layer has the same levels everywhere.</summary>
public sealed record PlacedRoofLayer(RoofLayer Layer, double Bottom, double Top)
{
    public double Thickness => Top - Bottom;
}

/// <summary>Where the roof begins, as the junction wants it; x in mm.</summary>
/// <param name="Wall">Face against which the insulation ends.</param>
/// <param name="Bearing">End of what bears on the wall.</param>
/// <param name="Field">Where the field membrane begins.</param>
/// <param name="Finish">Where ballast or paving begins: the face of the upstand.</param>
/// <param name="End">Where the model ends.</param>
public sealed record RoofEnds(double Wall, double Bearing, double Field, double Finish, double End)
{
    /// <summary>Where structure, deck and ceiling end: the wall face, left of <see cref="Wall"/> where a kerb stands free; mm.</summary>
    public double Edge { get; init; } = Wall;
}

/// <summary>Interprets the layers of a roof: their levels, and what blanks they are between the ends a junction gives.</summary>
public sealed class PlacedRoof
{
    /// <summary>First joint of the lower boards from the wall, and their length; mm, common practice, no source.</summary>
    private const double FirstJoint = 400, BoardLength = 1200;

    /// <summary>Sheet under a screed that is not bonded; mm, common practice, no source.</summary>
    private const double ScreedSheet = 0.25;

    private readonly RoofPlane _plane;

    private PlacedRoof(IReadOnlyList<PlacedRoofLayer> layers, RoofPlane plane)
    {
        Layers = layers;
        _plane = plane;
    }

    /// <summary>Top to bottom.</summary>
    public IReadOnlyList<PlacedRoofLayer> Layers { get; }

    public RoofPlane Plane => _plane;

    /// <summary>Level at the datum of the top of the boards under the membrane; mm.</summary>
    public double Base => Find(RoofBehaviour.Membrane)!.Bottom;

    public PlacedRoofLayer? Find(RoofBehaviour behaviour) => Layers.FirstOrDefault(placed => placed.Layer.As == behaviour);

    /// <summary>Underside of the lowest layer, mm.</summary>
    public double Foot => Layers[^1].Bottom;

    /// <summary>Level of the point of a screw that holds the roof's layers down: right through the deck, or through the screed into the slab; mm.</summary>
    public double Anchored(double x)
    {
        const double Through = 10, Embedded = 40; // common practice, no source
        return Find(RoofBehaviour.Deck) is { } deck ? _plane.At(x) + deck.Bottom - Through : Find(RoofBehaviour.Slab)!.Top - Embedded;
    }

    /// <summary>Stacks the layers from finished roof level downwards and names the levels.</summary>
    /// <param name="datum">x of the face of the upstand, mm.</param>
    public static PlacedRoof Place(Site site, IReadOnlyList<RoofLayer> layers, double datum)
    {
        var placed = new List<PlacedRoofLayer>();
        var at = 0.0;
        foreach (var layer in layers.Where(layer => site.Sizes.HasLength(layer.Thickness) && site.Length(layer.Thickness) > 0))
        {
            var thickness = site.Length(layer.Thickness);
            placed.Add(new(layer, at - thickness, at));
            at -= thickness;
        }

        var plane = new RoofPlane(datum, site.Sizes.Number("roof.fall"), site.Sizes.Is("roof.fall-towards", "wall") ? 1 : -1, site.Length("roof.fall-run"));
        var stack = new PlacedRoof(placed, plane);
        site.SetLevel(Levels.FinishedRoof, 0);
        site.SetLevel(Levels.DeckTop, stack.Find(RoofBehaviour.VapourControl)!.Bottom);
        site.SetLevel(Levels.StructureTop, (stack.Find(RoofBehaviour.Joists) ?? stack.Find(RoofBehaviour.Slab))!.Top);
        site.SetLevel(Levels.Ceiling, stack.Foot);
        return stack;
    }

    /// <summary>All but the finish.</summary>
    public void Build(Site site, RoofEnds ends)
    {
        foreach (var placed in Layers)
        {
            switch (placed.Layer.As)
            {
                case RoofBehaviour.Membrane:
                    BuildMembrane(site, placed, ends);
                    break;
                case RoofBehaviour.Insulation:
                    BuildBoards(site, placed, ends);
                    break;
                case RoofBehaviour.Deck:
                    BuildDeck(site, placed, ends);
                    break;
                case RoofBehaviour.Screed:
                    BuildScreed(site, placed, ends);
                    break;
                case RoofBehaviour.Joists:
                    TimberStructure.Build(site, this, placed, ends);
                    break;
                case RoofBehaviour.Slab:
                    site.Add(Blank(placed, Region.Box(ends.Bearing, placed.Bottom, ends.End, placed.Top), Precedence.Member, Stage.RoofStructure));
                    break;
                case RoofBehaviour.Ceiling:
                    site.Add(Blank(placed, Region.Box(ends.Edge, placed.Bottom, ends.End, placed.Top), Precedence.Board, Stage.Ceiling));
                    break;
                default: // firrings come with the joists, the vapour control layer with the upstand that it turns up, the finish last
                    break;
            }
        }
    }

    /// <summary>Ballast or paving, laid when the upstand is made.</summary>
    public void BuildFinish(Site site, RoofEnds ends)
    {
        if (Find(RoofBehaviour.Finish) is { } placed)
        {
            RoofFinish.Build(site, this, placed, ends);
        }
    }

    internal static Blank Blank(PlacedRoofLayer placed, Region region, Precedence precedence, Stage stage) =>
        new(placed.Layer.Slot, placed.Layer.Name, placed.Layer.Slot, Element.Roof, region, placed.Layer.Roles, precedence, stage)
        {
            Parameters = [placed.Layer.Thickness],
        };

    internal static string[] Taper(PlacedRoofLayer placed) => [placed.Layer.Thickness, "roof.fall", "roof.fall-run"];

    // One that is not bonded lies on a sheet that is turned up at its edge.
    private void BuildScreed(Site site, PlacedRoofLayer placed, RoofEnds ends)
    {
        if (site.Sizes.HasMaterial("roof.screed-sheet"))
        {
            site.Lay(new(
                "roof.screed-sheet", "Separating sheet", "roof.screed-sheet", Element.Roof, Roles.Separation, Stage.Deck,
                [new(ends.Edge, _plane.At(ends.Edge) + placed.Top), new(ends.Edge, placed.Bottom), new(ends.End, placed.Bottom)], ScreedSheet)
            {
                RunsOn = true,
                Parameters = [placed.Layer.Thickness],
            });
        }

        site.Add(Blank(placed, _plane.Above(ends.Edge, ends.End, placed.Bottom, placed.Top), Precedence.Fill, Stage.Deck) with { Parameters = Taper(placed) });
    }

    private void BuildMembrane(Site site, PlacedRoofLayer placed, RoofEnds ends)
    {
        var face = _plane.Line(ends.Field, ends.End, placed.Bottom);
        site.Add(Blank(placed, _plane.Band(ends.Field, ends.End, placed.Bottom, placed.Top), Precedence.Sheet, Stage.Waterproofing) with
        {
            Sheet = new(face, placed.Thickness, [], Find(RoofBehaviour.Finish) is null ? Seat.Face : Seat.Between),
            Axis = (face[1] - face[0]).Unit,
        });
    }

    /// <summary>Thicknesses of the layers of insulation boards, lower layer first; mm.</summary>
    public static IReadOnlyList<double> Boards(Site site) =>
        site.Length("roof.board-upper") > 0 ? [site.Length("roof.board-lower"), site.Length("roof.board-upper")] : [site.Length("roof.board-lower")];

    // Lower boards first. Joints of the upper layer stand clear of those below; the first joint keeps off the foot of the upstand.
    private void BuildBoards(Site site, PlacedRoofLayer placed, RoofEnds ends)
    {
        var boards = Boards(site);
        var count = boards.Count;
        var at = placed.Bottom;
        for (var layer = 1; layer <= count; layer++)
        {
            var (bottom, depth) = (at, boards[layer - 1]);
            at += depth;
            var left = ends.Wall;
            var right = ends.Wall + FirstJoint + (layer == 1 ? 0 : site.Length("roof.board-stagger"));
            for (var board = 1; left < ends.End; board++)
            {
                var region = _plane.Band(left, Math.Min(right, ends.End), bottom, bottom + depth);
                site.Add(Blank(placed, region, Precedence.Board, Stage.RoofInsulation) with
                {
                    Id = $"{placed.Layer.Slot}.{layer}" + (board == 1 ? "" : $".{board}"),
                    Name = count == 1 ? placed.Layer.Name : placed.Layer.Name + (layer == 1 ? ", lower" : ", upper"),
                    Again = board > 1,
                    Axis = Along(left),
                    Parameters = [placed.Layer.Thickness, "roof.insulation-layers", layer == 1 ? "roof.board-lower" : "roof.board-upper"],
                });
                (left, right) = (right, right + BoardLength);
            }
        }
    }

    private void BuildDeck(Site site, PlacedRoofLayer placed, RoofEnds ends)
    {
        var gap = site.Length("roof.deck-gap");
        site.Add(Blank(placed, _plane.Band(ends.Edge + gap, ends.End, placed.Bottom, placed.Top), Precedence.Board, Stage.Deck) with { Axis = Along(ends.Wall) });
        site.Add(Blank(placed, _plane.Band(ends.Edge, ends.Edge + gap, placed.Bottom, placed.Top), Precedence.Fill, Stage.Deck) with
        {
            Id = "roof.deck-packing",
            Name = "Packing at the edge of the deck",
            Slot = "roof.edge-packing",
            Roles = Roles.Insulation,
            Parameters = ["roof.deck-gap"],
        });
    }

    private Point Along(double x) => (_plane.Line(x, x + 100, 0)[1] - _plane.Line(x, x + 100, 0)[0]).Unit;
}
