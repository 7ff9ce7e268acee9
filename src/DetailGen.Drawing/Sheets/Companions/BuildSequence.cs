using System.Globalization;
using DetailGen.Analysis.Work;
using DetailGen.Drawing.Lettering;
using DetailGen.Drawing.Scenes;
using DetailGen.Drawing.Views;
using DetailGen.Sections;

namespace DetailGen.Drawing.Sheets.Companions;

/// <summary>The section in numbered stages, as it is built: what is new is filled, what stands already is outlined.</summary>
internal static class BuildSequence
{
    private const int MostStages = 10;

    // Tells what stands of a part from what is added to it, while a stage is drawn.
    private const string Standing = "~";
    private const double MostTitle = 130;
    private const double Gap = 5;

    /// <summary>What a cell left empty counts, in sections that a cell holds.</summary>
    private const double Empty = 0.1;

    /// <summary>So many lines a caption has where more would ask for a smaller scale; what it leaves out it counts.</summary>
    private const int FewLines = 3;

    private static double Pitch(TextSizes sizes) => sizes.ByNotes(3.9);

    private static double Indent(TextSizes sizes) => sizes.ByWord(6, "10", bold: true);

    internal static CompanionSheet Of(CompanionBasis basis)
    {
        var stages = Stages(basis.Section);
        var beside = basis.Format.Zones["title-block"].Left - basis.Room.Left > MostTitle; // the title stands beside the title block where there is room
        var room = beside ? basis.Room : basis.Room with { Bottom = basis.Room.Bottom + ViewTitle.Height(basis.Sizes) };
        string[][] captions = [.. stages.Select((_, i) => Caption(stages, i))];
        var (columns, rows, lines, whole) = Grid(captions, room, basis);
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
            var picture = cell with { Bottom = cell.Bottom + Height(basis.Sizes, lines) };
            views.Add(view);
            placements.Add(new(view.Id, Middle(picture, whole.Bounds), picture));
            items.AddRange(Words(basis.Sizes, i + 1, captions[i], cell, lines));
        }

        return new(scale, views, placements, [.. items, .. basis.Title("Build sequence", scale, new(basis.Room.Left, beside ? basis.Format.Space.Bottom + 7 : basis.Room.Bottom))]);
    }

    /// <summary>What is built, in order; small neighbours joined until there are no more than fit a sheet.</summary>
    internal static IReadOnlyList<IReadOnlyList<Part>> Stages(Section section)
    {
        var stages = WorkOrder.Of(section).ToList();
        while (stages.Count > MostStages)
        {
            var least = Enumerable.Range(0, stages.Count - 1).MinBy(i => Weight(stages[i]) + Weight(stages[i + 1]));
            stages[least] = [.. stages[least], .. stages[least + 1]];
            stages.RemoveAt(least + 1);
        }

        return stages;
    }

    // How wall and what is built into it follow each other is what the sheet is for.
    private static int Weight(IReadOnlyList<Part> stage) => stage.Select(part => part.Name).Distinct(StringComparer.Ordinal).Count() + (stage.Any(part => part.Rises) ? 20 : 0);

    private static View Stage(CompanionBasis basis, IReadOnlyList<IReadOnlyList<Part>> stages, int last, double scale)
    {
        var now = stages[last].Select(part => part.Id).ToHashSet(StringComparer.Ordinal);
        var before = stages.Take(last).SelectMany(parts => parts).ToLookup(part => part.Id, StringComparer.Ordinal);
        var goes = stages.SelectMany(parts => parts).ToLookup(part => part.Id, StringComparer.Ordinal);
        var parts = new List<Part>();
        foreach (var whole in basis.Section.Parts.Where(part => now.Contains(part.Id) || before.Contains(part.Id)))
        {
            Part[] standing = [.. before[whole.Id]];
            Part[] added = [.. stages[last].Where(part => part.Id == whole.Id)];
            if (standing.Length + added.Length == goes[whole.Id].Count() && (standing.Length == 0 || added.Length == 0 || whole.Sheet is not null))
            {
                parts.Add(whole);
                continue;
            }

            foreach (var (pieces, mark) in new[] { (standing, added.Length > 0 ? Standing : ""), (added, "") }.Where(one => one.Item1.Length > 0))
            {
                parts.Add(pieces[0] with { Id = whole.Id + mark, Region = Region.Union(pieces.Select(piece => piece.Region)) });
            }
        }

        var section = basis.Section with { Parts = parts, Runs = [.. basis.Section.Runs.Where(run => parts.Any(part => Reaches(part, run)))] };
        var drawn = SectionView.Draw(section, new(scale, ViewRoom.Least(basis.Section), basis.Drawn.Mirror));
        Item[] seen =
        [
            .. drawn.Items.Where(item => IsLine(item) || IsOf(item, now)).Select(item => item is Stroke stroke && !IsOf(item, now) ? CompanionBasis.Thin(stroke) : item)
                .Select(item => item.PartId is { } id && id.Contains(Standing, StringComparison.Ordinal) ? item with { PartId = id.Replace(Standing, "", StringComparison.Ordinal) } : item),
        ];
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

    private static double Height(TextSizes sizes, int lines) => lines * Pitch(sizes) + 2;

    // The largest scale at which the whole section fits a cell, with all its words if they leave it that scale; of several grids the one whose cells are least wider or higher than it, and of alike ones that with the fewest cells left empty.
    private static (int Columns, int Rows, int Lines, DrawnView Whole) Grid(string[][] captions, PaperBox room, CompanionBasis basis)
    {
        DrawnView whole = basis.Drawn;
        foreach (var scale in Candidates.Scales.Where(scale => scale >= basis.Drawn.Scale))
        {
            whole = SectionView.Draw(basis.Section, new(scale, ViewRoom.Least(basis.Section), basis.Drawn.Mirror));
            foreach (var most in (int[])[int.MaxValue, FewLines])
            {
                var grids = Enumerable.Range(1, captions.Length)
                    .Select(columns => (Columns: columns, Rows: (captions.Length + columns - 1) / columns, Lines: Math.Min(most, Lines(columns))))
                    .Where(grid => Times(grid.Columns, grid.Rows, grid.Lines).Least >= 1).ToArray();
                if (grids.Length > 0)
                {
                    var (columns, rows, lines) = grids.MinBy(grid => Times(grid.Columns, grid.Rows, grid.Lines).Most + (Empty * (grid.Columns * grid.Rows - captions.Length)));
                    return (columns, rows, lines, whole);
                }
            }
        }

        // At the smallest scale whatever is cut off at the edges of its cell.
        var across = (int)Math.Ceiling(Math.Sqrt(captions.Length * room.Width / room.Height));
        return (across, (captions.Length + across - 1) / across, Math.Min(FewLines, Lines(across)), whole);

        double Width(int columns) => (room.Width + Gap) / columns - Gap;

        // How many times the section goes into a cell, the way it goes in least often and the way it does most often.
        (double Least, double Most) Times(int columns, int rows, int lines)
        {
            var (across, up) = (Width(columns) / whole.Bounds.Width, ((room.Height + Gap) / rows - Gap - Height(basis.Sizes, lines)) / whole.Bounds.Height);
            return (Math.Min(across, up), Math.Max(across, up));
        }

        int Lines(int columns) => captions.Max(names => Wrapped(basis.Sizes, string.Join(", ", names), Width(columns)).Count);
    }

    private static IReadOnlyList<string> Wrapped(TextSizes sizes, string words, double width) => sizes.Typeface.Wrap(words, sizes.Notes, (width - Indent(sizes)) / Table.Slack);

    private static PaperPoint Middle(PaperBox cell, PaperBox box) => new((cell.Left + cell.Right - box.Left - box.Right) / 2, (cell.Bottom + cell.Top - box.Bottom - box.Top) / 2);

    // What the stage adds, part by part.
    private static string[] Caption(IReadOnlyList<IReadOnlyList<Part>> stages, int at)
    {
        var begun = stages.Take(at).SelectMany(parts => parts).Select(part => part.Name).ToHashSet(StringComparer.Ordinal);
        var goesOn = stages[at].Any(part => part.Rises && begun.Contains(part.Name));
        string[] names =
        [
            .. stages[at].GroupBy(part => part.Name, StringComparer.Ordinal)
                .Select(same => char.ToLowerInvariant(same.Key[0]) + same.Key[1..] + (same.All(part => part.Sheet is not null) && begun.Contains(same.Key) ? " turned over" : same.All(RunsThrough) ? " borne at their ends" : "")),
        ];
        names[0] = goesOn ? "Further up: " + names[0] : char.ToUpperInvariant(names[0][0]) + names[0][1..];
        return names;
    }

    private static IEnumerable<Item> Words(TextSizes sizes, int number, string[] names, PaperBox cell, int most)
    {
        var baseLine = cell.Bottom + Height(sizes, most) - Pitch(sizes);
        yield return new Text("key", number.ToString(CultureInfo.InvariantCulture), new(cell.Left, baseLine), sizes.Notes, Bold: true);
        var lines = Wrapped(sizes, string.Join(", ", names), cell.Width);
        for (var count = names.Length - 1; lines.Count > most && count > 0; count--)
        {
            lines = Wrapped(sizes, $"{string.Join(", ", names.Take(count))} and {(names.Length - count).ToString(CultureInfo.InvariantCulture)} more", cell.Width);
        }

        yield return new Paragraph("key", lines, new(cell.Left + Indent(sizes), baseLine), sizes.Notes, Pitch(sizes));
    }

    // A member of the roof that runs along the wall, out of the plane: nothing in this section carries it.
    private static bool RunsThrough(Part part) => part is { Element: Element.Roof, Presence: Presence.Cut, Repeat: null } && part.Roles.HasFlag(Roles.Structure) && Math.Abs(part.Axis.Y) > Math.Abs(part.Axis.X);
}
