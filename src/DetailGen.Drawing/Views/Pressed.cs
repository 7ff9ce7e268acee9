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
        for (var i = 0; i < sheets.Length; i++)
        {
            var over = sheets[i];
            if (over.Part.Sheet!.Over.Count == 0)
            {
                continue;
            }

            var beneathOver = Beneath(over.Part.Sheet);
            int[] against = [.. Enumerable.Range(0, drawn.Length).Where(j => drawn[j].Part.Region is var place && place.Bounds.Meets(over.Part.Region.Bounds, Against) && beneathOver.Overlaps(place))];
            foreach (var under in laid.Where(sheet => over.Part.Sheet.Over.Contains(sheet.Part.Id, StringComparer.Ordinal)))
            {
                var (beneathUnder, onUnder) = (Beneath(under.Part.Sheet!), Sections.Bands.Strip(under.Part.Sheet!.Face, under.Part.Sheet.Thickness + Over));
                foreach (var j in against)
                {
                    var (part, region) = drawn[j];
                    if (!beneathUnder.Overlaps(part.Region) && onUnder.Overlaps(part.Region))
                    {
                        var box = region.Bounds;
                        var lifted = Raised(over).Intersect(Region.Box(box.Left, box.Bottom - SheetStyles.Budget, box.Right, box.Top + SheetStyles.Budget));
                        drawn[j].Region = region.Union(lifted).Minus(over.Body).Minus(Raised(under)).Grow(-Sliver).Grow(Sliver);
                        sheets[i] = sheets[i] with { Filled = sheets[i].Filled.Union(drawn[j].Region.Minus(over.Body.Grow(SheetStyles.FillClear))) };
                    }
                }
            }
        }

        return (drawn, sheets);
    }

    private static Region Beneath(Sheet sheet) => Sections.Bands.Strip([.. sheet.Face.Reverse()], Against);

    // From the face of a sheet to its outer side.
    private static Region Raised(LaidSheet sheet) => sheet.Cover.Grow(-SheetStyles.FillClear).Union(sheet.Body);
}
