using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using DetailGen.Drawing.Scenes;
using DetailGen.Dxf;
using DetailGen.Dxf.Entities;

namespace DetailGen.Drawing.Emitters.Dxf;

/// <summary>Fills as patterns of the drawing's own. In one drawing a name has one definition, so a fill that comes turned, or in a view of another scale, gets a letter behind its name.</summary>
internal sealed class DxfFills
{
    private const int MostLetters = 31;

    private readonly Dictionary<string, List<string>> _definitions = new(StringComparer.Ordinal);

    /// <param name="place">From paper to drawing units.</param>
    public HatchPattern Pattern(Scenes.Hatch hatch, DxfPlace place)
    {
        var lines = ImmutableArray.CreateBuilder<PatternLine>(hatch.Families.Count);
        var definition = new StringBuilder();
        foreach (var family in hatch.Families)
        {
            var dashes = ImmutableArray.CreateBuilder<double>(family.Dashes.Count);
            foreach (var dash in family.Dashes)
            {
                dashes.Add(dash * place.Scale);
            }

            var line = PatternLine.Of(family.Angle, family.Spacing * place.Scale, family.Shift * place.Scale, place.At(family.Base), dashes.DrainToImmutable());
            lines.Add(line);
            definition.Append(CultureInfo.InvariantCulture, $"{line.Angle:F6} {line.Offset.X + 0.0:F5} {line.Offset.Y + 0.0:F5}");
            foreach (var dash in line.Dashes)
            {
                definition.Append(CultureInfo.InvariantCulture, $" {dash:F5}");
            }

            definition.Append(';');
        }

        return new(Name(hatch.Fill, definition.ToString()), lines.DrainToImmutable());
    }

    private string Name(string fill, string definition)
    {
        if (!_definitions.TryGetValue(fill, out var known))
        {
            _definitions[fill] = known = [];
        }

        var place = known.IndexOf(definition);
        if (place < 0)
        {
            place = known.Count;
            known.Add(definition);
        }

        var suffix = place == 0 ? "" : FormattableString.Invariant($"-{place + 1}");
        return fill.Length + suffix.Length <= MostLetters ? fill + suffix : string.Concat(fill.AsSpan(0, MostLetters - suffix.Length), suffix);
    }
}

/// <summary>From paper to the drawing: everything is multiplied by the scale, then moved.</summary>
internal readonly record struct DxfPlace(double Scale, DxfPoint Shift)
{
    public static DxfPlace Paper { get; } = new(1, default);

    public DxfPoint At(PaperPoint point) => new(point.X * Scale + Shift.X, point.Y * Scale + Shift.Y);

    public DxfPoint At(double x, double y) => At(new PaperPoint(x, y));
}
