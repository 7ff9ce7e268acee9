using DetailGen.Drawing.Annotation;
using DetailGen.Drawing.Emitters;
using DetailGen.Drawing.Lettering;
using DetailGen.Drawing.Scenes;
using DetailGen.Drawing.Sheets;

namespace DetailGen.Drawing.Tests.Sheets;

public class PageComposerTests
{
    public static TheoryData<string> Papers => ["A4", "A3"];

    [Fact]
    public void A3_carries_whole_stacks_of_the_schedule_wall_first_and_the_rest_goes_to_the_second_sheet()
    {
        var pages = SampleSheets.Scene(SampleSheets.A3).Pages;
        Assert.Contains(Texts(pages[0]), text => text.Words == "W6");
        Assert.DoesNotContain(Texts(pages[0]), text => text.Words == "R1");
        Assert.Contains(Texts(pages[1]), text => text.Words == "R7");
    }

    [Fact]
    public void On_A4_every_table_goes_to_further_sheets()
    {
        var pages = SampleSheets.Scene(SampleSheets.A4).Pages;
        Assert.DoesNotContain(Texts(pages[0]), text => text.Row is "schedule" or "key" or "checklist");
        Assert.Contains(Texts(pages[1]), text => text.Words == "Layer schedule");
        Assert.Contains(pages.Skip(1).SelectMany(Texts), text => text.Words == "Check list");
        Assert.All(pages, page => Assert.Contains(Texts(page), text => text.Words == $"{page.Number}/{pages.Count}"));
    }

    [Theory]
    [InlineData(Verdict.Pass, "pass")]
    [InlineData(Verdict.Fail, "fail")]
    [InlineData(Verdict.Warn, "warn")]
    [InlineData(Verdict.Waived, "waived")]
    public void A_verdict_stands_in_one_piece_on_the_first_sheet(Verdict verdict, string word)
    {
        var pages = SampleSheets.Scene(Format("A3"), SampleSheets.Text with { Checks = [new("Upstand least", "Upstand least", "≥ 150", "125", verdict, true)] }).Pages;
        Assert.Contains(Texts(pages[0]), text => text.Row == "checklist" && text.Words == word);
    }

    [Theory]
    [InlineData("A3")]
    [InlineData("A2")]
    public void No_unit_is_torn_in_the_check_list_of_the_first_sheet(string paper)
    {
        var check = new CheckLine("Ψ of the junction", "Ψ of the junction", "≤ 0.05 W/mK", "0.1228 W/mK", Verdict.Warn, true);
        var words = Texts(SampleSheets.Scene(Format(paper), SampleSheets.Text with { Checks = [check] }).Pages[0]).Where(text => text.Row == "checklist").SelectMany(text => text.Words.Split(' ')).ToList();
        Assert.Equal(2, words.Count(word => word == "W/mK"));
        Assert.Contains("0.1228", words);
    }

    [Theory]
    [MemberData(nameof(Papers))]
    public void A_check_list_that_outgrows_its_zone_is_counted_there_and_stands_whole_on_further_sheets(string paper)
    {
        var checks = Enumerable.Range(1, 150).Select(i => new CheckLine($"Name {i}", $"Sentence {i}", "–", "–", Verdict.ToConfirm, i <= 2)).ToList();
        var pages = SampleSheets.Scene(Format(paper), SampleSheets.Text with { Checks = checks }).Pages;
        var lines = pages.Skip(1).SelectMany(Texts).Select(text => text.Words).ToList();
        Assert.All(checks, check => Assert.Single(lines, line => line == check.Text));
        if (paper == "A3")
        {
            var first = Texts(pages[0]).Where(text => text.Row == "checklist").Select(text => text.Words).ToList();
            var words = string.Join(' ', first);
            Assert.Contains("To confirm: Name 1; Name 2.", words, StringComparison.Ordinal);
            Assert.DoesNotContain("Name 3", words, StringComparison.Ordinal);
            Assert.Contains("148 more to confirm", words, StringComparison.Ordinal);
        }
    }

    [Theory]
    [InlineData("A4")]
    [InlineData("A3")]
    public void A_check_goes_by_one_name_on_every_sheet_and_its_verdict_stands_there_once(string paper)
    {
        List<CheckLine> checks = [.. Confirmed(70), .. Enumerable.Range(1, 40).Select(i => new CheckLine($"Passed {i}", $"In a sentence {i}", "≥ 150", "150", Verdict.Pass, true))];
        var format = Format(paper);
        var words = SampleSheets.Scene(format, SampleSheets.Text with { Checks = checks }).Pages.SelectMany(Texts).Where(text => text.Row == "checklist").Select(text => text.Words).ToList();
        Assert.DoesNotContain(words, line => line.StartsWith("In a sentence", StringComparison.Ordinal));
        Assert.All(checks.Where(check => check.Verdict == Verdict.Pass), check => Assert.Single(words, check.Name));
        Assert.All(checks.Where(check => check.Verdict == Verdict.ToConfirm), check => Assert.Equal(1, words.Count(line => line == check.Text)));
        Assert.All(checks.Where(check => check.Verdict == Verdict.ToConfirm), check => Assert.Single(words, check.Name));
    }

    // The zone is cut down to what the rows need, and must still hold them for all that a sum of tenths is no exact figure.
    [Theory]
    [InlineData(2.5)]
    [InlineData(2.8)]
    [InlineData(3.5)]
    [InlineData(3.7)]
    public void No_revision_is_left_out_of_a_table_that_is_as_high_as_it_needs(double notes)
    {
        var sizes = TextSizes.Usual with { Notes = notes };
        for (var count = 1; count <= 4; count++)
        {
            RevisionLine[] lines = [.. Enumerable.Range(1, count).Select(i => new RevisionLine($"P0{i}", "2026-11-25", "First issue", "AB", "CD"))];
            for (var foot = 40; foot < 60; foot++)
            {
                var height = Tables.RevisionsHeight(sizes, lines, 180, 200);
                PaperBox zone = new(631, foot, 811, foot + height);
                var words = Tables.Revisions(sizes, lines, zone).SelectMany(Texts).Select(text => text.Words).ToList();
                Assert.All(lines, line => Assert.Contains(line.Revision, words));
            }
        }
    }

    [Fact]
    public void The_columns_of_the_last_sheet_go_down_equally_far()
    {
        var last = SampleSheets.Scene(SampleSheets.A3, SampleSheets.Text with { Checks = Confirmed(40) }).Pages[^1];
        var rows = Texts(last).Where(text => text.Row == "checklist" && text.Words.StartsWith("Sentence", StringComparison.Ordinal)).ToList();
        var feet = rows.GroupBy(text => text.At.X).Select(column => column.Min(text => text.At.Y)).ToList();
        Assert.Equal(40, rows.Count);
        Assert.Equal(2, feet.Count);
        Assert.InRange(feet.Max() - feet.Min(), 0, 25);
    }

    [Fact]
    public void A_check_list_that_has_room_on_the_first_sheet_stands_there_whole_and_what_passes_is_counted()
    {
        List<CheckLine> checks = [.. Confirmed(60), .. Enumerable.Range(1, 40).Select(i => new CheckLine($"Passed {i}", $"Passed {i}", "≥ 150", "150", Verdict.Pass, true))];
        var page = Assert.Single(SampleSheets.Scene(SampleSheets.A1, SampleSheets.Text with { Checks = checks, FurtherPasses = 5 }).Pages);
        var lines = Texts(page).Select(text => text.Words).ToList();
        Assert.All(checks.Take(60), check => Assert.Contains(check.Text, lines));
        var counted = int.Parse(Assert.Single(lines, line => line.EndsWith(" further checks pass", StringComparison.Ordinal)).Split(' ')[0], System.Globalization.CultureInfo.InvariantCulture);
        Assert.Equal(45, counted + lines.Count(line => line.StartsWith("Passed", StringComparison.Ordinal)));
    }

    [Fact]
    public void On_A4_the_words_of_numbered_notes_come_before_all_other_tables()
    {
        var zone = SampleSheets.A4.Zones["view"];
        var pages = PageComposer.Lay(SampleSheets.A4, SampleSheets.Text, 10, SampleSheets.Key, [new("P1", "tie.1", "Wall ties")], [])(new("section", new(zone.Left, zone.Bottom), zone), new(zone.Left, zone.Bottom));
        var titles = pages.Skip(1).SelectMany(Texts).Where(text => text.Height == 3.5 && text.Row != "block.value" && text.Row != "frame.grid").Select(text => text.Words).ToList();
        Assert.Equal("Notes by number", titles[0]);
    }

    [Fact]
    public void In_a_wide_check_list_no_figure_is_parted_from_its_sign_and_unit()
    {
        CheckLine[] checks = [.. Confirmed(60), new("U-value", "Limiting U-value", "≤ 0.16 W/m²K", "0.1489 W/m²K", Verdict.Pass, true), new("DPC", "No such DPC", "≠ polyethylene VCL, low density film", "bitumen DPC", Verdict.Pass, true)];
        var words = SampleSheets.Scene(SampleSheets.A4, SampleSheets.Text with { Checks = checks }).Pages.Skip(1).SelectMany(Texts).Select(text => text.Words).ToList();
        Assert.Contains("≤ 0.16 W/m²K", words);
        Assert.Contains("0.1489 W/m²K", words);
    }

    [Theory]
    [InlineData("A3")]
    [InlineData("ANSI-C")]
    public void The_name_of_the_paper_is_told_in_full(string paper)
    {
        var form = TitleBlockForm.Of(TextSizes.Usual, SampleSheets.Text.Title, "1:10 at " + paper, paper, "10/12", new(0, 0, 180, 56), slim: false);
        Assert.Equal(paper, form.Values.Single(value => value.Tag == "PAPER").Text.Words);
        Assert.Equal("10/12", form.Values.Single(value => value.Tag == "SHEET").Text.Words);
    }

    [Theory]
    [InlineData("", false)]
    [InlineData("1 Fen Lane, Harrow Fen", false)]
    [InlineData("1 Fen Lane, Harrow Fen", true)]
    public void No_value_of_the_title_block_touches_a_label(string address, bool slim)
    {
        var title = SampleSheets.Text.Title with { Owner = "Harrow Fen Studio", Address = address, Approved = "Jj", Project = "High Jetty" };
        var form = TitleBlockForm.Of(TextSizes.Usual, title, "1:10 at A3", "A3", "1/1", new(0, 0, 180, 56), slim);
        var labels = form.Items.OfType<Text>().Where(text => text.Row == "block.label").Select(Typeface.Shipped.Box).ToList();
        Assert.True(labels.Count >= 10);
        Assert.All(form.Values, value => Assert.DoesNotContain(labels, label => label.Meets(Typeface.Shipped.Box(value.Text))));
    }

    [Theory]
    [InlineData(2.5, "ANSI-C")]
    [InlineData(3.5, "ANSI-C")]
    [InlineData(3.5, "A3")]
    public void Scale_and_date_are_told_in_full_in_letters_of_any_height(double notes, string paper)
    {
        var title = SampleSheets.Text.Title with { Date = "2026-11-25", Drawn = "AB" };
        var form = TitleBlockForm.Of(TextSizes.Usual with { Notes = notes, Titles = 5 }, title, "1:10 at " + paper, paper, "10/12", new(0, 0, 180, 56), slim: false);
        foreach (var (tag, words) in ((string, string)[])[("SCALE", "1:10 at " + paper), ("DATE", "2026-11-25"), ("DRAWN", "AB")])
        {
            Assert.Equal(words, form.Values.Single(value => value.Tag == tag).Text.Words);
        }

        var boxes = form.Values.Select(value => Typeface.Shipped.Box(value.Text)).ToList();
        Assert.DoesNotContain(boxes, box => boxes.Any(other => other != box && other.Meets(box)));
    }

    [Theory]
    [MemberData(nameof(Papers))]
    public void No_two_texts_of_a_sheet_overlap_and_none_leaves_the_paper(string paper)
    {
        foreach (var page in SampleSheets.Scene(Format(paper)).Pages)
        {
            var texts = Texts(page).ToList();
            var boxes = texts.Select(Typeface.Shipped.Box).ToList();
            Assert.All(boxes, box => Assert.True(box.Left > 0 && box.Bottom > 0 && box.Right < page.Width && box.Top < page.Height));
            for (var i = 0; i < boxes.Count; i++)
            {
                for (var j = 0; j < i; j++)
                {
                    Assert.False(boxes[i].Meets(boxes[j], -0.3), $"'{texts[i].Words}' and '{texts[j].Words}'");
                }
            }
        }
    }

    // Fields of the grid reference: ISO 5457:1999 as told in a trade article (secondary text).
    [Theory]
    [InlineData("A4", 4, 6)]
    [InlineData("A3", 8, 6)]
    public void The_grid_reference_has_the_fields_of_its_paper(string paper, int across, int down)
    {
        var texts = Frame.Of(Format(paper)).OfType<Text>().ToList();
        Assert.Equal(across, texts.Where(text => char.IsAsciiDigit(text.Words[0])).Select(text => text.Words).Distinct().Count());
        Assert.Equal(down, texts.Where(text => char.IsAsciiLetter(text.Words[0])).Select(text => text.Words).Distinct().Count());
        Assert.DoesNotContain(texts, text => text.Words is "I" or "O");
    }

    [Fact]
    public void An_empty_obligatory_field_prints_a_dash()
    {
        var form = TitleBlockForm.Of(TextSizes.Usual, SampleSheets.Text.Title with { Approved = "" }, "1:10 at A3", "A3", "1/1", new(0, 0, 180, 56), slim: false);
        Assert.Equal("–", form.Values.Single(value => value.Tag == "APPROVED").Text.Words);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(5)]
    public void Where_the_notes_by_number_leave_room_the_schedule_stands_under_them_on_the_first_sheet(int count)
    {
        // The check list takes the column in which the notes by number would stand.
        KeyedNote[] keyed = [.. Enumerable.Range(1, count).Select(i => new KeyedNote($"part.{i}", $"P{i}", $"Words of note {i}"))];
        var texts = Texts(SampleSheets.Scene(SampleSheets.A1, SampleSheets.Text with { Checks = Confirmed(80) }, keyed).Pages[0]).ToList();
        var numbered = texts.Where(text => text.Row == "note.text").ToList();
        var schedule = texts.Where(text => text.Row == "schedule").ToList();
        Assert.All(keyed, note => Assert.Single(numbered, text => text.Words == note.Words));
        Assert.Contains(schedule, text => text.Words == "W6");
        Assert.True(schedule.Max(text => text.At.Y) < numbered.Min(text => text.At.Y), "The schedule stands under the notes.");
    }

    [Theory]
    [InlineData(1, "1 further check passes")]
    [InlineData(2, "2 further checks pass")]
    public void What_passes_besides_is_counted_in_a_sentence(int count, string words) =>
        Assert.Contains(words, SampleSheets.Scene(SampleSheets.A1, SampleSheets.Text with { FurtherPasses = count }).Pages.SelectMany(Texts).Select(text => text.Words));

    [Theory]
    [InlineData(5, 100)]
    [InlineData(10, 50)]
    [InlineData(20, 50)]
    [InlineData(2, 25)]
    public void The_scale_bar_is_as_long_as_it_says(double scale, double length)
    {
        var box = ViewTitle.Of(TextSizes.Usual, "1", "Section", scale, new(0, 0)).OfType<Stroke>().Single(stroke => stroke.Closed);
        Assert.Equal(length, box.Points[1].X - box.Points[0].X, 1e-9);
    }

    [Theory]
    [MemberData(nameof(Papers))]
    public void A_sheet_can_be_written_in_every_format(string paper)
    {
        var files = SceneFiles.Emit(SampleSheets.Scene(Format(paper)), SceneFiles.Formats);
        Assert.All(files, file => Assert.NotEmpty(file.Bytes));
        if (Environment.GetEnvironmentVariable("DETAILGEN_LOOK") is { Length: > 0 } folder)
        {
            foreach (var file in files)
            {
                File.WriteAllBytes(Path.Combine(folder, $"{paper}{file.Suffix}.{file.Format}"), file.Bytes);
            }
        }
    }

    private static List<CheckLine> Confirmed(int count) => [.. Enumerable.Range(1, count).Select(i => new CheckLine($"Name {i}", $"Sentence {i}", "–", "–", Verdict.ToConfirm, true))];

    private static SheetFormat Format(string paper) => paper == "A4" ? SampleSheets.A4 : SampleSheets.A3;

    private static IEnumerable<Text> Texts(Page page) => page.Items.SelectMany(Texts);

    private static IEnumerable<Text> Texts(Item item) => item switch
    {
        Text text => [text],
        Paragraph paragraph => paragraph.Lines.Select((line, i) => new Text(paragraph.Row, line, paragraph.At - new PaperPoint(0, i * paragraph.Pitch), paragraph.Height)),
        Form form => form.Items.Concat(form.Values.Select(value => value.Text)).SelectMany(Texts),
        Group group => group.Items.SelectMany(Texts),
        _ => [],
    };
}
