using DetailGen.Sections;

namespace DetailGen.Drawing.Views;

/// <summary>
/// What lies between a sheet and another that it runs over. Both are drawn thicker than they are, so that the true place of something thin would come to lie on the wrong side of the lower one:
/// it fills what is left between the two as they are drawn.
/// </summary>
internal static class Pressed
{
    /// <summary>What is nearer to a face than that lies against it; a sheet may lie over others on its face, up to so much. mm.</summary>
    private const double Against = 0.5, Over = 10;

    /// <summary>What is left over in slivers thinner than twice that is nothing to draw; mm on paper.</summary>
    private const double Sliver = 0.05;

    /// <param name="parts">Solid parts and their place on paper.</param>
    /// <returns>Where they are drawn, and the sheets, which let them fill the white beneath.</returns>
    public static (IReadOnlyList<(Part Part, Region Region)> Parts, IReadOnlyList<LaidSheet> Laid) Between(IReadOnlyList<(Part Part, Region Region)> parts, IReadOnlyList<LaidSheet> laid)
    {
        var (drawn, sheets) = (parts.ToArray(), laid.ToArray());
        var (beneath, above) = (new Region?[sheets.Length], new Region?[sheets.Length]);
        for (var i = 0; i < sheets.Length; i++)
        {
            var over = sheets[i];
            int[] against = over.Part.Sheet!.Over.Count == 0 ? [] : [.. Enumerable.Range(0, drawn.Length).Where(j => drawn[j].Part.Region.Bounds.Meets(over.Part.Region.Bounds, Against) && LiesBeneath(j, i))];
            for (var under = 0; under < sheets.Length && against.Length > 0; under++)
            {
                if (!over.Part.Sheet.Over.Contains(sheets[under].Part.Id, StringComparer.Ordinal))
                {
                    continue;
                }

                int[] between = [.. against.Where(j => !LiesBeneath(j, under) && LiesAbove(j, under))];
                if (between.Length == 0)
                {
                    continue;
                }

                var (raised, foot, clear) = (Raised(over), Raised(laid[under]), over.Body.Grow(SheetStyles.FillClear));
                foreach (var j in between)
                {
                    var region = drawn[j].Region;
                    var box = region.Bounds;
                    var lifted = raised.Intersect(Region.Box(box.Left, box.Bottom - SheetStyles.Budget, box.Right, box.Top + SheetStyles.Budget));
                    drawn[j].Region = region.Union(lifted).Minus(over.Body).Minus(foot).Grow(-Sliver).Grow(Sliver);
                    sheets[i] = sheets[i] with { Filled = sheets[i].Filled.Union(drawn[j].Region.Minus(clear)) };
                }
            }
        }

        return (drawn, sheets);

        // The strips beside a face are made when the first part is asked about: of most sheets in view none lies over another.
        bool LiesBeneath(int part, int sheet) => (beneath[sheet] ??= Beneath(laid[sheet].Part.Sheet!)).Overlaps(drawn[part].Part.Region);
        bool LiesAbove(int part, int sheet) => (above[sheet] ??= Above(laid[sheet].Part.Sheet!)).Overlaps(drawn[part].Part.Region);
    }

    private static Region Beneath(Sheet sheet) => Sections.Bands.Strip([.. sheet.Face.Reverse()], Against);

    private static Region Above(Sheet sheet) => Sections.Bands.Strip(sheet.Face, sheet.Thickness + Over);

    // From the face of a sheet to its outer side.
    private static Region Raised(LaidSheet sheet) => sheet.Cover.Grow(-SheetStyles.FillClear).Union(sheet.Body);
}
