namespace DetailGen.Sections;

/// <summary>A material with its design values.</summary>
/// <param name="Id">Such as <c>brick-outer</c>.</param>
/// <param name="Kind">masonry, insulation, board, timber, metal, polymer, membrane, sealant, finish, fill or air.</param>
/// <param name="Fill">Name of the section fill, in plain words with hyphens; for a sheet, the name of its line sign.</param>
/// <param name="LayerCode">Two letters of the layer map, such as BK; empty for air, which has no layer.</param>
/// <param name="Conductivity">W/(m·K); null where it has none of its own (air).</param>
/// <param name="Density">kg/m³; 0 for air.</param>
/// <param name="Origin">How the conductivity is known: declared, tabulated or assumed.</param>
public sealed record Material(
    string Id, string Name, string Kind, string Fill, string LayerCode, double? Conductivity, double Density, string Origin)
{
    /// <summary>Null where it is not known.</summary>
    public Vapour? Vapour { get; init; }

    /// <summary>Poured where it stands: a wall of it goes up in lifts, but has no bed joints.</summary>
    public bool IsCast => Fill == "concrete";

    /// <summary>Laid in courses of 75 mm, whatever is usual for the leaf.</summary>
    public bool IsBrick => Fill == "brick";
}

/// <summary>Resistance to vapour.</summary>
/// <param name="MuDry">Diffusion resistance factor, dry; 1000000 stands for tight.</param>
/// <param name="MuWet">The same, wet.</param>
/// <param name="Sd">Equivalent air layer of a sheet in m; null where it follows from thickness.</param>
/// <param name="Confidence">read, memory or common-practice.</param>
public sealed record Vapour(double MuDry, double MuWet, double? Sd, string Confidence);
