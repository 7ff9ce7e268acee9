using DetailGen.Drawing.Lettering;
using DetailGen.Drawing.Scenes;
using DetailGen.Drawing.Views;
using DetailGen.Sections;

namespace DetailGen.Drawing.Sheets.Companions;

/// <summary>
/// Where water, air, vapour and heat are stopped: the parts with that task, each by a line along the side that does it, and for heat by its fill, over the thin outlines of the section.
/// Whether they are unbroken is for the checks; the sheet says so.
/// </summary>
internal static class ControlLines
{
    private const string Id = "control-lines";
    private const double Sample = 18;
    private const double MostLegend = 76;
    private const double Clear = 4;

    private static readonly (Roles Role, string Row, string Words)[] Lines =
    [
        (Roles.WaterBarrier, "control.water", "Water"),
        (Roles.AirBarrier, "control.air", "Air"),
        (Roles.VapourControl, "control.vapour", "Vapour"),
    ];

    internal static CompanionSheet Of(CompanionBasis basis)
    {
        // Ties and fixings would interrupt the fills, and are not shown.
        var parts = basis.Section.Parts.Where(part => part.IsAir || part.Presence != Presence.Local);
        var drawn = SectionView.Draw(basis.Section with { Parts = [.. parts] }, new(basis.Drawn.Scale, basis.Window, basis.Drawn.Mirror));
        var insulation = Having(basis, Roles.Insulation).Select(part => part.Id).ToHashSet(StringComparer.Ordinal);
        List<Item> items =
        [
            .. drawn.Items.Where(item => IsFill(item) && item.PartId is { } part && insulation.Contains(part)),
            .. drawn.Items.OfType<Stroke>().Where(IsOutline).Select(CompanionBasis.Thin),
        ];
        var paths = new ControlPaths(basis, [.. Lines.Select(line => line.Role)]);
        var names = new Dictionary<Roles, IReadOnlyList<string>> { [Roles.Insulation] = Named(Having(basis, Roles.Insulation)) };
        foreach (var (role, row, _) in Lines)
        {
            var along = Having(basis, role).Select(part => (Part: part, Lines: paths.Of(part, role))).Where(one => one.Lines.Count > 0).ToArray();
            items.AddRange(along.SelectMany(one => one.Lines.Select(line => new Stroke(row, line) { PartId = one.Part.Id })));
            names[role] = Named(along.Select(one => one.Part));
        }

        var view = basis.Format.Zones["view"];
        return new(
            drawn.Scale,
            [new(Id, drawn.Scale, items, drawn.Bounds)],
            [new(Id, basis.Origin, view)],
            [.. basis.Title("Control lines"), .. Legend(basis, names)]);
    }

    private static IEnumerable<DrawnPart> Having(CompanionBasis basis, Roles role) =>
        basis.Drawn.Parts.Where(part => part.Part.Roles.HasFlag(role) && part.Part.Presence == Presence.Cut);

    // Bed joints say nothing here.
    private static bool IsOutline(Stroke stroke) =>
        stroke.Row == Rows.Break || (stroke.Row.StartsWith("cut.", StringComparison.Ordinal) && stroke.PartId?.EndsWith("/bed", StringComparison.Ordinal) != true);

    private static bool IsFill(Item item) => item.Row.StartsWith("fill.", StringComparison.Ordinal) || item.Row.StartsWith("solid.", StringComparison.Ordinal);

    private static string[] Named(IEnumerable<DrawnPart> parts) => [.. parts.Select(part => part.Part.Name.ToLowerInvariant()).Distinct(StringComparer.Ordinal)];

    private static IEnumerable<Item> Legend(CompanionBasis basis, Dictionary<Roles, IReadOnlyList<string>> names)
    {
        var room = basis.Room;
        var (sizes, letter, pitch) = (basis.Sizes, basis.Sizes.Notes, basis.Sizes.ByNotes(4.25));
        var drawn = basis.Drawn.Bounds.Shift(basis.Origin);

        // On the side where more white is left.
        var (before, behind) = (drawn.Left - room.Left - Clear, room.Right - drawn.Right - Clear);
        var width = Math.Min(sizes.ByNotes(MostLegend), Math.Max(before, behind));
        var (left, y) = (behind >= before ? room.Right - width : room.Left, room.Top - sizes.ByTitles(4));
        yield return new Text("title.view", "Control lines", new(left, y), sizes.Titles);
        y -= sizes.ByTitles(8);
        foreach (var (role, sign, words) in Lines.Select(line => (line.Role, Frame.Line(line.Row, default, new(Sample, 0)), line.Words)).Append((Roles.Insulation, Zigzag, "Heat: filled")))
        {
            yield return Moving.By(sign, new(left, y + sizes.ByNotes(1)));
            yield return new Text("key", words, new(left + Sample + 3, y), letter, Bold: true);
            var lines = sizes.Typeface.Wrap(string.Join(", ", names[role]), letter, width - Sample - 3);
            yield return new Paragraph("key", lines, new(left + Sample + 3, y - pitch), letter, pitch);
            y -= (lines.Count + 2) * pitch;
        }

        yield return new Paragraph(
            "block.notes", sizes.Typeface.Wrap("Each line follows the parts with that task: water along the side that it meets, air and vapour along the side of the room, sheets along themselves. Over the deck the roof's own parts keep air and vapour in. Where a line has a gap, a joint between two parts has to be sealed; that it is, is for whoever signs the sheet.", letter, width), new(left, y), letter, pitch);
    }

    private static Stroke Zigzag => new("fill.IR.roof", [.. Enumerable.Range(0, 7).Select(i => new PaperPoint(Sample * i / 6, i % 2 == 0 ? -1.5 : 1.5))]);
}
