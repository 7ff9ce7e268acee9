using DetailGen.Physics.Fields;
using DetailGen.Sections;

namespace DetailGen.Analysis.Heat;

/// <summary>Temperatures and films of the calculation.</summary>
/// <param name="Inside">°C; every room.</param>
/// <param name="Outside">°C.</param>
/// <param name="MouldFilm">Inside surface resistance in m²·K/W for the temperature factor of the mould criterion.</param>
/// <param name="WantedError">Share of the coupling coefficient that its proven error should not pass.</param>
/// <remarks>The film of 0.25 m²·K/W for opaque parts is that of ISO 13788:2012 (from memory). 20 °C and 0 °C are a choice: coupling, Ψ and factor do not hang on them.</remarks>
public sealed record HeatConditions(double Inside = 20, double Outside = 0, double MouldFilm = 0.25, double WantedError = 0.001);

/// <summary>The thermal model of a junction: a case for the field, and the plane elements beside it.</summary>
/// <param name="Case">Corners in mm, as in the section but with the roof laid level.</param>
/// <param name="Solids">What each region of the case is.</param>
/// <param name="Flanks">Wall before roof.</param>
/// <param name="Steps">How the model departs from what is drawn, in words.</param>
public sealed record ThermalModel(FieldCase Case, IReadOnlyList<ThermalSolid> Solids, IReadOnlyList<Flank> Flanks, IReadOnlyList<string> Steps)
{
    /// <summary>The wall between two rooms, below the roof; null where there is one room. No heat passes it while both are equally warm.</summary>
    public Flank? Between { get; init; }
}

/// <summary>All of one material and conductivity.</summary>
/// <param name="Parts">Ids of the parts that lie in it, in build order.</param>
/// <param name="Conductivity">W/(m·K) in the model; differs from the material's own where members share with what lies between, and for air.</param>
/// <param name="Region">mm.</param>
public sealed record ThermalSolid(Material Material, IReadOnlyList<string> Parts, double Conductivity, Region Region);

/// <summary>A plane element beside the junction.</summary>
/// <param name="Id"><c>wall</c>, <c>roof</c> or <c>wall-between</c>.</param>
/// <param name="Internal">Length between the inside face of the other element and the cut-off plane, mm.</param>
/// <param name="External">The same from the outside face, mm.</param>
/// <param name="Layers">Thickness in mm and conductivity in W/(m·K) from outside to inside where it is the same all along; empty where members repeat in the plane.</param>
/// <param name="Resistances">Inside and outside surface resistance in m²·K/W.</param>
/// <param name="Bay">Half a bay between two planes of symmetry, where members repeat in the plane.</param>
public sealed record Flank(
    string Id, double Internal, double External, IReadOnlyList<(double Thickness, double Conductivity)> Layers, (double Inside, double Outside) Resistances, Bay? Bay);

/// <summary>Half a bay of an element whose members repeat in the plane: what it passes, over its width, is the element's U.</summary>
/// <param name="Width">mm.</param>
public sealed record Bay(FieldCase Case, double Width);
