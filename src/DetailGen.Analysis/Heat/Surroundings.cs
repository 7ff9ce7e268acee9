using System.Collections.Immutable;
using DetailGen.Physics.Fields;
using DetailGen.Physics.Layers;
using DetailGen.Sections;

namespace DetailGen.Analysis.Heat;

/// <summary>Where the model is cut off; mm. No heat passes these planes.</summary>
/// <param name="Foot">Level of the plane through the wall below.</param>
/// <param name="End">Station of the plane through the roof.</param>
/// <param name="Head">Level of the plane through the wall above; null where the wall ends at the roof.</param>
internal sealed record CutOff(double Foot, double End, double? Head)
{
    internal Region Window => Region.Box(-1e5, Foot, End, Head ?? 1e5);
}

/// <summary>Finds which air each exposed edge looks at. Anticlockwise from the plane through the wall below come the room under the roof, the plane through the
/// roof, the outside, and where the wall goes on the plane through it and the higher room.</summary>
internal sealed class Surroundings(CutOff planes, HeatConditions conditions, bool threeAirs)
{
    private readonly FieldEnvironment _room = new(threeAirs ? "lower-room" : "room", conditions.Inside, FieldSide.Internal);
    private readonly FieldEnvironment _higher = new("higher-room", conditions.Inside, FieldSide.Internal);
    private readonly FieldEnvironment _outside = new("outside", conditions.Outside, FieldSide.External);

    private enum Plane
    {
        None,
        Foot,
        End,
        Head,
    }

    /// <summary>Lines along every exposed edge. Enclosed voids pass no heat.</summary>
    /// <returns>The lines, and how many enclosed voids there are.</returns>
    internal (ImmutableArray<FieldBoundary> Lines, int Voids) Around(Weld weld)
    {
        var loops = weld.Exposed();
        var main = loops.MaxBy(weld.Area)!;
        var lines = ImmutableArray.CreateBuilder<FieldBoundary>();
        lines.AddRange(Outer(main, weld.Corners));
        var voids = 0;
        foreach (var loop in loops.Where(loop => loop != main))
        {
            var alone = weld.Area(loop) > 0;
            voids += alone ? 0 : 1;
            lines.Add(new(alone ? _outside : null, alone ? SurfaceResistance.Outside : 0, [.. loop.Append(loop[0]).Select(corner => Place(weld.Corners[corner]))]));
        }

        return (lines.ToImmutable(), voids);
    }

    private IEnumerable<FieldBoundary> Outer(IReadOnlyList<int> loop, IReadOnlyList<Point> corners)
    {
        var sides = Enumerable.Range(0, loop.Count).Select(i => (From: corners[loop[i]], To: corners[loop[(i + 1) % loop.Count]])).ToArray();
        var on = sides.Select(side => On(side.From, side.To)).ToArray();
        var start = Array.FindIndex(on, (plane) => plane == Plane.Foot);
        FieldBoundary? open = null;
        var passed = Plane.Foot;
        for (var k = 0; k < sides.Length; k++)
        {
            var i = (start + k) % sides.Length;
            passed = on[i] == Plane.None ? passed : on[i];
            var (air, film) = on[i] == Plane.None ? Beside(passed, sides[i].From, sides[i].To) : (null, 0);
            if (open is { } line && line.Environment == air && line.Film == film)
            {
                open = line with { Line = line.Line.Add(Place(sides[i].To)) };
                continue;
            }

            if (open is not null)
            {
                yield return open;
            }

            open = new(air, film, [Place(sides[i].From), Place(sides[i].To)]);
        }

        yield return open!;
    }

    private (FieldEnvironment Air, double Film) Beside(Plane passed, Point from, Point to)
    {
        if (passed == Plane.End)
        {
            return (_outside, SurfaceResistance.Outside);
        }

        // outwards is to the right of an anticlockwise edge; within 30° of level the heat counts as going sideways
        var outwards = (from - to).Unit.Left;
        var flow = Math.Abs(outwards.Y) <= 0.5 + 1e-9 ? Flow.Horizontal : outwards.Y < 0 ? Flow.Upwards : Flow.Downwards;
        return (passed == Plane.Head ? _higher : _room, SurfaceResistance.Inside(flow));
    }

    private Plane On(Point from, Point to)
    {
        bool Level(double y) => Math.Abs(from.Y - y) <= Weld.Reach && Math.Abs(to.Y - y) <= Weld.Reach;
        return Level(planes.Foot) ? Plane.Foot
            : planes.Head is { } head && Level(head) ? Plane.Head
            : Math.Abs(from.X - planes.End) <= Weld.Reach && Math.Abs(to.X - planes.End) <= Weld.Reach ? Plane.End
            : Plane.None;
    }

    internal static FieldPlace Place(Point at) => new(at.X, at.Y);
}
