namespace DetailGen.Sections;

/// <summary>What a part does; the continuity checks follow the parts of one role through the junction.</summary>
[Flags]
public enum Roles
{
    None = 0,
    Structure = 1,
    Insulation = 1 << 1,
    WaterBarrier = 1 << 2,
    VapourControl = 1 << 3,
    AirBarrier = 1 << 4,
    Finish = 1 << 5,
    Fixing = 1 << 6,
    Drainage = 1 << 7,
    Support = 1 << 8,

    /// <summary>Air that is meant to be there: a cavity, a void, a clearance.</summary>
    Air = 1 << 9,
    Separation = 1 << 10,
}

/// <summary>How a part meets the section plane.</summary>
public enum Presence
{
    /// <summary>Fills the plane; cut parts tile the section.</summary>
    Cut,

    /// <summary>Repeats out of the plane (tie, weep, strap, fixing): drawn over the cut parts, with its spacing in the note.</summary>
    Local,

    /// <summary>Stands behind the plane: outline only.</summary>
    Beyond,
}

/// <summary>The building element a part belongs to; it decides the drawing layer.</summary>
public enum Element
{
    Wall,
    Roof,
}
