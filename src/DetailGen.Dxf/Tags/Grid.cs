namespace DetailGen.Dxf.Tags;

/// <summary>The grid on which a kind of number lies in the file, so that two runs agree and a file saved by others compares equal.</summary>
/// <param name="PerUnit">A power of ten.</param>
internal readonly record struct Grid(long PerUnit)
{
    /// <summary>Lengths and coordinates: 1e-6 mm.</summary>
    public static Grid Length { get; } = new(1_000_000);

    /// <summary>Angles in degrees: 1e-8.</summary>
    public static Grid Angle { get; } = new(100_000_000);

    /// <summary>Bulges, ratios, scales and radians: 1e-12.</summary>
    public static Grid Ratio { get; } = new(1_000_000_000_000);
}
