using System.Globalization;
using DetailGen.Drawing.Lettering;
using DetailGen.Drawing.Scenes;
using DetailGen.Drawing.Views;
using DetailGen.Sections;

namespace DetailGen.Drawing.Sheets.Companions;

/// <summary>The section in numbered stages, as it is built: what is new is filled, what stands already is outlined.</summary>
internal static class BuildSequence
{
    private const int MostStages = 8;
    private const double MostTitle = 130;
    private const double Gap = 5;
    private const double Text = 2.5;
    private const double Pitch = 3.9;
    private const int CaptionLines = 3;
    private const double Caption = CaptionLines * Pitch + 2;

    internal static CompanionSheet Of(CompanionBasis basis)
    {
        var stages = Stages(basis.Section);
        var beside = basis.Format.Zones["title-block"].Left - basis.Room.Left > MostTitle; // the title stands beside the title block where there is room
        var room = beside ? basis.Room : basis.Room with { Bottom = basis.Room.Bottom + ViewTitle.Height };
        var (columns, rows, whole) = Grid(stages.Count, room, basis);
        var (width, height) = ((room.Width + Gap) / columns - Gap, (room.Height + Gap) / rows - Gap);
        var scale = whole.Scale;
        var views = new List<View>();
        var placements = new List<Placement>();
        var items = new List<Item>();
        for (var i = 0; i < stages.Count; i++)
        {
            var (left, top) = (room.Left + i % columns * (width + Gap), room.Top - i / columns * (height + Gap));
            PaperBox cell = new(left, top - height, left + width, top);
            var view = Stage(basis, stages, i, scale);
            var picture = cell with { Bottom = cell.Bottom + Caption };
            views.Add(view);
            placements.Add(new(view.Id, Middle(picture, whole.Bounds), picture));
            items.AddRange(Words(stages[i], i + 1, cell));
        }

        return new(scale, views, placements, [.. items, .. basis.Title("Build sequence", scale, new(basis.Room.Left, beside ? basis.Format.Space.Bottom + 7 : basis.Room.Bottom))]);
    }

    /// <summary>Parts by stage of the work, in order; small neighbours joined until there are no more than fit a sheet.</summary>
    internal static IReadOnlyList<IReadOnlyList<Part>> Stages(Section section)
    {
        var stages = section.Parts.Where(part => !part.IsAir).OrderBy(part => part.BuildOrder).GroupBy(part => part.Stage).OrderBy(group => group.Key)
            .Select(group => (IReadOnlyList<Part>)[.. group]).ToList();
        while (stages.Count > MostStages)
        {
            var least = Enumerable.Range(0, stages.Count - 1).MinBy(i => stages[i].Count + stages[i + 1].Count);
            stages[least] = [.. stages[least], .. stages[least + 1]];
            stages.RemoveAt(least + 1);
        }

        return stages;
    }

    private static View Stage(CompanionBasis basis, IReadOnlyList<IReadOnlyList<Part>> stages, int last, double scale)
    {
        var standing = stages.Take(last + 1).SelectMany(parts => parts).Select(part => part.Id).ToHashSet(StringComparer.Ordinal);
        var now = stages[last].Select(part => part.Id).ToHashSet(StringComparer.Ordinal);
        Part[] parts = [.. basis.Section.Parts.Where(part => standing.Contains(part.Id))];
        var section = basis.Section with { Parts = parts, Runs = [.. basis.Section.Runs.Where(run => parts.Any(part => Reaches(part, run)))] };
        var drawn = SectionView.Draw(section, new(scale, ViewRoom.Least(basis.Section), basis.Drawn.Mirror));
        Item[] seen = [.. drawn.Items.Where(item => IsLine(item) || IsOf(item, now)).Select(item => item is Stroke stroke && !IsOf(item, now) ? CompanionBasis.Thin(stroke) : item)];
        return new("stage-" + (last + 1).ToString(CultureInfo.InvariantCulture), scale, seen, drawn.Bounds);
    }

    // Where nothing is built yet, nothing is broken off.
    private static bool Reaches(Part part, Run run) => !part.Region.IsEmpty && part.Region.Bounds is var box && run.Heading switch
    {
        Heading.Down => box.Bottom < run.Least,
        Heading.Up => box.Top > run.Least,
        _ => box.Right > run.Least,
    };

    private static bool IsOf(Item item, HashSet<string> parts) => item.PartId is { } id && parts.Contains(id.Split('/')[0]);

    // Fills and bold outlines show what is new; what stands is told by thin outlines and its sheets.
    private static bool IsLine(Item item) => !item.Row.StartsWith("fill.", StringComparison.Ordinal);

    // The largest scale at which the whole section fits a cell.
    private static (int Columns, int Rows, DrawnView Whole) Grid(int count, PaperBox room, CompanionBasis basis)
    {
        DrawnView whole = basis.Drawn;
        foreach (var scale in Candidates.Scales.Where(scale => scale >= basis.Drawn.Scale))
        {
            whole = SectionView.Draw(basis.Section, new(scale, ViewRoom.Least(basis.Section), basis.Drawn.Mirror));
            for (var columns = 1; columns <= count; columns++)
            {
                var rows = (count + columns - 1) / columns;
                var (width, height) = ((room.Width + Gap) / columns - Gap, (room.Height + Gap) / rows - Gap - Caption);
                if (whole.Bounds.Width <= width && whole.Bounds.Height <= height)
                {
                    return (columns, rows, whole);
                }
            }
        }

        // At the smallest scale whatever is cut off at the edges of its cell.
        var across = (int)Math.Ceiling(Math.Sqrt(count * room.Width / room.Height));
        return (across, (count + across - 1) / across, whole);
    }

    private static PaperPoint Middle(PaperBox cell, PaperBox box) => new((cell.Left + cell.Right - box.Left - box.Right) / 2, (cell.Bottom + cell.Top - box.Bottom - box.Top) / 2);

    private static IEnumerable<Item> Words(IReadOnlyList<Part> parts, int number, PaperBox cell)
    {
        yield return new Text("key", number.ToString(CultureInfo.InvariantCulture), new(cell.Left, cell.Bottom + Caption - Pitch), Text, Bold: true);
        var names = parts.Select(part => part.Name).Distinct(StringComparer.Ordinal).Select((name, i) => i == 0 ? name : char.ToLowerInvariant(name[0]) + name[1..]).ToList();
        var lines = Wrapping.Wrap(string.Join(", ", names), Text, cell.Width - 5);
        for (var count = names.Count - 1; lines.Count > CaptionLines && count > 0; count--)
        {
            lines = Wrapping.Wrap($"{string.Join(", ", names.Take(count))} and {(names.Count - count).ToString(CultureInfo.InvariantCulture)} more", Text, cell.Width - 5);
        }

        yield return new Paragraph("key", lines, new(cell.Left + 5, cell.Bottom + Caption - Pitch), Text, Pitch);
    }
}
