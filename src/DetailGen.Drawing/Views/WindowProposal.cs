using DetailGen.Sections;

namespace DetailGen.Drawing.Views;

/// <summary>A place to break the drawing off.</summary>
/// <param name="Window">Model mm, unmirrored; around everything that is drawn.</param>
/// <param name="Fits">Whether it goes into the box asked for; if not, the window is the least that shows enough.</param>
public sealed record WindowProposal(Bounds Window, bool Fits)
{
    /// <summary>Bands stand a little outside the model, break lines run past the faces; mm on paper, each side.</summary>
    public const double Around = 3.5;

    /// <summary>No more of a run is shown than this many times what must be seen of the section, however large the paper.</summary>
    private const double MostOfRun = 0.35;

    /// <summary>The least window, grown along its runs as far as the box allows and is of use.</summary>
    /// <param name="scale">s of 1:s.</param>
    /// <param name="width">Of the box for the bare view, mm on paper.</param>
    /// <param name="height">Of the box, mm on paper.</param>
    public static WindowProposal For(Section section, double scale, double width, double height)
    {
        var least = Least(section);
        var (spareX, spareY) = (width - 2 * Around - least.Width / scale, height - 2 * Around - least.Height / scale);
        if (spareX < 0 || spareY < 0)
        {
            return new(least, false);
        }

        var window = least;
        var vertical = section.Runs.Count(run => run.Heading != Heading.Along);
        foreach (var run in section.Runs)
        {
            var most = run.Heading == Heading.Along ? Math.Min(spareX * scale, MostOfRun * least.Width) : Math.Min(spareY * scale / vertical, MostOfRun * least.Height);
            window = run.Heading switch
            {
                Heading.Down => window with { Bottom = Math.Max(run.End, run.Least - most) },
                Heading.Up => window with { Top = Math.Min(run.End, run.Least + most) },
                _ => window with { Right = Math.Min(run.End, run.Least + most) },
            };
        }

        return new(window, true);
    }

    /// <summary>The least that shows enough: every run cut at its nearest place.</summary>
    public static Bounds Least(Section section)
    {
        double? Cut(Heading heading) => section.Runs.Where(run => run.Heading == heading).Select(run => (double?)run.Least).LastOrDefault();
        var (bottom, top, right) = (Cut(Heading.Down), Cut(Heading.Up), Cut(Heading.Along));
        var open = new Bounds(-1e6, bottom ?? -1e6, right ?? 1e6, top ?? 1e6);
        var box = Region.Box(open);
        var seen = section.Parts.Where(part => !part.Region.IsEmpty && !part.IsAir).Select(part => part.Region.Intersect(box)).Where(region => !region.IsEmpty).Select(region => region.Bounds).ToArray();
        if (seen.Length == 0)
        {
            return new(0, 0, 0, 0);
        }

        var all = seen.Aggregate((a, b) => a.With(b));
        return new(all.Left, bottom ?? all.Bottom, right ?? all.Right, top ?? all.Top);
    }
}
