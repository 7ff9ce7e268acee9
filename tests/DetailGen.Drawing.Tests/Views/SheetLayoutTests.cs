using CsCheck;
using DetailGen.Drawing.Scenes;
using DetailGen.Drawing.Views;
using DetailGen.Sections;
using DetailGen.Testing;

namespace DetailGen.Drawing.Tests.Views;

public class SheetLayoutTests
{
    /// <summary>A face with legs of 100 to 250 mm that turn by 45 or 90 degrees either way, never back on themselves.</summary>
    private static readonly Gen<Point[]> Faces = Gen.Select(Gen.Double[100, 250], Gen.Int[-2, 2]).Array[2, 5].Select(legs =>
    {
        var points = new List<Point> { new(0, 0) };
        var turn = 0;
        foreach (var (length, by) in legs)
        {
            turn = Math.Clamp(turn + by, -2, 2);
            points.Add(points[^1] + length * new Point(Math.Cos(turn * Math.PI / 4), Math.Sin(turn * Math.PI / 4)));
        }

        return points.ToArray();
    });

    // Ends keep off corners, as they do on a roof: just before an inner corner there is no room for a stack.
    [Fact]
    public void Sheets_over_each_other_never_merge_wherever_their_laps_begin() =>
        Gen.Select(Faces, Gen.Select(Gen.Int[0, 4], Gen.Double[0.3, 0.7]).Array[6]).Always(NeverMerge);

    [Fact]
    public void A_piece_thinner_than_the_grid_is_left_out_where_a_fold_lays_a_band_over_itself() => NeverMerge(
        [new(0, 0), new(1.5299842174347652E-14, -249.8653846153846), new(2.650963241026389E-14, -432.9351520572451), new(3.525838966563608E-14, -575.8132008377329)],
        [(4, 0.5119993957872006), (3, 0.33836263604869926), (3, 0.321360082014134), (4, 0.5279900941431614), (0, 3d / 7), (2, 0.55)]);

    private static void NeverMerge(Point[] face, (int Leg, double Along)[] places)
    {
        var at = places.Select(place => Length(face[..(place.Leg % (face.Length - 1) + 1)]) + place.Along * (face[place.Leg % (face.Length - 1) + 1] - face[place.Leg % (face.Length - 1)]).Length).ToArray();
        Part? Laid(string id, int order, string code, double a, double b, string[] over) => Math.Abs(a - b) < 20 ? null : Sheet(id, order, code, Cut(face, Math.Min(a, b), Math.Max(a, b)), over);
        var sheets = new[] { Laid("a", 1, "WP", at[0], at[1], []), Laid("b", 2, "ME", at[2], at[3], ["a"]), Laid("c", 3, "DP", at[4], at[5], ["a", "b"]) }.OfType<Part>();
        var laid = SheetLayout.Lay(sheets, new OnPaper(5, false), _ => 0);
        for (var i = 0; i < laid.Count; i++)
        {
            for (var j = i + 1; j < laid.Count; j++)
            {
                var gap = laid[i].Body.Distance(laid[j].Body);
                Assert.True(gap >= 0.345, $"{laid[i].Part.Id} and {laid[j].Part.Id} are {gap} apart.");
            }
        }
    }

    // A poured upstand over its head and down its face, and the flashing that is dressed over it and hangs clear of it.
    [Theory]
    [InlineData(2, 20)]
    [InlineData(5, 20)]
    [InlineData(2, 30)]
    [InlineData(2, 1.5)]
    public void What_goes_over_a_thick_sheet_comes_down_past_its_corner_and_not_through_it(double scale, double thick)
    {
        Point[] face = [new(0, 0), new(0, -30), new(62, -36.2), new(62, -200)];
        var upstand = Sheet("upstand", 1, "WP", face, [], thick);
        for (var clear = 3; clear <= 30; clear += 3)
        {
            var front = 62 + thick + clear;
            var flashing = Sheet("flashing", 2, "ME", [new(-30, 60), new(0, 60), new(0, -30), new(front, -30 - (front / 10)), new(front, -110)], ["upstand"]);
            var laid = SheetLayout.Lay([upstand, flashing], new OnPaper(scale, false), _ => 0);
            Assert.True(laid[0].Body.Distance(laid[1].Body) >= 0.345, $"{laid[0].Body.Distance(laid[1].Body)} apart, {clear} mm clear of it.");
        }
    }

    [Theory]
    [InlineData(5, false)]
    [InlineData(10, true)]
    [InlineData(20, false)]
    public void What_is_pressed_between_two_sheets_is_drawn_between_them(double scale, bool mirror)
    {
        // A membrane with a fall, a flashing on it that stands off at its end, and a level profile over a wedge.
        Point[] head = [new(0, 0), new(90, -9)];
        var paper = new OnPaper(scale, mirror);
        var membrane = Sheet("membrane", 1, "WP", head, []);
        var flashing = Sheet("flashing", 2, "ME", [.. head, new(100, -10), new(100, -80)], ["membrane"]);
        var profile = Sheet("profile", 3, "ME", [new(0, 5), new(140, 5)], ["flashing"]) with { Region = Region.Box(0, 5, 140, 6) };
        profile = profile with { Sheet = profile.Sheet! with { Seat = Seat.Between } };
        var wedge = membrane with { Id = "wedge", Sheet = null, Region = Region.Polygon(new(0, 4), new(100, -6), new(100, 5), new(0, 5)) };
        var under = membrane with { Id = "under", Sheet = null, Region = Region.Polygon(new(0, -100), new(90, -100), new(90, -9), new(0, 0)) };
        var laid = SheetLayout.Lay([membrane, flashing, profile], paper, _ => 0);

        var (parts, sheets) = new Pressed(new Section("", [membrane, flashing, profile, wedge, under], [], [], [], [], [], []), new()).Drawn([(wedge, paper.At(wedge.Region)), (under, paper.At(under.Region))], laid);

        var drawn = parts[0].Region;
        var (lower, upper) = (laid.Single(sheet => sheet.Part.Id == "flashing").Body, laid.Single(sheet => sheet.Part.Id == "profile").Body);
        var x = (mirror ? -60 : 60) / scale;
        var cut = Assert.Single(drawn.Cut(new(x, -100), new(x, 100)));
        Assert.Equal(lower.Cut(new(x, -100), new(x, 100))[^1].To.Y, cut.From.Y, 0.02);
        Assert.Equal(upper.Cut(new(x, -100), new(x, 100))[0].From.Y, cut.To.Y, 0.02);
        Assert.Contains(sheets, sheet => !sheet.Filled.IsEmpty);
        Assert.Equal(paper.At(under.Region).Area, parts[1].Region.Area, 0.001);
    }

    [Fact]
    public void A_band_keeps_its_width_through_corners_and_joggles_but_for_the_white_to_its_neighbour() =>
        Gen.Select(Faces, Gen.Double[0.2, 0.4]).Always((face, start) =>
        {
            var length = Length(face);
            var laid = SheetLayout.Lay([Sheet("a", 1, "WP", Cut(face, start * length, 0.7 * length), []), Sheet("b", 2, "WP", face, ["a"])], new OnPaper(5, false), _ => 0);
            Assert.All(laid, sheet =>
            {
                var even = SheetLayout.Ribbon(sheet.Centre, 0.7);
                Assert.Equal(0.7, even.Area / sheet.Centre.Length, 0.01);
                var lost = even.Minus(sheet.Body.Grow(0.001)).Minus(laid.Single(other => other != sheet).Body.Grow(0.4));
                Assert.True(lost.Area < 0.15, $"{sheet.Part.Id} lost {lost.Area} mm² that no neighbour asked for.");
            });
        });

    [Fact]
    public void A_face_sheet_never_enters_its_substrate() =>
        Gen.Select(Faces, Gen.Double[0.2, 0.4]).Always((face, start) =>
        {
            var length = Length(face);
            var laid = SheetLayout.Lay([Sheet("a", 1, "WP", Cut(face, start * length, 0.7 * length), []), Sheet("b", 2, "ME", face, ["a"])], new OnPaper(5, false), _ => 0);
            var substrate = SheetLayout.Ribbon(new FacePath(new FacePath(face.Select(point => new PaperPoint(point.X / 5, point.Y / 5))).Beside(new Profile(0), -1).Points), 1.9);
            Assert.All(laid, sheet => Assert.True(sheet.Body.Intersect(substrate).Area < 0.05 * sheet.Centre.Length * 0.1 + 1e-6));
        }, cases: 100);

    [Fact]
    public void A_joggle_begins_two_millimetres_outside_the_lap_and_rises_at_half_a_right_angle()
    {
        Point[] face = [new(0, 0), new(300, 0)];
        var laid = SheetLayout.Lay([Sheet("a", 1, "WP", [new(100, 0), new(200, 0)], []), Sheet("b", 2, "WP", face, ["a"])], new OnPaper(5, false), _ => 0);
        // 0.7 band and 0.7 white: the upper one rises by 1.4 and is up 2.0 before the lap at 20.
        Assert.Equal(
            [new(0, 0.35), new(16.6, 0.35), new(18, 1.75), new(42, 1.75), new(43.4, 0.35), new(60, 0.35)],
            laid[1].Centre.Points.Select(point => new PaperPoint(Math.Round(point.X, 6), Math.Round(point.Y, 6))));
    }

    // A flashing is chased in before the membrane is laid that it is dressed down on.
    [Fact]
    public void A_sheet_lies_over_those_that_it_names_whenever_it_was_built_in()
    {
        Point[] face = [new(0, 0), new(300, 0)];
        var laid = SheetLayout.Lay([Sheet("flashing", 1, "ME", face, ["membrane"]), Sheet("membrane", 2, "WP", face, [])], new OnPaper(10, false), _ => 0);
        Assert.Equal(["membrane", "flashing"], laid.Select(sheet => sheet.Part.Id));
        Assert.True(laid[1].Body.Bounds.Bottom >= laid[0].Body.Bounds.Top + 0.345);
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void A_level_profile_that_sits_on_a_sheet_with_a_fall_is_lifted_clear_of_it(bool mirror)
    {
        var profile = Sheet("profile", 2, "ME", [new(0, 1.5), new(120, 1.5), new(120, -10)], ["flashing"]);
        var laid = SheetLayout.Lay(
            [Sheet("flashing", 1, "ME", [new(0, 0), new(80, -5), new(80, -60)], []), profile with { Sheet = profile.Sheet! with { Seat = Seat.Between, Thickness = 1 } }], new OnPaper(10, mirror), _ => 0);
        Assert.True(laid[0].Body.Distance(laid[1].Body) >= 0.345);
        Assert.Equal(-0.5, laid[1].Centre.Points.Min(point => point.Y), 0.6); // its drip still hangs down
    }

    [Fact]
    public void A_short_lap_is_drawn_three_millimetres_long()
    {
        var laid = SheetLayout.Lay([Sheet("a", 1, "WP", [new(100, 0), new(400, 0)], []), Sheet("b", 2, "WP", [new(0, 0), new(110, 0)], ["a"])], new OnPaper(10, false), _ => 0);
        Assert.Equal(13, laid[1].Centre.Points[^1].X, 0.001);
    }

    // A 20 mm membrane over a fillet of 10 mm: what is left of the slope between its two mitres runs backwards.
    [Fact]
    public void A_sheet_sticks_out_nowhere_however_small_the_fillet_is_under_it() =>
        Gen.Select(Gen.Int[1, 20], Gen.Int[0, 2], Gen.Int[0, 3], Gen.Bool).Always((fives, sort, step, mirror) =>
        {
            var (leg, thickness, scale) = (5.0 * fives, new[] { 1.5, 7, 20 }[sort], new double[] { 2, 5, 10, 20 }[step]);
            Part Laid(string id, int order, Point[] face, string[] over) => Sheet(id, order, "WP", face, over, thickness);
            var laid = SheetLayout.Lay(
                [Laid("field", 1, [new(leg, 0), new(900, 0)], []), Laid("upstand", 2, [new(0, 400), new(0, leg), new(leg, 0), new(leg + 120, 0)], ["field"])], new OnPaper(scale, mirror), _ => 0);
            var box = laid[1].Body.Bounds;
            Assert.True((mirror ? -box.Right : box.Left) >= -1e-3 && box.Bottom >= -1e-3, $"A fillet of {leg} under {thickness} mm at 1:{scale}: drawn from {box.Left}, {box.Bottom} to {box.Right}, {box.Top}.");
            Assert.Single(laid[1].Body.Pieces);
        });

    // The fleece lies on the field sheet, and so as far above the face of the lap as that is thick.
    [Theory]
    [InlineData(1.5, 10)]
    [InlineData(7, 2)]
    [InlineData(20, 5)]
    public void What_lies_on_a_thick_sheet_goes_over_its_lap_too(double thickness, double scale)
    {
        var laid = SheetLayout.Lay(
            [
                Sheet("field", 1, "WP", [new(50, 0), new(900, 0)], [], thickness), Sheet("upstand", 2, "WP", [new(0, 400), new(0, 50), new(50, 0), new(170, 0)], ["field"], thickness),
                Sheet("fleece", 3, "SM", [new(90, thickness), new(900, thickness)], ["field", "upstand"]),
            ],
            new OnPaper(scale, false), _ => 0);
        var (upstand, fleece) = (laid[1].Body.Cut(new(130 / scale, -9), new(130 / scale, 99)), laid[2].Body.Cut(new(130 / scale, -9), new(130 / scale, 99)));
        Assert.True(fleece[0].From.Y >= upstand[^1].To.Y + 0.345, $"{fleece[0].From.Y} is not above {upstand[^1].To.Y}.");
    }

    // It climbs over thick sheets in truth as well.
    [Theory]
    [InlineData(1.5, 1.2)]
    [InlineData(7, 0.4)]
    [InlineData(20, 0.4)]
    public void A_sheet_strays_only_by_what_is_drawn_thicker_than_it_is(double thickness, double most)
    {
        var laid = SheetLayout.Lay([Sheet("a", 1, "WP", [new(100, 0), new(300, 0)], [], thickness), Sheet("b", 2, "WP", [new(0, 0), new(300, 0)], ["a"], thickness)], new OnPaper(5, false), _ => 0);
        Assert.InRange(laid[1].Stray(5), 0.35, most + 0.7);
    }

    [Fact]
    public void A_dashed_sheet_stands_clear_of_the_outline_beside_it()
    {
        var laid = SheetLayout.Lay([Sheet("a", 1, "VC", [new(0, 0), new(400, 0)], [])], new OnPaper(10, false), _ => 0.25);
        Assert.All(laid[0].Centre.Points, point => Assert.Equal(0.25 + 0.35 + 0.175, point.Y, 0.001));
    }

    [Fact]
    public void A_sheet_between_solids_is_centred_on_its_interface()
    {
        var part = Sheet("a", 1, "DP", [new(0, 0), new(400, 0)], []);
        var laid = SheetLayout.Lay([part with { Sheet = part.Sheet! with { Seat = Seat.Between, Thickness = 1 } }], new OnPaper(10, false), _ => 0);
        Assert.All(laid[0].Centre.Points, point => Assert.Equal(0.05, point.Y, 0.001));
    }

    private static Part Sheet(string id, int order, string code, Point[] face, string[] over, double thickness = 1.5) =>
        new(id, id, new(id, id, "membrane", "membrane", code, 0.2, 1000, "assumed"), Element.Roof, Region.Empty, Presence.Cut, Roles.WaterBarrier, order)
        {
            Slot = id,
            Words = new("", "", ""),
            Sheet = new(face, thickness, over),
        };

    private static double Length(Point[] face) => face.Zip(face.Skip(1), (a, b) => (b - a).Length).Sum();

    private static Point[] Cut(Point[] face, double from, double to) =>
        [.. new FacePath(face.Select(point => new PaperPoint(point.X, point.Y))).Between(from, to).Points.Select(point => new Point(point.X, point.Y))];
}
