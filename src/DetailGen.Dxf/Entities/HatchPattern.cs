using System.Collections.Immutable;

namespace DetailGen.Dxf.Entities;

/// <summary>The lines of a fill and their name. In one document a name always means the same angles, offsets and dashes; bases may
/// differ from part to part.</summary>
/// <param name="Name">Lower-case letters, digits and hyphens, at most 31, not "solid".</param>
/// <param name="Lines">At least one family.</param>
public sealed record HatchPattern(string Name, ImmutableArray<PatternLine> Lines)
{
    private const int MostLetters = 31;
    private const int MostDashes = 6;

    public HatchPattern Moved(DxfPoint by) => this with { Lines = [.. Lines.Select(line => line.Moved(by))] };

    /// <summary>Under another name, since the angles differ.</summary>
    public HatchPattern Turned(string name, double degrees, DxfPoint about = default) => new(name, [.. Lines.Select(line => line.Turned(degrees, about))]);

    /// <summary>Under another name, since the angles differ.</summary>
    public HatchPattern Mirrored(string name, double x = 0) => new(name, [.. Lines.Select(line => line.Mirrored(x))]);

    /// <summary>Under another name, since the spacings differ.</summary>
    public HatchPattern Scaled(string name, double factor) => new(name, [.. Lines.Select(line => line.Scaled(factor))]);

    /// <exception cref="ArgumentException">A name out of shape, no lines, lines on top of each other, or dashes that readers do not follow.</exception>
    internal void Demand()
    {
        if (Name.Length is 0 or > MostLetters || Name == "solid" || !Name.All(letter => letter is (>= 'a' and <= 'z') or (>= '0' and <= '9') or '-'))
        {
            throw new ArgumentException($"'{Name}' cannot be the name of a pattern: up to {MostLetters} lower-case letters, digits and hyphens, not 'solid'.");
        }

        if (Lines.IsEmpty)
        {
            throw new ArgumentException($"The pattern {Name} has no lines.");
        }

        foreach (var line in Lines)
        {
            if (!(line.Spacing >= Entity.LeastLength))
            {
                throw new ArgumentException($"In the pattern {Name} neighbouring lines lie on top of each other: the offset runs along the line.");
            }

            if (line.Dashes.Length > MostDashes || (line.Dashes.Length > 0 && !(line.Period >= Entity.LeastLength)))
            {
                throw new ArgumentException($"In the pattern {Name} a line has more than {MostDashes} dashes, or dashes of no length.");
            }
        }
    }
}
