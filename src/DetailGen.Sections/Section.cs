namespace DetailGen.Sections;

/// <summary>
/// The junction as built, and the single source of truth: the drawing, the schedule, the physics, the checks and the quantities are derived from it.
/// Never mirrored; mirroring is the drawing's affair.
/// </summary>
/// <param name="Junction">Such as <c>parapet</c>.</param>
/// <param name="Parts">In build order.</param>
/// <param name="Levels">Named levels, from the top downwards.</param>
/// <param name="Buildups">The wall's and the roof's layers for schedule, notes and heat: wall first.</param>
/// <param name="Measures">Sizes between two named places, for dimensions and for rules on geometry.</param>
/// <param name="Spaces">The environments around the section, with a place for their label.</param>
/// <param name="Runs">The ends at which a construction runs on and the drawing breaks off.</param>
/// <param name="Falls">Surfaces laid to falls.</param>
public sealed record Section(
    string Junction,
    IReadOnlyList<Part> Parts,
    IReadOnlyList<Level> Levels,
    IReadOnlyList<Buildup> Buildups,
    IReadOnlyList<Measure> Measures,
    IReadOnlyList<Space> Spaces,
    IReadOnlyList<Run> Runs,
    IReadOnlyList<Fall> Falls)
{
    /// <summary>The part of that id.</summary>
    /// <exception cref="KeyNotFoundException">There is none.</exception>
    public Part this[string id] => Parts.FirstOrDefault(part => part.Id == id) ?? throw new KeyNotFoundException($"The section has no part {id}.");
}

/// <summary>A named level.</summary>
/// <param name="Name">Such as <c>finished-roof</c>.</param>
/// <param name="Text">As written at the mark, such as "top of upstand".</param>
/// <param name="At">A place on the level where a witness line may start, mm.</param>
/// <param name="Finished">A finished surface (closed mark) or a structural one (open mark).</param>
/// <param name="Shown">Whether the sheet shows it.</param>
public sealed record Level(string Name, string Text, Point At, bool Finished, bool Shown = true)
{
    public double Y => At.Y;
}

/// <summary>Direction of the heat through a build-up, which decides the surface resistances.</summary>
public enum HeatFlow
{
    Horizontal,
    Upwards,
}

/// <summary>What a layer is to the calculation of resistance.</summary>
public enum LayerKind
{
    Solid,

    /// <summary>A sheet: no resistance of its own is counted.</summary>
    Sheet,

    /// <summary>An unventilated air layer.</summary>
    Air,

    /// <summary>Air or solid crossed by members (joists, dabs): the resistance of what lies between is counted, the bridging is told.</summary>
    Bridged,
}

/// <summary>One layer of a build-up.</summary>
/// <param name="Reference">W1, R5 …</param>
/// <param name="Slot">Such as <c>wall.cavity</c>.</param>
/// <param name="PartId">The part it is in the section.</param>
/// <param name="Element">As in the schedule: "Outer leaf".</param>
/// <param name="Thickness">mm, at the section's datum where it tapers.</param>
/// <param name="Function">In a few words.</param>
/// <param name="Remark">Bridging, taper and the like; empty if none.</param>
public sealed record Layer(
    string Reference, string Slot, string PartId, string Element, Material Material, double Thickness, LayerKind Kind, string Function, string Remark = "")
{
    /// <summary>What a stack note says after the thickness, such as "plywood deck"; empty where the element's name says enough.</summary>
    public string Told { get; init; } = "";

    /// <summary>All that a stack note says where there is room for few words, such as "Joists 47 × 195 at 400"; empty where thickness and element say enough.</summary>
    public string Shortest { get; init; } = "";

    /// <summary>What crosses the layer all over; null where nothing does.</summary>
    public Bridging? Bridging { get; init; }

    /// <summary>What goes through the layer point by point; null where nothing does. Rows of one slot share it.</summary>
    public Fixings? Fixings { get; init; }

    /// <summary>As thick as told at the datum only, as it takes up the fall.</summary>
    public bool Tapers { get; init; }

    /// <summary>Air counts, whatever crosses it.</summary>
    public bool IsAir => Kind == LayerKind.Air || (Kind != LayerKind.Sheet && Material.Conductivity is null);
}

/// <summary>Members across a layer, one at every centre.</summary>
/// <param name="Width">mm.</param>
/// <param name="Centres">mm.</param>
public sealed record Bridging(Material Material, double Width, double Centres)
{
    /// <summary>Of the area.</summary>
    public double Share => Math.Min(1, Width / Centres);
}

/// <summary>Ties or fixings through a layer.</summary>
/// <param name="Name">Such as "Wall ties".</param>
/// <param name="PerArea">1/m².</param>
/// <param name="Diameter">Of a round bar with the metal of one, mm.</param>
public sealed record Fixings(string Name, Material Material, double PerArea, double Diameter);

/// <summary>A wall or roof as a stack of layers: a wall outside to inside, a roof top to bottom.</summary>
/// <param name="Id"><c>wall</c> or <c>roof</c>.</param>
/// <param name="At">Where a stack note may cross all its layers, from outside or top to inside or bottom, mm.</param>
public sealed record Buildup(string Id, string Title, HeatFlow Flow, IReadOnlyList<Layer> Layers, (Point From, Point To) At);

/// <summary>Which way a size runs.</summary>
public enum Axis
{
    Horizontal,
    Vertical,
}

/// <summary>A size between two places of the section.</summary>
/// <param name="Id">A parameter key, or a name from the junction's list.</param>
/// <param name="From">mm; where the witness line starts.</param>
/// <param name="Chain">The chain of dimensions it stands in, or empty where it is not drawn: see <see cref="Chains"/>.</param>
/// <param name="Tier">0 for the chain nearest the drawing, 1 for sums, 2 for overalls.</param>
/// <param name="Text">Written after the figure, such as "min."; usually empty.</param>
public sealed record Measure(string Id, Point From, Point To, Axis Axis, string Chain = "", int Tier = 0, string Text = "")
{
    /// <summary>The part whose note tells the size, and how it does where no white holds the dimension; null where it is drawn or nothing.</summary>
    public SizeWords? Told { get; init; }

    /// <summary>mm, never negative.</summary>
    public double Value => Axis == Axis.Horizontal ? Math.Abs(To.X - From.X) : Math.Abs(To.Y - From.Y);
}

/// <summary>A size in words, for the note of a part.</summary>
/// <param name="Before">What stands before the figure with its unit, and <paramref name="After"/> what stands behind it.</param>
public sealed record SizeWords(string PartId, string Before, string After)
{
    /// <param name="figure">As the dimension would show it, in mm.</param>
    public string With(string figure) => $"{Before} {figure} mm {After}".Trim();
}

/// <summary>The chains of dimensions that a junction sheet carries.</summary>
public static class Chains
{
    /// <summary>Across the wall, below its foot.</summary>
    public const string WallFoot = "wall-foot";

    /// <summary>Across the coping, above it (at an abutment: across the wall, above its head).</summary>
    public const string Head = "head";

    /// <summary>Down the roof's layers, at the far end of the roof.</summary>
    public const string RoofEnd = "roof-end";

    /// <summary>Heights from finished roof level, on the roof side.</summary>
    public const string Heights = "heights";

    /// <summary>Heights on the weather side: courses, coping.</summary>
    public const string WeatherSide = "weather-side";

    /// <summary>Short sizes placed beside what they measure: laps, fillet, drip.</summary>
    public const string Close = "close";
}

/// <summary>An environment beside the section.</summary>
/// <param name="Name">outside, room, roof, higher-room or lower-room.</param>
/// <param name="Text">As written: "Outside".</param>
/// <param name="At">A free place for the label, mm.</param>
public sealed record Space(string Name, string Text, Point At);

/// <summary>Which way a construction runs on.</summary>
public enum Heading
{
    Down,
    Up,

    /// <summary>Towards growing x, along the roof.</summary>
    Along,
}

/// <summary>An end at which a construction runs on beyond the drawing.</summary>
/// <param name="Least">The nearest coordinate (y for up and down, x for along) at which a drawing may break off and still show enough, mm.</param>
/// <param name="End">Where the model ends, mm; beyond <paramref name="Least"/>.</param>
/// <param name="Side">The two faces between which the construction lies at that end (x for up and down, y for along), lesser first, mm.</param>
public sealed record Run(string Id, Heading Heading, double Least, double End, (double From, double To) Side);

/// <summary>A surface laid to falls.</summary>
/// <param name="Id"><c>roof.fall</c> or <c>coping.fall</c>.</param>
/// <param name="At">A place on the surface, mm.</param>
/// <param name="Ratio">n of 1:n.</param>
/// <param name="DownX">+1 where it falls towards growing x, −1 the other way.</param>
public sealed record Fall(string Id, Point At, double Ratio, int DownX)
{
    /// <summary>x from which the surface goes on level, mm; null where it never does.</summary>
    public double? End { get; init; }
}
