using DetailGen.Analysis.Fit;
using DetailGen.Sections;

namespace DetailGen.Details.Tests.Junctions;

/// <summary>What holds for every section, whatever its sizes.</summary>
internal static class Laws
{
    public static void Hold(Section section)
    {
        var misfits = Tiling.Check(section);
        Assert.True(misfits.Count == 0, string.Join("\n", misfits.Select(misfit =>
            $"{(misfit.Overlaps ? "overlap" : "gap")} of {misfit.Width:0.000} at {misfit.At.X:0.0}, {misfit.At.Y:0.0}: {string.Join(", ", misfit.Parts)}")));
        Assert.Equal(section.Parts.Count, section.Parts.Select(part => part.Id).Distinct(StringComparer.Ordinal).Count());
        Assert.Equal(Enumerable.Range(1, section.Parts.Count), section.Parts.Select(part => part.BuildOrder));
        Assert.Equal(section.Levels.OrderByDescending(level => level.Y), section.Levels);
        Inside(section);
        WaterRuns(section);
        Assert.All(section.Measures, measure => Assert.True(double.IsFinite(measure.Value) && (measure.Chain.Length == 0 || measure.Value > 0), measure.Id));
    }

    private static void Inside(Section section)
    {
        foreach (var run in section.Runs)
        {
            var (near, far) = run.Heading switch
            {
                Heading.Down => (section.Parts.Min(part => part.Region.Bounds.Bottom), run.End),
                Heading.Up => (-section.Parts.Max(part => part.Region.Bounds.Top), -run.End),
                _ => (-section.Parts.Max(part => part.Region.Bounds.Right), -run.End),
            };
            Assert.True(near >= far - 0.01, $"{run.Id}: a part goes past the end of the model.");
        }
    }

    // From the highest sheet down: each touches the next, so that the line of water has no break.
    private static void WaterRuns(Section section)
    {
        string[][] laps = [["tray", "flashing"], ["flashing", "upstand.membrane"], ["upstand.membrane", "roof.membrane"], ["coping.dpc", "upstand.membrane"], ["wall.head-membrane", "upstand.membrane"]];
        var coping = section.Parts.Any(part => part.Id == "flashing") == false;
        var outside = section.Parts.Any(part => part.Id == "tray") && coping;
        foreach (var lap in laps)
        {
            var pair = section.Parts.Where(part => lap.Contains(part.Id, StringComparer.Ordinal)).ToArray();
            if (pair.Length < 2 || (lap[0] == "tray" && outside) || (lap[0] is "coping.dpc" or "wall.head-membrane" && !coping))
            {
                continue;
            }

            var shared = pair[0].Region.Grow(0.1).Intersect(pair[1].Region.Grow(0.1)).Bounds;
            Assert.True(Math.Max(shared.Width, shared.Height) >= 10, $"{lap[0]} does not lap {lap[1]}.");
        }
    }
}
