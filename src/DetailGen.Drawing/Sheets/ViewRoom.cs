using DetailGen.Drawing.Lettering;
using DetailGen.Drawing.Scenes;
using DetailGen.Drawing.Views;
using DetailGen.Sections;

namespace DetailGen.Drawing.Sheets;

/// <summary>The room that a sheet leaves for the drawn section, and how much of the section goes into it.</summary>
/// <param name="Box">For the geometry alone, page mm.</param>
/// <param name="Annotation">For everything that belongs to the view but its title, page mm.</param>
/// <param name="TitleAt">Lower left corner of the view's title where the view is not mirrored, page mm.</param>
internal sealed record ViewRoom(PaperBox Box, PaperBox Annotation, PaperPoint TitleAt)
{
    private TextSizes Sizes { get; init; } = TextSizes.Usual;

    /// <summary>How far a run is drawn on beyond what it must show, where there is room; true mm.</summary>
    private const double Generous = 150;

    private const double Lowered = 20;

    /// <summary>So far off the drawing stands the first line of dimensions.</summary>
    private const double First = 10;

    /// <summary>The title's ring stands so far off the frame.</summary>
    private const double Inset = 2;

    /// <summary>What a wall's foot without dimensions needs below it.</summary>
    private const double Foot = 12;

    /// <summary>What the zigzag of a break line above the wall takes, so that the dimensions over it stay within the frame.</summary>
    private const double Zigzag = 3.5;

    /// <summary>What a run may lack of its least where the sheet asks for it; true mm. The least is far beyond the last feature (300), so all features stay.</summary>
    private const double Shortened = 150;

    /// <summary>The same for the roof where what stands beside it would leave the frame.</summary>
    internal const double AtMost = 200;

    /// <summary>The place of the drawing is rounded to this, mm.</summary>
    internal const double PlaceStep = 0.5;

    /// <summary>What dimensions in three rows and levels take beyond the roof's break, up to the edge of the view's zone.</summary>
    private const double Beyond = 72;

    // Dimensions and levels take so much beside the geometry, below and above it; the larger the sheet the more.
    private static (double Side, double Below, double Above) Usual(SheetSize size) => size switch
    {
        SheetSize.Small => (16, 23, 23),
        SheetSize.Usual => (24, 29, 23),
        SheetSize.Large => (28, 27, 23),
        _ => (32, 23, 23),
    };

    // Beyond the first line the rows follow the letters.
    private static double By(TextSizes sizes, double usual) => First + sizes.ByNotes(usual - First);

    /// <param name="mirrored">A mirrored view has the mirrored room.</param>
    internal static ViewRoom Of(SheetFormat format, bool mirrored)
    {
        var (view, drawing) = (format.Zones["view"], format.Zones["drawing"]);
        var (sizes, usual) = (format.TextSizes, Usual(format.Size));
        var (side, below, above) = (By(sizes, usual.Side), By(sizes, usual.Below), By(sizes, usual.Above));
        var foot = view.Bottom + ViewTitle.Height(sizes);
        var box = new PaperBox(drawing.Left + side, foot + below, Math.Max(drawing.Right - side, Math.Min(drawing.Right, view.Right - By(sizes, Beyond))), view.Top - above);
        return new(
            mirrored ? Turned(box, view) : box,
            new(view.Left + 1, view.Bottom + 0.5, view.Right - 1, view.Top - 1),
            new(Math.Max(drawing.Left, view.Left + Inset), view.Bottom + 0.5))
        {
            Sizes = sizes,
        };
    }

    /// <summary>The box less a strip at the roof's end.</summary>
    internal PaperBox Narrowed(double by, bool mirrored) => mirrored ? Box with { Left = Box.Left + by } : Box with { Right = Box.Right - by };

    /// <summary>What the view's title takes, page mm: on a mirrored sheet it stands in the mirrored place, so that the notes have the same room.</summary>
    internal PaperBox Title(string title, double scale, bool mirrored)
    {
        var box = ViewTitle.Box(Sizes, title, scale, TitleAt);
        return mirrored ? Turned(box, Annotation) : box;
    }

    private static PaperBox Turned(PaperBox box, PaperBox within) => box with { Left = within.Left + within.Right - box.Right, Right = within.Left + within.Right - box.Left };

    /// <summary>Where the section is broken off on this sheet, in model mm; null where not even the least of it fits.</summary>
    /// <param name="across">What the roof's run may lack of its least; true mm.</param>
    internal Bounds? Window(Section section, double scale, double across = Shortened)
    {
        var least = Least(section);
        var broken = section.Runs.Any(run => run.Heading == Heading.Up) ? Zigzag : 0;
        var (spareX, spareY) = (Box.Width * scale - least.Width, (Box.Height - broken) * scale - least.Height);
        if (spareX < -across || spareY < -Shortened)
        {
            return null;
        }

        // Rather a shorter run on the sheet that was asked for than another sheet; a run that goes on nowhere cannot give way.
        if ((spareX < 0 && !section.Runs.Any(run => run.Heading is not (Heading.Down or Heading.Up))) || (spareY < 0 && !section.Runs.Any(run => run.Heading is Heading.Down)))
        {
            return null;
        }

        foreach (var run in section.Runs)
        {
            var more = Math.Min(Generous, Math.Abs(run.End - run.Least));
            least = run.Heading switch
            {
                Heading.Down => least with { Bottom = BreakLines.OffSlivers(section, run.Heading, run.Least - Math.Min(more, spareY < 0 ? spareY : spareY / 2)) },
                Heading.Up => least with { Top = BreakLines.OffSlivers(section, run.Heading, run.Least + Math.Min(more, Math.Max(0, spareY / 2))) },
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

    /// <summary>
    /// Where the view's origin lies on the page, to the nearest half mm: the drawn geometry in the middle of its box, but low in it where nothing is built on upwards,
    /// since most notes of a roof's edge stand above the roof.
    /// </summary>
    internal PaperPoint Origin(PaperBox drawn, Section section)
    {
        // A wall that goes on upwards carries its chain above its head and none at its foot: what the foot leaves goes to the head.
        var spare = Math.Max(0, Box.Height - drawn.Height) / 2;
        var lower = section.Runs.Any(run => run.Heading == Heading.Up) ? Math.Max(0, Box.Bottom - TitleAt.Y - ViewTitle.Height(Sizes) - Foot) : Math.Min(spare, Lowered);

        // What is drawn higher than its box, as by the zigzag of its foot, hangs over it below: above stand dimensions close under the frame.
        lower += Math.Max(0, drawn.Height - Box.Height) / 2;
        return new(Rounded((Box.Left + Box.Right - drawn.Left - drawn.Right) / 2), Rounded((Box.Bottom + Box.Top - drawn.Bottom - drawn.Top) / 2 - lower));
    }

    private static double Rounded(double value) => Math.Round(value / PlaceStep, MidpointRounding.AwayFromZero) * PlaceStep;
}
