using DetailGen.Drawing.Lettering;
using DetailGen.Drawing.Scenes;
using DetailGen.Drawing.Views;
using DetailGen.Sections;

namespace DetailGen.Drawing.Sheets;

/// <summary>The signs of the key: what annotation and edges mean, exactly those that occur in the view. Pictures in a box of 10 × 5.</summary>
internal static class KeySigns
{
    private const double Middle = Key.SwatchHeight / 2;

    /// <param name="annotation">Items of the layout.</param>
    /// <param name="numbers">Whether notes stand on the view as numbers.</param>
    /// <param name="rings">Whether something is ringed and drawn larger.</param>
    internal static IEnumerable<KeyEntry> Of(TextSizes sizes, DrawnView view, IReadOnlyList<Item> annotation, bool numbers, bool rings)
    {
        var groups = annotation.OfType<Group>().ToArray();
        if (view.Parts.FirstOrDefault(part => part.Part.Presence == Presence.Local && !part.Visible.IsEmpty)?.Part is { } local)
        {
            yield return new("fixing, not at every section", [new Stroke(Rows.Local(local), [new(0, Middle), new(10, Middle)])]);
        }

        if (view.Parts.FirstOrDefault(part => part.Part.Presence == Presence.Beyond && !part.Visible.IsEmpty)?.Part is { } beyond)
        {
            yield return new("edge seen beyond", [new Stroke(Rows.Beyond(beyond), [new(0, Middle), new(10, Middle)])]);
        }

        if (view.Breaks.Count > 0)
        {
            yield return new("break line: goes on", [BreakLines.Draw(new("key", new(0, Middle), new(10, Middle), false, [5]))]);
        }

        var leaders = groups.Where(group => group.Items.Any(item => item.Row == "note.leader")).ToArray();
        if (leaders.Any(group => group.Items.Any(item => item is Dot)))
        {
            yield return new("dot: in the part", [new Stroke("note.leader", [new(0, Middle), new(8, Middle)]), new Dot("note.leader", new(8, Middle), 1)]);
        }

        if (leaders.Any(group => group.Items.Any(item => item is Solid)))
        {
            yield return new("arrow: on its edge", [new Stroke("note.leader", [new(0, Middle), new(6, Middle)]), Head(sizes, "note.leader", 8)]);
        }

        if (numbers)
        {
            yield return new("note by number: see the list", [new Text("note.text", "P1", new(0.5, Middle - (sizes.Notes / 2)), sizes.Notes, Bold: true), new Stroke("note.leader", [new(sizes.ByWord(5.5, "P1", bold: true), Middle), new(10, Middle)])]);
        }

        if (rings)
        {
            yield return new("ring: drawn larger; figure: its sheet", [new Ring("detail.ring", new(2.5, Middle), 4.6), new Text("detail.ring", "A", new(6, Middle - (sizes.Notes / 2)), sizes.Notes)]) { IsSpare = true };
        }

        if (annotation.Any(item => item is Dimension))
        {
            yield return new("size, mm", [new Stroke("dim.chain", [new(0, Middle), new(10, Middle)]), Tick(1.5), Tick(8.5)]);
        }

        var levels = groups.Where(group => group.Row == "dim.level").ToArray();
        if (levels.Any(group => group.Items.Any(item => item is Stroke { Closed: true })))
        {
            yield return new("level, finished; half black: datum", [Level(closed: true, 2.5), Level(closed: true, 7.5), Half(7.5)]);
        }

        if (levels.Any(group => !group.Items.Any(item => item is Stroke { Closed: true })))
        {
            yield return new("level, structure", [Level(closed: false, 5)]);
        }

        if (groups.Any(group => group.Row == "dim.fall"))
        {
            yield return new("fall, downhill", [new Stroke("dim.fall", [new(0, Middle), new(7.5, Middle)]), Head(sizes, "dim.fall", 10)]);
        }
    }

    private static Solid Head(TextSizes sizes, string row, double tip)
    {
        var (foot, half) = (tip - sizes.ByNotes(2.5), sizes.ByNotes(0.33));
        return new(row, [new(tip, Middle), new(foot, Middle - half), new(foot, Middle + half)], []);
    }

    private static Stroke Tick(double at) => new("dim.stroke", [new(at - 0.9, Middle - 0.9), new(at + 0.9, Middle + 0.9)]);

    private static Stroke Level(bool closed, double at) => new("dim.level", [new(at - 2, Middle + 1), new(at, Middle - 1), new(at + 2, Middle + 1)], closed);

    private static Solid Half(double at) => new("dim.level", [new(at, Middle - 1), new(at + 2, Middle + 1), new(at, Middle + 1)], []);
}
