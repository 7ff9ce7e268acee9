namespace DetailGen.Sections;

/// <summary>Courses of a masonry part, so that joints can be drawn where they are.</summary>
/// <param name="Datum">Level of the underside of some bed joint, mm; the others follow at whole courses above and below.</param>
/// <param name="Height">Course height including the joint, mm (75 for brick, 225 for block).</param>
/// <param name="Joint">Thickness of the bed joint, mm.</param>
public sealed record Coursing(double Datum, double Height, double Joint)
{
    /// <summary>No unit is cut lower or thinner than this; mm, common practice, no source.</summary>
    public const double LeastUnit = 20;

    /// <summary>Undersides of further beds, where units are cut so that something flat lies in a joint; mm.</summary>
    public IReadOnlyList<double> MadeUp { get; init; } = [];

    /// <summary>Whether a bed of the courses is left out, since one made up beside it would leave less of a unit than can be cut.</summary>
    public bool LeavesOut(double bed) => MadeUp.Any(other => Math.Abs(other - bed) < Joint + LeastUnit);

    /// <summary>Undersides of the beds from the last at or below one level to the first at or above another, upwards; mm.</summary>
    public IEnumerable<double> Beds(double from, double to)
    {
        var (first, last) = (Math.Floor((from - Datum) / Height), Math.Ceiling((to - Datum) / Height));
        var courses = Enumerable.Range(0, (int)(last - first) + 1).Select(k => Datum + ((first + k) * Height)).Where(bed => !LeavesOut(bed));
        return courses.Concat(MadeUp.Where(bed => bed > from && bed < to)).Order();
    }
}

/// <summary>How a part repeats out of the plane.</summary>
/// <param name="Centres">Distance between centres, mm.</param>
/// <param name="Width">Size of one out of the plane, mm; 0 where it does not matter.</param>
public sealed record Repeat(double Centres, double Width = 0);

/// <summary>What a part says of itself, in trade words.</summary>
/// <param name="Note">The note on the sheet; empty for a part that needs none.</param>
/// <param name="Purpose">What it is for.</param>
/// <param name="Without">What goes wrong without it.</param>
public sealed record PartWords(string Note, string Purpose, string Without);

/// <summary>One built thing in the section: a leaf, a board, a sheet, a fillet, or the air in a cavity.</summary>
/// <param name="Id">Unique in the section and stable between variants, such as <c>roof.insulation.2</c>.</param>
/// <param name="Name">In trade words, such as "Outer leaf".</param>
/// <param name="Region">Where it lies at true thickness, in mm.</param>
/// <param name="BuildOrder">Place in the order of work, from 1; no two parts share one.</param>
public sealed record Part(
    string Id, string Name, Material Material, Element Element, Region Region, Presence Presence, Roles Roles, int BuildOrder)
{
    /// <summary>The stage of the work in which it is built, from 0; parts of one stage follow each other in build order.</summary>
    public int Stage { get; init; }

    /// <summary>It goes up with the wall lift by lift, round what is built into it: a leaf, what stands between leaves, a tie.</summary>
    public bool Rises { get; init; }

    /// <summary>The slot of the construction or junction that the part fills, such as <c>wall.outer-leaf</c>.</summary>
    public required string Slot { get; init; }

    /// <summary>Keys of the parameters that size it.</summary>
    public IReadOnlyList<string> Parameters { get; init; } = [];

    public required PartWords Words { get; init; }

    /// <summary>Set where the part is a sheet material; its region is then the band at true thickness.</summary>
    public Sheet? Sheet { get; init; }

    public Coursing? Coursing { get; init; }

    public Repeat? Repeat { get; init; }

    /// <summary>Direction of the long axis: along the layer, the grain or the board; (0, 1) for a leaf of a wall.</summary>
    public Point Axis { get; init; } = new(1, 0);

    /// <summary>A corner that stays where it is when the part grows: fills start there. Null: the lower left corner.</summary>
    public Point? Seed { get; init; }

    public bool IsAir => Roles.HasFlag(Roles.Air);
}
