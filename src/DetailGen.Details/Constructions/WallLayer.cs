using DetailGen.Details.Parameters;
using DetailGen.Sections;

namespace DetailGen.Details.Constructions;

/// <summary>How a layer of a wall behaves where the wall meets a roof.</summary>
public enum WallBehaviour
{
    /// <summary>Render or insulation outside the outermost leaf: runs up with the wall, stops on a base profile above a roof that it looks at.</summary>
    Cladding,

    /// <summary>Masonry: carries on past the roof, and takes what bears on it.</summary>
    Leaf,

    /// <summary>Air between two leaves.</summary>
    Cavity,

    /// <summary>Insulation between two leaves, beside the air or in its place.</summary>
    CavityFill,

    /// <summary>On the room face of the innermost leaf: stops at the ceiling.</summary>
    Lining,
}

/// <summary>One layer of a wall, weather to room, as its description gives it.</summary>
/// <param name="Slot">Place for the material, and the id of the part.</param>
/// <param name="Thickness">Key of its thickness; the layer is absent where the detail has no such size.</param>
/// <param name="Name">In trade words, such as "Outer leaf".</param>
/// <param name="Function">In a few words, for the schedule.</param>
public sealed record WallLayer(string Slot, WallBehaviour As, string Thickness, string Name, string Function, Roles Roles)
{
    /// <summary>Course height of a leaf, mm.</summary>
    public double Course { get; init; } = Courses.Block;

    /// <summary>Slot of the units above the tray, where those of the leaf do not suit; null where they go on.</summary>
    public string? HeadSlot { get; init; }

    /// <summary>Their course height, mm.</summary>
    public double HeadCourse { get; init; } = Courses.Brick;

    public LayerKind Kind { get; init; } = LayerKind.Solid;

    /// <summary>Keys of centres and width where the layer is made of blanks, such as dabs; null for a continuous one.</summary>
    public (string Centres, string Width)? Repeat { get; init; }

    /// <summary>Height in mm of a continuous ribbon of the same stuff at its upper end that keeps room air out; 0 for none.</summary>
    public double Ribbon { get; init; }

    public LayerFixings? Fixings { get; init; }

    public string Remark { get; init; } = "";

    /// <summary>What a stack note says after the thickness, with {material} for the material's plain name; empty where the name says enough.</summary>
    public string Told { get; init; } = "";
}
