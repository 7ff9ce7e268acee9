using DetailGen.Dxf.Tables;
using DetailGen.Dxf.Tags;

namespace DetailGen.Dxf.Entities;

/// <summary>Something drawn: in model space, on a sheet or in a block. What lies later in a list is drawn over what lies before.</summary>
public abstract record Entity
{
    /// <summary>Lengths below this, in drawing units, are left out: the entity is dropped, or the vertex.</summary>
    public const double LeastLength = 1e-4;

    /// <summary>Areas below this, in square drawing units, are not filled.</summary>
    public const double LeastArea = 1e-4;

    /// <summary>A layer of the document, or 0.</summary>
    public required string Layer { get; init; }

    /// <summary>A linetype of the document; null for the layer's.</summary>
    public string? Linetype { get; init; }

    /// <summary>Null for the layer's.</summary>
    public DxfColor? Color { get; init; }

    /// <summary>In 1/100 mm, one of <see cref="LineWeights"/>; null for the layer's.</summary>
    public int? Weight { get; init; }

    /// <summary>Factor on the dashes. Null lets the writer choose: 1 in model space and in blocks; on a sheet what takes the plot scale out again.</summary>
    public double? LinetypeScale { get; init; }

    /// <summary>The part this belongs to, or null.</summary>
    public PartTag? Part { get; init; }

    /// <summary>The name of the group that holds it together with others, or null. A group exists as soon as an entity
    /// names it; its members lie together in model space or on one sheet.</summary>
    public string? Group { get; init; }

    internal abstract string Kind { get; }

    /// <summary>The entity as it is written: without repeated vertices; null if nothing of it would be seen.</summary>
    /// <exception cref="ArgumentException">It could not be drawn as it is meant.</exception>
    internal abstract Entity? Cleaned();

    internal abstract void Walk(ITagSink sink);

    internal abstract void Extend(Bounds bounds);

    /// <summary>A fault with the name of the entity that has it.</summary>
    internal ArgumentException Told(ArgumentException fault) =>
        new($"{Kind} on layer {Layer}, part {Part?.Id ?? "none"}: {fault.Message}", fault);

    private protected static void DemandNotNegative(double value, string what)
    {
        if (!(value >= 0 && double.IsFinite(value)))
        {
            throw new ArgumentException($"A {what} must not be below 0.");
        }
    }

    private protected static void DemandPositive(double value, string what)
    {
        if (!(value > 0 && double.IsFinite(value)))
        {
            throw new ArgumentException($"A {what} must be above 0.");
        }
    }
}
