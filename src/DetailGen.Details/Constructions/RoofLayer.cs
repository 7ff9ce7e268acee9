using DetailGen.Details.Parameters;
using DetailGen.Sections;

namespace DetailGen.Details.Constructions;

/// <summary>How a layer of a roof behaves.</summary>
public enum RoofBehaviour
{
    /// <summary>On top of the membrane: ballast or paving, if chosen.</summary>
    Finish,

    /// <summary>The sheet that keeps the water out.</summary>
    Membrane,

    /// <summary>Boards in one or two layers.</summary>
    Insulation,

    /// <summary>The sheet that keeps room air and vapour out: turned up at the wall.</summary>
    VapourControl,

    /// <summary>Boards laid to falls, clear of the wall.</summary>
    Deck,

    /// <summary>Tapered blanks on the joists that make the fall.</summary>
    Firring,

    /// <summary>Poured to falls on a flat structure.</summary>
    Screed,

    /// <summary>Timber members with a void between.</summary>
    Joists,

    /// <summary>Concrete that bears on the wall.</summary>
    Slab,

    /// <summary>Boards under the structure.</summary>
    Ceiling,
}

/// <summary>One layer of a roof, top to bottom, as its description gives it.</summary>
/// <param name="Slot">Place for the material, and the id of the part (or its beginning).</param>
/// <param name="Thickness">Key of its thickness; the layer is absent where the detail has no such size.</param>
public sealed record RoofLayer(string Slot, RoofBehaviour As, string Thickness, string Name, string Function, Roles Roles)
{
    public LayerKind Kind { get; init; } = LayerKind.Solid;

    public LayerFixings? Fixings { get; init; }

    public string Remark { get; init; } = "";

    /// <summary>What a stack note says after the thickness, with {material} for the material's plain name; empty where the name says enough.</summary>
    public string Told { get; init; } = "";
}
