using CsCheck;
using DetailGen.Drawing.Annotation;
using DetailGen.Drawing.Scenes;
using DetailGen.Sections;
using DetailGen.Testing;

namespace DetailGen.Drawing.Tests.Annotation;

public sealed class AnnotatorTests
{
    private static readonly string[] Words = ["membrane", "of", "lead", "150 mm", "turned up", "sealed at laps", "mineral wool", "to the underside of the coping", "at 450 mm centres", "PIR", "polyisocyanurate"];

    [Fact]
    public void Is_broken_off_only_where_it_lacks_as_much_as_the_one_to_beat()
    {
        // So narrow a zone that notes are left over.
        var request = AnnotationSamples.Request(5, false);
        var zone = request.View.Zone;
        request = request with { View = request.View with { Zone = zone.Grow(-Math.Min(zone.Width, zone.Height) / 5) } };
        var whole = Annotator.Place(request);
        var lack = AnnotationLayout.Lack(whole.Unplaced.Count, whole.Keyed.Count);

        Assert.True(lack > 0);
        Assert.Null(Annotator.PlaceBetter(request, 0));
        Assert.Equal(Written(whole.Items), Written(Annotator.PlaceBetter(request, lack + 1)!.Items));
    }

    [Theory]
    [InlineData(5, false)]
    [InlineData(5, true)]
    [InlineData(10, false)]
    [InlineData(10, true)]
    public void The_sample_parapet_has_no_fault(double scale, bool mirror)
    {
        var layout = Annotator.Place(AnnotationSamples.Request(scale, mirror));
        Assert.Empty(layout.Faults);
        Assert.Equal((0, 0), (layout.Report.Crossings, layout.Report.Overlaps));
        Assert.InRange(layout.Report.Ratio, 1, 1.5);
    }

    [Fact]
    public void Random_notes_in_random_zones_have_no_fault()
    {
        var requests = new[] { (5.0, false), (5.0, true), (10.0, false), (10.0, true) }.Select(one => AnnotationSamples.Request(one.Item1, one.Item2)).ToArray();
        var texts = Gen.Int[0, 10].Select(i => Words[i]).Array[1, 12].Select(words => string.Join(' ', words));
        Gen.Select(Gen.Int[0, 3], texts.Array[40], Gen.Int[0, 40], Gen.Int[0, 60], Gen.Int[30, 72]).Always((which, notes, narrower, skip, width) =>
        {
            var request = requests[which];
            var parts = request.Section.Parts.Select((part, i) => part with { Words = new((i * 7 + skip) % 3 == 0 ? "" : part.IsAir ? part.Words.Note : notes[i % 40], "", "") }).ToArray();
            var zone = request.View.Zone;
            var layout = Annotator.Place(request with
            {
                Section = request.Section with { Parts = parts },
                View = request.View with { Zone = zone.Grow(20 - narrower / 2.0), NoteWidth = width },
            });

            // Words or a number: what stands on the list has its number on the view, or is told as having no place.
            foreach (var keyed in layout.Keyed.Where(keyed => !layout.Unplaced.Any(one => one.What == "note" && one.Id == keyed.PartId)))
            {
                var mark = Assert.Single(layout.Items.OfType<Group>(), group => group.Name == "note " + keyed.PartId);
                Assert.Equal(keyed.Key, Assert.Single(mark.Items.OfType<Text>()).Words);
                Assert.Contains(mark.Items, item => item.Row == "note.leader");
            }

            // No word is torn, however narrow the room: the lines of a note are its words.
            foreach (var note in layout.Items.OfType<Group>().Where(group => group.Name.StartsWith("note ", StringComparison.Ordinal)))
            {
                var lines = note.Items.OfType<Text>().Where(text => !text.Bold).Select(text => text.Words).Concat(note.Items.OfType<Paragraph>().SelectMany(paragraph => paragraph.Lines)).ToList();
                Assert.True(lines.Count == 0 || parts.Any(part => part.Words.Note == string.Join(' ', lines)), string.Join(" / ", lines));
            }

            // A zone too narrow for the levels is told as a fault and not papered over.
            Assert.DoesNotContain(layout.Faults, fault => fault.Check != "frame-cross" || !fault.Subject.StartsWith("level", StringComparison.Ordinal));
        });
    }

    [Theory]
    [InlineData(10, false, 0)]
    [InlineData(10, true, 0)]
    [InlineData(10, false, 15)]
    [InlineData(10, true, 15)]
    public void Every_note_of_the_sample_has_a_mark_even_on_less_paper(double scale, bool mirror, double less)
    {
        var request = AnnotationSamples.Request(scale, mirror);
        var layout = Annotator.Place(request with { View = request.View with { Zone = request.View.Zone.Grow(-less) } });
        Assert.DoesNotContain(layout.Unplaced, one => one.What == "note");
        Assert.DoesNotContain(layout.Faults, fault => fault.Check.StartsWith("lead", StringComparison.Ordinal) || fault.Check is "text-overlap" or "text-on-fill");
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Notes_keep_off_what_of_the_sheet_stands_in_their_zone(bool mirror)
    {
        var request = AnnotationSamples.Request(10, mirror);
        var stack = Annotator.Place(request).Items.OfType<Group>().Single(group => group.Name == "stack roof").Items.OfType<Text>().First();
        PaperBox taken = new(stack.At.X, stack.At.Y - 1, stack.At.X + 8, stack.At.Y + 2);
        var kept = request with { View = request.View with { Taken = [taken] } };
        Assert.Contains(LayoutCheck.Faults(Annotator.Place(request).Items, kept), fault => fault.Check == "text-overlap");
        Assert.Empty(Annotator.Place(kept).Faults);
    }

    [Fact]
    public void Notes_that_their_columns_have_no_room_for_stand_by_themselves_in_words()
    {
        var request = AnnotationSamples.Request(10, false);
        var zone = request.View.Zone;
        var layouts = new[] { 5, 10, 15, 20, 25 }.Select(less => Annotator.Place(request with { View = request.View with { Zone = zone.Grow(-less) } })).ToArray();
        Assert.Contains(layouts, layout => layout.Places.Any(place =>
            place.Column.StartsWith("own ", StringComparison.Ordinal) && !layout.Keyed.Any(keyed => keyed.PartId == place.PartId)));
        Assert.All(layouts, layout => Assert.DoesNotContain(layout.Faults, fault => fault.Check is "text-overlap" or "text-gap" || fault.Check.StartsWith("lead", StringComparison.Ordinal)));
    }

    [Fact]
    public void The_same_request_gives_the_same_items_whatever_the_order_of_parts()
    {
        var request = AnnotationSamples.Request();
        var turned = request with
        {
            Section = request.Section with { Parts = [.. request.Section.Parts.Reverse()] },
            View = request.View with { Parts = [.. request.View.Parts.Reverse()] },
        };
        Assert.Equal(Written(Annotator.Place(request).Items), Written(Annotator.Place(turned).Items));
    }

    [Fact]
    public void A_mirrored_view_has_the_mirrored_layout()
    {
        var bare = AnnotationSamples.Parapet() with { Measures = [], Levels = [], Falls = [] };
        var places = new[] { false, true }.Select(mirror => Annotator.Place(AnnotationSamples.Request(5, mirror, bare))).ToArray();
        Assert.Equal(places[0].Places.Select(place => (place.PartId, place.Column)), places[1].Places.Select(place => (place.PartId, place.Column)));

        // Regions lie on a grid of a thousandth before and after they are turned round; a steep leader makes four of it.
        Assert.All(places[0].Places.Zip(places[1].Places), pair => Assert.Equal(pair.First.Y, pair.Second.Y, 0.02));
    }

    [Fact]
    public void Notes_stay_where_an_earlier_issue_had_them()
    {
        var request = AnnotationSamples.Request();
        var first = Annotator.Place(request);
        var again = Annotator.Place(request with { Earlier = first.Places });
        Assert.Equal(first.Places.Select(place => (place.PartId, place.Column)), again.Places.Select(place => (place.PartId, place.Column)));
        Assert.All(first.Places.Zip(again.Places), pair => Assert.Equal(pair.First.Y, pair.Second.Y, 3));
    }

    [Fact]
    public void Levels_are_in_metres_with_sign_and_three_decimals()
    {
        Level At(double y) => new("level", "level", new(0, y), true);
        Assert.Equal("±0.000", Levels.Value(At(0), null));
        Assert.Equal("+0.450 (48.750 AOD)", Levels.Value(At(450), 48.3));
        Assert.Equal("\u22120.230", Levels.Value(At(-230), null));
    }

    [Fact]
    public void A_stack_note_of_a_wall_begins_with_its_outermost_layer_even_where_the_wall_stands_turned_round()
    {
        var request = AnnotationSamples.Request();
        var wall = request.Section.Buildups[0];
        var turned = request with { Section = request.Section with { Buildups = [wall with { Layers = [.. wall.Layers.Reverse()] }, .. request.Section.Buildups.Skip(1)] } };
        foreach (var asked in (AnnotationRequest[])[request, turned])
        {
            var lines = Annotator.Place(asked).Items.OfType<Group>().Single(group => group.Name == "stack wall").Items.OfType<Text>().Where(text => text.Bold).OrderByDescending(text => text.At.Y);
            Assert.Equal(asked.Section.Buildups[0].Layers.Select(layer => AnnotationSamples.References[layer.PartId]), lines.Select(text => text.Words));
        }
    }

    [Fact]
    public void A_stack_note_has_one_mark_and_one_line_for_each_layer_in_their_order()
    {
        var stacks = Annotator.Place(AnnotationSamples.Request()).Items.OfType<Group>().Where(group => group.Name.StartsWith("stack", StringComparison.Ordinal)).ToArray();
        Assert.Equal(["stack wall", "stack roof"], stacks.Select(stack => stack.Name));
        foreach (var stack in stacks)
        {
            var lines = stack.Items.OfType<Text>().Where(text => text.Bold).OrderByDescending(text => text.At.Y).Select(text => text.Words).ToArray();
            Assert.Equal(lines.Order(StringComparer.Ordinal), lines);
            Assert.Equal(6, lines.Length);
            Assert.Equal(6, stack.Items.OfType<Dot>().Count() + stack.Items.OfType<Stroke>().Count(stroke => Math.Abs((stroke.Points[1] - stroke.Points[0]).Length - 2) < 0.01));
        }
    }

    [Fact]
    public void The_check_sees_a_text_that_was_pushed_onto_another()
    {
        var request = AnnotationSamples.Request();
        var items = Annotator.Place(request).Items.ToList();
        var label = items.OfType<Text>().First(text => text.Row == "title.view");
        var note = items.OfType<Group>().First(group => group.Row == "note.text").Items.OfType<Text>().First();
        items[items.IndexOf(label)] = label with { At = note.At };
        Assert.Contains(LayoutCheck.Faults(items, request), fault => fault.Check == "text-overlap");
    }

    [Fact]
    public void The_check_sees_a_leader_that_misses_its_part()
    {
        var request = AnnotationSamples.Request();
        var items = Annotator.Place(request).Items.ToList();
        var note = items.OfType<Group>().First(group => group.Row == "note.text" && group.Items.OfType<Dot>().Any());
        var dot = note.Items.OfType<Dot>().First();
        items[items.IndexOf(note)] = note with { Items = [.. note.Items.Select(item => item == dot ? dot with { Centre = dot.Centre + new PaperPoint(0, 200) } : item)] };
        Assert.Contains(LayoutCheck.Faults(items, request), fault => fault.Check == "lead-target");
    }

    [Theory]
    [InlineData(5, false)]
    [InlineData(5, true)]
    [InlineData(10, false)]
    [InlineData(10, true)]
    public void No_leader_or_stem_runs_along_a_line_of_the_drawing(double scale, bool mirror)
    {
        var request = AnnotationSamples.Request(scale, mirror);
        var drawn = new DrawnLines(request.View.Drawn.SelectMany(stroke => stroke.Points.Zip(stroke.Points.Skip(1))));
        foreach (var group in Annotator.Place(request).Items.OfType<Group>().Where(group => group.Row is "note.text" or "note.stack"))
        {
            foreach (var stroke in group.Items.OfType<Stroke>())
            {
                Assert.All(stroke.Points.Zip(stroke.Points.Skip(1)), run => Assert.False(drawn.RunAlong(run.First, run.Second), group.Name));
            }
        }
    }

    [Theory]
    [InlineData(5)]
    [InlineData(10)]
    public void No_leader_ends_under_a_tie_or_a_sheet_that_is_drawn_over_its_part(double scale)
    {
        var request = AnnotationSamples.Request(scale);
        foreach (var note in Annotator.Place(request).Items.OfType<Group>().Where(group => group.Row == "note.text" && group.Items.OfType<Dot>().Any()))
        {
            var tip = note.Items.OfType<Dot>().First().Centre;
            Assert.DoesNotContain(request.View.Parts, part => part.Id != note.PartId && part.Look == Look.Band && part.Visible.Contains(new(tip.X, tip.Y)));
        }
    }

    [Fact]
    public void A_fall_without_room_for_its_arrow_is_no_loss_where_a_note_gives_it()
    {
        // At 1:100 the coping is narrower than any arrow.
        var section = AnnotationSamples.Parapet();
        PaperBox zone = new(-110, -95, 180, 90);
        bool IsMissing(string note)
        {
            var told = section with { Parts = [.. section.Parts.Select(part => part.Id == "coping" ? part with { Words = new(note, "", "") } : part)] };
            return Annotator.Place(AnnotationSamples.Request(100, section: told, zone: zone)).Unplaced.Any(one => one.Id == "coping.fall");
        }

        Assert.True(IsMissing("Coping, throated"));
        Assert.False(IsMissing("Coping, fall 1:10; throated"));
    }

    private static string Written(IEnumerable<Item> items) => string.Join('\n', items.Select(Written));

    private static string Written(Item item) => item switch
    {
        Group group => $"{group.Name}: {Written(group.Items)}",
        Stroke stroke => $"{stroke.Row} {string.Join(' ', stroke.Points)}",
        Paragraph paragraph => $"{paragraph.At} {string.Join('|', paragraph.Lines)}",
        Solid solid => string.Join(' ', solid.Outline),
        _ => item.ToString(),
    };
}
