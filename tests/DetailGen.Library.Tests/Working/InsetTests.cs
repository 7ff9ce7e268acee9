using System.Globalization;
using DetailGen.Drawing.Auditing;
using DetailGen.Drawing.Scenes;
using DetailGen.Drawing.Sheets;
using DetailGen.Library.Wording;
using DetailGen.Library.Working;
using DetailGen.Testing;

namespace DetailGen.Library.Tests.Working;

/// <summary>Sheets of shipped details with insets, and on papers that those do not use.</summary>
public class InsetTests
{
    /// <summary>A stroke of a fill may end this far outside of a round clip, mm; half of it lies under the line of the ring.</summary>
    private const double Rounding = 0.25;

    private static readonly string[] OnA2 = ["sheet.paper=A2", "sheet.scale=1:10"];

    [Theory]
    [InlineData("parapet-01", "false", "A2")]
    [InlineData("parapet-01", "true", "A1")]
    [InlineData("abutment-01", "false", "A1")]
    [InlineData("parapet-05", "true", "A3")]
    public void What_is_too_fine_is_ringed_on_the_view_and_drawn_again_at_1_to_2_without_a_fault(string detail, string mirror, string paper)
    {
        var sheet = Composed(detail, ["sheet.scale=1:10", "mirror=" + mirror, "sheet.paper=" + paper]);
        var (inset, round, page) = Inset(sheet);
        Assert.Equal(2, inset.Scale);
        var mark = Assert.Single(sheet.Scene.Views[0].Items.OfType<Group>(), group => group.Name == "inset A");
        var ring = Assert.Single(mark.Items.OfType<Ring>());
        Assert.Equal("dashed", sheet.Scene.Layers.Single(layer => layer.Row == ring.Row).LineType);

        // Whoever reads the letter finds the inset: on this sheet, or on the one that is named with it.
        Assert.Equal(page == 1 ? "A" : $"A/{page.ToString(CultureInfo.InvariantCulture)}", string.Join('/', mark.Items.OfType<Text>().Select(text => text.Words)));

        // The ring on the view and the one round the inset go round the same place of the building.
        Assert.Equal(sheet.Scale * ring.Centre.X, 2 * round.Centre.X, 6);
        Assert.Equal(sheet.Scale * ring.Centre.Y, 2 * round.Centre.Y, 6);
        Assert.Equal(sheet.Scale * ring.Diameter, 2 * round.Diameter, 6);
        Assert.Empty(LayoutAudit.Of(sheet.Scene, sheet.Format, sheet.Parts));
    }

    [Fact]
    public void Parts_are_named_beside_an_inset_by_their_references_on_the_view()
    {
        var sheet = Composed("parapet-01", ["sheet.paper=A1", "sheet.scale=1:10"]);
        var (inset, ring, _) = Inset(sheet);
        string[] References(View view) => [.. view.Items.OfType<Group>().Where(group => group.Row == "note.text").SelectMany(group => group.Items.OfType<Text>()).Where(text => text.Bold).Select(text => text.Words)];
        var named = References(inset);
        Assert.True(named.Length >= 4, string.Join(' ', named));
        Assert.Equal(named.Distinct(), named);
        var words = inset.Items.OfType<Group>().SelectMany(group => group.Items.OfType<Text>()).ToArray();
        Assert.Contains(words, text => text.Words.StartsWith("Upstand", StringComparison.Ordinal));
        Assert.All(words, text => Assert.True((text.At - ring.Centre).Length > ring.Diameter / 2, text.Words));

        // Each leads to its part: the audit knows the parts of the inset too, and sees a leader that ends elsewhere.
        Assert.Empty(LayoutAudit.Of(sheet.Scene, sheet.Format, sheet.Parts));
        Assert.Contains(
            LayoutAudit.Of(sheet.Scene, sheet.Format, sheet.Parts.ToDictionary(view => view.Key, view => view.Key == inset.Id ? [] : view.Value, StringComparer.Ordinal)),
            fault => fault.Kind == AuditKinds.TipOffPart);
    }

    [Fact]
    public void A_further_piece_of_a_part_is_named_like_the_piece_that_the_view_names()
    {
        var sheet = Composed("parapet-04", ["sheet.companions=[blank]"]);
        var strip = sheet.Scene.Views.Where(view => view.Id.StartsWith("inset-", StringComparison.Ordinal)).SelectMany(view => view.Items).OfType<Group>()
            .Single(group => group.Items.OfType<Text>().Any(text => text.Words.StartsWith("Strip under", StringComparison.Ordinal)));
        var reference = strip.Items.OfType<Text>().Single(text => text.Bold).Words;
        Assert.Contains(
            sheet.Scene.Views[0].Items.OfType<Group>(),
            group => group.Items.OfType<Text>().Any(text => text.Bold && text.Words == reference) && group.Items.OfType<Text>().Any(text => text.Words.Contains("foam strip", StringComparison.Ordinal)));
    }

    [Fact]
    public void The_key_stays_beside_the_view_though_it_has_no_room_there_for_what_a_ring_means()
    {
        bool HasKey(Page page) => page.Items.OfType<Text>().Any(text => text.Words == "Key");
        var pages = Composed("parapet-03", []).Scene.Pages;
        Assert.True(HasKey(pages[0]));
        Assert.DoesNotContain(pages.Skip(1), HasKey);
    }

    [Fact]
    public void Tables_of_further_sheets_reach_down_to_the_revisions_that_there_are()
    {
        var sheet = Composed("parapet-02", []);
        var zone = sheet.Format!.Zones["revisions"];
        var head = sheet.Scene.Pages[1].Items.OfType<Text>().Single(text => text.Words == "Rev");
        Assert.InRange(zone.Top - head.At.Y, 1, 5);
        Assert.InRange(zone.Height, 5, 15); // one revision and the head; the form of the sheet holds four
    }

    // Leaders run so close round its ring that the letter stands over the number of the sheet.
    [Fact]
    public void A_ring_among_leaders_has_a_mark_that_tells_where_its_inset_stands_with_names()
    {
        var sheet = Composed("parapet-04", ["sheet.companions=[blank]"]);
        var inset = sheet.Scene.Views.Single(view => view.Id == "inset-b");
        var page = sheet.Scene.Pages.Single(page => page.Placements.Any(placement => placement.ViewId == inset.Id)).Number;
        var mark = sheet.Scene.Views[0].Items.OfType<Group>().Single(group => group.Name == "inset B").Items;
        Text[] words = [.. mark.OfType<Text>()];
        Assert.Equal(["B", page.ToString(CultureInfo.InvariantCulture)], words.Select(text => text.Words));
        var stroke = Assert.Single(mark.OfType<Stroke>(), stroke => stroke.Points[0].Y == stroke.Points[^1].Y);
        Assert.True(words[0].At.Y > stroke.Points[0].Y && words[1].At.Y + words[1].Height < stroke.Points[0].Y);
        Assert.Contains(inset.Items.OfType<Group>(), group => group.Row == "note.text");
        Assert.Empty(LayoutAudit.Of(sheet.Scene, sheet.Format, sheet.Parts));
    }

    [Theory]
    [InlineData("parapet-01", "roof.insulation=300mm", "parapet.height=900mm", "coping.kind=metal", "mirror=true", "sheet.paper=A1", "sheet.scale=1:5")]
    [InlineData("parapet-01", "wall.cavity=150mm", "sheet.paper=A2", "sheet.scale=1:10")]
    [InlineData("parapet-05", "sheet.paper=A2", "sheet.scale=1:10")]
    [InlineData("abutment-01", "sheet.paper=A2", "sheet.scale=1:10")]
    [InlineData("abutment-01", "mirror=true", "wall.fill=partial", "wall.cavity=150mm", "roof.finish=paving", "sheet.paper=A2", "sheet.scale=1:10")]
    public void Letters_go_from_the_top_down_on_the_view_and_among_insets_that_stand_over_each_other_and_have_one_height(string detail, params string[] set)
    {
        var sheet = Composed(detail, set);
        var marks = sheet.Scene.Views[0].Items.OfType<Group>().Where(group => group.Name.StartsWith("inset ", StringComparison.Ordinal)).OrderBy(group => group.Name, StringComparer.Ordinal).ToArray();
        Assert.Equal(["inset A", "inset B"], marks.Select(mark => mark.Name));
        Assert.Equal(["A", "B"], marks.Select(mark => mark.Items.OfType<Text>().First().Words[..1]));
        Assert.True(marks[0].Items.OfType<Ring>().Single().Centre.Y >= marks[1].Items.OfType<Ring>().Single().Centre.Y);
        Assert.Single(marks.SelectMany(mark => mark.Items.OfType<Text>()).Select(text => text.Height).Distinct());

        // Each title stands under the inset that shows what the ring of its letter goes round.
        foreach (var (mark, letter) in marks.Zip("AB"))
        {
            var view = sheet.Scene.Views.Single(one => one.Id == $"inset-{char.ToLowerInvariant(letter)}");
            var page = sheet.Scene.Pages.Single(one => one.Placements.Any(placement => placement.ViewId == view.Id));
            var window = page.Placements.Single(placement => placement.ViewId == view.Id).Window;
            var title = page.Items.OfType<Text>().Single(text => text.Words == $"Detail {letter}");
            Assert.True(title.At.X > window.Left && title.At.X < window.Right && window.Bottom - title.At.Y is > 0 and < 15);
            var ring = mark.Items.OfType<Ring>().Single();
            Assert.Contains(page.Items.OfType<Ring>(), round => (sheet.Scale / 2 * ring.Centre + page.Placements.Single(placement => placement.ViewId == view.Id).Origin - round.Centre).Length < 1e-6);
        }

        var windows = sheet.Scene.Pages.SelectMany(page => page.Placements.Where(placement => placement.ViewId is "inset-a" or "inset-b").OrderBy(placement => placement.ViewId, StringComparer.Ordinal).Select(placement => (page.Number, placement.Window))).ToArray();
        if (windows[0].Number == windows[1].Number && Math.Abs(windows[0].Window.Left - windows[1].Window.Left) < 1 && Math.Abs(windows[0].Window.Height - windows[1].Window.Height) < 1e-6)
        {
            Assert.True(windows[0].Window.Bottom > windows[1].Window.Top);
        }

        Assert.Empty(LayoutAudit.Of(sheet.Scene, sheet.Format, sheet.Parts));
    }

    // With a low upstand the rings would otherwise lie on each other, or the second where nothing meets.
    [Theory]
    [InlineData("parapet-01")]
    [InlineData("abutment-01")]
    public void The_two_insets_show_between_them_the_tray_the_flashing_and_the_lap_at_the_foot(string detail)
    {
        var sheet = Composed(detail, ["sheet.scale=1:10", "sheet.paper=A1"]);
        var insets = sheet.Scene.Views.Where(view => view.Id.StartsWith("inset-", StringComparison.Ordinal)).ToArray();
        Assert.Equal(2, insets.Length);
        string[][] shown = [.. insets.Select(inset => inset.Items.OfType<Stroke>().Select(stroke => stroke.PartId).Concat(inset.Items.OfType<Solid>().Select(solid => solid.PartId)).OfType<string>().Distinct().ToArray())];
        Assert.All(["tray", "flashing", "roof.membrane", "upstand.membrane"], part => Assert.Contains(shown, parts => parts.Contains(part)));
        Assert.All(shown, parts => Assert.True(parts.Length >= 6, string.Join(' ', parts)));
    }

    [Theory]
    [InlineData("parapet-01", "false")]
    [InlineData("parapet-02", "false")]
    [InlineData("parapet-03", "true")]
    public void A_view_stands_aside_where_that_leaves_room_for_its_insets_and_its_title_goes_with_it(string detail, string mirror)
    {
        var with = Composed(detail, ["sheet.paper=A2", "sheet.scale=1:10", "mirror=" + mirror, "sheet.companions=[blank]"]);
        var without = Composed(detail, ["sheet.paper=A2", "sheet.scale=1:10", "mirror=" + mirror, "sheet.companions=[blank]", "sheet.inset=none"]);
        PaperPoint Of(ComposedSheet sheet) => sheet.Scene.Pages[0].Placements[0].Origin;
        PaperPoint Title(ComposedSheet sheet) => sheet.Scene.Pages[0].Items.OfType<Text>().Single(text => text.Words.StartsWith("Section through", StringComparison.Ordinal)).At;
        Assert.Equal(3, with.Scene.Pages[0].Placements.Count);
        var aside = Of(with).X - Of(without).X;
        Assert.True(Math.Abs(aside) > 20, $"{aside}");
        Assert.Equal(Of(without).Y, Of(with).Y);
        Assert.InRange((Title(with).X - Title(without).X) / aside, 0.3, 1); // as far as the room goes
        Assert.Empty(LayoutAudit.Of(with.Scene, with.Format, with.Parts));
    }

    [Theory]
    [InlineData("parapet-01", "false")]
    [InlineData("parapet-01", "true")]
    [InlineData("refurbishment-01", "false")]
    public void A_roof_is_broken_off_earlier_where_that_leaves_room_for_insets_beside_the_view_and_takes_no_words_from_it(string detail, string mirror)
    {
        var with = Composed(detail, ["mirror=" + mirror]);
        var without = Composed(detail, ["mirror=" + mirror, "sheet.inset=none"]);
        double Width(ComposedSheet sheet) => sheet.Parts["section"].Single(part => part.Id == "roof.deck").Visible.Bounds is var bounds ? bounds.Right - bounds.Left : 0;
        Assert.Equal(["inset-a", "inset-b", "section"], with.Scene.Pages[0].Placements.Select(placement => placement.ViewId).Order(StringComparer.Ordinal));
        Assert.True(Width(with) < Width(without) - 20);
        Assert.DoesNotContain(with.Warnings, warning => warning.Contains("numbered", StringComparison.Ordinal));
        Assert.Empty(LayoutAudit.Of(with.Scene, with.Format, with.Parts));
    }

    [Fact]
    public void What_is_too_fine_has_a_sheet_of_its_own_where_no_other_has_room()
    {
        string[] small = ["sheet.paper=ANSI-A", "sheet.scale=1:10"];
        var sheet = Composed("parapet-05", small);
        Assert.Equal(["inset-a", "inset-b"], sheet.Scene.Pages[^1].Placements.Select(placement => placement.ViewId).Order(StringComparer.Ordinal));
        Assert.DoesNotContain(sheet.Scene.Pages[^1].Items.OfType<Text>(), text => text.Words.StartsWith("Check list", StringComparison.Ordinal));
        Assert.Empty(LayoutAudit.Of(sheet.Scene, sheet.Format, sheet.Parts));
        Assert.Equal(sheet.Scene.Pages.Count - 1, Composed("parapet-05", [.. small, "sheet.inset=none"]).Scene.Pages.Count);
    }

    [Fact]
    public void An_inset_without_room_beside_the_view_stands_on_a_sheet_with_tables_and_never_on_a_companion()
    {
        var sheet = Composed("parapet-01", ["sheet.paper=A3", "sheet.scale=1:10"]);
        var (_, _, number) = Inset(sheet);
        var page = sheet.Scene.Pages[number - 1];
        Assert.True(number > 1);
        Assert.All(page.Placements, placement => Assert.StartsWith("inset-", placement.ViewId, StringComparison.Ordinal));
    }

    [Fact]
    public void Nothing_in_an_inset_reaches_out_of_its_ring_but_the_leaders_of_its_names()
    {
        var (inset, ring, _) = Inset(Composed("parapet-01", OnA2));
        var points = inset.Items.SelectMany(item => item switch
        {
            Stroke stroke => stroke.Points,
            Solid solid => solid.Outline,
            Hatch hatch => hatch.Outline,
            Grains grains => grains.Centres,
            Dot dot => [dot.Centre],
            _ => [],
        }).ToList();
        Assert.True(points.Count > 100);
        Assert.All(points, point => Assert.InRange((point - ring.Centre).Length, 0, ring.Diameter / 2 + Rounding));
    }

    [Fact]
    public void A_board_keeps_its_fill_straight_up_to_the_ring_of_an_inset()
    {
        const double Tick = 6; // the slanting ticks between its lines are shorter, mm
        var insets = Composed("parapet-01", ["sheet.paper=A1", "sheet.scale=1:10"]).Scene.Views.Where(view => view.Id.StartsWith("inset-", StringComparison.Ordinal));
        var lines = insets.SelectMany(inset => inset.Items).OfType<Stroke>().Where(stroke => stroke.PartId == "upstand.backing" && stroke.Row.StartsWith("fill.", StringComparison.Ordinal))
            .Where(stroke => stroke.Points.Max(point => point.Y) - stroke.Points.Min(point => point.Y) > Tick).ToList();
        Assert.NotEmpty(lines);
        Assert.All(lines, line => Assert.InRange(line.Points.Max(point => point.X) - line.Points.Min(point => point.X), 0, 0.05));
    }

    [Fact]
    public void A_sheet_that_asks_for_none_has_none() => Assert.Single(Composed("parapet-01", ["sheet.paper=A2", "sheet.scale=1:10", "sheet.inset=none"]).Scene.Views);

    [Fact]
    public void The_same_preset_gives_the_same_insets() => Assert.Equal(Composed("parapet-01", OnA2).Scene.Pages[0].Placements, Composed("parapet-01", OnA2).Scene.Pages[0].Placements);

    // ASME Y14.1, from memory: 8.5 × 11, 11 × 17, 17 × 22 and 22 × 34 inches
    [Theory]
    [InlineData("ANSI-A", 8.5, 11, "1:20")]
    [InlineData("ANSI-B", 17, 11, "1:20")]
    [InlineData("ANSI-C", 22, 17, "1:10")]
    [InlineData("ANSI-D", 34, 22, "1:5")]
    public void A_detail_is_drawn_on_papers_of_the_other_series(string paper, double across, double up, string scale)
    {
        var sheet = Composed("abutment-01", ["sheet.paper=" + paper, "sheet.scale=" + scale]);
        var page = sheet.Scene.Pages[0];
        Assert.Equal((paper, Math.Round(across * 25.4, 1), Math.Round(up * 25.4, 1)), (sheet.Paper, page.Width, page.Height));
        Assert.DoesNotContain(LayoutAudit.Of(sheet.Scene, sheet.Format, sheet.Parts), fault => fault.Kind != AuditKinds.Crowded);
    }

    /// <summary>The first inset, the ring round it in its own mm, and the number of its sheet.</summary>
    private static (View View, Ring Round, int Page) Inset(ComposedSheet sheet)
    {
        var page = sheet.Scene.Pages.Single(page => page.Placements.Any(placement => placement.ViewId == "inset-a"));
        var placement = page.Placements.Single(placement => placement.ViewId == "inset-a");
        var ring = page.Items.OfType<Ring>().Single(ring => ring.Diameter > 20 && placement.Window.Left < ring.Centre.X && placement.Window.Right > ring.Centre.X && placement.Window.Bottom < ring.Centre.Y && placement.Window.Top > ring.Centre.Y);
        return (sheet.Scene.Views.Single(view => view.Id == "inset-a"), ring with { Centre = ring.Centre - placement.Origin }, page.Number);
    }

    // Without what takes the white that they leave.
    private static ComposedSheet Composed(string name, string[] set) => Whole(name, [.. set, "sheet.control-lines=none", "sheet.heat-figures=none"]);

    internal static ComposedSheet Whole(string name, string[] set)
    {
        return WholeFile(Repository.Path("presets", "details", $"tern-court-{name}.yaml"), set);
    }

    internal static ComposedSheet WholeFile(string path, string[] set)
    {
        var office = Office.Of(null).Value;
        var worked = DetailWork.Do(PresetFiles.Read(path, set, office).Value, office).Worked!;
        return SheetComposer.Compose(
            worked.Section, SheetWords.Of(worked, moisture: null), SheetSetup.Asked(worked.Preset, viewOnly: false),
            SheetSetup.Formats(office.Sheets, office.Typeface, reducedPrint: false), SheetSetup.Layers(office.Sheets), new("", "", "", "", "", null, ""));
    }
}
