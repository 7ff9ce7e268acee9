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
        BuildingLaws.Hold(section);
        WorkLaws.Hold(section);
        Assert.All(section.Measures, measure => Assert.True(double.IsFinite(measure.Value) && (measure.Chain.Length == 0 || measure.Value > 0), measure.Id));
    }

    private static void Inside(Section section)
    {
        foreach (var run in section.Runs)
        {
            double Past(Region region) => run.Heading switch
            {
                Heading.Down => run.End - region.Bounds.Bottom,
                Heading.Up => region.Bounds.Top - run.End,
                _ => region.Bounds.Right - run.End,
            };
            var past = section.Parts.Where(part => Past(part.Region) > 0.01).Select(part => $"{part.Id} by {Past(part.Region):0.000}");
            Assert.True(!past.Any(), $"Past the end of {run.Id}: {string.Join(", ", past)}");
            Assert.True(run.Heading == Heading.Down ? run.End < run.Least : run.End > run.Least, $"{run.Id} ends before the drawing may break off.");
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
