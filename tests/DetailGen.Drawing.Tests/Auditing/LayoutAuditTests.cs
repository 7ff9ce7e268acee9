using DetailGen.Drawing.Auditing;
using DetailGen.Drawing.Emitters;
using DetailGen.Drawing.Lettering;
using DetailGen.Drawing.Scenes;
using DetailGen.Drawing.Sheets;
using DetailGen.Drawing.Tests.Sheets;
using DetailGen.Drawing.Views;
using DetailGen.Sections;
using DetailGen.Testing;

namespace DetailGen.Drawing.Tests.Auditing;

public class LayoutAuditTests
{
    private const string Slab = "slab";

    private static readonly PaperPoint Origin = new(120, 150);

    /// <summary>A slab from 0 to 60 and from 0 to 20 in the view, with its outline.</summary>
    private static readonly Item Outline = new Stroke("cut", [new(0, 0), new(60, 0), new(60, 20), new(0, 20)], Closed: true) { PartId = Slab };

    public static TheoryData<string, string, string> Bad => new()
    {
        { AuditKinds.TextOverText, "\"upper words\"", "\"lower words\"" },
        { AuditKinds.TextOverLine, "\"on the edge\"", Slab },
        { AuditKinds.TextOverLine, "\"on a size\"", "dimension width" },
        { AuditKinds.LeaderThrough, "note first", "note second" },
        { AuditKinds.LeaderThrough, "\"in the way\"", "note third" },
        { AuditKinds.TipOffPart, "note astray", Slab },
        { AuditKinds.OutsideZone, "\"beyond\"", "the view's zone" },
        { AuditKinds.LeaderTooLong, "note far", "at most 60 mm" },
        { AuditKinds.Crowded, "\"beside me\"", "\"too close\"" },
    };

    private static readonly Item[] BadItems =
    [
        Outline,
        Words("upper words", -60, 100), Words("lower words", -58, 98),
        Words("on the edge", 20, 19),
        new Dimension("dim", "dim", new(0, 0), new(60, 0), false, -15, "60", new(30, -14.4), 600, 2.5) { MeasureId = "width" }, Words("on a size", 4, -16),
        Note("first", new(-20, 60), new(-10, 60), new(10, 10)), Note("second", new(-20, 50), new(-10, 50), new(20, 12)),
        Note("third", new(100, 15), new(90, 15), new(50, 5)), Words("in the way", 74, 10),
        Note("astray", new(-40, 5), new(-30, 5), new(-5, 5)),
        Words("beyond", 0, 140),
        Note("far", new(125, -50), new(120, -50), new(55, 4)),
        Words("beside me", 130, 60), Words("too close", 130 + Typeface.Shipped.Width("beside me", 2.5) + 0.1, 60),
    ];

    [Theory]
    [MemberData(nameof(Bad))]
    public void Each_fault_of_a_bad_layout_is_found_with_its_two_things(string kind, string first, string second) =>
        Assert.Contains((kind, first, second), Audited(BadItems).Select(fault => (fault.Kind, fault.First, fault.Second)));

    [Fact]
    public void Every_kind_of_fault_is_in_the_bad_layout() => Assert.Equal(AuditKinds.All.Order(StringComparer.Ordinal), Audited(BadItems).Select(fault => fault.Kind).Distinct().Order(StringComparer.Ordinal));

    [Fact]
    public void The_same_things_at_a_distance_are_no_faults() => Assert.Empty(Audited(
        Outline, Words("upper words", -60, 100), Words("lower words", -58, 94), Words("over the edge", 20, 21.6),
        new Dimension("dim", "dim", new(0, 0), new(60, 0), false, -15, "60", new(30, -14.4), 600, 2.5) { MeasureId = "width" }, Words("beside a size", 63, -16),
        Note("first", new(-20, 60), new(-10, 60), new(20, 12)), Note("second", new(-20, 50), new(-10, 50), new(10, 10)),
        Words("beside me", 130, 60), Words("far enough", 130 + Typeface.Shipped.Width("beside me", 2.5) + 1, 60)));

    [Fact]
    public void A_place_is_told_where_it_lies_on_the_sheet()
    {
        var fault = Assert.Single(Audited(Note("far", new(125, -50), new(120, -50), new(55, 4))));
        Assert.Equal((1, Origin + new PaperPoint(55, 4), Math.Round(double.Hypot(65, 54) - 60, 3)), (fault.Sheet, fault.At, fault.Amount));
    }

    [Fact]
    public void A_crossing_of_many_pieces_is_one_fault() => Assert.Single(Audited(
        Words("in the way", 0, 40), new Stroke("cut", [new(-5, 41), new(5, 41.2), new(9, 41), new(30, 41.1)])));

    [Theory]
    [InlineData(1.8)]
    [InlineData(2.5)]
    [InlineData(3.5)]
    [InlineData(5)]
    public void Ink_is_as_large_as_the_letters_whatever_their_height(double height)
    {
        // Capitals are as high as the text says they are, and a w begins 3 units of 1409 to the capital before its place.
        Assert.Equal(height, InkBoxes.Of(new("note.text", "H", default, height), Typeface.Shipped)!.Value.Height, 0.002);
        Assert.Equal(-3 / 1409.0 * height, InkBoxes.Of(new("note.text", "warn", default, height), Typeface.Shipped)!.Value.Left, 0.002);
    }

    [Fact]
    public void The_picture_rings_and_numbers_every_fault_and_lists_it_beside_the_sheet()
    {
        var scene = SceneOf(BadItems);
        var faults = Audited(BadItems);
        var page = AuditPicture.Of(scene, faults).Pages[0];
        Assert.True(page.Width > scene.Pages[0].Width);
        Assert.Equal(faults.Select(fault => fault.At), page.Items.OfType<Ring>().Where(ring => ring.Row == "audit").Select(ring => ring.Centre));
        var listed = page.Items.OfType<Paragraph>().Where(list => list.Row == "audit").Select(list => string.Join(' ', list.Lines)).ToList();
        Assert.Equal(faults.Count, listed.Count);
        Assert.All(faults.Index(), one => Assert.StartsWith(FormattableString.Invariant($"{one.Index + 1} {one.Item.Kind}"), listed[one.Index], StringComparison.Ordinal));
        Assert.NotEmpty(SceneFiles.Emit(AuditPicture.Of(scene, faults), ["png"], new(50))[0].Bytes);
    }

    // An audit of sheets with marks where to cut once found all their tables outside of their zones.
    [Theory]
    [InlineData(-0.5, true)]
    [InlineData(2, false)]
    public void A_sheet_on_paper_that_is_still_to_be_cut_is_measured_where_it_lies_on_it(double beyond, bool isInside)
    {
        var format = SampleSheets.A3 with { Untrimmed = (450, 330) };
        var zone = format.Zones["schedule"];
        var scene = SceneOf([]);
        Page page = scene.Pages[0] with { Items = [new Text("note.text", "first", new(zone.Right + beyond - Typeface.Shipped.Width("first", 2.5), zone.Bottom + 10), 2.5)] };
        var (plain, uncut) = (scene with { Pages = [page] }, scene with { Pages = [TrimMarks.On(page, format)] });
        foreach (var sheet in new[] { plain, uncut })
        {
            Assert.Equal(isInside, LayoutAudit.Of(sheet, format, new Dictionary<string, IReadOnlyList<DrawnPart>>()).Count == 0);
        }
    }

    private static IReadOnlyList<AuditFault> Audited(params Item[] items)
    {
        var slab = SampleParapet.Section().Parts[0] with { Id = Slab };
        return LayoutAudit.Of(SceneOf(items), SampleSheets.A3, new Dictionary<string, IReadOnlyList<DrawnPart>> { ["section"] = [new(Slab, slab, Region.Box(0, 0, 60, 20), null, 0, [])] });
    }

    private static Scene SceneOf(Item[] items) => new(
        [.. new[] { "cut", "dim", "note.text", "note.leader" }.Select(row => new LayerRow(row, row, row == "cut" ? 0.5 : 0.18, "continuous", Ink.Black))],
        [new("section", 10, items, new(-100, -60, 200, 120))],
        [new(1, "A3", 420, 297, [new("section", Origin, SampleSheets.A3.Zones["view"])], [])],
        new("TC-DET-0101", "P01", "Slab", "AB", "Tern Court Workshops", null, ""));

    private static Text Words(string words, double x, double y) => new("note.text", words, new(x, y), 2.5);

    private static Group Note(string name, PaperPoint port, PaperPoint bend, PaperPoint tip) => new(
        "note.text", "note " + name, [new Stroke("note.leader", [port, bend, tip]), new Dot("note.leader", tip, 0.8)])
    {
        PartId = Slab,
    };
}
