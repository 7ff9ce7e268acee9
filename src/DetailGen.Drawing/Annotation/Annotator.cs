using DetailGen.Drawing.Annotation.Dimensions;
using DetailGen.Drawing.Annotation.Notes;
using DetailGen.Sections;

namespace DetailGen.Drawing.Annotation;

/// <summary>
/// Annotates a drawn section: dimensions, levels and falls first, then the stack notes, then the notes on leaders, at last the labels of the spaces.
/// The same request gives the same layout; ties go by part id.
/// </summary>
public static class Annotator
{
    private const double BendOff = 9;
    private const double LevelsOff = 8;

    public static AnnotationLayout Place(AnnotationRequest request)
    {
        var surface = new Surface(request.View);
        var ground = Ground.Of(surface);
        var columns = Dimension(surface, request, ground, out var right, out var outer);
        FallArrows.Place(surface, request.Section.Falls.Where(fall => ground.IsSeen(surface, fall)));
        var told = Stacks(surface, request, ground, right, outer);
        var notes = Note.About(request, told, surface.ById);
        var placement = new NotePlacement(surface, request, columns);
        placement.Place(notes);
        SpaceLabels.Place(surface, request.Section.Spaces);

        var faults = LayoutCheck.Faults(surface.Items, request);
        var report = Reporting.Of(surface, placement, columns, faults, request);
        var bounds = Marks.Of(surface.Items).Bounds(surface.Turn(surface.DrawnWithBreaks));
        return new(
            surface.Items, bounds, report, placement.Keyed, surface.Unplaced,
            [.. placement.Placed.Select(placed => new EarlierPlace(placed.Block.Note.Id, placed.Column.Id, placed.Option.Level)).OrderBy(place => place.PartId, StringComparer.Ordinal)],
            faults);
    }

    /// <summary>Places the chains and levels and gives the columns that they leave for notes.</summary>
    private static List<Column> Dimension(Surface surface, AnnotationRequest request, Ground ground, out double right, out double outerBend)
    {
        var figures = request.Section.Measures.Where(measure => measure.Chain.Length > 0).GroupBy(measure => measure.Chain, StringComparer.Ordinal)
            .SelectMany(chain => Rounding.Of([.. chain]).Select(figure => (Chain: chain.Key, Figure: figure))).ToArray();
        var zone = surface.Zone;

        new SideDimensions(surface, Side.Below).Place(Of(Chains.WallFoot), surface.DrawnWithBreaks.Bottom);
        new SideDimensions(surface, Side.Above).Place(Of(Chains.Head), surface.DrawnWithBreaks.Top);
        var weather = new SideDimensions(surface, Side.Weather);
        weather.Place(Of(Chains.WeatherSide), Ground.WeatherEdge(Of(Chains.WeatherSide).Select(one => one.Figure), surface));

        // The roof's dimensions and levels stand beyond the notes that stand above the roof.
        var roofside = Of(Chains.RoofEnd, Chains.Heights);
        var aboveBend = ground.WallRight + BendOff;
        var depth = (roofside.Length == 0 ? 0 : DimensionRows.Assign(roofside, surface.Scale).Max(one => one.Row) * SideDimensions.Next + 4) + LevelsOff + Levels.Width(request);
        var wanted = aboveBend + Column.Shoulder + request.View.NoteWidth + 6;
        var first = Math.Max(surface.DrawnWithBreaks.Right + SideDimensions.First, Math.Min(wanted, zone.Right - depth));
        var roof = new SideDimensions(surface, Side.Roof);
        roof.Place(roofside, surface.DrawnWithBreaks.Right, first);
        var marks = Math.Max(roof.Reach, first - SideDimensions.First) + LevelsOff;
        Levels.Place(surface, request, marks, roof.Witnessed);
        if (marks - LevelsOff + depth > zone.Right + 60)
        {
            surface.Unplaced.Add(new("dimension", Chains.RoofEnd, "The zone is too narrow beside the roof."));
        }

        CloseDimensions.Place(surface, Of(Chains.Close).Select(one => one.Figure));

        outerBend = Math.Min(surface.DrawnWithBreaks.Left, weather.Reach) - BendOff;
        right = first - 5;
        var columns = new List<Column> { new("outer", -1, outerBend, new(Math.Min(zone.Left, outerBend), zone.Bottom, outerBend, zone.Top)) };
        columns.Add(new("above", 1, aboveBend, new(aboveBend, ground.RoofTop + 2, right, zone.Top)));
        columns.Add(new("below", 1, ground.RoomLeft + BendOff, new(ground.RoomLeft + BendOff, zone.Bottom, right, ground.Ceiling - 2)));
        columns.RemoveAll(column => column.Widest < 12 || column.Room.Height < 5);
        return columns;

        (string Chain, Figure Figure)[] Of(params string[] chains) => [.. figures.Where(one => chains.Contains(one.Chain))];
    }

    private static SortedSet<string> Stacks(Surface surface, AnnotationRequest request, Ground ground, double right, double bar)
    {
        var stacks = new StackNotes(surface, request);
        foreach (var buildup in request.Section.Buildups)
        {
            if (buildup.Id == "wall")
            {
                stacks.Wall(buildup, bar, ground.Foot);
            }
            else
            {
                stacks.Roof(buildup, ground.RoofEnd, Math.Max(right, surface.Zone.Right));
            }
        }

        return stacks.Told;
    }
}
