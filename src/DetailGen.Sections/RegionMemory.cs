namespace DetailGen.Sections;

/// <summary>
/// Regions that were made before: the same corners give the same, and a section drawn once more to another break is mostly what it was. It grows with all that is asked of it, so it belongs to one piece of work.
/// </summary>
public sealed class RegionMemory
{
    private readonly Dictionary<Asked, Region> _known = [];

    private enum Operation
    {
        Union,
        Minus,
        Intersect,
        Grow,
    }

    /// <inheritdoc cref="Region.Union(Region)"/>
    public Region Union(Region region, Region other) => Known(new(Operation.Union, region, other, 0));

    /// <inheritdoc cref="Region.Minus"/>
    public Region Minus(Region region, Region other) => region.IsApart(other) ? region : Known(new(Operation.Minus, region, other, 0));

    /// <inheritdoc cref="Region.Intersect"/>
    public Region Intersect(Region region, Region other) => region.IsApart(other) ? Region.Empty : Known(new(Operation.Intersect, region, other, 0));

    /// <inheritdoc cref="Region.Grow"/>
    public Region Grow(Region region, double by) => Known(new(Operation.Grow, region, region, by));

    private Region Known(Asked asked)
    {
        if (!_known.TryGetValue(asked, out var region))
        {
            _known.Add(asked, region = asked.Make());
        }

        return region;
    }

    /// <summary>Regions are told apart by their corners.</summary>
    private readonly record struct Asked(Operation What, Region One, Region Other, double By)
    {
        internal Region Make() => What switch
        {
            Operation.Union => One.Union(Other),
            Operation.Minus => One.Minus(Other),
            Operation.Intersect => One.Intersect(Other),
            _ => One.Grow(By),
        };

        public bool Equals(Asked asked) => What == asked.What && By == asked.By && One.HasCornersOf(asked.One) && Other.HasCornersOf(asked.Other);

        public override int GetHashCode() => HashCode.Combine(What, By, One.Bounds, Other.Bounds);
    }
}
