using DetailGen.Analysis.Heat;
using DetailGen.Drawing.Lettering;
using DetailGen.Drawing.Scenes;
using DetailGen.Drawing.Sheets;
using DetailGen.Drawing.Sheets.Companions;
using DetailGen.Sections;

namespace DetailGen.Drawing.Tests.Sheets;

public class ThermalSheetTests
{
    public static TheoryData<string, bool> All => new() { { "A4", false }, { "A4", true }, { "A3", false }, { "A3", true } };

    [Theory]
    [MemberData(nameof(All))]
    public void Words_stand_within_the_frame_clear_of_each_other_and_of_the_view(string paper, bool mirror)
    {
        var basis = Basis(paper, mirror);
        foreach (var sheet in ThermalSheet.Of(basis))
        {
            var boxes = CompanionSheetTests.Words(sheet.Items).ToList();
            Assert.NotEmpty(boxes);
            Assert.All(boxes, box => Assert.True(CompanionSheetTests.Within(box.Box, basis.Format.Space), $"'{box.Words}' stands outside the frame."));
            Assert.All(sheet.Items.OfType<Stroke>().SelectMany(stroke => stroke.Points), point => Assert.True(CompanionSheetTests.Within(new(point.X, point.Y, point.X, point.Y), basis.Format.Space), "A rule runs over the frame."));
            for (var i = 0; i < boxes.Count; i++)
            {
                Assert.All(boxes.Skip(i + 1), other => Assert.False(boxes[i].Box.Grow(-0.1).Meets(other.Box.Grow(-0.1)), $"'{boxes[i].Words}' and '{other.Words}' overlap."));
            }

            Assert.All(sheet.Placements, placement =>
            {
                var drawn = sheet.Views.Single(view => view.Id == placement.ViewId).Bounds.Shift(placement.Origin);
                Assert.True(CompanionSheetTests.Within(drawn, placement.Window), "The view is cut off.");
                Assert.All(boxes, box => Assert.False(box.Box.Meets(drawn), $"'{box.Words}' stands on the view."));
            });
        }
    }

    [Theory]
    [MemberData(nameof(All))]
    public void Figures_stand_in_their_lines_and_nothing_runs_through_them(string paper, bool mirror)
    {
        var view = ThermalSheet.Of(Basis(paper, mirror))[0].Views.Single();
        Text[] figures = [.. view.Items.OfType<Text>().Where(text => text.Row == "analysis.figure")];
        PaperBox[] boxes = [.. figures.Select(Typeface.Shipped.Box)];
        Assert.True(figures.Length >= 4, $"{figures.Length} figures");
        for (var i = 0; i < boxes.Length; i++)
        {
            Assert.All(boxes.Skip(i + 1), other => Assert.False(boxes[i].Meets(other)));

            // the letters without their hanging and rising room
            var tight = figures[i].Rotation == 0
                ? new PaperBox(boxes[i].Left, figures[i].At.Y, boxes[i].Right, figures[i].At.Y + 2.5)
                : new PaperBox(figures[i].At.X - 2.5, boxes[i].Bottom, figures[i].At.X, boxes[i].Top);
            Assert.All(view.Items.OfType<Stroke>(), stroke => Assert.False(
                PaperLines.Crosses(stroke.Closed ? [.. stroke.Points, stroke.Points[0]] : stroke.Points, tight), $"A line of {stroke.Row} runs through {figures[i].Words}."));
            Assert.All(view.Items.OfType<Stroke>().Where(stroke => stroke.Row is "analysis.flux" or "analysis.model"), stroke => Assert.False(
                PaperLines.Crosses(stroke.Closed ? [.. stroke.Points, stroke.Points[0]] : stroke.Points, tight.Grow(0.5)), $"A line of {stroke.Row} runs up to {figures[i].Words}."));
        }
    }

    [Fact]
    public void A_mirrored_sheet_shows_the_same_lines_the_other_way_round()
    {
        double[] Ends(bool mirror) => [.. ThermalSheet.Of(Basis("A3", mirror))[0].Views.Single().Items.OfType<Stroke>().Where(stroke => stroke.Row == "break").Select(stroke => Math.Round(Math.Abs(stroke.Points[0].X - stroke.Points[^1].X), 6)).Order()];
        Assert.Equal(Ends(false), Ends(true));
    }

    [Theory]
    [MemberData(nameof(All))]
    public void A_list_that_goes_on_upon_a_further_sheet_has_its_title_there_again(string paper, bool mirror)
    {
        var basis = Basis(paper, mirror);
        string[] Long(string of) => [.. Enumerable.Range(1, 60).Select(i => $"{of} {i} departs from what is drawn, and this sentence says how it does so and why, which takes some lines in a column.")];
        var sheets = ThermalSheet.Of(basis with { Thermal = basis.Thermal! with { Lists = [new("Steps", Long("Step")), new("Basis", Long("Ground"))] } });
        Assert.True(sheets.Count > 2);
        foreach (var (list, word) in new[] { ("Steps", "Step "), ("Basis", "Ground ") })
        {
            var holding = sheets.Where(sheet => sheet.Items.OfType<Paragraph>().Any(words => words.Lines[0].StartsWith(word, StringComparison.Ordinal))).ToList();
            Assert.Contains(holding[0].Items.OfType<Text>(), text => text.Words == list);
            Assert.All(holding.Skip(1), sheet => Assert.Single(sheet.Items.OfType<Text>(), text => text.Words == $"{list}, continued"));
        }
    }

    [Fact]
    public void Lines_end_where_the_drawing_breaks_off()
    {
        var basis = Basis("A3", false);
        var sheet = ThermalSheet.Of(basis)[0];
        var (view, room) = (sheet.Views.Single(), sheet.Placements.Single().Window);
        var lowest = view.Items.OfType<Stroke>().Where(stroke => stroke.Row == "break").SelectMany(stroke => stroke.Points).Min(point => point.Y);
        Assert.All(view.Items.OfType<Stroke>().Where(stroke => stroke.Row.StartsWith("analysis.", StringComparison.Ordinal)).SelectMany(stroke => stroke.Points), point =>
        {
            Assert.True(point.Y >= lowest - 1e-6);
            Assert.True(CompanionSheetTests.Within(new PaperBox(point.X, point.Y, point.X, point.Y).Shift(sheet.Placements.Single().Origin), room));
        });
    }

    [Theory]
    [MemberData(nameof(All))]
    public void Flux_lines_are_drawn_in_their_own_stroke_and_told_in_the_key(string paper, bool mirror)
    {
        var sheet = ThermalSheet.Of(Basis(paper, mirror))[0];
        Assert.Contains(sheet.Views.Single().Items.OfType<Stroke>(), stroke => stroke.Row == "analysis.flux");
        Assert.Single(sheet.Items.OfType<Stroke>(), stroke => stroke.Row == "analysis.flux");
        Assert.Contains(sheet.Items.OfType<Paragraph>(), words => words.Lines.Contains("Flux lines"));
    }

    [Fact]
    public void A_coldest_place_beyond_the_drawing_is_told_and_not_marked()
    {
        var basis = Basis("A3", false);
        var far = basis with { Thermal = basis.Thermal! with { Picture = basis.Thermal.Picture with { Coldest = new(9000, -450) } } };
        Assert.Contains(ThermalSheet.Of(basis)[0].Views.Single().Items, item => item is Ring);
        var sheet = ThermalSheet.Of(far)[0];
        Assert.DoesNotContain(sheet.Views.Single().Items, item => item is Ring);
        Assert.Contains(sheet.Items.OfType<Paragraph>(), words => words.Lines.Contains("the coldest is elsewhere"));
    }

    [Fact]
    public void Airs_are_named_and_the_coldest_place_has_its_words_and_a_line_to_them()
    {
        var view = ThermalSheet.Of(Basis("A3", false))[0].Views.Single();
        Assert.Equal(["Outside", "Room"], view.Items.OfType<Text>().Where(text => text.Row == "title.view").Select(text => text.Words).Order(StringComparer.Ordinal));
        Assert.Single(view.Items, item => item is Stroke { Row: "note.leader" });
        Assert.Contains(view.Items.OfType<Paragraph>(), words => words.Lines.Contains("15.9 °C"));
    }

    // as wide and as high as a real one
    private static readonly TextTable Conductivities = new(
        "Conductivities", [new(["Material"]), new(["λ of the", "model"], true), new(["λ of its", "own"], true), new(["How it is", "known"])],
        [.. Enumerable.Repeat<IReadOnlyList<string>>(["Gypsum plasterboard, standard", "0.210", "0.210", "calculated, common practice"], 16)]);

    // Lines that run up the wall and along the roof, a millimetre of temperature for each of 15 mm; where real ones lie is for the tests of the field.
    private static CompanionBasis Basis(string paper, bool mirror)
    {
        var basis = CompanionSheetTests.Basis(paper, mirror);
        IReadOnlyList<IReadOnlyList<Point>> Lines(double temperature) => [[new(15 * temperature, -2000), new(15 * temperature, -150), new(300 + (5 * temperature), 40 - (9 * temperature)), new(3000, 40 - (9 * temperature))]];
        ThermalSolid[] solids = [.. basis.Section.Parts.Where(part => part is { Presence: Presence.Cut, IsAir: false, Sheet: null }).Select(part => new ThermalSolid(part.Material, [part.Id], 1, part.Region))];
        ThermalPicture picture = new(
            [.. Enumerable.Range(1, 9).Select(i => new Isotherm(2 * i, Lines(2 * i)))], new(9.3, Lines(9.3)), new(2, [.. Enumerable.Range(1, 4).Select(i => (IReadOnlyList<Point>)[new(600 + (200 * i), -450), new(600 + (200 * i), 0)])]), new(420, -450),
            [
                new("outside", 0, [0.04], [[new(0, -690), new(0, 510), new(420, 510), new(420, 0), new(3000, 0)]]),
                new("room", 20, [0.10, 0.13], [[new(420, -690), new(420, -450), new(3000, -450)]]),
            ],
            solids);
        return basis with
        {
            Thermal = new(
                picture, [new("outside", "Outside", ["0 °C"]), new("room", "Room", ["20 °C", "Rs 0.10 m²K/W up"])], ["15.9 °C", "factor 0.795"], "Isotherms", "Flux lines", "Dew point", "9.3", "Model", "the coldest", "the coldest is elsewhere",
                [new("Figures", [new([""]), new(["Value"], true), new(["Proven", "between"], true)], [["Ψ, inside dimensions, W/mK", "0.0712", "0.0709 to 0.0715"]]), Conductivities],
                [new("Steps", [.. Enumerable.Range(1, 14).Select(i => $"Step {i} departs from what is drawn, and this sentence says how it does so and why, which takes some lines in a column.")])]),
        };
    }
}
