using DetailGen.Drawing.Fills;
using DetailGen.Drawing.Scenes;
using DetailGen.Drawing.Views;
using DetailGen.Sections;

namespace DetailGen.Drawing.Sheets.Companions;

/// <summary>
/// Where a part does its task: a sheet along itself; anything thicker along the face that water meets, or the one that the air of the room does. Lines of several tasks run side by side.
/// </summary>
internal sealed class ControlPaths(Section section, DrawnView drawn, Bounds window, IReadOnlyList<Roles> tasks)
{
    /// <summary>How far in from a face a line runs, and between the lines of one part; mm on paper.</summary>
    private const double In = 0.9, Apart = 1.1;

    /// <summary>Pieces shorter than this are edges of a joint or a groove; mm on paper.</summary>
    private const double Least = 1.5;

    /// <summary>Two parts of one task that are nearer than this lie against each other; mm on paper.</summary>
    private const double Against = 0.15;

    private readonly Region _seen = Region.Box(new OnPaper(drawn.Scale, drawn.Mirror).At(BreakLines.Clip(section, window)));

    internal IReadOnlyList<IReadOnlyList<PaperPoint>> Of(DrawnPart part, Roles task)
    {
        Roles[] own = [.. tasks.Where(one => part.Part.Roles.HasFlag(one))];
        var beside = Apart * (Array.IndexOf(own, task) - ((own.Length - 1) / 2.0));
        var lines = part.IsSheet ? [new FacePath(part.Line).Beside(new Profile(0), beside)] : Faces(part, task, Array.IndexOf(own, task));
        return [.. lines.SelectMany(line => Clipped(line.Points, Within(part.Part, task)))];
    }

    // Over the deck of a roof the wall goes on outside: there the roof's own parts keep air and vapour in. A wall that goes on up has a room behind it.
    private Region Within(Part part, Roles task)
    {
        var deck = section.Levels.FirstOrDefault(level => level.Name == "deck-top");
        var free = task != Roles.WaterBarrier && part.Element == Element.Wall && section.Runs.All(run => run.Heading != Heading.Up);
        return free && deck is not null ? _seen.Minus(Region.Box(_seen.Bounds with { Bottom = deck.Y / drawn.Scale, Top = Math.Max(_seen.Bounds.Top, deck.Y / drawn.Scale) + 1 })) : _seen;
    }

    private IEnumerable<FacePath> Faces(DrawnPart part, Roles task, int lane)
    {
        var towards = Towards(part.Part, task);
        var next = Region.Union(drawn.Parts.Where(other => other.Id != part.Id && !other.IsSheet && other.Part.Presence == Presence.Cut && other.Part.Roles.HasFlag(task)).Select(other => other.Visible));
        var free = Region.Box(_seen.Bounds.Grow(Least)).Minus(next.Grow(Against)); // where it lies against another of that task, the line is the other's
        foreach (var ring in part.Visible.Pieces.Select(piece => piece.Outline))
        {
            foreach (var run in Runs([.. ring.Select(corner => new PaperPoint(corner.X, corner.Y))], towards).SelectMany(run => Clipped(run, free)))
            {
                var face = new FacePath(run);
                if (face.Pieces > 0 && face.Length > Least)
                {
                    // what is thin has its line in the middle
                    yield return face.Beside(new Profile(0), Math.Min(In + (lane * Apart), LocalParts.Slender(part.Visible) / 2));
                }
            }
        }
    }

    // A wall from outside to inside, a roof from the top down, as their stacks say.
    private PaperPoint Towards(Part part, Roles task)
    {
        var inwards = new PaperPoint(0, -1);
        if (Math.Abs(part.Axis.Y) > Math.Abs(part.Axis.X) && section.Buildups.FirstOrDefault(buildup => buildup.Flow == HeatFlow.Horizontal) is { } wall)
        {
            var right = wall.At.To.X > wall.At.From.X;
            inwards = new(right != drawn.Mirror ? 1 : -1, 0);
        }

        return task == Roles.WaterBarrier ? -1 * inwards : inwards;
    }

    // Edges that follow each other and look that way; the outline runs anticlockwise, so outside is on its right.
    private static IEnumerable<IReadOnlyList<PaperPoint>> Runs(PaperPoint[] ring, PaperPoint towards)
    {
        bool Looks(int i) => Planes.Dot(-1 * Planes.Left(Planes.Unit(ring[(i + 1) % ring.Length] - ring[i])), towards) > 0.5;
        var start = Enumerable.Range(0, ring.Length).FirstOrDefault(i => !Looks(i));
        var run = new List<PaperPoint>();
        for (var k = 1; k <= ring.Length; k++)
        {
            var i = (start + k) % ring.Length;
            if (Looks(i))
            {
                run.AddRange(run.Count == 0 ? [ring[i], ring[(i + 1) % ring.Length]] : [ring[(i + 1) % ring.Length]]);
            }
            else if (run.Count > 0)
            {
                yield return run;
                run = [];
            }
        }
    }

    private static IEnumerable<IReadOnlyList<PaperPoint>> Clipped(IReadOnlyList<PaperPoint> line, Region within)
    {
        var run = new List<PaperPoint>();
        for (var i = 0; i + 1 < line.Count; i++)
        {
            foreach (var (from, to) in within.Cut(new(line[i].X, line[i].Y), new(line[i + 1].X, line[i + 1].Y)))
            {
                var (a, b) = (new PaperPoint(from.X, from.Y), new PaperPoint(to.X, to.Y));
                if (run.Count > 0 && (run[^1] - a).Length > 0.01)
                {
                    yield return run;
                    run = [];
                }

                run.AddRange(run.Count == 0 ? [a, b] : [b]);
            }
        }

        if (run.Count > 0)
        {
            yield return run;
        }
    }
}
