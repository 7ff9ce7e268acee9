using System.Collections.Immutable;
using DetailGen.Physics.Fields;
using DetailGen.Physics.Layers;
using DetailGen.Sections;

namespace DetailGen.Analysis.Heat;

/// <summary>From the section as drawn to the thermal model, by steps that the model tells. Mirroring is the drawing's affair, so it changes nothing here.</summary>
public static class ThermalModelling
{
    /// <summary>Cut-off planes keep this distance from the junction, and three thicknesses of the element; mm (ISO 10211:2017, cut-off planes, from memory).</summary>
    private const double Least = 1000;

    /// <exception cref="ArgumentException">The section has no run down the wall or along the roof, or no level of the finished roof.</exception>
    public static ThermalModel Of(Section section, HeatConditions conditions)
    {
        var steps = new List<string>();
        var level = LevelRoof.Of(section);
        if (section.Falls.Any(fall => fall.Id == "roof.fall"))
        {
            steps.Add(Messages.RoofLaidLevel);
        }

        var cut = level.Where(pair => pair.Part.Presence == Presence.Cut).ToArray();
        var drawn = Drawn(section);
        var kept = UnderTheMembrane(section, cut, steps);
        Solid[] solids = [.. Conductivities.Of([.. kept.Where(pair => !IsThin(pair.Part))]), .. kept.Where(pair => IsThin(pair.Part)).Select(pair => new Solid(pair.Part, pair.Region, 0, true))];
        TellRepeats(solids, steps);
        Solid[] within = [.. ThinSheets.WithoutOutdoorAir(solids, drawn.Window)];
        Tell(steps, solids.Except(within).Where(solid => solid.Part.IsAir).Select(solid => solid.Part), Messages.OutdoorAir);
        Tell(steps, within.Where(solid => solid.Sheet).Select(solid => solid.Part), parts => Messages.ThinSheets(parts, ThinSheets.Thick));
        var standing = ThinSheets.Absorbed(within);
        if (standing.Any(solid => solid.Part.IsAir || solid.Part.Repeat is { Width: > 0, Centres: > 0 }))
        {
            steps.Add(Messages.AirLayers);
        }

        Tell(steps, section.Parts.Where(part => part.Presence == Presence.Local), Messages.Fixings);
        return Cut(section, standing, drawn, conditions, steps);
    }

    private static ThermalModel Cut(Section section, IReadOnlyList<Solid> standing, CutOff drawn, HeatConditions conditions, List<string> steps)
    {
        var datum = section.Levels.FirstOrDefault(mark => mark.Name == "finished-roof")?.At.X ?? throw new ArgumentException("The section has no finished roof.", nameof(section));
        var ceiling = section.Levels.FirstOrDefault(mark => mark.Name == "ceiling")?.Y ?? throw new ArgumentException("The section has no ceiling.", nameof(section));
        var period = RoofPeriod.Of(standing);
        var roof = Across(standing, Axis.Vertical, drawn.End - 1);
        var needed = datum + Math.Max(Least, 3 * (roof.To - roof.From));
        var end = period?.PlaneFrom(needed) ?? needed;
        var run = RoofPeriod.RunOn(standing, drawn.End, end, period);
        var planes = drawn with { End = end };
        var solids = Together(Joined(run, planes.Window, steps), planes.Window);
        var weld = Weld.Of([.. solids.Select(solid => solid.Region)]);
        var threeAirs = planes.Head is not null;
        var (lines, voids) = new Surroundings(planes, conditions, threeAirs).Around(weld);
        steps.Add(Messages.CutOff(ceiling - planes.Foot, end - datum, planes.Head));
        if (period is not null)
        {
            steps.Add(Messages.Symmetry);
        }

        if (voids > 0)
        {
            steps.Add(Messages.Voids(voids));
        }

        steps.Add(Messages.Lengths(threeAirs));
        var asked = new FieldCase(section.Junction, Regions(solids, weld), lines, [], [], conditions.MouldFilm, conditions.WantedError);
        return new(asked, solids, [.. Flanks(run, planes, conditions, period)], steps) { Between = threeAirs ? Between(run, planes) : null };
    }

    // What no solid joins to the rest, such as a thick metal coping that stands on a membrane, keeps no heat in.
    private static IReadOnlyList<Solid> Joined(IReadOnlyList<Solid> solids, Region window, List<string> steps)
    {
        var pieces = Region.Union(solids.Select(solid => solid.Region.Intersect(window))).Pieces.Select(piece => Region.Polygon([.. piece.Outline])).ToArray();
        var body = pieces.MaxBy(piece => piece.Area)!;
        if (pieces.Length > 1)
        {
            solids = [.. solids.Select(solid => solid with { Region = pieces.Where(piece => piece != body).Aggregate(solid.Region, (left, piece) => left.Minus(piece)) })];
            steps.Add(Messages.Detached);
        }

        return solids;
    }

    private static IEnumerable<Flank> Flanks(IReadOnlyList<Solid> solids, CutOff planes, HeatConditions conditions, RoofPeriod? period)
    {
        var below = Across(solids, Axis.Horizontal, planes.Foot + 1);
        var roof = Across(solids, Axis.Vertical, planes.End - 1);
        var wallFilms = (SurfaceResistance.Inside(Flow.Horizontal), SurfaceResistance.Outside);
        var weather = below.From;
        if (planes.Head is { } head)
        {
            var above = Across(solids, Axis.Horizontal, head - 1);
            weather = above.To;
            yield return new("wall", head - roof.From, head - roof.To, [.. above.Layers.Reverse()], wallFilms, null);
        }
        else
        {
            yield return new("wall", roof.From - planes.Foot, roof.To - planes.Foot, below.Layers, wallFilms, null);
        }

        var bay = period is null ? null : RoofBay(solids, planes, conditions, period);
        yield return new(
            "roof", planes.End - below.To, planes.End - weather, bay is null ? [.. roof.Layers.Reverse()] : [],
            (SurfaceResistance.Inside(Flow.Upwards), SurfaceResistance.Outside), bay);
    }

    /// <summary>From the plane below up to the ceiling, with inside dimensions, or to the outside surface of the roof: where the wall above begins.</summary>
    private static Flank Between(IReadOnlyList<Solid> solids, CutOff planes)
    {
        var roof = Across(solids, Axis.Vertical, planes.End - 1);
        var inside = SurfaceResistance.Inside(Flow.Horizontal);
        return new("wall-between", roof.From - planes.Foot, roof.To - planes.Foot, Across(solids, Axis.Horizontal, planes.Foot + 1).Layers, (inside, inside), null);
    }

    private static Bay RoofBay(IReadOnlyList<Solid> solids, CutOff planes, HeatConditions conditions, RoofPeriod period)
    {
        var width = period.Centres / 2;
        var (left, right) = (planes.End - width, planes.End);
        var slice = Together(solids, Region.Box(left, -1e5, right, 1e5));
        var weld = Weld.Of([.. slice.Select(solid => solid.Region)]);
        var top = new FieldEnvironment("outside", conditions.Outside, FieldSide.External);
        var under = new FieldEnvironment("room", conditions.Inside, FieldSide.Internal);
        var loop = weld.Exposed().MaxBy(weld.Area)!;
        var lines = Enumerable.Range(0, loop.Count).Select(i => (From: weld.Corners[loop[i]], To: weld.Corners[loop[(i + 1) % loop.Count]])).Select(side =>
        {
            var (air, film) = Math.Abs(side.To.X - side.From.X) <= Weld.Reach ? (null, 0.0)
                : side.To.X > side.From.X ? (under, SurfaceResistance.Inside(Flow.Upwards)) : (top, SurfaceResistance.Outside);
            return new FieldBoundary(air, film, [Surroundings.Place(side.From), Surroundings.Place(side.To)]);
        });
        // so close that the error of U over the roof's length is small beside that of the junction
        return new(new("bay", Regions(slice, weld), [.. lines], [], [], null, conditions.WantedError / 10), width);
    }

    private static ImmutableArray<FieldRegion> Regions(IReadOnlyList<ThermalSolid> solids, Weld weld)
    {
        ImmutableArray<FieldPlace> Places(IReadOnlyList<int> ring) => [.. ring.Select(corner => Surroundings.Place(weld.Corners[corner]))];
        return [.. weld.Pieces.Select(piece => new FieldRegion(solids[piece.Solid].Material.Id, solids[piece.Solid].Conductivity, Places(piece.Outline), [.. piece.Holes.Select(Places)]))];
    }

    /// <summary>Solids of one material and conductivity as one, within a window; in build order.</summary>
    private static IReadOnlyList<ThermalSolid> Together(IReadOnlyList<Solid> solids, Region window) =>
    [
        .. solids.OrderBy(solid => solid.Part.BuildOrder).GroupBy(solid => (solid.Part.Material.Id, solid.Conductivity))
            .Select(group => new ThermalSolid(
                group.First().Part.Material, [.. group.Select(solid => solid.Part.Id).Distinct()], group.Key.Conductivity,
                Region.Union(group.Select(solid => solid.Region.Intersect(window)))))
            .Where(solid => !solid.Region.IsEmpty),
    ];

    /// <summary>What a line crosses, in the direction of growing x or y.</summary>
    private static (double From, double To, IReadOnlyList<(double Thickness, double Conductivity)> Layers) Across(IReadOnlyList<Solid> solids, Axis axis, double at)
    {
        var line = axis == Axis.Horizontal ? (From: new Point(-1e5, at), To: new Point(1e5, at)) : (From: new Point(at, -1e5), To: new Point(at, 1e5));
        var pieces = solids.SelectMany(solid => solid.Region.Cut(line.From, line.To).Select(piece => (piece.From, piece.To, solid.Conductivity)))
            .Where(piece => (piece.To - piece.From).Length > Weld.Reach).OrderBy(piece => piece.From.X).ThenBy(piece => piece.From.Y).ToArray();
        double Along(Point point) => axis == Axis.Horizontal ? point.X : point.Y;
        return pieces.Length == 0
            ? throw new ArgumentException("Nothing lies at the cut-off plane.", nameof(at))
            : (Along(pieces[0].From), Along(pieces[^1].To), [.. pieces.Select(piece => ((piece.To - piece.From).Length, piece.Conductivity))]);
    }

    private static (Part Part, Region Region)[] UnderTheMembrane(Section section, (Part Part, Region Region)[] cut, List<string> steps)
    {
        if (LevelRoof.FieldSheet(section) is not { } membrane || cut.FirstOrDefault(pair => pair.Part == membrane) is not { Region: { } sheet })
        {
            return cut;
        }

        var (left, top) = (sheet.Bounds.Left, sheet.Bounds.Top - membrane.Sheet!.Thickness);
        bool Lies((Part Part, Region Region) pair) => pair.Part.Element == Sections.Element.Roof && !pair.Part.Roles.HasFlag(Roles.WaterBarrier) && IsOver(pair.Region);

        // more of it than not; most bounds tell already
        bool IsOver(Region region) => region.Bounds is var box && box.Right > left && box.Top > top
            && ((box.Left >= left && box.Bottom >= top) || region.Intersect(Region.Box(left, top, box.Right + 1, box.Top + 1)).Area > region.Area / 2);
        var lies = Array.ConvertAll(cut, Lies);
        Tell(steps, cut.Where((_, i) => lies[i]).Select(pair => pair.Part), Messages.OnTheMembrane);
        return [.. cut.Where((_, i) => !lies[i])];
    }

    private static CutOff Drawn(Section section)
    {
        double End(Heading heading) => section.Runs.FirstOrDefault(run => run.Heading == heading)?.End ?? throw new ArgumentException($"Nothing runs {heading}.", nameof(section));
        return new(End(Heading.Down), End(Heading.Along), section.Runs.FirstOrDefault(run => run.Heading == Heading.Up)?.End);
    }

    private static bool IsThin(Part part) => part.Sheet is { Thickness: < ThinSheets.Thick };

    private static void TellRepeats(IEnumerable<Solid> solids, List<string> steps)
    {
        foreach (var group in solids.Where(solid => solid.Part is { IsAir: false, Repeat: { Width: > 0, Centres: > 0 } }).GroupBy(solid => solid.Part.Id))
        {
            var solid = group.Last();
            steps.Add(Messages.Repeating(solid.Part.Name, solid.Part.Repeat!.Width, solid.Part.Repeat.Centres, solid.Conductivity));
        }
    }

    private static void Tell(List<string> steps, IEnumerable<Part> parts, Func<IEnumerable<string>, string> words)
    {
        string[] all = [.. parts.Select(part => part.Name.ToLowerInvariant()).Distinct(StringComparer.Ordinal)];
        if (all.Length > 0)
        {
            steps.Add(words(all));
        }
    }
}
