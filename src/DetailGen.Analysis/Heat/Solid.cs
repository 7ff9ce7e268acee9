using DetailGen.Sections;

namespace DetailGen.Analysis.Heat;

/// <summary>A piece of a part as the thermal model sees it.</summary>
/// <param name="Region">mm.</param>
/// <param name="Conductivity">W/(m·K), members that repeat out of the plane included by their share.</param>
/// <param name="Sheet">A sheet so thin that it is no solid of its own.</param>
internal sealed record Solid(Part Part, Region Region, double Conductivity, bool Sheet = false);
