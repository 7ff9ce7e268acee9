using System.Globalization;
using DetailGen.Drawing.Lettering;
using DetailGen.Drawing.Scenes;

namespace DetailGen.Drawing.Sheets;

/// <summary>
/// What was checked, in two tables: verdicts with what is required and what is drawn, and in sentences what a person must confirm. On every sheet a check goes by the same name.
/// </summary>
internal static class CheckTables
{
    private const string Title = "Check list", ConfirmTitle = "To confirm";

    /// <summary>Pitch of the lines in words under a list, mm.</summary>
    private const double WordPitch = 4.25;

    /// <summary>Under a check list, for what is counted only, mm.</summary>
    private const double LastLine = 4.5;

    /// <summary>Between the list and the table of what is to be confirmed, mm.</summary>
    private const double Apart = 3;

    /// <summary>How much of the room of a check list may go into words.</summary>
    private const double MostInWords = 0.45;

    /// <summary>How much of its width a table of sentences may give the names before them: what leaves it lowest.</summary>
    private static readonly double[] ForNames = [0.32, 0.26, 0.21];

    /// <summary>From here on a check list has room for its figures in one line, mm.</summary>
    private const double WideTable = 100;

    /// <summary>No figure with sign and unit is wider; what is, is words, which may be broken, but not to a column of single ones. mm.</summary>
    private const double WideFigure = 28, WideWords = 45;

    internal static bool IsToConfirm(CheckLine check) => check.Verdict == Verdict.ToConfirm;

    /// <summary>The list of verdicts, as many lines as fit; what is left goes on elsewhere.</summary>
    internal static (IReadOnlyList<Item> Items, int Laid, PaperBox Box) Verdicts(
        TextSizes sizes, IReadOnlyList<CheckLine> judged, int furtherPasses, PaperBox zone, bool continuing)
    {
        var table = Checks(sizes, continuing ? Title + ", continued" : Title, judged, zone);
        return Closed(sizes, table, table.RowsLaid < judged.Count ? "continued" : Passing(furtherPasses), zone);
    }

    /// <summary>What the list of verdicts takes with its title and its last line, mm.</summary>
    internal static double VerdictsHeight(TextSizes sizes, IReadOnlyList<CheckLine> judged, double width) =>
        sizes.ByNotes(LastLine) + Table.HeightOf(sizes, Title, CheckColumns(sizes, judged, width), CheckRows(judged));

    /// <summary>What is to be confirmed, in sentences, as many lines as fit.</summary>
    /// <param name="furtherPasses">Counted below where no list of verdicts tells it; else 0.</param>
    internal static (IReadOnlyList<Item> Items, int Laid, PaperBox Box) Sentences(
        TextSizes sizes, IReadOnlyList<CheckLine> confirm, int furtherPasses, PaperBox zone, bool continuing, double tighter = 0)
    {
        var (columns, rows) = (SentenceColumns(sizes, confirm, zone.Width), SentenceRows(confirm));
        var table = Lay(furtherPasses > 0 ? LastLine : 0);
        return table.RowsLaid < confirm.Count ? Closed(sizes, Lay(LastLine), "continued", zone) : Closed(sizes, table, Passing(furtherPasses), zone);

        Table Lay(double reserve) => Table.Lay(
            sizes, "checklist", continuing ? ConfirmTitle + ", continued" : ConfirmTitle, columns, rows, new(zone.Left, zone.Top), zone.Bottom - 1e-6 + sizes.ByNotes(reserve), tighter);
    }

    internal static double SentencesHeight(TextSizes sizes, IReadOnlyList<CheckLine> confirm, double width, double tighter = 0) =>
        Table.HeightOf(sizes, ConfirmTitle, SentenceColumns(sizes, confirm, width), SentenceRows(confirm), tighter);

    /// <summary>Both tables, one under the other, with all but what passes, that as far as it fits and then counted; null where the zone does not hold them.</summary>
    internal static (IReadOnlyList<Item> Items, PaperBox Box)? Whole(TextSizes sizes, IReadOnlyList<CheckLine> checks, int furtherPasses, PaperBox zone)
    {
        CheckLine[] confirm = [.. checks.Where(IsToConfirm)], judged = [.. checks.Where(check => !IsToConfirm(check))];

        // Many rows are too high whatever stands in them.
        if (checks.Count(check => check.Verdict != Verdict.Pass) * Table.Height(sizes, 1) > zone.Height)
        {
            return null;
        }

        return Whole(sizes, judged, confirm, furtherPasses, zone, 0) ?? Whole(sizes, judged, confirm, furtherPasses, zone, Table.Tight);
    }

    private static (IReadOnlyList<Item> Items, PaperBox Box)? Whole(TextSizes sizes, CheckLine[] judged, CheckLine[] confirm, int furtherPasses, PaperBox zone, double tighter)
    {
        var sentences = confirm.Length == 0 ? 0 : SentencesHeight(sizes, confirm, zone.Width, tighter);
        if (judged.Length == 0)
        {
            return sentences <= zone.Height && Sentences(sizes, confirm, furtherPasses, zone, continuing: false, tighter) is var (only, all, foot) && all > 0 && all == confirm.Length ? (only, foot) : null;
        }

        var table = Checks(sizes, Title, judged, zone with { Bottom = zone.Bottom + (confirm.Length == 0 ? 0 : sentences + Apart) }, tighter);
        if (table.RowsLaid == 0 || judged.Skip(table.RowsLaid).Any(check => check.Verdict != Verdict.Pass))
        {
            return null;
        }

        var (items, _, box) = Closed(sizes, table, Passing(furtherPasses + judged.Length - table.RowsLaid), zone);
        if (confirm.Length == 0)
        {
            return (items, box);
        }

        var (below, laid, end) = Sentences(sizes, confirm, 0, zone with { Top = box.Bottom - Apart }, continuing: false, tighter);
        return laid == confirm.Length ? ([.. items, .. below], zone with { Bottom = end.Bottom }) : null;
    }

    /// <summary>What of the check list belongs on the first sheet: a table of what fails, is broken, waived or passes by the least, as much as fits; below it in words what a person must confirm, and how much there is besides.</summary>
    /// <returns>Left: what further sheets have to tell.</returns>
    internal static (IReadOnlyList<Item> Items, IReadOnlyList<CheckLine> Left, PaperBox Box) Foremost(TextSizes sizes, IReadOnlyList<CheckLine> checks, int furtherPasses, PaperBox zone)
    {
        var confirm = checks.Where(check => check.Foremost && IsToConfirm(check)).ToList();
        var rows = checks.Where(check => check.Foremost && !IsToConfirm(check)).ToList();
        var unnamed = checks.Count(IsToConfirm) - confirm.Count;
        var width = zone.Width / Table.Slack;
        while (true)
        {
            var reserve = sizes.Typeface.Wrap(Remainder(confirm, unnamed, rows, checks.Count + furtherPasses, shown: true), sizes.Notes, width).Count * sizes.ByNotes(WordPitch);
            if (confirm.Count > 0 && reserve > zone.Height * MostInWords)
            {
                confirm.RemoveAt(confirm.Count - 1);
                unnamed++;
                continue;
            }

            var table = Checks(sizes, Title, rows, zone with { Bottom = zone.Bottom + reserve });
            var laid = rows.Take(table.RowsLaid).ToHashSet(ReferenceEqualityComparer.Instance);
            var left = rows.Skip(table.RowsLaid).ToList();
            var passes = furtherPasses + checks.Count(check => check.Verdict == Verdict.Pass && !laid.Contains(check));
            var words = Remainder(confirm, unnamed, [.. left.Where(check => check.Verdict != Verdict.Pass)], passes, shown: table.RowsLaid > 0);
            var (items, _, box) = Closed(sizes, table, words, zone);
            var whole = unnamed == 0 && left.TrueForAll(check => check.Verdict == Verdict.Pass);
            return (items, whole ? [] : [.. checks.Where(check => !laid.Contains(check))], box);
        }
    }

    /// <summary>Where the zone holds no more: that there is a check list.</summary>
    internal static (IReadOnlyList<Item> Items, PaperBox Box) Elsewhere(TextSizes sizes, PaperBox zone)
    {
        var (items, _, box) = Closed(sizes, Table.Empty(sizes, "checklist", Title, new(zone.Left, zone.Top), zone.Width), "see further sheets", zone);
        return (items, box);
    }

    private static string Passing(int count) => count switch
    {
        0 => "",
        1 => "1 further check passes",
        _ => $"{Count(count)} further checks pass",
    };

    private static string Remainder(List<CheckLine> confirm, int unnamed, IReadOnlyList<CheckLine> open, int passes, bool shown)
    {
        var more = new List<string>();
        more.AddRange(open.GroupBy(check => check.Verdict).OrderBy(group => group.Key).Select(group => $"{Count(group.Count())}{(shown ? " more" : "")} {VerdictSign.Words(group.Key)}"));
        if (unnamed > 0)
        {
            more.Add(confirm.Count > 0 ? $"{Count(unnamed)} more to confirm" : $"{Count(unnamed)} to confirm");
        }

        var elsewhere = more.Count > 0 ? ": see further sheets" : "";
        if (passes > 0)
        {
            more.Add(Passing(passes));
        }

        var named = confirm.Count > 0 ? $"To confirm: {string.Join("; ", confirm.Select(check => check.Name))}. " : "";
        return named + string.Join(", ", more) + elsewhere;
    }

    private static Table Checks(TextSizes sizes, string title, IReadOnlyList<CheckLine> checks, PaperBox zone, double tighter = 0)
    {
        var columns = CheckColumns(sizes, checks, zone.Width);
        if ((sizes.Notes > TextSizes.Usual.Notes || sizes.Typeface != Typeface.Shipped) && columns[0].Width < ColumnWidths.Needed(sizes, new(0, ["Rule or"]), checks.Select(check => new Cell(check.Name)), whole: false))
        {
            // Rather counted in words than with words torn.
            return Table.Empty(sizes, "checklist", title, new(zone.Left, zone.Top), zone.Width);
        }

        var table = Table.Lay(sizes, "checklist", title, columns, CheckRows(checks), new(zone.Left, zone.Top), zone.Bottom + sizes.ByNotes(LastLine), tighter);
        return table.RowsLaid > 0 ? table : Table.Empty(sizes, "checklist", title, new(zone.Left, zone.Top), zone.Width);
    }

    private static Column[] CheckColumns(TextSizes sizes, IReadOnlyList<CheckLine> checks, double width)
    {
        // as wide as the longest of its words with the sign beside it
        var verdict = checks.Select(check => sizes.ByWord(check.Verdict == Verdict.Waived ? 18 : 16.5, VerdictSign.Words(check.Verdict)))
            .Append(sizes.ByWord(16.5, "verdict", bold: true)).Max();
        var spare = width - verdict - ColumnWidths.Needed(sizes, new(0, ["Rule or"]), [], whole: true);
        var (required, drawn) = (Wide(sizes.ByWord(16.5, "required", bold: true), check => check.Required), Wide(sizes.ByWord(13, "drawn", bold: true), check => check.Drawn));
        var first = width - required - drawn - verdict;
        string[] head = first < ColumnWidths.Needed(sizes, new(0, ["Rule or check"]), [], whole: true) ? ["Rule or", "check"] : ["Rule or check"];
        return [new(first, head), new(required, ["required"]), new(drawn, ["drawn"]), new(verdict, ["verdict"])];

        // No unit is torn: as wide as the longest word, up to half of what the first column can do without. In a wide table no figure is parted from its sign and unit either.
        double Wide(double least, Func<CheckLine, string> of)
        {
            var needed = ColumnWidths.Needed(sizes, new(0, []), checks.Select(check => new Cell(of(check))).Prepend(new("")), whole: false);
            if (width > sizes.ByNotes(WideTable))
            {
                needed = checks.Select(check => ColumnWidths.Needed(sizes, of(check))).Select(whole => whole <= sizes.ByNotes(WideFigure) ? whole : Math.Min(whole, sizes.ByNotes(WideWords))).Append(needed).Max();
            }

            return Math.Clamp(needed, least, Math.Max(least, spare / 2));
        }
    }

    private static IReadOnlyList<Cell>[] CheckRows(IReadOnlyList<CheckLine> checks) =>
    [
        .. checks.Select(check => (IReadOnlyList<Cell>)[new(check.Name), new(check.Required), new(check.Drawn), new(VerdictSign.Words(check.Verdict), Sign: check.Verdict)]),
    ];

    private static Column[] SentenceColumns(TextSizes sizes, IReadOnlyList<CheckLine> confirm, double width)
    {
        var names = confirm.Select(check => new Cell(check.Name)).ToList();
        var column = new Column(0, ["Check"]);
        var (least, whole) = (ColumnWidths.Needed(sizes, column, names, whole: false), ColumnWidths.Needed(sizes, column, names, whole: true));
        MeasuredCell[][] rows = [.. SentenceRows(confirm).Select(cells => cells.Select(cell => new MeasuredCell(sizes, cell)).ToArray())];

        // A name may break where its sentence breaks too.
        return ForNames.Select(share => Math.Max(least, Math.Min(width * share, whole))).Distinct().Select(Columns)
            .MinBy(columns => Table.HeightOf(sizes, "", columns, rows.Select(cells => cells.Select((cell, i) => cell.Lines(columns[i])).Max())))!;

        Column[] Columns(double first) => [column with { Width = first }, new(width - first, ["What a person must confirm"])];
    }

    private static IReadOnlyList<Cell>[] SentenceRows(IReadOnlyList<CheckLine> confirm) =>
        [.. confirm.Select(check => (IReadOnlyList<Cell>)[new(check.Name), new(check.Text)])];

    private static (IReadOnlyList<Item> Items, int Laid, PaperBox Box) Closed(TextSizes sizes, Table table, string words, PaperBox zone)
    {
        if (words.Length == 0)
        {
            return (table.Items, table.RowsLaid, table.Box);
        }

        var lines = sizes.Typeface.Wrap(words, sizes.Notes, zone.Width / Table.Slack);
        var (box, first, pitch) = (table.Box, sizes.ByNotes(3.6), sizes.ByNotes(WordPitch));
        return (
            [.. table.Items, .. lines.Select((line, i) => new Text("checklist", line, new(zone.Left, box.Bottom - first - (i * pitch)), sizes.Notes))],
            table.RowsLaid,
            box with { Bottom = box.Bottom - first - ((lines.Count - 1) * pitch) - sizes.ByNotes(0.8) });
    }

    private static string Count(int number) => number.ToString(CultureInfo.InvariantCulture);
}
