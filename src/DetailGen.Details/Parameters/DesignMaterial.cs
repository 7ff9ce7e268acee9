using DetailGen.Details.Reading;
using DetailGen.Sections;

namespace DetailGen.Details.Parameters;

/// <summary>A material with all its design values: those of the section, and those that only time and the authorities need.</summary>
/// <param name="SpecificHeat">J/(kg·K).</param>
/// <param name="Fire">Typical class of reaction to fire; a product's own class decides.</param>
/// <param name="Confidence">How far each value is known.</param>
/// <param name="Source">Of the thermal values.</param>
public sealed record DesignMaterial(
    Material Material, double SpecificHeat, string? Fire, ValueConfidence Confidence, Source Source, string? Note, Mark At)
{
    public string Id => Material.Id;
}

/// <summary>read, memory or common-practice for each value; null where the material has no such value.</summary>
public sealed record ValueConfidence(string? Conductivity, string? Density, string SpecificHeat, string Vapour, string? Fire);
