using DetailGen.Sections;

namespace DetailGen.Drawing.Views;

/// <summary>
/// What lies between a sheet and another that it runs over. Both are drawn thicker than they are, so that the true place of something thin would come to lie on the wrong side of the lower one:
/// it fills what is left between the two as they are drawn.
/// </summary>
/// <param name="section">All of it: what lies between two sheets is the same at every scale, and is looked for once for all drawings.</param>
internal sealed class Pressed(Section section, RegionMemory memory)
{
    /// <summary>What is nearer to a face than that lies against it; a sheet may lie over others on its face, up to so much. mm.</summary>
    private const double Against = 0.5, Over = 10;

    /// <summary>What is left over in slivers thinner than twice that is nothing to draw; mm on paper.</summary>
    private const double Sliver = 0.05;

    private readonly Dictionary<(string Over, string Under), HashSet<string>> _between = [];
    private readonly Dictionary<string, Region> _beneath = new(StringComparer.Ordinal), _above = new(StringComparer.Ordinal);

    /// <param name="parts">Solid parts and their place on paper.</param>
    /// <returns>Where they are drawn, and the sheets, which let them fill the white beneath.</returns>
    public (IReadOnlyList<(Part Part, Region Region)> Parts, IReadOnlyList<LaidSheet> Laid) Drawn(IReadOnlyList<(Part Part, Region Region)> parts, IReadOnlyList<LaidSheet> laid)
    {
        var (drawn, sheets) = (parts.ToArray(), laid.ToArray());
        var raised = new Region?[sheets.Length];
        for (var i = 0; i < sheets.Length; i++)
        {
            var over = laid[i];
            Region? clear = null;
            for (var under = 0; under < sheets.Length; under++)
            {
                var between = over.Part.Sheet!.Over.Contains(laid[under].Part.Id, StringComparer.Ordinal) ? Between(over.Part, laid[under].Part) : [];
                for (var j = 0; j < drawn.Length && between.Count > 0; j++)
                {
                    if (!between.Contains(drawn[j].Part.Id))
                    {
                        continue;
                    }

                    var region = drawn[j].Region;
                    var box = region.Bounds;
                    clear ??= memory.Grow(over.Body, SheetStyles.FillClear);
                    var lifted = memory.Intersect(Raised(i), Region.Box(box.Left, box.Bottom - SheetStyles.Budget, box.Right, box.Top + SheetStyles.Budget));
                    var left = memory.Minus(memory.Minus(memory.Union(region, lifted), over.Body), Raised(under));
                    drawn[j].Region = memory.Grow(memory.Grow(left, -Sliver), Sliver);
                    sheets[i] = sheets[i] with { Filled = memory.Union(sheets[i].Filled, memory.Minus(drawn[j].Region, clear)) };
                }
            }
        }

        return (drawn, sheets);

        // From the face of a sheet to its outer side.
        Region Raised(int sheet) => raised[sheet] ??= memory.Union(memory.Grow(laid[sheet].Cover, -SheetStyles.FillClear), laid[sheet].Body);
    }

    /// <summary>Ids of the parts that lie against the face of a sheet, and over another on it.</summary>
    private HashSet<string> Between(Part over, Part under)
    {
        if (!_between.TryGetValue((over.Id, under.Id), out var between))
        {
            between = section.Parts.Where(part => SectionView.IsSolid(part) && part.Region.Bounds.Meets(over.Region.Bounds, Against) && Beneath(over).Overlaps(part.Region) && !Beneath(under).Overlaps(part.Region) && Above(under).Overlaps(part.Region))
                .Select(part => part.Id).ToHashSet(StringComparer.Ordinal);
            _between.Add((over.Id, under.Id), between);
        }

        return between;
    }

    private Region Beneath(Part sheet) => Strip(_beneath, sheet, [.. sheet.Sheet!.Face.Reverse()], Against);

    private Region Above(Part sheet) => Strip(_above, sheet, sheet.Sheet!.Face, sheet.Sheet.Thickness + Over);

    private static Region Strip(Dictionary<string, Region> known, Part sheet, IReadOnlyList<Point> face, double thickness)
    {
        if (!known.TryGetValue(sheet.Id, out var strip))
        {
            known.Add(sheet.Id, strip = Sections.Bands.Strip(face, thickness));
        }

        return strip;
    }
}
