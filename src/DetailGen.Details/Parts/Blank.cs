using DetailGen.Sections;

namespace DetailGen.Details.Parts;

/// <summary>Who keeps its place where two blanks claim the same: the earlier one; the later one is cut around it.</summary>
public enum Precedence
{
    /// <summary>A sheet: everything is built up to it.</summary>
    Sheet,

    /// <summary>A member that goes into or through others: slab, joist, plate.</summary>
    Member,
    Board,
    Masonry,

    /// <summary>What is poured or stuffed in: mortar, mineral wool, gravel.</summary>
    Fill,

    /// <summary>What is left.</summary>
    Air,
}

/// <summary>The order of work on site; within one stage blanks follow each other as they were added. The wall of the first stages goes up round what is built into it.</summary>
public enum Stage
{
    WallBelow,
    RoofStructure,
    Tray,
    WallAbove,
    Deck,
    VapourControl,
    RoofInsulation,
    Upstand,

    /// <summary>What makes the wall level under membrane or coping.</summary>
    WallHead,

    /// <summary>Render and outside insulation up to a wall's head.</summary>
    Cladding,
    Waterproofing,
    Head,

    /// <summary>The same above a roof, whose flashing they stand over.</summary>
    CladdingAbove,
    Finish,

    /// <summary>Walls are lined up to the boards of the ceiling.</summary>
    Ceiling,
    Lining,
    Left,
}

/// <summary>A part in the making: it may still claim more than it will get.</summary>
/// <param name="Slot">Place for the material.</param>
/// <param name="Region">All it would fill if it were alone, mm.</param>
public sealed record Blank(string Id, string Name, string Slot, Element Element, Region Region, Roles Roles, Precedence Precedence, Stage Stage)
{
    public Presence Presence { get; init; } = Presence.Cut;

    public Sheet? Sheet { get; init; }

    public Coursing? Coursing { get; init; }

    public Repeat? Repeat { get; init; }

    public IReadOnlyList<string> Parameters { get; init; } = [];

    public Point Axis { get; init; } = new(1, 0);

    public Point? Seed { get; init; }

    /// <summary>One more of a kind that already has its note, such as the second joist.</summary>
    public bool Again { get; init; }
}
