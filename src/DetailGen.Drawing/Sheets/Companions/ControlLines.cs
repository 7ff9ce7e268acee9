using DetailGen.Drawing.Lettering;
using DetailGen.Drawing.Scenes;

namespace DetailGen.Drawing.Sheets.Companions;

/// <summary>A sheet of the lines that stop water, air, vapour and heat, and of the parts that each follows. Whether they are unbroken is for the checks; the sheet says so.</summary>
internal static class ControlLines
{
    private const string Id = "control-lines";
    private const double Sample = 18;
    private const double MostLegend = 76;
    private const double Clear = 4;

    internal static CompanionSheet Of(CompanionBasis basis)
    {
        var picture = ControlPicture.Of(new(basis.Section), new(basis.Drawn.Scale, basis.Window, basis.Drawn.Mirror));
        return new(
            picture.Drawn.Scale,
            [new(Id, picture.Drawn.Scale, picture.Items, picture.Drawn.Bounds)],
            [new(Id, basis.Origin, basis.Format.Zones["view"])],
            [.. basis.Title("Control lines"), .. Legend(basis, picture)]);
    }

    private static IEnumerable<Item> Legend(CompanionBasis basis, ControlPicture picture)
    {
        var room = basis.Room;
        var (sizes, letter, pitch, sample) = (basis.Sizes, basis.Sizes.Notes, basis.Sizes.ByNotes(4.25), Math.Max(Sample, basis.ControlSign));
        var drawn = basis.Drawn.Bounds.Shift(basis.Origin);

        // On the side where more white is left.
        var (before, behind) = (drawn.Left - room.Left - Clear, room.Right - drawn.Right - Clear);
        var width = Math.Min(sizes.ByNotes(MostLegend), Math.Max(before, behind));
        var (left, y) = (behind >= before ? room.Right - width : room.Left, room.Top - sizes.ByTitles(4));
        yield return new Text("title.view", "Control lines", new(left, y), sizes.Titles);
        y -= sizes.ByTitles(8);
        foreach (var (role, sign, words) in ControlPicture.Legend(sample))
        {
            yield return Moving.By(sign, new(left, y + sizes.ByNotes(1)));
            yield return new Text("key", words, new(left + sample + 3, y), letter, Bold: true);
            var lines = sizes.Typeface.Wrap(string.Join(", ", picture.Names[role]), letter, width - sample - 3);
            yield return new Paragraph("key", lines, new(left + sample + 3, y - pitch), letter, pitch);
            y -= (lines.Count + 2) * pitch;
        }

        yield return new Paragraph(
            "block.notes", sizes.Typeface.Wrap("Each line follows the parts with that task: water along the side that it meets, air and vapour along the side of the room, sheets along themselves. Over the deck the roof's own parts keep air and vapour in. Where a line has a gap, a joint between two parts has to be sealed; that it is, is for whoever signs the sheet.", letter, width), new(left, y), letter, pitch);
    }
}
