using DetailGen.Details.Parts;
using DetailGen.Sections;

namespace DetailGen.Details.Constructions;

/// <summary>A layer with its two faces; lesser x first, mm.</summary>
public sealed record PlacedLayer(WallLayer Layer, double Left, double Right)
{
    public double Width => Right - Left;
}

/// <summary>Where the wall ends above and below, as the junction wants it; y in mm.</summary>
/// <param name="Foot">Where the model ends.</param>
/// <param name="LeafTop">Top of the masonry.</param>
/// <param name="CavityTop">Top of the cavity.</param>
/// <param name="CladdingFoot">Underside of render and outside insulation.</param>
/// <param name="CladdingTop">Their top.</param>
/// <param name="LiningTop">Top of the lining.</param>
/// <param name="Bed">Underside of a bed joint, from which courses count.</param>
/// <param name="Cladding">When they are put on.</param>
/// <param name="Ribbon">Whether the lining ends there, and is sealed by a ribbon; otherwise it goes on.</param>
public sealed record WallEnds(
    double Foot, double LeafTop, double CavityTop, double CladdingFoot, double CladdingTop, Stage Cladding, double LiningTop, double Bed, bool Ribbon);

/// <summary>A tray as the cavity sees it: all below the line is under it; left to right, mm.</summary>
/// <param name="Line">Upper face of what carries the tray, over the whole width of the wall.</param>
/// <param name="DryAbove">The cavity above it stays clear.</param>
public sealed record TrayLine(IReadOnlyList<Point> Line, bool DryAbove)
{
    /// <summary>Level of its lower edge; mm.</summary>
    public double Lowest => Line.Min(point => point.Y);

    /// <summary>Level of the tray where it crosses a leaf or its face; mm.</summary>
    public double At(double x)
    {
        for (var i = 1; i < Line.Count; i++)
        {
            if (x <= Line[i].X)
            {
                var (a, b) = (Line[i - 1], Line[i]);
                return a.Y + ((b.Y - a.Y) * Math.Clamp((x - a.X) / (b.X - a.X), 0, 1));
            }
        }

        return Line[^1].Y;
    }

    /// <summary>All that lies below it between two stations, down to a level.</summary>
    public Region Below(double left, double right, double foot) => Closed(left, right, foot);

    /// <summary>All that lies above it between two stations, up to a level.</summary>
    public Region Above(double left, double right, double top) => Closed(left, right, top);

    private Region Closed(double left, double right, double end)
    {
        var along = new List<Point> { new(left, At(left)) };
        along.AddRange(Line.Where(point => point.X > left && point.X < right));
        along.Add(new(right, At(right)));
        along.Add(new(right, end));
        along.Add(new(left, end));
        return Region.Polygon([.. along]);
    }
}

/// <summary>Interprets the layers of a wall: where they stand, and what blanks they are between the ends a junction gives.</summary>
public sealed class PlacedWall
{
    private readonly bool _turned;

    private PlacedWall(IReadOnlyList<PlacedLayer> layers, bool turned)
    {
        Layers = layers;
        _turned = turned;
        var between = layers.Where(placed => placed.Layer.As is WallBehaviour.Cavity or WallBehaviour.CavityFill).ToArray();
        Cavity = between.Length == 0 ? null : (between.Min(placed => placed.Left), between.Max(placed => placed.Right));
    }

    /// <summary>Weather to room.</summary>
    public IReadOnlyList<PlacedLayer> Layers { get; }

    /// <summary>The two sides of the cavity, lesser x first, mm; null for a wall without.</summary>
    public (double Left, double Right)? Cavity { get; }

    /// <summary>The leaf that the roof meets and bears on.</summary>
    public PlacedLayer Bearing =>
        _turned ? Layers.First(placed => placed.Layer.As == WallBehaviour.Leaf) : Layers.Last(placed => placed.Layer.As == WallBehaviour.Leaf);

    /// <summary>From the weather face to the room face, mm.</summary>
    public double Thickness => Layers.Sum(placed => placed.Width);

    /// <summary>Stands the layers side by side from x = 0 and names the faces.</summary>
    /// <param name="turned">The weather face looks at the roof, so that the layers follow each other towards lesser x.</param>
    public static PlacedWall Place(Site site, IReadOnlyList<WallLayer> layers, bool turned)
    {
        var placed = new List<PlacedLayer>();
        var at = 0.0;
        foreach (var layer in layers.Where(layer => site.Sizes.HasLength(layer.Thickness)))
        {
            var width = site.Length(layer.Thickness);
            placed.Add(turned ? new(layer, -at - width, -at) : new(layer, at, at + width));
            at += width;
        }

        var stack = new PlacedWall(placed, turned);
        site.SetFace(Faces.Weather, 0);
        site.SetFace(Faces.Room, turned ? -at : at);
        site.SetFace(Faces.RoofSide, stack.Bearing.Right);
        site.SetFace(Faces.BearingEnd, stack.Bearing.Left);
        if (stack.Cavity is var (left, right))
        {
            site.SetFace(Faces.CavityLeft, left);
            site.SetFace(Faces.CavityRight, right);
            var clear = placed.FirstOrDefault(one => one.Layer.As == WallBehaviour.Cavity && one.Width > 0.001);
            site.SetFace(Faces.ClearLeft, clear?.Left ?? left);
            site.SetFace(Faces.ClearRight, clear?.Right ?? right);
        }

        return stack;
    }

    /// <summary>Height of a course of a leaf, its joint included: as usual for it, or that of bricks; mm.</summary>
    public static double Course(Site site, string slot, double usual) => site.Sizes.Material(slot).IsBrick ? Math.Min(usual, Courses.Brick) : usual;

    public void Build(Site site, WallEnds ends, TrayLine? tray)
    {
        foreach (var placed in InOrderOfWork)
        {
            switch (placed.Layer.As)
            {
                case WallBehaviour.Leaf:
                    BuildLeaf(site, placed, ends, tray);
                    break;
                case WallBehaviour.Cavity or WallBehaviour.CavityFill:
                    BuildCavity(site, placed, ends, tray);
                    break;
                case WallBehaviour.Cladding:
                    site.Add(Blank(placed, placed.Layer.Slot, Box(placed, ends.CladdingFoot, ends.CladdingTop), Precedence.Fill, ends.Cladding));
                    break;
                default:
                    BuildLining(site, placed, ends);
                    break;
            }
        }

        if (tray is { DryAbove: true })
        {
            BuildClearCavity(site, ends, tray);
        }
    }

    // The stack is told from outside; what clads the leaf is put on from the leaf outwards.
    private IEnumerable<PlacedLayer> InOrderOfWork => Layers.Where(Clads).Reverse().Concat(Layers.Where(placed => !Clads(placed)));

    private static bool Clads(PlacedLayer placed) => placed.Layer.As == WallBehaviour.Cladding;

    private static void BuildLeaf(Site site, PlacedLayer placed, WallEnds ends, TrayLine? tray)
    {
        var layer = placed.Layer;
        var bed = tray?.At((placed.Left + placed.Right) / 2) ?? ends.Bed;
        if (layer.HeadSlot is { } slot && tray is { DryAbove: true })
        {
            // Both leaves are set out from the tray's lower edge, so that their beds meet for the ties; up to a higher edge a lower unit makes it up.
            site.Add(Blank(placed, layer.Slot, Box(placed, ends.Foot, bed), Precedence.Masonry, Stage.WallBelow) with { Coursing = new(tray.Lowest, Course(site, layer.Slot, layer.Course), Courses.Joint) });
            site.Add(Blank(placed, slot, Box(placed, bed, ends.LeafTop), Precedence.Masonry, Stage.WallAbove) with
            {
                Coursing = new(bed, Course(site, slot, layer.HeadCourse), Courses.Joint),
                Name = layer.Name + " above the tray",
                Slot = slot,
            });
            return;
        }

        site.Add(Blank(placed, layer.Slot, Box(placed, ends.Foot, ends.LeafTop), Precedence.Masonry, Stage.WallBelow) with
        {
            Coursing = new(ends.Bed, Course(site, layer.Slot, layer.Course), Courses.Joint),
        });
    }

    // Above a tray that keeps the cavity dry there is nothing but air; above any other the cavity goes on as below.
    private static void BuildCavity(Site site, PlacedLayer placed, WallEnds ends, TrayLine? tray)
    {
        if (placed.Width < 0.001)
        {
            return;
        }

        var air = placed.Layer.As == WallBehaviour.Cavity;
        var stage = air ? Stage.Left : Stage.WallBelow;
        var precedence = air ? Precedence.Air : Precedence.Fill;
        var below = tray?.Below(placed.Left, placed.Right, ends.Foot) ?? Box(placed, ends.Foot, ends.CavityTop);
        site.Add(Blank(placed, placed.Layer.Slot, below, precedence, stage));
        if (tray is { DryAbove: false })
        {
            site.Add(Blank(placed, placed.Layer.Slot + ".above", tray.Above(placed.Left, placed.Right, ends.CavityTop), precedence, stage) with { Again = true });
        }
    }

    private void BuildClearCavity(Site site, WallEnds ends, TrayLine tray)
    {
        var (left, right) = Cavity!.Value;
        site.Add(new(
            "wall.cavity-clear", "Clear cavity above the tray", "wall.cavity", Element.Wall, tray.Above(left, right, ends.CavityTop),
            Roles.Air | Roles.Drainage, Precedence.Air, Stage.Left)
        {
            Parameters = ["wall.cavity"],
            Axis = new(0, 1),
        });
    }

    private static void BuildLining(Site site, PlacedLayer placed, WallEnds ends)
    {
        var layer = placed.Layer;
        var repeat = layer.Repeat is { } keys ? new Repeat(site.Length(keys.Centres), site.Length(keys.Width)) : null;
        var top = ends.LiningTop - (repeat is null || !ends.Ribbon ? 0 : layer.Ribbon);
        site.Add(Blank(placed, layer.Slot, Box(placed, ends.Foot, top), Precedence.Fill, Stage.Lining) with { Repeat = repeat });
        site.Add(Blank(placed, layer.Slot + "-ribbon", Box(placed, top, ends.LiningTop), Precedence.Fill, Stage.Lining) with
        {
            Name = "Continuous ribbon",
            Roles = layer.Roles | Roles.AirBarrier,
        });
    }

    private static Region Box(PlacedLayer placed, double foot, double top) => Region.Box(placed.Left, foot, placed.Right, top);

    private static Blank Blank(PlacedLayer placed, string id, Region region, Precedence precedence, Stage stage) =>
        new(id, placed.Layer.Name, placed.Layer.Slot, Element.Wall, region, placed.Layer.Roles, precedence, stage)
        {
            Parameters = [placed.Layer.Thickness],
            Axis = new(0, 1),
        };
}
