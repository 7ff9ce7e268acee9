using DetailGen.Drawing.Annotation.Dimensions;
using DetailGen.Drawing.Annotation.Notes;
using DetailGen.Drawing.Scenes;
using DetailGen.Sections;

namespace DetailGen.Drawing.Annotation;

/// <summary>
/// Annotates a drawn section: dimensions, levels and falls first, then the stack notes, then the notes on leaders, at last the labels of the spaces.
/// The same request gives the same layout; ties go by part id.
/// </summary>
public static class Annotator
{
    private const double BendOff = 9;

    /// <summary>So near the wall the references of a stack stand where there is no other room.</summary>
    private const double NearBend = 4;

    /// <summary>So far off the wall leaders bend above the roof where there is room: steep ones then reach twice as high, and as many more notes stand on the roof's side of the wall.</summary>
    private const double BendFarOff = 22;

    /// <summary>Between the dimensions and the levels; less where the zone ends before.</summary>
    private const double LevelsOff = 8, LeastLevelsOff = 5;

    /// <summary>As wide a note as a reader takes in at once; wider ones are for need.</summary>
    private const double Usual = 62;

    /// <summary>How often notes that found no place may share the marks of others.</summary>
    private const int SharingRounds = 4;

    public static AnnotationLayout Place(AnnotationRequest request) => PlaceBetter(request, int.MaxValue)!;

    /// <param name="toBeat">What another sheet lacks (<see cref="AnnotationLayout.Lack"/>).</param>
    /// <returns>Null where so much is missing, or left over before numbers are given, that this one promises nothing better.</returns>
    internal static AnnotationLayout? PlaceBetter(AnnotationRequest request, int toBeat) => PlaceBetter(request, Base(request), toBeat);

    /// <param name="before">What stands before the notes; the layout takes it over.</param>
    internal static AnnotationLayout? PlaceBetter(AnnotationRequest request, Prepared before, int toBeat)
    {
        var layout = Try(request, before, toBeat, labelsFirst: false, [], out var clear);

        // Rather one mark for two parts that lie close than none for one of them.
        List<string> sharing = [];
        var tried = layout;
        for (var round = 0; round < SharingRounds && tried is not null && Lost(tried, sharing) is { Length: > 0 } lost; round++)
        {
            sharing.AddRange(lost);
            tried = Try(request, Base(request), toBeat, labelsFirst: false, sharing, out var isClear);
            (layout, clear) = tried is not null && tried.Lacking < layout!.Lacking ? (tried, isClear) : (layout, clear);
        }

        // The names of the spaces before the notes, where these leave no white for one on its own side of the wall, as long as that makes no number of a note.
        return layout is not null && !clear && Try(request, Base(request), Math.Min(toBeat, layout.Lacking + 1), labelsFirst: true, sharing, out _) is { } other && other.Lacking <= layout.Lacking ? other : layout;
    }

    private static string[] Lost(AnnotationLayout layout, List<string> sharing) => [.. layout.Unplaced.Where(one => one.What == NotePlacement.What).Select(one => one.Id).Except(sharing, StringComparer.Ordinal)];

    /// <param name="labelsFirst">The names of the spaces before the notes.</param>
    /// <param name="sharing">Notes that share the mark of the nearest other part.</param>
    /// <param name="clear">Whether each of them stands where it belongs to its space alone.</param>
    private static AnnotationLayout? Try(AnnotationRequest request, Prepared before, int toBeat, bool labelsFirst, IReadOnlyList<string> sharing, out bool clear)
    {
        clear = true;
        var (surface, columns, close, stacks) = before;
        if (surface.Unplaced.Exists(one => one.What == StackNotes.What) && Base(request, stacksFirst: true) is var other && other.Surface.Unplaced.Count < surface.Unplaced.Count)
        {
            (surface, columns, close, stacks) = other;
        }

        if (surface.Unplaced.Exists(one => one.What == StackNotes.What) && Base(request, stacksByReference: true) is var brief && brief.Surface.Unplaced.Count < surface.Unplaced.Count)
        {
            (surface, columns, close, stacks) = brief;
        }

        columns = [.. columns.Select(column => stacks.Cramp(column)).Where(column => column is { Widest: >= 12, Room.Height: >= 5 })];
        var notes = SharedMarks.Join([.. Note.About(request, stacks.Told, surface.ById, surface.Told).Concat(stacks.Apart).OrderBy(note => note.Id, StringComparer.Ordinal)], surface, sharing);
        if (labelsFirst)
        {
            clear = SpaceLabels.Place(surface, request.Section.Spaces);
        }

        var placement = new NotePlacement(surface, request, columns);
        if (AnnotationLayout.Lack(surface.Unplaced.Count, 0) >= toBeat || !placement.Place(notes, toBeat))
        {
            return null;
        }

        // Sizes that a note gives as well take the white that the leaders leave.
        CloseDimensions.Place(surface, close.Where(figure => CloseDimensions.IsTold(request.Section, figure)), told: true);
        if (!labelsFirst)
        {
            clear = SpaceLabels.Place(surface, request.Section.Spaces);
        }

        var faults = LayoutCheck.Faults(surface.Items, request);
        var report = Reporting.Of(surface, placement, columns, faults, request);
        return new(
            surface.Items, Bounds(surface), report, KeyedNote.InOrder([.. stacks.Keyed, .. placement.Keyed]), surface.Unplaced,
            [.. placement.Placed.Select(placed => new EarlierPlace(placed.Block.Note.Id, placed.Column.Id, placed.Option.Level, placed.ColumnWidth, placed.Option.Tip, placed.Option.Setback, placed.Block.Lines.Count)).OrderBy(place => place.PartId, StringComparer.Ordinal)],
            faults);
    }

    /// <summary>All that stands before the notes.</summary>
    /// <param name="stacksFirst">The stacks before the arrows of falls, and the wall's before the roof's: for sheets on which else one of them finds no place.</param>
    /// <param name="stacksByReference">References alone, whose words are listed, of a stack that has no room for more; of one that has no room for them either a note for each layer.</param>
    internal static Prepared Base(AnnotationRequest request, bool stacksFirst = false, bool stacksByReference = false)
    {
        var surface = new Surface(request.View);
        var ground = Ground.Of(surface);
        var columns = Dimension(surface, request, ground, out var close, out var right, out var outer);
        if (!stacksFirst)
        {
            FallArrows.Place(surface, request.Section, ground);
        }

        var stacks = Stacks(surface, request, ground, right, outer, stacksFirst, stacksByReference);
        if (stacksFirst)
        {
            FallArrows.Place(surface, request.Section, ground);
        }

        return new(surface, columns, close, stacks);
    }

    /// <summary>Places the chains and levels and gives the columns that they leave for notes.</summary>
    private static List<Column> Dimension(Surface surface, AnnotationRequest request, Ground ground, out Figure[] close, out double right, out double outerBend)
    {
        var figures = Figures(request);
        var zone = surface.Zone;

        new SideDimensions(surface, Side.Below).Place(Of(Chains.WallFoot), surface.DrawnWithBreaks.Bottom);
        new SideDimensions(surface, Side.Above).Place(Of(Chains.Head), surface.DrawnWithBreaks.Top);
        var weather = new SideDimensions(surface, Side.Weather);
        weather.Place(Of(Chains.WeatherSide), Ground.WeatherEdge(Of(Chains.WeatherSide).Select(one => one.Figure), surface));

        // The roof's dimensions and levels stand beyond the notes that stand above the roof.
        var roofside = Of(Chains.RoofEnd, Chains.Heights);
        var roof = new SideDimensions(surface, Side.Roof);
        var depth = roof.Depth(roofside) + LevelsOff + Levels.Width(request);
        var need = ground.WallRight + Column.Shoulder + NoteWidth(request) + 6;
        var most = Math.Max(zone.Right - depth, surface.DrawnWithBreaks.Right + SideDimensions.First);
        var aboveBend = ground.WallRight + Math.Clamp(most - need, BendOff, BendFarOff);
        var wanted = need + aboveBend - ground.WallRight;
        var first = Math.Max(surface.DrawnWithBreaks.Right + SideDimensions.First, Math.Min(wanted, zone.Right - depth));
        roof.Place(roofside, surface.DrawnWithBreaks.Right, first);
        var marks = Math.Max(roof.Reach, first - SideDimensions.First) + LevelsOff;
        marks -= Math.Clamp(marks + Levels.Width(request) - zone.Right, 0, LevelsOff - LeastLevelsOff);
        Levels.Place(surface, request, marks, roof.Reach + 1, roof.Witnessed);
        close = [.. Of(Chains.Close).Select(one => one.Figure)];
        CloseDimensions.Place(surface, close.Where(figure => !CloseDimensions.IsTold(request.Section, figure)), told: false);

        outerBend = Math.Min(surface.DrawnWithBreaks.Left, weather.Reach) - BendOff;
        right = first - 5;
        var columns = new List<Column>();
        if (Ground.Void(surface) is { } hollow)
        {
            columns.Add(new("void", 1, hollow.Left + 5, hollow with { Left = hollow.Left + 5, Right = Math.Min(hollow.Right, surface.Drawn.Right) - 1 }));
        }

        // The outer column stands last: it is the longest and takes what the others have no room for.
        columns.Add(new("above", 1, aboveBend, new(aboveBend, ground.RoofTop + 2, right, zone.Top)));
        if (Sky(surface, ground, right, aboveBend) is { } sky)
        {
            columns.Add(sky);
        }

        columns.Add(new("below", 1, ground.RoomLeft + BendOff, new(ground.RoomLeft + BendOff, zone.Bottom, right, ground.Ceiling - 2)));
        columns.Add(new("outer", -1, outerBend, new(Math.Min(zone.Left, outerBend), zone.Bottom, outerBend, zone.Top)));
        return columns;

        (string Chain, Figure Figure)[] Of(params string[] chains) => [.. figures.Where(one => chains.Contains(one.Chain))];
    }

    /// <summary>How wide the view will be with all that is said of it, mm; notes before the wall are taken to be as wide as a reader takes in at once.</summary>
    internal static double WidthForeseen(AnnotationRequest request, Prepared before)
    {
        var stands = before.Surface.Turn(Bounds(before.Surface));
        return stands.Right - before.Columns.Where(column => column.Side < 0).Select(column => column.Bend - Column.Shoulder - NoteWidth(request)).Append(stands.Left).Min();
    }

    private static PaperBox Bounds(Surface surface) => Marks.Of(surface.Items, surface.Sizes.Typeface).Bounds(surface.Turn(surface.DrawnWithBreaks));

    private static double NoteWidth(AnnotationRequest request) => Math.Min(request.View.TextSizes.ByNotes(Usual), request.View.NoteWidth);

    /// <summary>Over the dimensions and levels at the roof's end the paper is white up to the frame and as wide as it is; null where it is hardly wider than the column below it.</summary>
    private static Column? Sky(Surface surface, Ground ground, double right, double aboveBend)
    {
        const double OwnLine = 6, Clear = 3, Wider = 15;
        var bend = aboveBend + OwnLine;
        var marks = surface.Texts.Where(text => text.Right > bend && text.Top > ground.RoofTop).Select(text => text.Top)
            .Concat(surface.Hard.Where(line => Math.Max(line.From.X, line.To.X) > bend).Select(line => Math.Max(line.From.Y, line.To.Y)))
            .Where(top => top < surface.Zone.Top - Clear).DefaultIfEmpty(ground.RoofTop).Max();
        return surface.Zone.Right > right + Wider ? new("sky", 1, bend, new(bend, marks + Clear, surface.Zone.Right, surface.Zone.Top)) : null;
    }

    /// <summary>How much the dimensions and levels at the roof's end take beyond the zone however close they stand; mm, 0 where they keep to it.</summary>
    internal static double LackBeside(AnnotationRequest request)
    {
        var surface = new Surface(request.View);
        var figures = Figures(request).Where(one => one.Chain is Chains.RoofEnd or Chains.Heights).ToArray();
        var first = surface.DrawnWithBreaks.Right + SideDimensions.First;
        return Math.Max(0, first + new SideDimensions(surface, Side.Roof).Depth(figures) + LeastLevelsOff + Levels.Width(request) - surface.Zone.Right);
    }

    private static (string Chain, Figure Figure)[] Figures(AnnotationRequest request) =>
    [
        .. request.Section.Measures.Where(measure => measure.Chain.Length > 0).GroupBy(measure => measure.Chain, StringComparer.Ordinal)
            .SelectMany(chain => Rounding.Of([.. chain]).Select(figure => (chain.Key, figure))),
    ];

    /// <param name="wallFirst">Whether the wall's stack takes the room behind the wall before the roof's looks for a place, where there is no room before it.</param>
    private static StackNotes Stacks(Surface surface, AnnotationRequest request, Ground ground, double right, double bar, bool wallFirst, bool byReference)
    {
        var stacks = new StackNotes(surface, request);
        var missing = request.Section.Buildups.Where(buildup => !(IsWall(buildup) ? Before(buildup) || (wallFirst && Behind(buildup)) : Roof(buildup))).ToArray();
        foreach (var buildup in missing.Where(buildup => !IsWall(buildup) || wallFirst || !Behind(buildup)))
        {
            if (!byReference)
            {
                surface.Unplaced.Add(new(StackNotes.What, buildup.Id, "No place near the cut end shows all its layers and holds its text."));
            }
            else if (!ByReference(buildup))
            {
                stacks.TakeApart(buildup);
            }
        }

        return stacks;

        bool Before(Buildup wall) => stacks.Wall(wall, bar, -1, ground.Foot, byReference: false);

        // The room often begins nearer to the wall than what stands above the roof.
        bool Behind(Buildup wall, bool byReference = false) => new[] { ground.RoomLeft, ground.WallRight }.Any(face => stacks.Wall(wall, face + BendOff, 1, ground.Foot, byReference));
        bool Roof(Buildup roof, bool byReference = false) => stacks.Roof(roof, ground.RoofEnd, Math.Max(right, surface.Zone.Right), byReference);

        // Beside the wall as well, where dimensions stand higher up.
        bool ByReference(Buildup buildup) => IsWall(buildup)
            ? new[] { bar, surface.Drawn.Left - BendOff, surface.Drawn.Left - NearBend }.Any(at => stacks.Wall(buildup, at, -1, ground.Foot, byReference: true)) || Behind(buildup, true)
            : Roof(buildup, true);
    }

    private static bool IsWall(Buildup buildup) => buildup.Id == "wall";
}

/// <summary>A view with all that stands before its notes.</summary>
/// <param name="Columns">Where notes may stand.</param>
/// <param name="Close">Sizes beside their places.</param>
internal sealed record Prepared(Surface Surface, IReadOnlyList<Column> Columns, Figure[] Close, StackNotes Stacks);
