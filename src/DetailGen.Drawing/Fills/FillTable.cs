namespace DetailGen.Drawing.Fills;

/// <summary>Parallel lines of a fill. Lengths in paper mm; they do not change with the scale.</summary>
/// <param name="Angle">Degrees from the sheet's x axis, or from the part's axis where <paramref name="FromAxis"/> is set.</param>
/// <param name="Offset">Square to the lines, from the seed.</param>
public sealed record Family(double Angle, double Spacing, double Offset = 0, bool FromAxis = false, params double[] Dashes);

/// <summary>Small shapes that are strewn over a region.</summary>
public enum Mark
{
    Grain,
    Bubble,
    Triangle,
    Strand,
}

/// <summary>Marks strewn over a region, one in each cell.</summary>
/// <param name="Cell">Area of a cell, mm².</param>
/// <param name="Least">Diameter, side or length of the smallest, mm.</param>
public sealed record Scatter(Mark Mark, double Cell, double Least, double Most);

/// <summary>Fills that follow the faces of their part.</summary>
public enum Motif
{
    None,
    Loop,
    Zigzag,
    Veneers,
    CoreTicks,
    EndGrain,
    Grain,
    Stones,
    Dabs,
    MidLine,
    InnerLine,
    Solid,
}

/// <summary>How a material looks where it is cut.</summary>
/// <param name="Keep">Least drawn thickness in mm that keeps the fill; below it <paramref name="Narrow"/> stands in.</param>
/// <param name="Narrow">Null leaves a thin part white.</param>
public sealed record FillSpec(string Name, double Keep, FillSpec? Narrow = null)
{
    public IReadOnlyList<Family> Families { get; init; } = [];

    public IReadOnlyList<Scatter> Scatters { get; init; } = [];

    public IReadOnlyList<Motif> Motifs { get; init; } = [];
}

/// <summary>The fills by the material's word for them. Our own choice throughout, no source; the drawing conventions give the same figures.</summary>
public static class FillTable
{
    /// <summary>Area in mm² below which a part takes the fill of a thin one.</summary>
    public const double SmallArea = 6;

    private static readonly Dictionary<string, FillSpec> Specs = All().ToDictionary(spec => spec.Name, StringComparer.Ordinal);

    /// <summary>The fill of that name; white for air, plaster and every name that has none.</summary>
    public static FillSpec Named(string fill) => Specs.GetValueOrDefault(fill) ?? new(fill, 0);

    public static bool Knows(string fill) => Specs.ContainsKey(fill);

    public static IEnumerable<string> Names => Specs.Keys.Order(StringComparer.Ordinal);

    private static IEnumerable<FillSpec> All() =>
    [
        Lines("brick", 2.0, Single("brick-narrow", 45, 1.5), new(45, 3.0), new Family(45, 3.0, 0.9)),
        Lines("clay-tile", 1.6, Single("clay-tile-narrow", 135, 1.5), new(135, 3.0), new Family(135, 3.0, 0.9)),
        Lines("dense-block", 2.0, Single("dense-block-narrow", 45, 2.0), new(45, 3.5), new Family(135, 3.5)),
        Lines("lightweight-block", 2.0, Single("lightweight-block-narrow", 45, 2.5), new(45, 3.5), new Family(135, 3.5, Dashes: [2.0, -1.5])),
        Lines("aircrete-block", 2.0, Single("aircrete-block-narrow", 45, 3.0), new Family(45, 4.0)) with { Scatters = [new(Mark.Bubble, 16, 0.8, 0.8)] },
        Lines("natural-stone", 2.0, Single("natural-stone-narrow", 45, 2.0), new(45, 4.0), new Family(45, 4.0, 2.0, Dashes: [3.0, -0.8, 0.2, -0.8])),
        Lines("cast-stone", 2.0, Dots("cast-stone-narrow", 0, new Scatter(Mark.Grain, 3, 0.25, 0.25)), new Family(45, 4.0)) with { Scatters = [new(Mark.Grain, 3, 0.25, 0.25)] },
        Dots("concrete", 2.5, new(Mark.Triangle, 30, 1.2, 2.2), new(Mark.Grain, 5, 0.3, 0.3)) with { Narrow = Dots("concrete-narrow", 0, new Scatter(Mark.Grain, 2, 0.3, 0.3)) },
        Dots("precast-concrete", 2.5, new(Mark.Triangle, 20, 0.8, 1.2), new(Mark.Grain, 4, 0.25, 0.25)) with
        {
            Motifs = [Motif.InnerLine], Narrow = Dots("precast-concrete-narrow", 0, new Scatter(Mark.Grain, 4, 0.25, 0.25)),
        },
        Dots("mortar-bed", 0.8, new Scatter(Mark.Grain, 0.8, 0.2, 0.2)),
        Dots("screed", 1.6, new(Mark.Grain, 1.6, 0.25, 0.25), new(Mark.Grain, 12, 0.45, 0.45)) with { Narrow = Dots("screed-narrow", 0, new Scatter(Mark.Grain, 1.6, 0.25, 0.25)) },
        Dots("render", 1.2, new Scatter(Mark.Grain, 1.2, 0.25, 0.25)),
        new("plaster", 0),
        new("moulded-plastic", 0),
        new("plasterboard", 1.2) { Motifs = [Motif.CoreTicks] },
        new("adhesive-dab", 0.8) { Motifs = [Motif.Dabs] },
        new("plywood", 1.2) { Motifs = [Motif.Veneers] },
        Dots("strand-board", 1.2, new Scatter(Mark.Strand, 2.5, 1.5, 3.0)) with { Narrow = new("strand-board-narrow", 0) { Motifs = [Motif.MidLine] } },
        Lines("fibre-cement", 1.6, null, new Family(0, 1.0, 0.5, FromAxis: true)),
        new("sawn-timber", 1.6) { Motifs = [Motif.EndGrain] },
        new("timber-grain", 1.8) { Motifs = [Motif.Grain] },
        new("rigid-insulation", 1.6, Lines("rigid-insulation-narrow", 0, null, new Family(60, 2.0, FromAxis: true))) { Motifs = [Motif.Zigzag] },
        new("fibrous-insulation", 1.6, Lines("fibrous-insulation-narrow", 0, null, new Family(45, 1.2, FromAxis: true))) { Motifs = [Motif.Loop] },
        new("gravel", 2.0, Dots("gravel-narrow", 0, new Scatter(Mark.Bubble, 1.6, 0.8, 0.8))) { Motifs = [Motif.Stones] },
        Lines("metal", 2.0, new("metal-narrow", 0) { Motifs = [Motif.Solid] }, new Family(45, 1.0)),
        Lines("asphalt", 1.6, new("asphalt-narrow", 0) { Motifs = [Motif.Solid] }, new Family(45, 0.9)),
        new("sealant", 0) { Motifs = [Motif.Solid] },
    ];

    private static FillSpec Lines(string name, double keep, FillSpec? narrow, params Family[] families) => new(name, keep, narrow) { Families = families };

    private static FillSpec Single(string name, double angle, double spacing) => Lines(name, 0, null, new Family(angle, spacing));

    private static FillSpec Dots(string name, double keep, params Scatter[] scatters) => new(name, keep) { Scatters = scatters };
}
