using DetailGen.Sections;

namespace DetailGen.Analysis.Work;

/// <summary>
/// What is built after what. A wall goes up in lifts: as far as a slab, strap or tray that is built into it, and on when that is in place; the rest of the work follows stage by stage.
/// A sheet that will be turned over what is not there yet hangs back until it is.
/// </summary>
public static class WorkOrder
{
    /// <summary>Stage by stage, without air. A part that is built in several goes comes once in each, as much of it as is built there.</summary>
    public static IReadOnlyList<IReadOnlyList<Part>> Of(Section section)
    {
        Part[] solid = [.. section.Parts.Where(part => !part.IsAir).OrderBy(part => part.BuildOrder)];
        var stages = new List<IReadOnlyList<Part>>();
        var left = solid.Where(part => part.Rises).ToList();
        var works = solid.Where(part => !part.Rises).GroupBy(part => part.Stage).OrderBy(work => work.Key).Select(work => (Parts: work.ToArray(), Into: Joint.Of(solid, [.. work]))).ToArray();
        foreach (var (parts, into) in works.Where(work => work.Into is not null).OrderBy(work => work.Into!.Level))
        {
            (var lift, left) = Split(left, into!.Below(section));
            stages.AddRange([lift, parts]);
        }

        stages.Add(left);
        stages.AddRange(works.Where(work => work.Into is null).Select(work => work.Parts));
        return Dressing.Later([.. stages.Where(stage => stage.Count > 0)]);
    }

    // What repeats out of the plane lies in a bed: it goes in with the lift that holds all of it.
    private static (IReadOnlyList<Part> Lift, List<Part> Left) Split(List<Part> parts, Region below)
    {
        var (lift, left) = (new List<Part>(), new List<Part>());
        foreach (var part in parts)
        {
            var (now, later) = part.Presence == Presence.Cut ? (part.Region.Intersect(below), part.Region.Minus(below)) : part.Region.Minus(below).IsEmpty ? (part.Region, Region.Empty) : (Region.Empty, part.Region);
            if (!now.IsEmpty)
            {
                lift.Add(part with { Region = now });
            }

            if (!later.IsEmpty)
            {
                left.Add(part with { Region = later });
            }
        }

        return (lift, left);
    }
}
