using DetailGen.Sections;

namespace DetailGen.Details.Parts;

/// <summary>A sheet to be laid on the left of a face.</summary>
/// <param name="Slot">Place for the material.</param>
/// <param name="Face">What it lies on, in mm, in the direction that has the sheet on its left.</param>
/// <param name="Thickness">mm.</param>
public sealed record LaidSheet(string Id, string Name, string Slot, Element Element, Roles Roles, Stage Stage, IReadOnlyList<Point> Face, double Thickness)
{
    /// <summary>Sheets that it laps where they lie on the same face, by id.</summary>
    public IReadOnlyList<string> Over { get; init; } = [];

    public Seat Seat { get; init; } = Seat.Between;

    /// <summary>It runs on to the end of the model and is cut off upright there.</summary>
    public bool RunsOn { get; init; }

    public IReadOnlyList<string> Parameters { get; init; } = [];

    /// <param name="under">The sheets of <see cref="Over"/> that there are.</param>
    internal Blank Laid(IReadOnlyList<Blank> under) => new(Id, Name, Slot, Element, Region(under), Roles, Precedence.Sheet, Stage)
    {
        Sheet = new(Face, Thickness, Over, Seat),
        Parameters = Parameters,
        Axis = LongestLeg().Unit,
    };

    private Region Region(IReadOnlyList<Blank> under)
    {
        var line = RunsOn ? [.. Face, Face[^1] + (Thickness * (Face[^1] - Face[^2]).Unit)] : Face;
        var region = Bands.Lay(line, Thickness, [.. under.Select(blank => blank.Region)], under.Sum(blank => blank.Sheet!.Thickness));
        return RunsOn ? region.Intersect(Sections.Region.Box(region.Bounds with { Right = Face[^1].X })) : region;
    }

    // the first of equal ones
    private Point LongestLeg() => Face.Zip(Face.Skip(1), (from, to) => to - from).MaxBy(leg => leg.Length);
}
