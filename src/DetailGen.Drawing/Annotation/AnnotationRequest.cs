using DetailGen.Drawing.Lettering;
using DetailGen.Drawing.Scenes;
using DetailGen.Drawing.Views;
using DetailGen.Sections;

namespace DetailGen.Drawing.Annotation;

/// <summary>How a part looks on paper, as far as notes must know.</summary>
public enum Look
{
    /// <summary>An outline with a fill: leaders end in a dot inside, text keeps off.</summary>
    Filled,

    /// <summary>A thin or black part: leaders end with an arrow head on its near face.</summary>
    Band,

    /// <summary>Air: white, text may stand in it.</summary>
    Open,

    /// <summary>Seen beyond: an outline without fill.</summary>
    Beyond,
}

/// <summary>A part as the view draws it.</summary>
/// <param name="Visible">What of it can be seen, in paper mm of the view (mirrored where the view is).</param>
/// <param name="FillAngles">Directions of the fill's straight lines, degrees; empty for loops, grains and white.</param>
public sealed record NotedPart(string Id, Region Visible, IReadOnlyList<double> FillAngles, Look Look)
{
    /// <summary>Edges of its bed joints: mortar is no place for the end of a leader that names the units.</summary>
    public IReadOnlyList<Stroke> Joints { get; init; } = [];
}

/// <summary>The finished drawing that is to be annotated.</summary>
/// <param name="Scale">s of 1:s.</param>
/// <param name="Lines">Lines outside the parts that text must not touch: break lines.</param>
/// <param name="Zone">Where annotation may stand, in paper mm of the view; the view's title is not in it.</param>
/// <param name="LongestLeader">mm: 60 on A4 and A3, 90 on A2, 130 on A1.</param>
/// <param name="NoteWidth">Widest a note may be, mm.</param>
public sealed record AnnotatedView(
    double Scale, bool Mirrored, IReadOnlyList<NotedPart> Parts, IReadOnlyList<Stroke> Lines, PaperBox Zone, double LongestLeader = 60, double NoteWidth = 62)
{
    /// <summary>How high its letters are.</summary>
    public TextSizes TextSizes { get; init; } = TextSizes.Usual;

    /// <summary>Lines of the sheet that reach into the zone, such as centring marks: nothing may touch them, and they are no part of the drawing.</summary>
    public IReadOnlyList<Stroke> SheetLines { get; init; } = [];

    /// <summary>Lines of the drawn parts that no leader may run along: outlines, joints, sheets. Fills are known by their angles, for a mirrored sheet keeps them.</summary>
    public IReadOnlyList<Stroke> Drawn { get; init; } = [];

    /// <summary>What of the sheet stands in the zone, such as the view's title: neither text nor leader goes there.</summary>
    public IReadOnlyList<PaperBox> Taken { get; init; } = [];

    // Drawn thinner than this a fixing is black, and a head touches it.
    private const double Black = 2;

    /// <summary>The view as drawn; sheets and black fixings are bands.</summary>
    public static AnnotatedView Of(DrawnView view, PaperBox zone, double longestLeader = 60, double noteWidth = 62) => new(
        view.Scale, view.Mirror,
        [.. view.Parts.Select(part => new NotedPart(part.Id, Uncovered(part, view), part.FillAngle is { } angle ? [angle] : [], LookOf(part)) { Joints = JointsOf(part, view) })],
        [.. view.Breaks.Select(BreakLines.Draw)], zone, longestLeader, noteWidth)
    {
        Drawn = [.. view.Items.Where(item => item.PartId is not null && !item.Row.StartsWith("fill.", StringComparison.Ordinal)).SelectMany(LinesOf), .. view.Parts.Where(part => part.IsSheet).Select(part => new Stroke("", part.Line))],
    };

    /// <summary>What ties, straps and open joints leave of a part that they are drawn over.</summary>
    private static Region Uncovered(DrawnPart drawn, DrawnView view)
    {
        if (drawn.IsSheet || drawn.Part.Presence == Presence.Local)
        {
            return drawn.Visible;
        }

        var over = view.Parts.Where(other => other.Part.Presence == Presence.Local && !other.IsSheet && other.Visible.Bounds.Meets(drawn.Visible.Bounds)).Select(other => other.Visible).ToArray();
        return over.Length == 0 || drawn.Visible.Minus(Region.Union(over)) is not { IsEmpty: false } rest ? drawn.Visible : rest;
    }

    private static IReadOnlyList<Stroke> JointsOf(DrawnPart drawn, DrawnView view) =>
        drawn.Part.Coursing is null ? [] : [.. view.Items.OfType<Stroke>().Where(stroke => stroke.PartId == Courses.JointsOf(drawn.Id))];

    private static IEnumerable<Stroke> LinesOf(Item item) => item switch
    {
        Stroke stroke => [stroke],
        Solid solid => [new(solid.Row, solid.Outline, true)],
        _ => [],
    };

    private static Look LookOf(DrawnPart drawn) =>
        drawn.Part.IsAir ? Look.Open
        : drawn.IsSheet ? Look.Band
        : drawn.Part.Presence == Presence.Beyond ? Look.Beyond
        : drawn.Part.Presence == Presence.Local && LocalParts.Slender(drawn.Visible) < Black ? Look.Band
        : Look.Filled;
}

/// <summary>Where notes stood in an earlier issue, so that they move little.</summary>
/// <param name="Column">Id of the column.</param>
/// <param name="Y">Of the leader's bend, paper mm.</param>
/// <param name="Width">Of the widest block of the column, mm.</param>
/// <param name="Tip">Where the leader ends, paper mm.</param>
/// <param name="Setback">How far before the column's bend line the leader bends, mm.</param>
/// <param name="Lines">In how many lines its words stand.</param>
public sealed record EarlierPlace(string PartId, string Column, double Y, double Width, PaperPoint Tip, double Setback, int Lines)
{
    /// <summary>Whether a reader finds the note of the part where it was: its leader leaves the same column at the same level.</summary>
    public bool IsLike(EarlierPlace other) => PartId == other.PartId && Column == other.Column && Math.Abs(Y - other.Y) < 0.01;
}

/// <summary>All that a layout starts from.</summary>
/// <param name="References">Part id to W1, R5, P2; parts without one have notes without reference.</param>
/// <param name="DatumAbove">Height of finished roof level over the building's datum in metres; null if none is given.</param>
/// <param name="Earlier">Empty for a first issue.</param>
public sealed record AnnotationRequest(
    Section Section, AnnotatedView View, IReadOnlyDictionary<string, string> References, double? DatumAbove, IReadOnlyList<EarlierPlace> Earlier);
