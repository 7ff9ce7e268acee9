using DetailGen.Analysis.Work;
using DetailGen.Sections;

namespace DetailGen.Details.Tests.Junctions;

/// <summary>What a builder asks of the order of work: nothing hovers, and nothing has to be threaded in.</summary>
internal static class WorkLaws
{
    /// <summary>Parts closer than this touch; a drip profile or flashing stands off by less, mm.</summary>
    private const double Touching = 0.6;

    // What covers or holds the first is put on after it.
    private static readonly (string First, string Then)[] Turns =
    [
        ("roof.membrane", "upstand.restraint"), ("upstand.restraint", "upstand.membrane"), ("roof.membrane", "roof.membrane-fixing"), ("roof.membrane-fixing", "upstand.membrane"),
        ("upstand.membrane", "upstand.termination"), ("upstand.termination", "flashing"),
        ("wall.insulation", "wall.anchor.1"), ("wall.anchor.1", "wall.render"),
        ("coping.packing", "coping.board"), ("coping.board", "coping.screw"), ("coping.screw", "coping.dpc"), ("coping.dpc", "coping.clip"), ("coping.clip", "coping"),
        ("coping.dpc", "coping.bed"), ("coping.bed", "coping"),
        ("roof.fleece", "roof.paving-support"), ("roof.paving-support", "roof.paving"), ("roof.paving-trim", "roof.finish-margin"),
        ("roof.ceiling-board", "wall.lining-board"), ("roof.ceiling-board", "wall.plaster"),
    ];

    public static void Hold(Section section)
    {
        EachComesInItsTurn(section);
        var stages = WorkOrder.Of(section);
        EverythingIsBuiltOnce(section, stages);
        NothingHovers(section, stages);
        MasonryStandsOnSomething(section, stages);
        NothingIsThreadedIn(stages);
    }

    private static void EachComesInItsTurn(Section section)
    {
        var turn = section.Parts.ToDictionary(part => part.Id, part => part.BuildOrder);
        Assert.All(Turns.Where(pair => turn.ContainsKey(pair.First) && turn.ContainsKey(pair.Then)), pair => Assert.True(turn[pair.First] < turn[pair.Then], $"{pair.Then} is built before {pair.First}."));
    }

    private static void EverythingIsBuiltOnce(Section section, IReadOnlyList<IReadOnlyList<Part>> stages)
    {
        var built = stages.SelectMany(stage => stage).ToLookup(part => part.Id);
        Assert.Equal(section.Parts.Where(part => !part.IsAir).Select(part => part.Id).Order(StringComparer.Ordinal), built.Select(pieces => pieces.Key).Order(StringComparer.Ordinal));
        Assert.All(built, pieces => Assert.InRange(pieces.Sum(piece => piece.Region.Area) - section[pieces.Key].Region.Area, -5, 5)); // mm², for the grid
    }

    // Each touches what stands, or what is built with it and touches that. Where the wall comes from below, and at the ends of joists along it, something else carries.
    private static void NothingHovers(Section section, IReadOnlyList<IReadOnlyList<Part>> stages)
    {
        var foot = section.Parts.Min(part => part.Region.Bounds.Bottom);
        var standing = new List<Part>();
        foreach (var stage in stages)
        {
            var open = stage.ToList();
            for (var held = open.Where(Held).ToArray(); held.Length > 0; held = [.. open.Where(Held)])
            {
                standing.AddRange(held);
                open.RemoveAll(held.Contains);
            }

            Assert.True(open.Count == 0, $"Built on nothing: {string.Join(", ", open.Select(part => part.Id))}.");
        }

        bool Held(Part part) => part.Region.Bounds.Bottom < foot + 1 || (part.Slot == "roof.joist" && part.Repeat is null) || standing.Exists(other => other.Region.Bounds.Meets(part.Region.Bounds, Touching) && other.Region.Distance(part.Region) < Touching);
    }

    private static void MasonryStandsOnSomething(Section section, IReadOnlyList<IReadOnlyList<Part>> stages)
    {
        var foot = section.Parts.Min(part => part.Region.Bounds.Bottom);
        var standing = new List<Part>();
        foreach (var stage in stages)
        {
            foreach (var piece in stage.Where(part => part.Coursing is not null).SelectMany(part => part.Region.Pieces.Select(piece => (part.Id, Region: Region.Polygon([.. piece.Outline])))))
            {
                var box = piece.Region.Bounds;
                var under = new Point(box.Middle.X, box.Bottom - 3);
                Assert.True(box.Bottom < foot + 1 || standing.Exists(part => part.Presence == Presence.Cut && part.Region.Contains(under)), $"{piece.Id} stands on nothing at {under.X:0.0}, {under.Y:0.0}.");
            }

            standing.AddRange(stage.Where(part => !part.IsAir));
        }
    }

    // What has masonry under and over it in one leaf was there before what is over it. A flashing is let into its joint afterwards, an anchor drilled in.
    private static void NothingIsThreadedIn(IReadOnlyList<IReadOnlyList<Part>> stages)
    {
        var built = stages.SelectMany((stage, at) => stage.Select(part => (Part: part, At: at))).ToArray();
        var masonry = built.Where(piece => piece.Part.Coursing is not null).ToArray();
        foreach (var (part, at) in built.Where(piece => piece.Part is { Coursing: null, Presence: not Presence.Beyond, Id: not "flashing", Slot: not "wall.anchor" }))
        {
            foreach (var leaf in masonry.Where(piece => piece.Part.Region.Bounds.Meets(part.Region.Bounds, 1)))
            {
                var column = leaf.Part.Region.Bounds;
                var inside = part.Region.Intersect(Region.Box(column.Left, part.Region.Bounds.Bottom, column.Right, part.Region.Bounds.Top)).Bounds;
                if (inside.Width < 15)
                {
                    continue; // it stands beside the leaf
                }

                bool Masonry((Part Part, int At) piece, double y) => piece.Part.Region.Contains(new(inside.Middle.X, y));
                var over = masonry.Where(piece => Masonry(piece, inside.Top + 3)).ToArray();
                if (over.Length > 0 && masonry.Any(piece => Masonry(piece, inside.Bottom - 3)))
                {
                    Assert.True(over.All(piece => piece.At >= at), $"{part.Id} is threaded in under {over[0].Part.Id}.");
                }
            }
        }
    }
}
