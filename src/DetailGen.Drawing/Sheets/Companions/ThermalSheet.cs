using DetailGen.Drawing.Lettering;
using DetailGen.Drawing.Scenes;

namespace DetailGen.Drawing.Sheets.Companions;

/// <summary>The temperatures in the junction and the ways that heat takes as they were simulated, with the figures that follow from them and all that they rest on. What finds no room goes to further sheets.</summary>
internal static class ThermalSheet
{
    private const double LeastColumn = 86;
    private const double LeastHeight = 30; // under the view, for words to go on there
    private const string Title = "Temperatures in the junction";

    internal static IReadOnlyList<CompanionSheet> Of(CompanionBasis basis)
    {
        var text = basis.Thermal ?? throw new InvalidOperationException("A thermal sheet needs what was simulated.");
        List<Block> blocks = [.. text.Tables.Select(table => Columns.Of(basis.Sizes, table)), .. text.Lists.SelectMany(list => Columns.Of(basis.Sizes, list))];
        var (format, room) = (basis.Format, basis.Room);
        var leastColumn = basis.Sizes.ByNotes(LeastColumn);
        List<Item> items = [];

        // Beside the title block a drawing reaches down to the frame; on upright paper the words get a sheet of their own, but for the key.
        var wide = format.Width > format.Height;
        var left = wide ? room with { Right = format.Zones["title-block"].Left - 6, Bottom = format.Space.Bottom + 7 } : room;
        PaperPoint titleAt = new(left.Left, left.Bottom);
        var foot = left.Bottom + ViewTitle.Height(basis.Sizes) + 2;
        var keyHeight = wide ? 0 : Key(basis.Sizes, text, shown: true).Lay(left.Width).Height;
        var (view, placement, shown) = ThermalView.Of(basis, text, left with { Bottom = foot + keyHeight });
        if (wide)
        {
            blocks.Insert(0, Key(basis.Sizes, text, shown));
        }
        else
        {
            items.AddRange(Key(basis.Sizes, text, shown).Lay(left.Width).Items.Select(item => Moving.By(item, new(left.Left, foot + keyHeight))));
        }

        items.AddRange(basis.Title(Title, view.Scale, titleAt));
        var under = left with { Right = placement.Window.Right, Bottom = foot, Top = placement.Window.Bottom - 2 };
        IReadOnlyList<PaperBox> columns = wide ? [.. Columns.In(room with { Left = placement.Window.Right + Columns.Between }, leastColumn), .. under.Height > LeastHeight ? [under] : Array.Empty<PaperBox>()] : [];
        var (words, rest) = Columns.Fill(blocks, columns);
        List<CompanionSheet> sheets = [new(view.Scale, [view], [placement], [.. items, .. words])];
        while (rest.Count > 0)
        {
            rest = Columns.Continued(basis.Sizes, rest);
            var (further, after) = Columns.Fill(rest, Columns.In(room, wide ? leastColumn : (room.Width - Columns.Between) / 2));
            if (after.Count == rest.Count)
            {
                // what is too high for a column is lower in the width of the sheet
                (further, after) = Columns.Fill(rest, [room]);
            }

            if (after.Count == rest.Count)
            {
                throw new InvalidOperationException("A table of the thermal sheet is longer than a sheet.");
            }

            sheets.Add(new(view.Scale, [], [], further));
            rest = after;
        }

        return sheets;
    }

    private static Block Key(TextSizes sizes, ThermalText text, bool shown) => Columns.Of(sizes, "Key",
    [
        (at => [Frame.Line("analysis.line", at, at + new PaperPoint(16, 0))], text.Isotherms),
        (at => [Frame.Line("analysis.flux", at, at + new PaperPoint(16, 0))], text.Flux),
        (at => [Frame.Line("analysis.dew-point", at, at + new PaperPoint(16, 0))], text.DewPoint),
        (at => [new Ring("analysis.figure", at + new PaperPoint(8, 0), 2.4), new Dot("analysis.figure", at + new PaperPoint(8, 0), 0.8)], shown ? text.Mark : text.MarkBeyond),
        (at => [Frame.Line("analysis.model", at, at + new PaperPoint(16, 0))], text.Model),
    ]);
}
