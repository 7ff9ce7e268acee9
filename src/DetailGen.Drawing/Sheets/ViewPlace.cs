using DetailGen.Drawing.Annotation;
using DetailGen.Drawing.Auditing;
using DetailGen.Drawing.Scenes;

namespace DetailGen.Drawing.Sheets;

/// <summary>Where the view stands with all that is said of it, and its title below it: in the middle of its room, or moved aside where that leaves white for more insets.</summary>
internal static class ViewPlace
{
    /// <summary>White between the view's ink and its title, which ends with the room, and the marks on the axes of the sheet, which do not move with it; mm.</summary>
    private const double Off = 3, OffMarks = 1.5;

    /// <param name="laid">The first sheet with the view so far aside, and its title.</param>
    /// <param name="bounds">Of all that belongs to the view in the middle of its room, page mm.</param>
    /// <param name="title">What its title takes there, page mm.</param>
    internal static Papers Of(Func<PaperPoint, PaperPoint, Scene> laid, SheetFormat format, PaperBox bounds, PaperBox room, PaperBox title)
    {
        var middle = new Papers(laid(default, default), format);
        if (room.Width - bounds.Width < Insets.Least(format))
        {
            return middle;
        }

        var best = (Papers: middle, Insets: Room(middle));
        var ink = PageInk.Of(middle.Scene, middle.Scene.Pages[0].Placements[0], middle.Scene.Views[0].Items);
        foreach (var aside in (double[])[room.Left - bounds.Left, room.Right - bounds.Right])
        {
            var shift = Math.Truncate(aside / ViewRoom.PlaceStep) * ViewRoom.PlaceStep;
            var below = Math.Clamp(shift, Math.Min(0, room.Left + Off - title.Left), Math.Max(0, room.Right - Off - title.Right));

            // A title that moves as far as the view keeps the white that it has.
            PaperBox[] kept =
            [
                .. shift == below ? [] : new[] { title.Shift(new(below, 0)).Grow(Off) },
                .. Frame.CentringMarks(format).Select(mark => Surface.Around(mark.Points[0], mark.Points[^1]).Grow(OffMarks)),
            ];
            if (best.Insets < Insets.Most && Array.TrueForAll(kept, box => IsClear(box.Shift(new(-shift, 0)))))
            {
                var papers = new Papers(laid(new(shift, 0), new(below, 0)), format);
                best = Room(papers) is var insets && insets > best.Insets ? (papers, insets) : best;
            }
        }

        return best.Papers;

        int Room(Papers papers) => Insets.Room(papers.Ink(0), format);

        bool IsClear(PaperBox box) => !ink.Texts.Exists(text => text.Box.Meets(box)) && !ink.Lines.Exists(line => Surface.Around(line.From, line.To).Meets(box))
            && !ink.Areas.Exists(area => area.Around.Meets(box));
    }
}
