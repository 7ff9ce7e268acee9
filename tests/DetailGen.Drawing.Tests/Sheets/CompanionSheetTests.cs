using DetailGen.Drawing.Lettering;
using DetailGen.Drawing.Scenes;
using DetailGen.Drawing.Sheets;
using DetailGen.Drawing.Sheets.Companions;
using DetailGen.Drawing.Tests.Annotation;
using DetailGen.Drawing.Views;
using DetailGen.Sections;

namespace DetailGen.Drawing.Tests.Sheets;

public class CompanionSheetTests
{
    /// <summary>Companion, paper, mirrored.</summary>
    public static TheoryData<Companion, string, bool> All
    {
        get
        {
            var all = new TheoryData<Companion, string, bool>();
            foreach (var companion in Enum.GetValues<Companion>().Except([Companion.Thermal]))
            {
                all.Add(companion, "A4", false);
                all.Add(companion, "A4", true);
                all.Add(companion, "A3", false);
                all.Add(companion, "A3", true);
            }

            return all;
        }
    }

    [Theory]
    [MemberData(nameof(All))]
    public void Words_and_views_stay_within_the_frame_and_clear_of_each_other(Companion companion, string paper, bool mirror)
    {
        var basis = Basis(paper, mirror);
        var sheet = Assert.Single(CompanionSheets.Of(companion, basis));
        var boxes = Words(sheet.Items).ToList();
        Assert.NotEmpty(boxes);
        Assert.All(boxes, box => Assert.True(Within(box.Box, basis.Format.Space), $"'{box.Words}' stands outside the frame."));
        for (var i = 0; i < boxes.Count; i++)
        {
            Assert.All(boxes.Skip(i + 1), other => Assert.False(boxes[i].Box.Grow(-0.1).Meets(other.Box.Grow(-0.1)), $"'{boxes[i].Words}' and '{other.Words}' overlap."));
        }

        Assert.All(sheet.Placements, placement =>
        {
            var view = sheet.Views.Single(view => view.Id == placement.ViewId);
            Assert.Equal(sheet.Scale, view.Scale);
            Assert.True(Within(view.Bounds.Shift(placement.Origin), placement.Window.Grow(0.5)), $"{view.Id} is cut off.");
        });
        // On no view is anything written.
        Assert.All(sheet.Placements, placement =>
        {
            var drawn = sheet.Views.Single(view => view.Id == placement.ViewId).Bounds.Shift(placement.Origin);
            Assert.All(boxes, box => Assert.False(box.Box.Meets(drawn), $"'{box.Words}' stands on {placement.ViewId}."));
        });
        for (var i = 0; i < sheet.Placements.Count; i++)
        {
            Assert.All(sheet.Placements.Skip(i + 1), other => Assert.False(sheet.Placements[i].Window.Grow(-0.1).Meets(other.Window)));
        }
    }

    [Fact]
    public void A_blank_section_is_the_drawn_one_without_a_word()
    {
        var basis = Basis("A3", false);
        var view = Assert.Single(Assert.Single(CompanionSheets.Of(Companion.Blank, basis)).Views);
        Assert.Same(basis.Drawn.Items, view.Items);
        Assert.DoesNotContain(view.Items, item => item is Text or Paragraph or Dimension);
    }

    [Fact]
    public void The_stages_hold_every_part_in_build_order_and_the_last_shows_all_of_them()
    {
        var basis = Basis("A3", false);
        var stages = BuildSequence.Stages(basis.Section);
        Assert.InRange(stages.Count, 2, 10);
        Assert.Equal(basis.Section.Parts.Where(part => !part.IsAir).Select(part => part.Id), stages.SelectMany(stage => stage).Select(part => part.Id).Distinct());
        var sheet = Assert.Single(CompanionSheets.Of(Companion.Sequence, basis));
        Assert.Equal(stages.Count, sheet.Views.Count);

        // What is filled in a stage is built in it.
        for (var i = 0; i < stages.Count; i++)
        {
            var now = stages[i].Select(part => part.Id).ToHashSet();
            Assert.All(sheet.Views[i].Items.Where(item => item.Row.StartsWith("fill.", StringComparison.Ordinal) && item.PartId is not null), item => Assert.Contains(item.PartId!.Split('/')[0], now));
        }
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Control_lines_follow_the_parts_with_that_task_as_far_as_they_are_seen(bool mirror)
    {
        var basis = Basis("A3", mirror);
        var view = Assert.Single(Assert.Single(CompanionSheets.Of(Companion.ControlLines, basis)).Views);
        var seen = new OnPaper(10, mirror).At(BreakLines.Clip(basis.Section, basis.Window));
        var deck = basis.Section.Levels.FirstOrDefault(level => level.Name == "deck-top")?.Y / basis.Drawn.Scale;
        foreach (var (row, role) in new[] { ("control.water", Roles.WaterBarrier), ("control.air", Roles.AirBarrier), ("control.vapour", Roles.VapourControl) })
        {
            var lines = view.Items.OfType<Stroke>().Where(stroke => stroke.Row == row).ToList();
            Assert.Equal(
                basis.Drawn.Parts.Where(part => part.Part.Roles.HasFlag(role) && part.Part.Presence == Presence.Cut && (role == Roles.WaterBarrier || part.Part.Element == Element.Roof || part.Visible.Bounds.Bottom < deck)).Select(part => part.Id).Order(StringComparer.Ordinal),
                lines.Select(line => line.PartId).Distinct().Order(StringComparer.Ordinal));
            Assert.All(lines.SelectMany(line => line.Points), point => Assert.True(point.X >= seen.Left - 0.01 && point.X <= seen.Right + 0.01 && point.Y >= seen.Bottom - 0.01 && point.Y <= seen.Top + 0.01));
        }
    }

    [Fact]
    public void Insulation_under_control_lines_is_filled_without_gaps_for_ties_that_are_not_shown()
    {
        var basis = Basis("A3", false);
        Part Tasked(Part part) => part.Id == "wall.cavity-insulation" ? part with { Roles = Roles.Insulation } : part;
        basis = basis with { Section = basis.Section with { Parts = [.. basis.Section.Parts.Select(Tasked)] } };
        Assert.Contains(basis.Drawn.Items, item => item.PartId?.StartsWith("tie.", StringComparison.Ordinal) == true);
        var view = Assert.Single(Assert.Single(CompanionSheets.Of(Companion.ControlLines, basis)).Views);
        int Loops(IEnumerable<Item> items) => items.OfType<Stroke>().Count(stroke => stroke.PartId == "wall.cavity-insulation" && stroke.Row.StartsWith("fill.", StringComparison.Ordinal));
        Assert.DoesNotContain(view.Items, item => item.PartId?.StartsWith("tie.", StringComparison.Ordinal) == true);
        Assert.InRange(Loops(view.Items), 1, Loops(basis.Drawn.Items) - 1);
    }

    [Theory]
    [InlineData("A4")]
    [InlineData("A3")]
    [InlineData("A1")]
    public void No_other_number_of_columns_would_leave_less_white_beside_or_over_a_stage(string paper)
    {
        var basis = Basis(paper, false);
        var sheet = Assert.Single(CompanionSheets.Of(Companion.Sequence, basis));
        var cells = sheet.Placements.Select(placement => placement.Window).ToArray();
        var columns = cells.Select(cell => Math.Round(cell.Left, 3)).Distinct().Count();
        var rows = (cells.Length + columns - 1) / columns;
        var whole = SectionView.Draw(basis.Section, new(sheet.Scale, ViewRoom.Least(basis.Section), basis.Drawn.Mirror)).Bounds;
        var (width, height) = (cells[0].Width * columns, cells[0].Height * rows);
        var most = Math.Max(cells[0].Width / whole.Width, cells[0].Height / whole.Height);

        // Captions and gaps take a little of a cell.
        const double Taken = 0.85;
        for (var other = 1; other <= cells.Length; other++)
        {
            var (wide, high) = (width / other / whole.Width, height / ((cells.Length + other - 1) / other) / whole.Height);
            Assert.True(Taken * Math.Min(wide, high) < 1 || Taken * most <= Math.Max(wide, high), $"{other} columns rather than {columns}: {Math.Max(wide, high):0.00} for {most:0.00}");
        }
    }

    [Theory]
    [InlineData("A4")]
    [InlineData("A3")]
    public void A_stage_names_all_that_it_adds(string paper)
    {
        var basis = Basis(paper, false);
        var sheet = Assert.Single(CompanionSheets.Of(Companion.Sequence, basis));
        var captions = sheet.Items.OfType<Paragraph>().Select(caption => string.Concat(caption.Lines).Replace(" ", "", StringComparison.Ordinal)).ToList();
        var stages = BuildSequence.Stages(basis.Section);
        Assert.Equal(stages.Count, captions.Count);
        Assert.All(stages.Zip(captions), stage => Assert.All(stage.First, part => Assert.Contains(part.Name.Replace(" ", "", StringComparison.Ordinal), stage.Second, StringComparison.OrdinalIgnoreCase)));
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void A_control_line_runs_along_the_side_that_does_the_task(bool mirror)
    {
        var basis = Basis("A3", mirror);
        Part Tasked(Part part) => part with { Roles = part.Roles | (part.Id == "coping" ? Roles.WaterBarrier : part.Id == "wall.inner-leaf" ? Roles.AirBarrier : Roles.None) };
        basis = basis with { Section = basis.Section with { Parts = [.. basis.Section.Parts.Select(Tasked)] } };
        var lines = Assert.Single(Assert.Single(CompanionSheets.Of(Companion.ControlLines, basis)).Views).Items.OfType<Stroke>().Where(stroke => stroke.Row.StartsWith("control.", StringComparison.Ordinal)).ToArray();
        PaperBox Line(string id) => ItemBounds.Of(lines.Where(line => line.PartId == id));

        // Water runs off the top of the coping, the room's air meets the inner side of the leaf; neither line lies on the outline or past it.
        var coping = basis.Drawn.Part("coping")!.Visible.Bounds;
        Assert.InRange(coping.Top - Line("coping").Top, 0.3, 1.5);
        var leaf = basis.Drawn.Part("wall.inner-leaf")!.Visible.Bounds;
        Assert.InRange(mirror ? Line("wall.inner-leaf").Left - leaf.Left : leaf.Right - Line("wall.inner-leaf").Right, 0.3, 1.5);
    }

    [Theory]
    [InlineData("A4")]
    [InlineData("A3")]
    public void The_title_of_the_layers_stands_near_under_them(string paper)
    {
        var basis = Basis(paper, false);
        var sheet = Assert.Single(CompanionSheets.Of(Companion.Exploded, basis));
        var lowest = sheet.Placements.Min(placement => placement.Window.Bottom);
        var title = sheet.Items.OfType<Text>().Single(text => text.Words == "Layers pulled apart").At.Y;
        Assert.InRange(title, Math.Min(lowest - 25, basis.Room.Bottom + 10), lowest);
    }

    [Fact]
    public void Layers_are_pulled_apart_larger_than_the_section_where_the_sheet_has_room()
    {
        var basis = Basis("A3", false);
        var section = basis.Section with { Buildups = [.. basis.Section.Buildups.Select(buildup => buildup with { Layers = [.. buildup.Layers.Select(layer => layer with { Thickness = 20 }).Take(3)] })] };
        Assert.Equal(2, Assert.Single(CompanionSheets.Of(Companion.Exploded, basis with { Section = section })).Scale);
    }

    [Fact]
    public void Every_layer_of_both_stacks_is_pulled_apart_and_named()
    {
        var basis = Basis("A3", false);
        var sheet = Assert.Single(CompanionSheets.Of(Companion.Exploded, basis));
        var words = sheet.Items.OfType<Text>().Select(text => text.Words).ToList();
        Assert.All(basis.Section.Buildups.SelectMany(buildup => buildup.Layers), layer => Assert.Single(words, layer.Reference));
        var lines = sheet.Items.OfType<Paragraph>().SelectMany(paragraph => paragraph.Lines).ToList();
        Assert.All(basis.Section.Buildups.SelectMany(buildup => buildup.Layers).Where(layer => !layer.IsAir), layer => Assert.Contains(lines, line => layer.Material.Name.StartsWith(line, StringComparison.Ordinal)));
    }

    [Fact]
    public void What_stands_on_supports_is_pulled_apart_as_thick_as_it_is_and_told_as_it_stands()
    {
        var basis = Basis("A3", false);
        var (roof, deck) = (basis.Section.Buildups[1], basis.Section["roof.deck"]);
        Layer Raised(Layer layer) => layer.PartId == deck.Id ? layer with { Slot = "roof.finish", Thickness = 80, Told = "slabs on supports" } : layer;
        var section = basis.Section with { Buildups = [basis.Section.Buildups[0], roof with { Layers = [.. roof.Layers.Select(Raised)] }] };
        var sheet = Assert.Single(CompanionSheets.Of(Companion.Exploded, basis with { Section = section }));
        var drawn = sheet.Views[1].Items.OfType<Stroke>().Where(stroke => stroke.PartId == deck.Id).ToArray();
        var own = deck.Region.Area / deck.Region.Bounds.Width;
        Assert.InRange(drawn.Max(stroke => stroke.Points.Max(at => at.Y)) - drawn.Min(stroke => stroke.Points.Min(at => at.Y)), (own / sheet.Scale) - 0.5, (own / sheet.Scale) + 0.5);
        Assert.Contains(sheet.Views[1].Items, item => item.Row.StartsWith("beyond.", StringComparison.Ordinal));
        Assert.Contains("slabs on supports", sheet.Items.OfType<Paragraph>().SelectMany(paragraph => paragraph.Lines));
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void A_void_is_pulled_apart_as_a_void_with_what_crosses_it(bool across)
    {
        var basis = Basis("A3", false);
        var joist = basis.Section["roof.joist.1"];
        Part Crossing(Part part) => part == joist && across ? part with { Repeat = new(400, 47), Axis = new(1, 0) } : part;
        var section = basis.Section with
        {
            Parts = [.. basis.Section.Parts.Select(Crossing)],
            Buildups = [new("roof", "Roof", HeatFlow.Upwards, [new("R1", joist.Slot, joist.Id, "Void between joists", joist.Material with { Conductivity = null }, 200, LayerKind.Bridged, "unventilated air space")], (new(0, 0), new(0, -200)))],
        };
        var items = Assert.Single(Assert.Single(CompanionSheets.Of(Companion.Exploded, basis with { Section = section })).Views).Items;
        Assert.Equal(!across, items.Any(item => item.Row.StartsWith("fill.", StringComparison.Ordinal)));
        Assert.Contains(items, item => item.Row.StartsWith("beyond.", StringComparison.Ordinal));
        Assert.Equal(!across, items.Any(item => item.Row.StartsWith("cut.", StringComparison.Ordinal)));
    }

    internal static CompanionBasis Basis(string paper, bool mirror)
    {
        var bare = AnnotationSamples.Parapet();
        var section = bare with { Parts = [.. bare.Parts.OrderBy(part => part.BuildOrder).Select((part, i) => part with { Stage = i / 3 })] };
        var format = paper switch { "A4" => SampleSheets.A4, "A1" => SampleSheets.A1, _ => SampleSheets.A3 };
        var scale = paper == "A4" ? 20 : 10;
        var room = ViewRoom.Of(format, mirrored: false);
        var window = room.Window(section, scale)!.Value;
        var drawn = SectionView.Draw(section, new(scale, window, mirror));
        return new(section, drawn, window, room.Origin(drawn.Bounds, section), format, "Section through parapet", 2);
    }

    internal static bool Within(PaperBox box, PaperBox outer) => box.Left >= outer.Left && box.Right <= outer.Right && box.Bottom >= outer.Bottom && box.Top <= outer.Top;

    internal static IEnumerable<(string Words, PaperBox Box)> Words(IEnumerable<Item> items) => items.SelectMany<Item, (string, PaperBox)>(item => item switch
    {
        Text text => [(text.Words, Around(text.Words, text.At, text.Height, text.Align))],
        Paragraph paragraph => paragraph.Lines.Select((line, i) => (line, Around(line, paragraph.At - new PaperPoint(0, i * paragraph.Pitch), paragraph.Height, Align.Left))),
        _ => [],
    });

    private static PaperBox Around(string words, PaperPoint at, double height, Align align)
    {
        var width = Typeface.Shipped.Width(words, height);
        var left = at.X - align switch { Align.Centre => width / 2, Align.Right => width, _ => 0 };
        return new(left, at.Y - Typeface.Shipped.Hang(height), left + width, at.Y + Typeface.Shipped.Rise(height));
    }
}
