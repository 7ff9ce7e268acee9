using DetailGen.Drawing.Scenes;
using DetailGen.Sections;

namespace DetailGen.Drawing.Sheets;

/// <summary>The room that a sheet leaves for the drawn section, and how much of the section goes into it.</summary>
/// <param name="Box">For the geometry alone, page mm.</param>
/// <param name="Annotation">For everything that belongs to the view but its title, page mm.</param>
/// <param name="TitleAt">Lower left corner of the view's title, page mm.</param>
internal sealed record ViewRoom(PaperBox Box, PaperBox Annotation, PaperPoint TitleAt)
{
    /// <summary>How far a run is drawn on beyond what it must show, where there is room; true mm.</summary>
    private const double Generous = 150;

    // Dimensions and levels take so much beside the geometry, below and above it; the larger the sheet the more.
    private static (double Side, double Below, double Above) Margins(string paper) => paper switch
    {
        "A4" => (16, 16, 10),
        "A3" => (24, 18, 12),
        "A2" => (28, 18, 12),
        _ => (32, 22, 14),
    };

    internal static ViewRoom Of(SheetFormat format)
    {
        var (view, drawing) = (format.Zones["view"], format.Zones["drawing"]);
        var (side, below, above) = Margins(format.Paper);
        var foot = view.Bottom + ViewTitle.Height;
        return new(
            new(drawing.Left + side, foot + below, drawing.Right - side, view.Top - above),
            new(view.Left + 1, foot + 0.5, view.Right - 1, view.Top - 1),
            new(drawing.Left, view.Bottom + 0.5));
    }

    /// <summary>Where the section is broken off on this sheet, in model mm; null where not even the least of it fits.</summary>
    internal Bounds? Window(Section section, double scale)
    {
        var least = Least(section);
        var (spareX, spareY) = (Box.Width * scale - least.Width, Box.Height * scale - least.Height);
        if (spareX < 0 || spareY < 0)
        {
            return null;
        }

        foreach (var run in section.Runs)
        {
            var more = Math.Min(Generous, Math.Abs(run.End - run.Least));
            least = run.Heading switch
            {
                Heading.Down => least with { Bottom = run.Least - Math.Min(more, spareY / 2) },
                Heading.Up => least with { Top = run.Least + Math.Min(more, spareY / 2) },
                _ => least with { Right = run.Least + Math.Min(more, spareX) },
            };
        }

        return least;
    }

    /// <summary>The least that a drawing must show: every end at its nearest break.</summary>
    internal static Bounds Least(Section section)
    {
        var all = section.Parts.Where(part => !part.Region.IsEmpty).Select(part => part.Region.Bounds).Aggregate((a, b) => a.With(b));
        foreach (var run in section.Runs)
        {
            all = run.Heading switch
            {
                Heading.Down => all with { Bottom = run.Least },
                Heading.Up => all with { Top = run.Least },
                _ => all with { Right = run.Least },
            };
        }

        return all;
    }

    /// <summary>Where the view's origin lies on the page, so that the drawn geometry stands in the middle of its box; to the nearest half mm.</summary>
    internal PaperPoint Origin(PaperBox drawn) =>
        new(Half((Box.Left + Box.Right - drawn.Left - drawn.Right) / 2), Half((Box.Bottom + Box.Top - drawn.Bottom - drawn.Top) / 2));

    private static double Half(double value) => Math.Round(value * 2, MidpointRounding.AwayFromZero) / 2;
}
