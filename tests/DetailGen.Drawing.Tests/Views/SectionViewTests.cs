using DetailGen.Drawing.Fills;
using DetailGen.Drawing.Scenes;
using DetailGen.Drawing.Tests.Fills;
using DetailGen.Drawing.Views;
using DetailGen.Sections;
using DetailGen.Testing;

namespace DetailGen.Drawing.Tests.Views;

public class SectionViewTests
{
    private static readonly Section Parapet = SampleParapet.Section();
    private static readonly Bounds Window = new(-200, -735, 900, 800);

    public static TheoryData<double, bool> Drawings => new() { { 5, false }, { 5, true }, { 10, false }, { 10, true }, { 20, false } };

    [Theory]
    [MemberData(nameof(Drawings))]
    public void No_fill_leaves_its_part(double scale, bool mirror)
    {
        foreach (var item in Draw(scale, mirror).Items.Where(item => item.Row.StartsWith("fill.", StringComparison.Ordinal)))
        {
            var region = OnPaper(Parapet[item.PartId!].Region, scale, mirror);
            Assert.All(FillerTests.Points(item), point => Assert.True(region.Distance(new Point(point.X, point.Y)) <= 0.05, $"{item.PartId} at {point}"));
        }
    }

    [Theory]
    [MemberData(nameof(Drawings))]
    public void A_strap_seen_from_its_broad_side_is_an_edge_seen_beyond_and_not_cut(double scale, bool mirror)
    {
        var section = Parapet with { Parts = [.. Parapet.Parts.Select(part => part.Id == "strap" ? part with { Region = Region.Box(247.5, -335, 960, -305) } : part)] };
        var items = SectionView.Draw(section, new(scale, Window, mirror)).Items.Where(item => item.PartId == "strap").ToArray();
        Assert.Equal(Rows.Beyond(section["strap"]), Assert.Single(items).Row);
    }

    // Ten millimetres of black in a detail at 1:2 hid what lay on it; drawn thin, asphalt is black like any sheet.
    [Theory]
    [InlineData(2, false)]
    [InlineData(10, false)]
    [InlineData(20, true)]
    public void Asphalt_has_an_outline_and_a_fill_where_it_is_thick_enough_for_them(double scale, bool black)
    {
        var section = Parapet with
        {
            Parts = [.. Parapet.Parts.Select(part => part.Id == "roof.membrane" ? part with { Material = part.Material with { Fill = "asphalt" }, Sheet = part.Sheet! with { Thickness = 20 } } : part)],
        };
        var items = SectionView.Draw(section, new(scale, Window)).Items.Where(item => item.PartId == "roof.membrane").ToArray();
        Assert.Equal(black, items.OfType<Solid>().Any());
        Assert.Equal(!black, items.OfType<Hatch>().Any());
        var edges = items.OfType<Stroke>().Where(stroke => stroke.Row == Rows.Sheet(section["roof.membrane"])).SelectMany(Pieces).ToArray();
        Assert.Equal(!black, edges.Length > 0);
        // no line along the break, where the roof goes on
        Assert.DoesNotContain(edges, edge => Math.Min(edge.A.X, edge.B.X) > (Window.Right / scale) - 0.1);
    }

    [Theory]
    [MemberData(nameof(Drawings))]
    public void No_fill_runs_into_a_band(double scale, bool mirror)
    {
        var view = Draw(scale, mirror);
        var bands = view.Parts.Where(part => part.IsSheet && part.Part.Material.LayerCode is "WP" or "DP" or "ME").Select(part => part.Visible).ToArray();
        foreach (var item in view.Items.Where(item => item.Row.StartsWith("fill.", StringComparison.Ordinal)))
        {
            Assert.All(FillerTests.Points(item), point => Assert.All(bands, band => Assert.True(band.Distance(new Point(point.X, point.Y)) > 0.1, $"{item.PartId} at {point}")));
        }
    }

    [Theory]
    [MemberData(nameof(Drawings))]
    public void A_shared_edge_is_drawn_once(double scale, bool mirror)
    {
        var edges = Draw(scale, mirror).Items.OfType<Stroke>().Where(stroke => stroke.Row.StartsWith("cut.", StringComparison.Ordinal)).SelectMany(Pieces).ToArray();
        Assert.True(edges.Length > 50);
        for (var i = 0; i < edges.Length; i++)
        {
            for (var j = i + 1; j < edges.Length; j++)
            {
                Assert.True(Together(edges[i], edges[j]) <= 1.0, $"{edges[i]} and {edges[j]}");
            }
        }
    }

    [Theory]
    [MemberData(nameof(Drawings))]
    public void Sheets_keep_white_between_them(double scale, bool mirror) =>
        Assert.DoesNotContain(Draw(scale, mirror).Faults, fault => fault.Rule == "sheet-merge");

    [Theory]
    [InlineData(5, false)]
    [InlineData(5, true)]
    [InlineData(10, false)]
    [InlineData(10, true)]
    public void A_course_under_a_tray_that_is_lifted_over_a_flashing_keeps_its_upper_edge(double scale, bool mirror)
    {
        var view = Draw(scale, mirror);
        var (leaf, bed) = (OnPaper(Parapet["wall.inner-leaf"].Region, scale, mirror).Bounds, 185 / scale);
        var edge = Assert.Single(view.Items.OfType<Stroke>(), stroke => stroke.Row == Rows.Joint(Parapet["wall.inner-leaf"])
            && stroke.Points.All(point => Math.Abs(point.Y - bed) < 0.01 && point.X > leaf.Left - 0.01 && point.X < leaf.Right + 0.01));
        var line = Region.Box(edge.Points.Min(point => point.X), bed - 0.01, edge.Points.Max(point => point.X), bed + 0.01);
        Assert.InRange(line.Bounds.Width, 1, leaf.Width);
        Assert.All(view.Parts.Where(part => part.IsSheet && !part.Visible.IsEmpty), sheet => Assert.True(sheet.Visible.Distance(line) > 0.33, $"{sheet.Id}"));
    }

    [Theory]
    [MemberData(nameof(Drawings))]
    public void A_sheet_is_never_thinner_than_its_least_width(double scale, bool mirror)
    {
        foreach (var sheet in Draw(scale, mirror).Parts.Where(part => part.IsSheet))
        {
            // A band's area over its length is its width; mitred corners leave that as it is.
            var width = SheetStyles.Of(sheet.Part, scale).Width;
            var drawn = sheet.Visible.Area / Length(sheet, scale, mirror);
            Assert.InRange(drawn, width * 0.98, width * 1.02);
        }
    }

    [Theory]
    [InlineData(5)]
    [InlineData(10)]
    public void Bed_joints_stand_at_the_courses_of_the_model(double scale)
    {
        var leaf = Parapet["wall.outer-leaf"];
        var levels = Draw(scale, false).Items.OfType<Stroke>().Where(stroke => stroke.Row == "cut.MO.wall").SelectMany(Pieces)
            .Where(edge => Math.Abs(edge.A.Y - edge.B.Y) < 0.001 && edge.A.X < 102.5 / scale && edge.A.X > -0.1 && edge.B.X < 102.6 / scale && edge.A.Y < 495 / scale)
            .Select(edge => edge.A.Y * scale).ToArray();
        Assert.True(levels.Length > 20);
        Assert.All(levels, level =>
        {
            var course = (level - leaf.Coursing!.Datum) / leaf.Coursing.Height;
            var off = (course - Math.Floor(course + 0.01)) * leaf.Coursing.Height;
            Assert.True(Math.Min(Math.Abs(off), Math.Abs(off - leaf.Coursing.Joint)) <= 0.1 * scale, $"{level}");
        });
    }

    [Fact]
    public void Neighbours_of_one_fill_take_different_variants()
    {
        var view = Draw(10, false);
        Assert.NotEqual(view.Part("roof.insulation.1")!.Variant, view.Part("roof.insulation.1b")!.Variant);
        Assert.NotEqual(view.Part("roof.insulation.1")!.Variant, view.Part("roof.insulation.2")!.Variant);
        Assert.DoesNotContain(view.Faults, fault => fault.Rule == "fill-same");
    }

    [Fact]
    public void Fill_angles_stay_when_the_view_is_mirrored() =>
        Assert.Equal(Draw(10, false).Part("wall.outer-leaf")!.FillAngle, Draw(10, true).Part("wall.outer-leaf")!.FillAngle);

    [Fact]
    public void Outlines_and_bands_of_a_mirrored_view_are_the_mirrored_ones()
    {
        var (plain, mirrored) = (Draw(10, false), Draw(10, true));
        foreach (var part in plain.Parts)
        {
            var other = mirrored.Part(part.Id)!.Visible.Mirror();
            Assert.True(part.Visible.Minus(other).Area + other.Minus(part.Visible).Area < 0.02, part.Id);
        }
    }

    [Theory]
    [InlineData(5)]
    [InlineData(10)]
    [InlineData(20)]
    public void A_mirrored_view_has_the_same_lines_in_every_row(double scale)
    {
        Dictionary<string, double> Lengths(bool mirror) => Draw(scale, mirror).Items.OfType<Stroke>().Where(stroke => !stroke.Row.StartsWith("fill.", StringComparison.Ordinal))
            .GroupBy(stroke => stroke.Row).ToDictionary(row => row.Key, row => row.SelectMany(Pieces).Sum(piece => (piece.B - piece.A).Length));
        var (plain, mirrored) = (Lengths(false), Lengths(true));
        Assert.Equal(plain.Keys.Order(StringComparer.Ordinal), mirrored.Keys.Order(StringComparer.Ordinal));
        Assert.All(plain, row => Assert.Equal(row.Value, mirrored[row.Key], 0.1));
    }

    [Fact]
    public void The_same_section_is_drawn_alike_every_time() =>
        Assert.Equal(Draw(5, true).Items.SelectMany(FillerTests.Points), Draw(5, true).Items.SelectMany(FillerTests.Points));

    [Fact]
    public void Every_run_ends_in_a_break_line_across_its_layers()
    {
        var view = Draw(10, false);
        Assert.Equal(["wall", "roof"], view.Breaks.Select(line => line.RunId));
        Assert.Equal(new PaperPoint(-3, -73.5), view.Breaks[0].From);
        Assert.Equal(new PaperPoint(45, -73.5), view.Breaks[0].To);
        Assert.All(view.Items.SelectMany(FillerTests.Points), point => Assert.True(point.Y >= -73.5 - 3.01 && point.X <= 90 + 3.01));
    }

    [Fact]
    public void Fills_come_first_and_break_lines_last()
    {
        var items = Draw(10, false).Items;
        int First(string row) => items.Select((item, at) => (item, at)).First(entry => entry.item.Row.StartsWith(row, StringComparison.Ordinal)).at;
        int Last(string row) => items.Select((item, at) => (item, at)).Last(entry => entry.item.Row.StartsWith(row, StringComparison.Ordinal)).at;
        Assert.True(Last("fill.") < First("cut."));
        Assert.True(Last("cut.") < First("solid."));
        Assert.True(Last("solid.") < First("break"));
    }

    // A joist that runs across the wall lies in the plane: it shows its grain, not the cross of a cut end.
    [Fact]
    public void Timber_that_repeats_out_of_the_plane_is_cut_along_its_grain()
    {
        var joist = Parapet.Parts.First(part => part.Material.Fill == "sawn-timber" && part.Presence == Presence.Cut) with { Repeat = null };
        Assert.Equal("sawn-timber", PartFill.Of(joist));
        Assert.Equal("timber-grain", PartFill.Of(joist with { Repeat = new(400, 47) }));
    }

    [Fact]
    public void One_drawing_of_a_section_takes_nothing_over_from_another_that_it_would_not_have_by_itself()
    {
        var view = new SectionView(Parapet);
        foreach (var options in from drawing in Drawings from right in new[] { 900.0, 700.0 } select new ViewOptions(drawing.Data.Item1, Window with { Right = right }, drawing.Data.Item2))
        {
            foreach (var asked in (ViewOptions[])[options, options with { Only = new(new(250, 0), 100) }, options with { Hidden = part => part.Presence == Presence.Local }])
            {
                Assert.Equal(SectionView.Draw(Parapet, asked).Items.Select(Told), view.Draw(asked).Items.Select(Told));
            }
        }

        static string Told(Item item) => $"{item.Row} {item.PartId} {string.Join(' ', FillerTests.Points(item))}";
    }

    private static DrawnView Draw(double scale, bool mirror) => SectionView.Draw(Parapet, new(scale, Window, mirror));

    private static Region OnPaper(Region region, double scale, bool mirror) => (mirror ? region.Mirror() : region).Scale(1 / scale);

    private static double Length(DrawnPart sheet, double scale, bool mirror)
    {
        var edge = (mirror ? 90000.0 : Window.Right) / scale;
        var line = Area.Of(Region.Box(-1000, -1000, mirror ? 1000 : edge, 1000).Intersect(Region.Box(mirror ? -Window.Right / scale : -1000, -1000, 1000, 1000)));
        return line.Clip(sheet.Line, 0).Sum(Planes.Length);
    }

    private static IEnumerable<(PaperPoint A, PaperPoint B)> Pieces(Stroke stroke)
    {
        for (var i = 1; i < stroke.Points.Count; i++)
        {
            yield return (stroke.Points[i - 1], stroke.Points[i]);
        }

        if (stroke.Closed)
        {
            yield return (stroke.Points[^1], stroke.Points[0]);
        }
    }

    // Length over which two straight pieces run side by side nearer than 0.3 mm.
    private static double Together((PaperPoint A, PaperPoint B) one, (PaperPoint A, PaperPoint B) other)
    {
        var d = Planes.Unit(one.B - one.A);
        var (a, b) = (other.A - one.A, other.B - one.A);
        if (Math.Abs(Planes.Cross(d, Planes.Unit(other.B - other.A))) > 0.02 || Math.Max(Math.Abs(Planes.Cross(d, a)), Math.Abs(Planes.Cross(d, b))) > 0.3)
        {
            return 0;
        }

        return Math.Min((one.B - one.A).Length, Math.Max(Planes.Dot(a, d), Planes.Dot(b, d))) - Math.Max(0, Math.Min(Planes.Dot(a, d), Planes.Dot(b, d)));
    }
}
