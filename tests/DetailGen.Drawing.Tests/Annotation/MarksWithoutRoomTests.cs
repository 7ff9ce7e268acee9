using DetailGen.Drawing.Annotation;
using DetailGen.Drawing.Scenes;
using DetailGen.Sections;

namespace DetailGen.Drawing.Tests.Annotation;

public sealed class MarksWithoutRoomTests
{
    [Fact]
    public void A_size_without_white_beside_it_is_told_by_the_note_of_its_part()
    {
        Assert.Contains(Layout(null).Unplaced, one => one.Id == "coping.drip-clearance");
        var told = Layout(new("coping", "drip", "clear of the outer face"));
        Assert.DoesNotContain(told.Unplaced, one => one.What == "dimension");
        Assert.Contains(WordsOf(told), words => words.Contains("falls to the roof; drip 40 mm clear of the outer face", StringComparison.Ordinal));
        Assert.Contains(Layout(new("no such part", "drip", "")).Unplaced, one => one.Id == "coping.drip-clearance");

        static AnnotationLayout Layout(SizeWords? words)
        {
            // What of the sheet stands round the drip leaves no white there.
            var section = AnnotationSamples.Parapet();
            section = section with { Measures = [.. section.Measures.Select(one => one.Id == "coping.drip-clearance" ? one with { Told = words } : one)] };
            var request = AnnotationSamples.Request(10, section: section);
            return Annotator.Place(request with { View = request.View with { Taken = [new(-60, 2, -0.5, 65), new(-60, 65, 60, 95)] } });
        }
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Parts_too_near_each_other_for_two_leaders_share_one_mark_with_both_references(bool mirror)
    {
        // Two wedges of 1.2 × 0.9 mm on paper, one over the other, in the white over the roof.
        var request = AnnotationSamples.Request(10, mirror);
        var pattern = request.Section["upstand.fillet"];
        string[] ids = ["wedge.high", "wedge.low"];
        var at = mirror ? -80 : 80;
        request = request with
        {
            Section = request.Section with { Parts = [.. request.Section.Parts, .. ids.Select(id => pattern with { Id = id, Words = new($"Hardwood {id}", "", "") })] },
            View = request.View with { Parts = [.. request.View.Parts, .. ids.Select((id, i) => new NotedPart(id, Region.Box(at, 30 - i, at + 1.2, 30.9 - i), [], Look.Filled))] },
            References = request.References.Append(new("wedge.high", "P21")).Append(new("wedge.low", "P22")).ToDictionary(StringComparer.Ordinal),
        };
        var layout = Annotator.Place(request);
        Assert.DoesNotContain(layout.Unplaced, one => one.What == "note");
        Assert.DoesNotContain(layout.Faults, fault => fault.Check.StartsWith("lead", StringComparison.Ordinal));
        var mark = Assert.Single(layout.Items.OfType<Group>(), group => group.PartId is { } id && ids.Contains(id));
        Assert.Contains("P21 Hardwood wedge.high. P22 Hardwood wedge.low", string.Join(' ', Texts(mark)), StringComparison.Ordinal);
    }

    private static IEnumerable<string> WordsOf(AnnotationLayout layout) =>
        layout.Keyed.Select(one => one.Words).Concat(layout.Items.OfType<Group>().Select(group => string.Join(' ', Texts(group))));

    private static IEnumerable<string> Texts(Group group) => group.Items.SelectMany(item => item switch
    {
        Text text => [text.Words],
        Paragraph paragraph => paragraph.Lines,
        _ => Enumerable.Empty<string>(),
    });
}
